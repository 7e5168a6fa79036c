using Graspwright.Mechanics.Room;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Smallest gap between moving parts and what they pass, over closing; negative where they overlap.</summary>
/// <remarks>Read where <see cref="RunReading.Room"/> is given, as a search that has to keep clear does; a plain grip is not swept.</remarks>
public sealed class Clearance() : Measure("clearance", "smallest gap between moving parts and what they pass", "mm", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => Nearest(reading) is { } pair ? 1000 * pair.Gap : Reading.None("no room was swept in this run; the verb room does it");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        NearPair pair = Nearest(reading) ?? throw new InvalidOperationException("A clearance without a pair.");
        return Of(pair);
    }

    /// <summary>Working of a pair's gap.</summary>
    /// <param name="pair">The pair.</param>
    internal static Working Of(NearPair pair)
    {
        Terms terms = new();
        string axes = terms.Input("distance_of_axes", 1000 * (pair.Gap + pair.Radii), "mm"), radii = terms.Input("both_radii", 1000 * pair.Radii, "mm");
        return terms.Working($"{axes} - {radii}", "room-sweep");
    }

    private static NearPair? Nearest(RunReading reading) => reading.Swept is { Pairs: [var pair, ..] } ? pair : null;
}
