namespace Graspwright.Hand;

/// <summary>A whole hand as its maker describes it, every value in SI units (m, rad, N, N·m, N/m).</summary>
/// <remarks>
/// Hand frame: origin on the wrist's flexion axis, x distal (to the fingertips), y dorsal (to the back of the
/// hand). Angles are anticlockwise from +x. The text of the file is kept apart from it.
/// </remarks>
public sealed record HandModel
{
    /// <summary>Name of the hand.</summary>
    public required string Name { get; init; }

    /// <summary>What the maker says about it; empty = nothing.</summary>
    public string Description { get; init; } = "";

    /// <summary>Which hand it replaces.</summary>
    public required Side Side { get; init; }

    /// <summary>Breadth of the hand across the knuckles [m]; places of fingers that are not given follow from it.</summary>
    public required double HandBreadth { get; init; }

    /// <summary>The wearer's wrist.</summary>
    public required Wrist Wrist { get; init; }

    /// <summary>Give of cuff and hand shell.</summary>
    public Give Give { get; init; } = new();

    /// <summary>Gimbal on the wrist axis; <see langword="null"/> = none.</summary>
    public Gimbal? Gimbal { get; init; }

    /// <summary>Line of the palm on which held things rest.</summary>
    public required PalmLine Palm { get; init; }

    /// <summary>Link from the forearm anchor to the crank.</summary>
    public required PullLink PullLink { get; init; }

    /// <summary>Bell crank.</summary>
    public required Crank Crank { get; init; }

    /// <summary>Link from the crank to the carriage.</summary>
    public required TransferLink TransferLink { get; init; }

    /// <summary>Rail of the carriage.</summary>
    public required Rail Rail { get; init; }

    /// <summary>Root of the balance tree.</summary>
    public required BalanceNode Balance { get; init; }

    /// <summary>The fingers, thumb side first.</summary>
    public required IReadOnlyList<Finger> Fingers { get; init; }

    /// <summary>Coefficients of friction.</summary>
    public Friction Friction { get; init; } = new();

    /// <summary>Named lock patterns; "all free" needs no entry.</summary>
    public IReadOnlyList<LockPattern> Locks { get; init; } = [];

    /// <summary>Things to close on.</summary>
    public IReadOnlyList<HandObject> Objects { get; init; } = [];

    /// <summary>The weight on the wrist; <see langword="null"/> where the file neither gives it nor any job.</summary>
    public HandBody? Body { get; init; }

    /// <summary>What the file says about strength, use and life.</summary>
    public HandStructure Structure { get; init; } = new();

    /// <summary>What the file says about spares and computed lives.</summary>
    public Drawer Drawer { get; init; } = new();

    /// <summary>Muscle signals; <see langword="null"/> = nothing said about them.</summary>
    public MuscleSignals? Signals { get; init; }

    /// <summary>Tolerances: how far a value may lie from what the file says.</summary>
    public IReadOnlyList<Tolerance> Tolerances { get; init; } = [];

    /// <summary>Other files of this hand.</summary>
    public IReadOnlyList<NamedFile> Files { get; init; } = [];

    /// <summary>The day's jobs.</summary>
    public IReadOnlyList<Job> Jobs { get; init; } = [];

    /// <summary>Every kind of grip whose number a day is known: the jobs that say how often, then the grips of <see cref="Use.Jobs"/> that are none of these.</summary>
    public IReadOnlyList<DayJob> CountedGrips =>
    [
        .. Jobs.Where(j => j.TimesADay > 0).Select(j => new DayJob(j.Name, j.ObjectName, j.Squeeze ? GripEffort.Hard : GripEffort.Firm, j.TimesADay!.Value)),
        .. Structure.Use.Jobs.Where(g => !Jobs.Any(j => j.TimesADay > 0 && j.Name == g.Name)),
    ];

    /// <summary>Grips a day that no job accounts for, 0 or more.</summary>
    public double UncountedGrips => Math.Max(0, Structure.Use.GripsPerDay - CountedGrips.Sum(g => g.PerDay));

    /// <summary>How far the wrist bends each way; <see langword="null"/> = not given.</summary>
    public WristRange? WristRange { get; init; }

    /// <summary>The finger pads; <see langword="null"/> where the file neither gives them nor any job.</summary>
    public Pads? Pads { get; init; }

    /// <summary>The wearer's own thumb; <see langword="null"/> where the file neither gives it nor any job.</summary>
    public Thumb? Thumb { get; init; }

    /// <summary>Lock that holds the closed hand; <see langword="null"/> = none given.</summary>
    public ClosingLock? ClosingLock { get; init; }

    /// <summary>What stands in the way of the moving parts; <see langword="null"/> = not given.</summary>
    public HandRoom? Room { get; init; }

    /// <summary>The limb by tape and vernier; <see langword="null"/> = not measured.</summary>
    public LimbForm? Form { get; init; }

    /// <summary>The liner; <see langword="null"/> = none planned.</summary>
    public Liner? Liner { get; init; }

    /// <summary>The chain of copies; <see langword="null"/> = none planned.</summary>
    public CopyPlan? Copies { get; init; }

    /// <summary>Every default that stands in for a measurement.</summary>
    public IReadOnlyList<Guess> Guesses { get; init; } = [];
}

/// <summary>Left or right.</summary>
public enum Side
{
    /// <summary>Left hand.</summary>
    Left,

    /// <summary>Right hand.</summary>
    Right,
}

/// <summary>A point or offset in the hand frame.</summary>
/// <param name="X">Distal [m].</param>
/// <param name="Y">Dorsal [m].</param>
public readonly record struct Point(double X, double Y);

/// <summary>A pin: its radius and the play round it.</summary>
/// <param name="Radius">Radius [m]; 0 = no friction there.</param>
/// <param name="Play">Diametral play when new [m].</param>
/// <param name="WornPlay">Diametral play when worn [m].</param>
public readonly record struct Pin(double Radius, double Play, double WornPlay);

/// <summary>How far a value may lie from what the file says.</summary>
/// <param name="Path">Path of the value.</param>
/// <param name="PlusMinus">Half width, in the SI unit of that value.</param>
public sealed record Tolerance(string Path, double PlusMinus);

/// <summary>Another file that belongs to this hand.</summary>
/// <param name="Key">What it is, such as <c>readings</c>.</param>
/// <param name="RelativePath">Where it is, relative to the hand file, inside its folder.</param>
public sealed record NamedFile(string Key, string RelativePath);

/// <summary>A default that stands in for a measurement.</summary>
/// <param name="Path">Path of the value.</param>
/// <param name="ValueText">The value with its unit.</param>
/// <param name="SourceKey">Key in <see cref="Source.All"/>.</param>
public sealed record Guess(string Path, string ValueText, string SourceKey)
{
    /// <summary>What the maker is told.</summary>
    public string Words => $"{Path} = {ValueText}: guessed, measure it ({Source.Find(SourceKey).Words})";
}
