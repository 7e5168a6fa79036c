namespace Graspwright.Signals.Quality;

/// <summary>Orders and means of lists.</summary>
public static class Statistics
{
    /// <summary>A quantile, straight between neighbours of the sorted list.</summary>
    /// <param name="values">Values; not changed. NaN are left out.</param>
    /// <param name="share">0 = least, 1 = greatest.</param>
    /// <returns>NaN without values.</returns>
    public static double Quantile(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Where(v => !double.IsNaN(v))];
        if (sorted.Length == 0)
        {
            return double.NaN;
        }

        Array.Sort(sorted);
        double at = share * (sorted.Length - 1);
        int below = (int)at;
        return below + 1 < sorted.Length ? sorted[below] + (at - below) * (sorted[below + 1] - sorted[below]) : sorted[^1];
    }

    /// <summary>The middle of a list.</summary>
    /// <param name="values">Values.</param>
    public static double Median(IEnumerable<double> values) => Quantile(values, 0.5);

    /// <summary>A 95 % interval for a share of successes, Wilson's.</summary>
    /// <remarks><source key="wilson-1927">E. B. Wilson 1927, <i>Probable inference, the law of succession, and statistical inference</i>.</source></remarks>
    /// <param name="share">Share seen, 0 to 1.</param>
    /// <param name="trials">Independent trials, above 0; need not be whole.</param>
    public static (double Low, double High) Interval(double share, double trials)
    {
        const double z = 1.959963984540054;
        double n = trials, middle = (share + z * z / (2 * n)) / (1 + z * z / n);
        double half = z / (1 + z * z / n) * Math.Sqrt(share * (1 - share) / n + z * z / (4 * n * n));
        return (Math.Max(0, middle - half), Math.Min(1, middle + half));
    }
}
