namespace Graspwright.Mechanics.Effort;

/// <summary>A kind of grip that comes back through the day.</summary>
/// <param name="Share">Effort in the grip as a share of the wrist's capacity there, 0 or more.</param>
/// <param name="Times">How often a day.</param>
/// <param name="HoldSeconds">How long the wrist holds on [s]; 0 where a lock holds.</param>
/// <param name="CloseSeconds">How long closing takes [s]; the effort rises over it, so half of it counts at the mean.</param>
public readonly record struct GripLoad(double Share, double Times, double HoldSeconds, double CloseSeconds);

/// <summary>What a day of grips asks of the wrist.</summary>
/// <param name="MeanShare">Effort averaged over the hours at work, rests included, as a share of capacity.</param>
/// <param name="DutyShare">Share of the time under load.</param>
/// <param name="PeakShare">Greatest effort of any grip.</param>
/// <param name="StaticShare">Effort exceeded for nine tenths of the time; 0 where more than a tenth of it is rest.</param>
/// <param name="AcceptableShare">Greatest effort acceptable at this duty cycle, as a share of capacity.</param>
public readonly record struct DayLoadResult(double MeanShare, double DutyShare, double PeakShare, double StaticShare, double AcceptableShare);

/// <summary>Load of a working day on the wrist, and the limits published for such loads.</summary>
/// <remarks>The limits come from whole arms at work; for a wrist that drives a hand there are none of its own.</remarks>
public static class DayLoad
{
    /// <summary>Mean load that may be borne all day, lower end of the published limit.</summary>
    /// <source key="jonsson-levels">Mean at most 10 to 14 %, seen quoted.</source>
    public const double MeanLow = 0.10;

    /// <summary>Mean load, upper end of the published limit.</summary>
    public const double MeanHigh = 0.14;

    /// <summary>Mean load of intermittent grips, another published limit.</summary>
    /// <source key="bystrom-1994">Below 17 %, seen quoted.</source>
    public const double MeanOfGrips = 0.17;

    /// <summary>Peak load, lower end of the published limit.</summary>
    /// <source key="jonsson-levels">Peak at most 50 to 70 %, seen quoted.</source>
    public const double PeakLow = 0.50;

    /// <summary>Peak load, upper end of the published limit.</summary>
    public const double PeakHigh = 0.70;

    /// <summary>Load that never lets up, lower end of the published limit.</summary>
    /// <source key="jonsson-levels">Static at most 2 to 5 %, seen quoted.</source>
    public const double StaticLow = 0.02;

    /// <summary>Load that never lets up, upper end of the published limit.</summary>
    public const double StaticHigh = 0.05;

    /// <summary>Root mean square error of the acceptable effort, as a share of capacity.</summary>
    /// <source key="potvin-2012">7.05 % of maximum, seen.</source>
    public const double AcceptableError = 0.0705;

    private const double OneSecondOfEightHours = 1.0 / 28800;

    /// <summary>Greatest effort acceptable in repeated work, 1 − (DC − 1/28800)^0.24.</summary>
    /// <param name="duty">Share of the time under load, 0 to 1.</param>
    /// <returns>Share of capacity; 1 for a single second in a day or less.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is not from 0 to 1.</exception>
    /// <source key="potvin-2012">Equation from memory; its error of 7 % of capacity seen.</source>
    public static double Acceptable(double duty) => duty is >= 0 and <= 1
        ? 1 - Math.Pow(Math.Max(0, duty - OneSecondOfEightHours), 0.24)
        : throw new ArgumentOutOfRangeException(nameof(duty), duty, "A share of the time is from 0 to 1.");

    /// <summary>Sums a day up.</summary>
    /// <param name="grips">Kinds of grip.</param>
    /// <param name="seconds">Time at work [s], above 0.</param>
    /// <returns>The load; duty, mean and static share are NaN where the grips take longer than the day.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above 0.</exception>
    public static DayLoadResult Of(IReadOnlyList<GripLoad> grips, double seconds)
    {
        ArgumentNullException.ThrowIfNull(grips);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(seconds);
        double loaded = 0, sum = 0, peak = 0;
        foreach (GripLoad g in grips)
        {
            loaded += g.Times * (g.HoldSeconds + g.CloseSeconds);
            sum += g.Times * g.Share * (g.HoldSeconds + g.CloseSeconds / 2);
            peak = g.Times > 0 ? Math.Max(peak, g.Share) : peak;
        }

        double duty = loaded / seconds;
        return duty > 1
            ? new(double.NaN, double.NaN, peak, double.NaN, double.NaN)
            : new(sum / seconds, duty, peak, Static(grips, seconds), Acceptable(duty));
    }

    // The effort below which a tenth of the time lies; closing counts at half of its effort.
    private static double Static(IReadOnlyList<GripLoad> grips, double seconds)
    {
        (double Share, double Seconds)[] parts =
            [.. grips.SelectMany(g => (IEnumerable<(double, double)>)[(g.Share, g.Times * g.HoldSeconds), (g.Share / 2, g.Times * g.CloseSeconds)]).OrderBy(p => p.Item1)];
        double below = seconds - parts.Sum(p => p.Seconds);
        foreach ((double share, double time) in parts)
        {
            if (below >= 0.1 * seconds)
            {
                return 0;
            }

            below += time;
            if (below >= 0.1 * seconds)
            {
                return share;
            }
        }

        return 0;
    }
}
