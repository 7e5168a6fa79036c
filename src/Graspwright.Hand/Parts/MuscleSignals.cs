namespace Graspwright.Hand;

/// <summary>What the maker says about muscle signals.</summary>
public sealed record MuscleSignals
{
    /// <summary>What the amplifiers give: <c>raw</c> or <c>envelope</c>; empty = look at the recordings.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Mains frequency [1/s].</summary>
    public double MainsHertz { get; init; } = 50;

    /// <summary>Longest time from tensing to acting [s].</summary>
    public double DelayLimit { get; init; } = 0.125;

    /// <summary>Least distance between the centres of two pairs [m].</summary>
    public double LeastSpacing { get; init; } = 0.02;

    /// <summary>How many scatters two gestures must stay apart.</summary>
    public double SeparationLimit { get; init; } = 3;

    /// <summary>Kind of controller, as the key says it.</summary>
    public string Controller { get; init; } = "32 bit";

    /// <summary>Share of the controller's time for the filters.</summary>
    public double LoopShare { get; init; } = 0.5;

    /// <summary>Speed of the serial line [bit/s].</summary>
    public double LineSpeed { get; init; } = 115200;

    /// <summary>Site map; empty = none.</summary>
    public string Map { get; init; } = "";

    /// <summary>Outline of the paper pattern; empty = none.</summary>
    public string Pattern { get; init; } = "";

    /// <summary>Channels.</summary>
    public IReadOnlyList<SignalChannel> Channels { get; init; } = [];

    /// <summary>Recordings.</summary>
    public IReadOnlyList<SignalRecording> Recordings { get; init; } = [];

    /// <summary>Places to keep off.</summary>
    public IReadOnlyList<SoreSkin> Sore { get; init; } = [];

    /// <summary>Contact stud; <see langword="null"/> = not given.</summary>
    public ContactStud? Stud { get; init; }
}

/// <summary>A channel.</summary>
/// <param name="Name">Its name in the recordings.</param>
/// <param name="Gesture">Gesture that it is to tell.</param>
/// <param name="Locks">Lock pattern that it sets; empty = not said.</param>
/// <param name="Site">Its place in the site map; empty = not said.</param>
public sealed record SignalChannel(string Name, string Gesture, string Locks, string Site);

/// <summary>A recording.</summary>
/// <param name="Name">Its name.</param>
/// <param name="File">File, relative to the hand file.</param>
/// <param name="IsWear">Whether it is hours of wear in which no lock was wanted.</param>
/// <param name="Donning">Which time the contacts were put on.</param>
/// <param name="RateHertz">Samples a second [1/s]; <see langword="null"/> = the file says.</param>
/// <param name="Cues">List of cues; empty = none.</param>
public sealed record SignalRecording(string Name, string File, bool IsWear, double Donning, double? RateHertz, string Cues);

/// <summary>A round place on the skin to keep off.</summary>
/// <param name="Name">What is there.</param>
/// <param name="Place">Centre on the pattern [m].</param>
/// <param name="Radius">Radius [m].</param>
public sealed record SoreSkin(string Name, Point Place, double Radius);

/// <summary>A contact stud; lengths in m, force in N, tear strength in N/m.</summary>
public sealed record ContactStud
{
    /// <summary>What touches the skin.</summary>
    public required string Metal { get; init; }

    /// <summary>Diameter of the dome's foot [m].</summary>
    public required double DomeDiameter { get; init; }

    /// <summary>Height of the dome above the liner [m].</summary>
    public required double DomeHeight { get; init; }

    /// <summary>Diameter of the flange [m].</summary>
    public required double FlangeDiameter { get; init; }

    /// <summary>Hole cut in the liner [m].</summary>
    public required double HoleDiameter { get; init; }

    /// <summary>Thickness of the liner [m].</summary>
    public required double LinerThickness { get; init; }

    /// <summary>Squeeze of the liner, as a share.</summary>
    public required double Squeeze { get; init; }

    /// <summary>Shore A hardness.</summary>
    public required double ShoreHardness { get; init; }

    /// <summary>Tear strength [N/m].</summary>
    public required double TearStrength { get; init; }

    /// <summary>Stretch at break, as a share.</summary>
    public required double StretchAtBreak { get; init; }

    /// <summary>Greatest pull on a stud [N].</summary>
    public required double PullOut { get; init; }

    /// <summary>Movement between liner and shell [m].</summary>
    public required double ShellMovement { get; init; }

    /// <summary>Diameter of the wire [m].</summary>
    public required double WireDiameter { get; init; }

    /// <summary>Free length of the wire [m].</summary>
    public required double WireLength { get; init; }
}
