namespace Graspwright.Workshop.Measuring;

/// <summary>A likely slip in units.</summary>
/// <param name="Words">What was probably done.</param>
/// <param name="Fix">What to write instead.</param>
/// <param name="Factor">By what the moments would change.</param>
public sealed record UnitSlip(string Words, string Fix, double Factor);

/// <summary>Whether measured moments can be those of a wrist, or a unit was mistaken.</summary>
/// <remarks>
/// The greatest moment of a direction is held against the published population on a logarithmic scale. It is doubted only
/// where it lies far outside and one of the usual slips brings it inside; a weak wrist that no slip explains is believed.
/// </remarks>
/// <source key="delp-1996">Ten men: flexion 12.2 N·m (SD 3.7), extension 7.1 N·m (SD 2.1).</source>
/// <source key="wrist-isokinetic-2025">Women 64.1 % of men.</source>
public static class Plausibility
{
    /// <summary>Women's moment as a share of men's.</summary>
    public const double WomenShare = 0.641;

    /// <summary>Deviation of the logarithm over both sexes: 30 % within a sex and the difference between them.</summary>
    public const double LogDeviation = 0.37;

    private const double Doubtful = 2.5;
    private const double Likely = 2;

    private static readonly UnitSlip[] Slips =
    [
        new("the scale was read in kilograms and written as newtons", "write kg in the column 'unit'", 9.80665),
        new("newtons were written as kilograms", "write N in the column 'unit'", 1 / 9.80665),
        new("the scale was read in pounds and written as newtons", "write lb in the column 'unit'", 4.4482216152605),
        new("the lever was read in centimetres and written as millimetres", "write cm in the column 'lever_unit'", 10),
        new("the lever was read in millimetres and written as centimetres", "write mm in the column 'lever_unit'", 0.1),
        new("the lever was read in inches and written as millimetres", "write in in the column 'lever_unit'", 25.4),
        new("the lever was read in millimetres and written as inches", "write mm in the column 'lever_unit'", 1 / 25.4),
        new("the lever was read in millimetres and written as metres", "write mm in the column 'lever_unit'", 0.001),
        new("the lever was read in metres and written as millimetres", "write m in the column 'lever_unit'", 1000),
    ];

    /// <summary>Middle of the population's greatest moment [N·m]: the geometric mean of men and women.</summary>
    /// <param name="direction">Flexion or extension.</param>
    public static double Middle(Measurement direction) => (direction == Measurement.Flexion ? 12.2 : 7.1) * Math.Sqrt(WomenShare);

    /// <summary>How far a greatest moment lies from the population, in standard deviations of its logarithm.</summary>
    /// <param name="direction">Flexion or extension.</param>
    /// <param name="moment">Greatest moment [N·m], above 0.</param>
    public static double Deviations(Measurement direction, double moment) => Math.Log(moment / Middle(direction)) / LogDeviation;

    /// <summary>The slips in units that would explain a greatest moment; none where it is plausible as it stands or nothing explains it.</summary>
    /// <param name="direction">Flexion or extension.</param>
    /// <param name="moment">Greatest moment [N·m].</param>
    public static IReadOnlyList<UnitSlip> Explain(Measurement direction, double moment) =>
        !(moment > 0) || Math.Abs(Deviations(direction, moment)) <= Doubtful ? []
        : [.. Slips.Where(s => Math.Abs(Deviations(direction, moment * s.Factor)) <= Likely).OrderBy(s => Math.Abs(Deviations(direction, moment * s.Factor)))];
}
