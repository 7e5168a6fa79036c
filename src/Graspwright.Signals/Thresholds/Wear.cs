using Graspwright.Signals.Quality;

namespace Graspwright.Signals.Thresholds;

/// <summary>False activations over hours of wear.</summary>
/// <param name="Hours">Hours worn.</param>
/// <param name="Activations">Activations that nobody wanted.</param>
/// <param name="PerHour">Activations an hour as seen.</param>
/// <param name="AtMostPerHour">Upper end of the one-sided 95 % interval: with none seen, 3 ÷ hours.</param>
public readonly record struct FalseActivations(double Hours, long Activations, double PerHour, double AtMostPerHour);

/// <summary>How a channel moves over a day.</summary>
/// <param name="RestPerHour">Change of the resting level, as a share of it an hour.</param>
/// <param name="HoursToThreshold">Hours until the resting level at that rate meets the upper level; infinite = never.</param>
public readonly record struct Drift(double RestPerHour, double HoursToThreshold);

/// <summary>What only hours of wear can tell.</summary>
public static class Wear
{
    /// <summary>Counts of activations in an envelope of wear in which none was wanted.</summary>
    /// <param name="envelope">Envelope.</param>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    /// <param name="settings">Settings.</param>
    public static long Count(ReadOnlySpan<float> envelope, double rateHertz, SwitchSettings settings)
    {
        Switch at = new(settings, rateHertz);
        foreach (float v in envelope)
        {
            at.Step(v);
        }

        return at.Activations;
    }

    /// <summary>What may be claimed after so many hours.</summary>
    /// <remarks>
    /// <source key="hanley-1983">J. A. Hanley and A. Lippman-Hand 1983, <i>If nothing goes wrong, is everything all right?</i>, JAMA 249:1743 (from memory):
    /// none seen in T hours leaves fewer than 3/T.</source> Otherwise the exact upper end for a Poisson count.
    /// </remarks>
    /// <param name="hours">Hours worn, above 0.</param>
    /// <param name="activations">Activations that nobody wanted.</param>
    /// <exception cref="ArgumentOutOfRangeException">No time was worn.</exception>
    public static FalseActivations Claim(double hours, long activations)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hours);
        return new(hours, activations, activations / hours, (activations == 0 ? 3 : UpperCount(activations)) / hours);
    }

    /// <summary>Mean at which a Poisson count is that small or smaller with a probability of 5 %.</summary>
    /// <param name="count">Count seen.</param>
    public static double UpperCount(long count)
    {
        double low = count, high = count + 10 + 5 * Math.Sqrt(count + 1.0);
        for (int i = 0; i < 200 && high - low > 1e-12 * high; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = AtMost(count, middle) > 0.05 ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    /// <summary>Drift of the resting level: the middle of the slopes between all pairs of minutes (Theil and Sen).</summary>
    /// <remarks><source key="theil-1950">H. Theil 1950, P. K. Sen 1968: the median of pairwise slopes.</source></remarks>
    /// <param name="envelope">Envelope of wear.</param>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    /// <param name="on">Upper level [unit].</param>
    /// <returns><see langword="null"/> with less than ten minutes.</returns>
    public static Drift? Over(ReadOnlySpan<float> envelope, double rateHertz, double on)
    {
        int minute = (int)(60 * rateHertz), minutes = envelope.Length / Math.Max(1, minute);
        if (minutes < 10)
        {
            return null;
        }

        const int most = 240, samples = 6000;
        int step = Math.Max(1, minutes / most), apart = Math.Max(1, minute / samples); // a smoothed envelope says no more at closer steps
        List<(double Hour, double Level)> rest = [];
        for (int m = 0; m < minutes; m += step)
        {
            rest.Add((m / 60.0, Middle(envelope.Slice(m * minute, minute), apart)));
        }

        List<double> slopes = [];
        for (int i = 0; i < rest.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                slopes.Add((rest[i].Level - rest[j].Level) / (rest[i].Hour - rest[j].Hour));
            }
        }

        double slope = Statistics.Median(slopes), level = Statistics.Median(rest.Select(r => r.Level)), last = level + slope * rest[^1].Hour / 2;
        return new(level > 0 ? slope / level : 0, slope > 0 ? Math.Max(0, (on - last) / slope) : double.PositiveInfinity);
    }

    private static double Middle(ReadOnlySpan<float> minute, int apart)
    {
        double[] some = new double[(minute.Length + apart - 1) / apart];
        for (int i = 0; i < some.Length; i++)
        {
            some[i] = minute[i * apart];
        }

        return Statistics.Median(some);
    }

    private static double AtMost(long count, double mean)
    {
        double log = -mean, sum = 0;
        for (long k = 0; k <= count; k++)
        {
            log += k > 0 ? Math.Log(mean / k) : 0;
            sum += Math.Exp(log);
        }

        return sum;
    }
}
