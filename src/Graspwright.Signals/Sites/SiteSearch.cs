namespace Graspwright.Signals.Sites;

/// <summary>Finds the set of sites that keeps the nearest two gestures farthest apart.</summary>
/// <remarks>
/// Sites of a map are recorded one after another, so nothing is known of how they scatter together; their squared
/// distances add. A part set can reach at most its own sum and the greatest of what is left, gesture pair by gesture
/// pair: where even that is no better than a set already found, the branch is cut. The result is the best there is.
/// </remarks>
public sealed class SiteSearch
{
    private readonly double[][] _squared;
    private readonly (int First, int Second)[] _pairs;
    private readonly SiteLimits _limits;
    private readonly bool[,] _clear;
    private readonly double[][,] _left;
    private readonly int[] _order, _now;
    private int[] _best = [];
    private double _bestWorst = double.NegativeInfinity;
    private long _looked;

    private SiteSearch(IReadOnlyList<Site> sites, IReadOnlyList<SiteReading> readings, SiteLimits limits)
    {
        _limits = limits;
        int gestures = readings[0].Mean.Length;
        _pairs = [.. from g in Enumerable.Range(0, gestures) from h in Enumerable.Range(0, g) select (h, g)];
        int[] allowed = [.. Enumerable.Range(0, sites.Count).Where(i => Allowed(sites[i], limits))];
        double[][] all = [.. readings.Select(r => _pairs.Select(p => r.Squared(p.First, p.Second)).ToArray())];
        _order = [.. allowed.OrderByDescending(i => all[i].Min()).ThenByDescending(i => all[i].Sum())];
        _squared = [.. _order.Select(i => all[i])];
        _now = new int[limits.Count];
        _clear = new bool[_order.Length, _order.Length];
        for (int i = 0; i < _order.Length; i++)
        {
            for (int j = 0; j < _order.Length; j++)
            {
                _clear[i, j] = sites[_order[i]].DistanceTo(sites[_order[j]]) >= limits.LeastDistanceMm;
            }
        }

        _left = Bounds();
    }

    /// <summary>Whether a pair keeps off every sore place.</summary>
    /// <param name="site">The pair.</param>
    /// <param name="limits">Limits.</param>
    public static bool Allowed(Site site, SiteLimits limits)
    {
        ArgumentNullException.ThrowIfNull(site);
        ArgumentNullException.ThrowIfNull(limits);
        (double sin, double cos) = Math.SinCos(site.DirectionDegrees * Math.PI / 180);
        foreach (SorePlace sore in limits.Sore)
        {
            foreach (double end in (ReadOnlySpan<double>)[-0.5, 0, 0.5])
            {
                if (double.Hypot(site.XMm + end * site.SpacingMm * cos - sore.XMm, site.YMm + end * site.SpacingMm * sin - sore.YMm) < sore.RadiusMm)
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Separation of a set.</summary>
    /// <param name="readings">Readings of its sites.</param>
    public static (double Separation, int First, int Second) Of(IReadOnlyList<SiteReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        (double Separation, int First, int Second) worst = (double.PositiveInfinity, 0, 0);
        int gestures = readings[0].Mean.Length;
        for (int g = 0; g < gestures; g++)
        {
            for (int h = 0; h < g; h++)
            {
                double d = Math.Sqrt(readings.Sum(r => r.Squared(h, g)));
                worst = d < worst.Separation ? (d, h, g) : worst;
            }
        }

        return worst;
    }

    /// <summary>Searches.</summary>
    /// <param name="sites">Candidate pairs.</param>
    /// <param name="readings">What each gives, in the same order.</param>
    /// <param name="limits">Limits.</param>
    /// <returns><see langword="null"/> if no set keeps within the limits.</returns>
    public static SiteSet? Find(IReadOnlyList<Site> sites, IReadOnlyList<SiteReading> readings, SiteLimits limits)
    {
        ArgumentNullException.ThrowIfNull(sites);
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(limits);
        if (sites.Count == 0 || limits.Count > sites.Count)
        {
            return null;
        }

        SiteSearch search = new(sites, readings, limits);
        search.Branch(0, 0, new double[search._pairs.Length]);
        if (search._best.Length == 0)
        {
            return null;
        }

        int[] chosen = [.. search._best.Select(i => search._order[i]).Order()];
        (double separation, int first, int second) = Of([.. chosen.Select(i => readings[i])]);
        return new(chosen, separation, first, second, search._looked);
    }

    private void Branch(int depth, int from, double[] sum)
    {
        _looked++;
        if (depth == _limits.Count)
        {
            double worst = sum.Min();
            if (worst > _bestWorst)
            {
                _bestWorst = worst;
                _best = [.. _now];
            }

            return;
        }

        int need = _limits.Count - depth;
        for (int i = from; i + need <= _order.Length; i++)
        {
            if (!Hopeful(sum, i, need))
            {
                return;
            }

            if (!Clear(i, depth))
            {
                continue;
            }

            _now[depth] = i;
            double[] with = new double[sum.Length];
            for (int p = 0; p < sum.Length; p++)
            {
                with[p] = sum[p] + _squared[i][p];
            }

            Branch(depth + 1, i + 1, with);
        }
    }

    private bool Hopeful(double[] sum, int from, int need)
    {
        for (int p = 0; p < sum.Length; p++)
        {
            if (sum[p] + _left[p][from, need] <= _bestWorst)
            {
                return false;
            }
        }

        return true;
    }

    private bool Clear(int site, int depth)
    {
        for (int d = 0; d < depth; d++)
        {
            if (!_clear[_now[d], site])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>For each pair of gestures: the sum of the so many greatest from a place in the order on.</summary>
    private double[][,] Bounds()
    {
        double[][,] left = new double[_pairs.Length][,];
        for (int p = 0; p < left.Length; p++)
        {
            left[p] = new double[_order.Length + 1, _limits.Count + 1];
            List<double> greatest = [];
            for (int from = _order.Length - 1; from >= 0; from--)
            {
                greatest.Add(_squared[from][p]);
                greatest.Sort((a, b) => b.CompareTo(a));
                for (int k = 1; k <= _limits.Count; k++)
                {
                    left[p][from, k] = greatest.Take(k).Sum();
                }
            }
        }

        return left;
    }
}
