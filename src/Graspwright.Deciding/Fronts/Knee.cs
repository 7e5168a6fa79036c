namespace Graspwright.Deciding.Fronts;

/// <summary>The point of a front to try first: where giving up a little of one aim stops buying much of the others.</summary>
/// <remarks>
/// Aims are scaled by the extent of the front. The knee is the point that lies deepest below the plane through the best
/// points of the aims; where no knee is that clear (a front nearly straight, bulging the other way, or with more than two
/// aims) it is the point whose greatest loss is least.
/// </remarks>
/// <source key="das-1999">The knee as the deepest point of a front below the plane of its ends.</source>
public static class Knee
{
    /// <summary>Depth below the line of the ends, in shares of the front's extent, from which a knee is one: chosen by us.</summary>
    private const double Clear = 0.15;

    /// <summary>Index of the point.</summary>
    /// <param name="front">Aims of points of which none beats another; less is better.</param>
    /// <exception cref="ArgumentException">The front is empty.</exception>
    public static int Of(IReadOnlyList<double[]> front)
    {
        ArgumentNullException.ThrowIfNull(front);
        if (front.Count == 0)
        {
            throw new ArgumentException("A front without points has no knee.", nameof(front));
        }

        int aims = front[0].Length;
        double[] low = [.. Enumerable.Range(0, aims).Select(a => front.Min(p => p[a]))];
        double[] high = [.. Enumerable.Range(0, aims).Select(a => front.Max(p => p[a]))];
        double Scaled(int i, int a) => high[a] > low[a] ? (front[i][a] - low[a]) / (high[a] - low[a]) : 0;
        int deepest = 0, least = 0;
        double depth = double.NegativeInfinity, loss = double.PositiveInfinity;
        for (int i = 0; i < front.Count; i++)
        {
            double sum = 0, worst = 0;
            for (int a = 0; a < aims; a++)
            {
                sum += Scaled(i, a);
                worst = Math.Max(worst, Scaled(i, a));
            }

            if (1 - sum > depth)
            {
                (depth, deepest) = (1 - sum, i);
            }

            if (worst < loss)
            {
                (loss, least) = (worst, i);
            }
        }

        return aims == 2 && depth > Clear ? deepest : least;
    }
}
