namespace Graspwright.Strength.Lives;

/// <summary>What few breaks, or none, say for certain once the shape is taken as given.</summary>
public static class LowerBound
{
    /// <summary>Weibull scale that fits best at a given shape: (Σ n·t^β / r)^(1/β).</summary>
    /// <param name="records">Records whose breaks were seen.</param>
    /// <param name="shape">Shape β, above 0.</param>
    /// <returns>Infinite where nothing broke.</returns>
    public static double BestScale(IReadOnlyList<LifeRecord> records, double shape) => Scale(records, shape, Breaks(records));

    /// <summary>Lower bound of the Weibull scale at a given shape: (2·Σ n·t^β / χ²)^(1/β), χ² at 2r + 2 degrees of freedom.</summary>
    /// <param name="records">Records; spans count from their lower ends, which is on the safe side.</param>
    /// <param name="shape">Shape β, above 0.</param>
    /// <param name="confidence">Confidence, one-sided.</param>
    /// <remarks>Exact for records that stop at given times with none broken; for those with breaks on the safe side (Meeker and Escobar 1998, section 7.7; Nelson 1985 from memory).</remarks>
    public static double ScaleAtLeast(IReadOnlyList<LifeRecord> records, double shape, double confidence)
    {
        double breaks = Breaks(records);
        return Scale(records, shape, 0.5 * GammaLaw.ChiSquareQuantile(2 * breaks + 2, confidence));
    }

    /// <summary>Lower bound of the time by which a share has broken, over a range of shapes: the least of them.</summary>
    /// <param name="records">Records.</param>
    /// <param name="shapes">Least and greatest shape.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    /// <param name="confidence">Confidence, one-sided.</param>
    public static double QuantileAtLeast(IReadOnlyList<LifeRecord> records, (double Low, double High) shapes, double share, double confidence)
    {
        const int Steps = 60;
        double least = double.PositiveInfinity;
        for (int i = 0; i <= Steps; i++)
        {
            double shape = shapes.Low * Math.Pow(shapes.High / shapes.Low, (double)i / Steps);
            least = Math.Min(least, LifeLaw.Weibull(ScaleAtLeast(records, shape, confidence), shape).Quantile(share));
        }

        return least;
    }

    private static double Breaks(IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return records.Where(r => r.Broke).Sum(r => r.Count);
    }

    private static double Scale(IReadOnlyList<LifeRecord> records, double shape, double over)
    {
        double sum = 0;
        foreach (LifeRecord r in records)
        {
            sum += r.Count * Math.Pow(r.Low, shape);
        }

        return Math.Pow(sum / over, 1 / shape);
    }
}
