namespace Graspwright.Signals.Sites;

/// <summary>What a pair would give between the mapped places.</summary>
/// <remarks>
/// Through every mapped value, straight in between: sums of distances with a constant (radial basis r, exact at the
/// sites; <source key="duchon-1977">J. Duchon 1977, <i>Splines minimizing rotation-invariant semi-norms</i>, from memory</source>).
/// Beyond the mapped places nothing is known, and nothing is said.
/// </remarks>
public sealed class SiteField
{
    private readonly IReadOnlyList<Site> _sites;
    private readonly double[][] _weights;
    private readonly double _reach;

    /// <summary>A field through readings.</summary>
    /// <param name="sites">At least three sites, no two at one place.</param>
    /// <param name="readings">Their readings.</param>
    /// <exception cref="ArgumentException">Too few sites, or two at one place.</exception>
    public SiteField(IReadOnlyList<Site> sites, IReadOnlyList<SiteReading> readings)
    {
        ArgumentNullException.ThrowIfNull(sites);
        ArgumentNullException.ThrowIfNull(readings);
        if (sites.Count < 3)
        {
            throw new ArgumentException("At least three mapped places.", nameof(sites));
        }

        _sites = sites;
        int n = sites.Count, gestures = readings[0].Mean.Length;
        double[,] matrix = new double[n + 1, n + 1];
        double nearest = 0;
        for (int i = 0; i < n; i++)
        {
            double own = double.PositiveInfinity;
            for (int j = 0; j < n; j++)
            {
                matrix[i, j] = sites[i].DistanceTo(sites[j]);
                own = i != j ? Math.Min(own, matrix[i, j]) : own;
            }

            if (own == 0)
            {
                throw new ArgumentException($"Two mapped places lie at {sites[i].Name}.", nameof(sites));
            }

            matrix[i, n] = matrix[n, i] = 1;
            nearest = Math.Max(nearest, own);
        }

        _reach = nearest;
        double[][] right = [.. Enumerable.Range(0, gestures + 1).Select(g => readings.Select(r => g < gestures ? r.Mean[g] : Math.Log(r.Deviation)).Append(0).ToArray())];
        _weights = Solve(matrix, right);
    }

    /// <summary>Whether a place lies among the mapped ones: inside their hull, and no farther from the nearest than neighbours are apart.</summary>
    /// <param name="xMm">Place [mm].</param>
    /// <param name="yMm">Place [mm].</param>
    public bool Knows(double xMm, double yMm)
    {
        double near = _sites.Min(s => double.Hypot(s.XMm - xMm, s.YMm - yMm));
        if (near < 1e-9)
        {
            return true;
        }

        double[] angles = [.. _sites.Select(s => Math.Atan2(s.YMm - yMm, s.XMm - xMm)).Order()];
        double widest = angles[0] + 2 * Math.PI - angles[^1];
        for (int i = 1; i < angles.Length; i++)
        {
            widest = Math.Max(widest, angles[i] - angles[i - 1]);
        }

        return near <= _reach && widest <= Math.PI + 1e-9;
    }

    /// <summary>Reading at a place.</summary>
    /// <param name="xMm">Place [mm].</param>
    /// <param name="yMm">Place [mm].</param>
    public SiteReading At(double xMm, double yMm)
    {
        double[] values = new double[_weights.Length];
        for (int g = 0; g < values.Length; g++)
        {
            double[] w = _weights[g];
            double sum = w[^1];
            for (int i = 0; i < _sites.Count; i++)
            {
                sum += w[i] * double.Hypot(_sites[i].XMm - xMm, _sites[i].YMm - yMm);
            }

            values[g] = sum;
        }

        return new(values[..^1], Math.Exp(values[^1]));
    }

    /// <summary>Gaussian elimination with the greatest pivot.</summary>
    private static double[][] Solve(double[,] a, double[][] right)
    {
        int n = a.GetLength(0);
        for (int c = 0; c < n; c++)
        {
            int pivot = c;
            for (int r = c + 1; r < n; r++)
            {
                pivot = Math.Abs(a[r, c]) > Math.Abs(a[pivot, c]) ? r : pivot;
            }

            for (int k = 0; k < n && pivot != c; k++)
            {
                (a[c, k], a[pivot, k]) = (a[pivot, k], a[c, k]);
            }

            foreach (double[] b in right)
            {
                (b[c], b[pivot]) = (b[pivot], b[c]);
            }

            for (int r = c + 1; r < n; r++)
            {
                double f = a[r, c] / a[c, c];
                for (int k = c; k < n && f != 0; k++)
                {
                    a[r, k] -= f * a[c, k];
                }

                foreach (double[] b in right)
                {
                    b[r] -= f * b[c];
                }
            }
        }

        foreach (double[] b in right)
        {
            for (int r = n - 1; r >= 0; r--)
            {
                for (int k = r + 1; k < n; k++)
                {
                    b[r] -= a[r, k] * b[k];
                }

                b[r] /= a[r, r];
            }
        }

        return right;
    }
}
