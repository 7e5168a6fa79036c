using Graspwright.Signals.Recordings;
using Graspwright.Signals.Sites;

namespace Graspwright.Signals.Made;

/// <summary>A muscle under the skin that a gesture, or what goes on meanwhile, tenses.</summary>
/// <param name="Gesture">The gesture.</param>
/// <param name="XMm">Place [mm].</param>
/// <param name="YMm">Place [mm].</param>
/// <param name="Volts">Root mean square straight above it when tensed [V].</param>
public sealed record Muscle(string Gesture, double XMm, double YMm, double Volts);

/// <summary>Something wrong for a while.</summary>
/// <param name="Site">Name of the pair.</param>
/// <param name="StartSeconds">From [s].</param>
/// <param name="EndSeconds">To [s].</param>
public readonly record struct Trouble(string Site, double StartSeconds, double EndSeconds);

/// <summary>An invented sitting of a wearer: places, muscles, gestures, disturbances. Everything in it is made up.</summary>
public sealed record Scene
{
    /// <summary>Seed.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Samples a second [1/s].</summary>
    public required double RateHertz { get; init; }

    /// <summary>Pairs of contacts.</summary>
    public required IReadOnlyList<Site> Sites { get; init; }

    /// <summary>Muscles.</summary>
    public required IReadOnlyList<Muscle> Muscles { get; init; }

    /// <summary>Gestures by start, behind one another.</summary>
    public required IReadOnlyList<Mark> Marks { get; init; }

    /// <summary>Distance over which a muscle's signal falls to 1/e [mm].</summary>
    public double FallMm { get; init; } = 12;

    /// <summary>Noise of contact and amplifier [V].</summary>
    public double Noise { get; init; } = 8e-6;

    /// <summary>Hum of a sound contact, amplitude [V].</summary>
    public double Hum { get; init; } = 15e-6;

    /// <summary>Mains [1/s].</summary>
    public double MainsHertz { get; init; } = 50;

    /// <summary>Contacts lifted off.</summary>
    public IReadOnlyList<Trouble> Lifted { get; init; } = [];

    /// <summary>Contacts shaken.</summary>
    public IReadOnlyList<Trouble> Shaken { get; init; } = [];

    /// <summary>Whether the amplifier gives the envelope.</summary>
    public bool Envelope { get; init; }

    /// <summary>Volts of a count.</summary>
    public double VoltsPerCount { get; init; } = 1e-6;

    /// <summary>Whole numbers of the converter, either way.</summary>
    public int GreatestCount { get; init; } = 32767;

    /// <summary>How far all resting levels rise over an hour, as a share.</summary>
    public double DriftPerHour { get; init; }
}
