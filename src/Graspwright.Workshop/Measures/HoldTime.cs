using System.Globalization;
using Graspwright.Mechanics.Effort;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>How long the effort at the end of closing can be held: a band, never one figure.</summary>
/// <remarks>
/// The value is the hand-and-grip law of Frey Law &amp; Avin 2010, 33.55·f^−1.61 s; the band that of
/// <see cref="Endurance.Hold"/>. Below 15 % of the capacity the curves have no data and no figure is given.
/// </remarks>
public sealed class HoldTime() : Measure("hold_time", "how long this effort can be held without a pause", "s", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        double share = Share(reading);
        if (double.IsNaN(share))
        {
            return Reading.None("the wrist has no capacity there");
        }

        HoldingTime hold = Endurance.Hold(Math.Max(share, 0));
        return hold.Reach switch
        {
            EnduranceReach.LongerThan => Reading.None(string.Create(CultureInfo.InvariantCulture,
                $"the effort is below the published curves, which begin at 15 % of the wrist's capacity; it can be held longer than {hold.Low / 60:0} min")),
            EnduranceReach.AboveMaximum => Reading.None("the effort is above the wrist's capacity"),
            _ => hold.HandGrip!.Value,
        };
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string tau = terms.Input("wrist_moment", reading.End[TraceLayout.Tau], "N·m");
        string capacity = terms.Input("wrist_capacity", EffortLimit.Capacity(reading), "N·m");
        return terms.Working($"33.55·({tau}/{capacity})^(-1.61)", "frey-law-avin-2010");
    }

    /// <inheritdoc/>
    protected override Figure Spread(RunReading reading, Figure figure)
    {
        HoldingTime hold = Endurance.Hold(Share(reading));
        return figure with { Low = hold.Low, High = hold.High };
    }

    private static double Share(RunReading reading)
    {
        double capacity = EffortLimit.Capacity(reading);
        return capacity > 0 ? reading.End[TraceLayout.Tau] / capacity : double.NaN;
    }
}
