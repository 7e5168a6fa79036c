namespace Graspwright.Hand;

/// <summary>A day of wear: how often the hand grips and how it is knocked.</summary>
/// <remarks>No published count of grips or knocks a day was found; every default here is an assumption with its reason in docs/use.md.</remarks>
public sealed record Use
{
    /// <summary>Grips on a day of wear, those of all jobs included, 0 or more.</summary>
    public double GripsPerDay { get; init; } = 600;

    /// <summary>How long a grip is held, on average [s], 0 or more.</summary>
    public double HoldSeconds { get; init; } = 4;

    /// <summary>Share of grips at half the all-day effort.</summary>
    public double GentleShare { get; init; } = 0.65;

    /// <summary>Share of grips at the all-day effort.</summary>
    public double FirmShare { get; init; } = 0.30;

    /// <summary>Share of grips at the squeeze effort.</summary>
    public double HardShare { get; init; } = 0.05;

    /// <summary>Hours the hand is worn on a day of wear [s].</summary>
    public double WornSeconds { get; init; } = 8 * 3600;

    /// <summary>Of these, out of doors [s].</summary>
    public double OutdoorSeconds { get; init; } = 1.5 * 3600;

    /// <summary>Share of a knock's energy that bends the finger; the rest goes into arm and thing.</summary>
    public double ReachingShare { get; init; } = 0.5;

    /// <summary>How far counts may lie off, one standard deviation of the logarithm.</summary>
    public double CountSpread { get; init; } = 0.35;

    /// <summary>How far the energy of knocks may lie off, one standard deviation of the logarithm.</summary>
    public double EnergySpread { get; init; } = 0.40;

    /// <summary>How far loads of grips may lie off, one standard deviation of the logarithm.</summary>
    public double LoadSpread { get; init; } = 0.20;

    /// <summary>Classes of sideways knocks.</summary>
    public IReadOnlyList<Knock> Knocks { get; init; } = DefaultKnocks;

    /// <summary>The classes that stand in where the file gives none.</summary>
    public static IReadOnlyList<Knock> DefaultKnocks { get; } =
    [
        new("brush", 0.05, 20), new("bump", 0.25, 3), new("knock", 1.0, 0.2), new("blow", 2.5, 0.02),
    ];

    /// <summary>Share of the knocks that each finger takes, in the order of the fingers; sums to 1.</summary>
    public IReadOnlyList<double> Exposure { get; init; } = [];

    /// <summary>Grips beside the jobs of <see cref="HandModel.Jobs"/> that say which thing is gripped how; <see cref="HandModel.CountedGrips"/> has both.</summary>
    public IReadOnlyList<DayJob> Jobs { get; init; } = [];

    /// <summary>A recorded history of the wrist's moment; <see langword="null"/> = none.</summary>
    public UseHistory? History { get; init; }
}

/// <summary>A class of sideways knocks at a fingertip.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Joules">Energy of the whole knock [J], above 0.</param>
/// <param name="PerDay">Number on a day of wear over all fingers, 0 or more.</param>
public sealed record Knock(string Name, double Joules, double PerDay);

/// <summary>Effort of a grip.</summary>
public enum GripEffort
{
    /// <summary>Half the all-day effort.</summary>
    Gentle,

    /// <summary>The all-day effort.</summary>
    Firm,

    /// <summary>The squeeze effort.</summary>
    Hard,
}

/// <summary>Grips of one kind on a day.</summary>
/// <param name="Name">Their name.</param>
/// <param name="ObjectName">The thing gripped.</param>
/// <param name="Effort">How hard.</param>
/// <param name="PerDay">Grips on a day of wear, 0 or more.</param>
public sealed record DayJob(string Name, string ObjectName, GripEffort Effort, double PerDay);

/// <summary>A recorded history of the wrist's moment.</summary>
/// <param name="File">File, relative to the hand file: a column of moments [N·m] under a header.</param>
/// <param name="Days">Days of wear that it covers, above 0.</param>
/// <param name="ObjectName">The thing it was recorded on.</param>
public sealed record UseHistory(string File, double Days, string ObjectName);
