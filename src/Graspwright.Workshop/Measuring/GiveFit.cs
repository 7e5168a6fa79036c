using Graspwright.Hand;

namespace Graspwright.Workshop.Measuring;

/// <summary>Stiffness of the cuff from dial readings with the fingers blocked.</summary>
/// <param name="Total">Moment per angle of everything between the joint and the blocked fingers [N·m/rad]: slope of the straight line through the loading readings.</param>
/// <param name="TotalDeviation">Standard deviation of that slope [N·m/rad]; NaN from two readings.</param>
/// <param name="SeatRadians">Angle at which the line meets no moment: what the cuff takes up before it bears [rad].</param>
/// <param name="Shell">Stiffness of the shell from the hand file [N·m/rad]; infinite = rigid.</param>
/// <param name="Cuff">Stiffness of the cuff alone [N·m/rad]; NaN where the shell alone would give more than was read.</param>
/// <param name="Hysteresis">Share h of the give that comes back late, from the unloading readings by the hand file's own law τ/k·(1 + 3h·(1 − τ/τ_end)); NaN from fewer than two.</param>
/// <param name="Points">Readings of the line: angle [rad], moment [N·m].</param>
public sealed record GiveFit(double Total, double TotalDeviation, double SeatRadians, double Shell, double Cuff, double Hysteresis, IReadOnlyList<(double Radians, double Moment)> Points)
{
    /// <summary>Fits the line; <see langword="null"/> from fewer than three loading readings or where the angle does not grow with the moment.</summary>
    /// <param name="readings">Readings of the sheet.</param>
    /// <param name="give">Give of the hand file.</param>
    public static GiveFit? Of(IReadOnlyList<Reading> readings, Give give)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(give);
        (double Radians, double Moment)[] up = [.. Line(readings, "loading")], down = [.. Line(readings, "unloading")];
        if (up.Length < 3)
        {
            return null;
        }

        double meanAngle = up.Average(p => p.Radians), meanMoment = up.Average(p => p.Moment);
        double spread = up.Sum(p => Math.Pow(p.Moment - meanMoment, 2)), together = up.Sum(p => (p.Radians - meanAngle) * (p.Moment - meanMoment));
        if (!(together > 0))
        {
            return null;
        }

        // The dial is the rougher of the two: the line is angle against moment, compliance its slope.
        double compliance = together / spread, seat = meanAngle - compliance * meanMoment;
        double left = up.Sum(p => Math.Pow(p.Radians - seat - compliance * p.Moment, 2));
        double deviation = up.Length > 2 ? Math.Sqrt(left / (up.Length - 2) / spread) : double.NaN;
        double total = 1 / compliance, cuffCompliance = compliance - (double.IsInfinity(give.ShellStiffness) ? 0 : 1 / give.ShellStiffness);
        return new(total, deviation * total * total, seat, give.ShellStiffness, cuffCompliance > 0 ? 1 / cuffCompliance : double.NaN, Late(down, compliance, seat), up);
    }

    private static IEnumerable<(double Radians, double Moment)> Line(IReadOnlyList<Reading> readings, string when) =>
        readings.Where(r => r.Measurement == Measurement.Give && (r.When == when || (when == "loading" && r.When.Length == 0))).Select(r => (r.GiveRadians, r.Moment));

    // On opening the give is τ/k·(1 + 3h·(1 − τ/τ_end)): h from each reading between the ends, by least squares.
    private static double Late((double Radians, double Moment)[] down, double compliance, double seat)
    {
        if (down.Length < 2)
        {
            return double.NaN;
        }

        double end = down.Max(p => p.Moment), above = 0, below = 0;
        foreach ((double radians, double moment) in down)
        {
            double lever = 3 * compliance * moment * (1 - moment / end), late = radians - seat - compliance * moment;
            above += lever * late;
            below += lever * lever;
        }

        return below > 0 ? Math.Clamp(above / below, 0, 1.0 / 3) : double.NaN;
    }
}
