namespace Graspwright.Signals.Quality;

/// <summary>State of a contact pair in a window.</summary>
public enum ContactState
{
    /// <summary>Connected and usable.</summary>
    Usable,

    /// <summary>Samples are missing.</summary>
    Missing,

    /// <summary>The converter is at its end.</summary>
    Saturated,

    /// <summary>The signal does not move at all.</summary>
    Flat,

    /// <summary>The contact has lifted off the skin.</summary>
    Lifted,

    /// <summary>Connected, but motion drowns the muscle.</summary>
    Moving,
}

/// <summary>What is said of a channel altogether.</summary>
public enum ContactVerdict
{
    /// <summary>Usable nearly all of the time.</summary>
    Connected,

    /// <summary>Usable most of the time.</summary>
    Loose,

    /// <summary>Not usable, or never connected.</summary>
    NotConnected,
}

/// <summary>A stretch of time in one state.</summary>
/// <param name="StartSeconds">From [s].</param>
/// <param name="EndSeconds">To [s].</param>
/// <param name="State">State.</param>
public readonly record struct Stretch(double StartSeconds, double EndSeconds, ContactState State);

/// <summary>Share of time usable during something.</summary>
/// <param name="Gesture">Gesture.</param>
/// <param name="Meanwhile">What else was going on; empty = nothing said.</param>
/// <param name="Seconds">How long it was recorded [s].</param>
/// <param name="UsableShare">Share usable, 0 to 1.</param>
public readonly record struct UsableDuring(string Gesture, string Meanwhile, double Seconds, double UsableShare);

/// <summary>How a channel is connected.</summary>
public sealed record ContactReading
{
    /// <summary>Name of the channel.</summary>
    public required string Name { get; init; }

    /// <summary>Raw signal or envelope.</summary>
    public required SignalKind Kind { get; init; }

    /// <summary>Length of a window [s].</summary>
    public required double WindowSeconds { get; init; }

    /// <summary>State of each window.</summary>
    public required IReadOnlyList<ContactState> States { get; init; }

    /// <summary>Root mean square from 20 to 450 Hz in the quietest tenth of usable windows, without hum [unit]; NaN = an envelope cannot show it.</summary>
    public required double NoiseFloor { get; init; }

    /// <summary>The same in the strongest twentieth of usable windows [unit].</summary>
    public required double Strongest { get; init; }

    /// <summary>Root mean square of mains hum, middle of all windows [unit].</summary>
    public required double Hum { get; init; }

    /// <summary>Root mean square below 20 Hz, middle of all windows [unit].</summary>
    public required double Motion { get; init; }

    /// <summary>Range of the windows' means [unit].</summary>
    public required double Wander { get; init; }

    /// <summary>Times lifted off and what became of them.</summary>
    public required IReadOnlyList<Stretch> Stretches { get; init; }

    /// <summary>Usable by what was going on.</summary>
    public required IReadOnlyList<UsableDuring> During { get; init; }

    /// <summary>Share of the time usable, 0 to 1.</summary>
    public required double UsableShare { get; init; }

    /// <summary>The verdict.</summary>
    public required ContactVerdict Verdict { get; init; }

    /// <summary>What it rests on, in words.</summary>
    public required string Evidence { get; init; }
}

/// <summary>Limits by which contacts are judged; chosen by us, except where said.</summary>
public sealed record ContactLimits
{
    /// <summary>Share of time usable from which a channel counts as connected.</summary>
    public double Connected { get; init; } = 0.95;

    /// <summary>Share of time usable below which it counts as not connected.</summary>
    public double Loose { get; init; } = 0.80;

    /// <summary>How many times hum must rise over its own quiet level for a contact to count as lifted.</summary>
    public double HumRise { get; init; } = 5;

    /// <summary>How many times motion must exceed the muscle for a window to count as drowned.</summary>
    public double MotionOverMuscle { get; init; } = 2;

    /// <summary>Strongest over quietest signal below which nothing shows that a muscle is seen.</summary>
    public double LeastSwing { get; init; } = 2;
}
