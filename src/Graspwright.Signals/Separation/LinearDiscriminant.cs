namespace Graspwright.Signals.Separation;

/// <summary>Linear discriminant: classes with one common covariance, pooled with divisor n − classes.</summary>
/// <remarks><source key="fisher-1936">R. A. Fisher 1936, <i>The use of multiple measurements in taxonomic problems</i>.</source></remarks>
public sealed class LinearDiscriminant
{
    private readonly double[,] _factor;
    private readonly double[] _logPrior;

    private LinearDiscriminant(double[][] means, double[,] factor, double[] logPrior) => (Means, _factor, _logPrior) = (means, factor, logPrior);

    /// <summary>Mean of each class.</summary>
    public double[][] Means { get; }

    /// <summary>Fits a discriminant.</summary>
    /// <param name="rows">Features, a row for each case.</param>
    /// <param name="classes">Class of each row, from 0; each class has rows.</param>
    /// <param name="equalPriors">Whether every class is as likely; else as often as it occurs.</param>
    /// <exception cref="ArgumentException">A class is empty, or there are too few rows.</exception>
    public static LinearDiscriminant Fit(IReadOnlyList<double[]> rows, IReadOnlyList<int> classes, bool equalPriors)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(classes);
        int count = classes.Count == 0 ? 0 : classes.Max() + 1, size = rows.Count == 0 ? 0 : rows[0].Length;
        int[] n = new int[count];
        double[][] means = [.. Enumerable.Range(0, count).Select(_ => new double[size])];
        for (int i = 0; i < rows.Count; i++)
        {
            n[classes[i]]++;
            for (int f = 0; f < size; f++)
            {
                means[classes[i]][f] += rows[i][f];
            }
        }

        if (count < 2 || n.Contains(0) || rows.Count <= count)
        {
            throw new ArgumentException("At least two classes with rows, and more rows than classes.", nameof(classes));
        }

        for (int c = 0; c < count; c++)
        {
            for (int f = 0; f < size; f++)
            {
                means[c][f] /= n[c];
            }
        }

        double[] prior = [.. n.Select(k => Math.Log(equalPriors ? 1.0 / count : (double)k / rows.Count))];
        return new(means, Factor(Pooled(rows, classes, means, count), size), prior);
    }

    /// <summary>Squared Mahalanobis distance of a row to the mean of a class.</summary>
    /// <param name="row">Features.</param>
    /// <param name="class">Class.</param>
    public double SquaredDistance(ReadOnlySpan<double> row, int @class) => Squared(row, Means[@class]);

    /// <summary>Squared Mahalanobis distance between the means of two classes.</summary>
    /// <param name="first">One class.</param>
    /// <param name="second">The other.</param>
    public double Between(int first, int second) => Squared(Means[first], Means[second]);

    /// <summary>The likeliest class.</summary>
    /// <param name="row">Features.</param>
    public int Classify(ReadOnlySpan<double> row)
    {
        int best = 0;
        double most = double.NegativeInfinity;
        for (int c = 0; c < Means.Length; c++)
        {
            double score = _logPrior[c] - 0.5 * SquaredDistance(row, c);
            (best, most) = score > most ? (c, score) : (best, most);
        }

        return best;
    }

    /// <summary>Probability of each class.</summary>
    /// <param name="row">Features.</param>
    public double[] Probabilities(ReadOnlySpan<double> row)
    {
        double[] p = new double[Means.Length];
        for (int c = 0; c < p.Length; c++)
        {
            p[c] = _logPrior[c] - 0.5 * SquaredDistance(row, c);
        }

        double most = p.Max(), sum = 0;
        for (int c = 0; c < p.Length; c++)
        {
            p[c] = Math.Exp(p[c] - most);
            sum += p[c];
        }

        return [.. p.Select(v => v / sum)];
    }

    private double Squared(ReadOnlySpan<double> a, double[] b)
    {
        int size = b.Length;
        Span<double> z = size <= 64 ? stackalloc double[size] : new double[size];
        double sum = 0;
        for (int i = 0; i < size; i++)
        {
            double v = a[i] - b[i];
            for (int j = 0; j < i; j++)
            {
                v -= _factor[i, j] * z[j];
            }

            z[i] = v / _factor[i, i];
            sum += z[i] * z[i];
        }

        return sum;
    }

    private static double[,] Pooled(IReadOnlyList<double[]> rows, IReadOnlyList<int> classes, double[][] means, int count)
    {
        int size = means[0].Length;
        double[,] s = new double[size, size];
        double[] d = new double[size];
        for (int i = 0; i < rows.Count; i++)
        {
            for (int f = 0; f < size; f++)
            {
                d[f] = rows[i][f] - means[classes[i]][f];
            }

            for (int f = 0; f < size; f++)
            {
                for (int g = 0; g <= f; g++)
                {
                    s[f, g] += d[f] * d[g] / (rows.Count - count);
                }
            }
        }

        return s;
    }

    /// <summary>Cholesky factor; a feature that the others determine gets a variance of 1e-9 of its own, so that it counts for nothing.</summary>
    private static double[,] Factor(double[,] s, int size)
    {
        const double least = 1e-9;
        double[,] l = new double[size, size];
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double v = s[i, j];
                for (int k = 0; k < j; k++)
                {
                    v -= l[i, k] * l[j, k];
                }

                if (i == j)
                {
                    l[i, i] = Math.Sqrt(Math.Max(v, least * s[i, i] + double.Epsilon * 1e30));
                }
                else
                {
                    l[i, j] = v / l[j, j];
                }
            }
        }

        return l;
    }
}
