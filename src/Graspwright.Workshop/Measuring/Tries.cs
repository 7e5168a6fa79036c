namespace Graspwright.Workshop.Measuring;

/// <summary>Tries at one wrist angle.</summary>
/// <param name="AngleDegrees">Anatomical wrist angle [deg], flexion positive.</param>
/// <param name="Moments">Moment of each try [N·m], at least one, in their order.</param>
/// <param name="Pulls">Pull of each try [N].</param>
/// <param name="Levers">Lever of each try [m].</param>
public sealed record AngleTries(double AngleDegrees, IReadOnlyList<double> Moments, IReadOnlyList<double> Pulls, IReadOnlyList<double> Levers)
{
    /// <summary>Mean [N·m].</summary>
    public double Mean => Moments.Average();

    /// <summary>Greatest less least [N·m].</summary>
    public double Range => Moments.Max() - Moments.Min();

    /// <summary>Standard deviation [N·m]; NaN from one try.</summary>
    public double Deviation => Moments.Count < 2 ? double.NaN : Math.Sqrt(Moments.Sum(m => (m - Mean) * (m - Mean)) / (Moments.Count - 1));
}

/// <summary>How far tries scatter, which of them disagree, and how sure the means are.</summary>
/// <remarks>
/// The scatter of the sheet is taken from the median of the relative ranges, which one bad angle cannot move. Tries at an
/// angle disagree when their range is above the critical range: 2.8, 3.3, 3.6, 3.9 times that scatter for 2, 3, 4, 5 tries
/// (exceeded by chance once in twenty). Angles that disagree are shown and left out; the intervals of the means come
/// from the pooled deviation of the others, which is never taken below that scatter.
/// </remarks>
/// <source key="iso-5725-6">Critical range of several results, 95 %.</source>
public sealed class TryStatistics
{
    /// <summary>Scatter that is assumed where too few angles have several tries to tell, as a share of the mean.</summary>
    public const double AssumedScatter = 0.05;

    /// <summary>Least scatter: a scale is read to a division, and nobody pulls alike to 2 %.</summary>
    public const double LeastScatter = 0.02;

    /// <summary>Scatter above which the whole sheet is doubted.</summary>
    public const double WideScatter = 0.10;

    // Where the wrist gives little, tries scatter as they do at this share of its greatest moment: a scale has divisions.
    private const double FloorShare = 0.2;
    private const int FewestAngles = 3;
    private static readonly double[] Critical = [0, 0, 2.8, 3.3, 3.6, 3.9];
    private static readonly double[] MedianRange = [0, 0, 0.954, 1.588, 1.978, 2.257];
    private readonly double floor;

    /// <summary>Judges the tries of one direction.</summary>
    /// <param name="angles">Tries angle by angle.</param>
    public TryStatistics(IReadOnlyList<AngleTries> angles)
    {
        floor = FloorShare * angles.Select(a => a.Mean).DefaultIfEmpty(0).Max();
        double[] scatters = [.. angles.Where(a => a.Moments.Count > 1 && a.Mean > 0).Select(a => a.Range / a.Mean / MedianRange[Count(a)]).Order()];
        IsAssumed = scatters.Length < FewestAngles;
        Scatter = IsAssumed ? AssumedScatter : Math.Max(LeastScatter, Median(scatters));
        AngleTries[] agreeing = [.. angles.Where(a => a.Moments.Count > 1 && Agree(a) && a.Mean > 0)];
        Freedom = agreeing.Sum(a => a.Moments.Count - 1);
        double pooled = Freedom > 0 ? Math.Sqrt(agreeing.Sum(a => (a.Moments.Count - 1) * Math.Pow(a.Deviation / a.Mean, 2)) / Freedom) : double.NaN;
        Pooled = IsAssumed ? pooled : Math.Max(pooled, Scatter); // leaving angles out must not make the others look surer
    }

    /// <summary>Scatter of one try about its mean, as a share of the mean.</summary>
    public double Scatter { get; }

    /// <summary>Whether the scatter was assumed, for want of tries.</summary>
    public bool IsAssumed { get; }

    /// <summary>Pooled relative standard deviation of the tries that agree, no less than the scatter where that is known; NaN without any.</summary>
    public double Pooled { get; }

    /// <summary>Degrees of freedom of it.</summary>
    public int Freedom { get; }

    /// <summary>Range above which the tries of an angle disagree [N·m].</summary>
    /// <param name="angle">The tries.</param>
    public double CriticalRange(AngleTries angle) => angle.Moments.Count < 2 ? double.PositiveInfinity : Critical[Count(angle)] * Scatter * Math.Max(angle.Mean, floor);

    /// <summary>Whether the tries of an angle agree; a single try does.</summary>
    /// <param name="angle">The tries.</param>
    public bool Agree(AngleTries angle) => angle.Range <= CriticalRange(angle);

    /// <summary>Half width of the 95 % interval of an angle's mean [N·m]; NaN where nothing tells it.</summary>
    /// <param name="angle">The tries.</param>
    public double HalfWidth(AngleTries angle) =>
        Freedom == 0 ? double.NaN : StudentT.Quantile975(Freedom) * Pooled * angle.Mean / Math.Sqrt(angle.Moments.Count);

    private static int Count(AngleTries angle) => Math.Min(angle.Moments.Count, 5);

    private static double Median(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}

/// <summary>Student's t.</summary>
public static class StudentT
{
    private static readonly double[] Table =
    [
        12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.160, 2.145, 2.131,
        2.120, 2.110, 2.101, 2.093, 2.086, 2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042,
    ];

    /// <summary>The value that t exceeds once in forty.</summary>
    /// <param name="freedom">Degrees of freedom, at least 1.</param>
    /// <returns>The tabled value; above 30 degrees of freedom 1.960 + 2.4/freedom, within 0.003 of it.</returns>
    public static double Quantile975(int freedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(freedom, 1);
        return freedom <= Table.Length ? Table[freedom - 1] : 1.960 + 2.4 / freedom;
    }
}
