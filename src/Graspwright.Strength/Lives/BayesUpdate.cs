namespace Graspwright.Strength.Lives;

/// <summary>What was believed of a life before the log was read.</summary>
/// <param name="Form">Form of the law: Weibull or lognormal.</param>
/// <param name="Median">Life that half of the parts outlive, as computed.</param>
/// <param name="MedianSpread">Standard deviation of its natural logarithm, above 0.</param>
/// <param name="Shape">Middle of the shape 1/spread.</param>
/// <param name="ShapeSpread">Standard deviation of its natural logarithm; 0 = the shape is known.</param>
public sealed record LifeBelief(LifeForm Form, double Median, double MedianSpread, double Shape, double ShapeSpread)
{
    private const double EightyPercent = 2 * 1.2815515655446004;

    /// <summary>A belief from bands that hold the value with 80 %.</summary>
    /// <param name="form">Form of the law.</param>
    /// <param name="median">Median life.</param>
    /// <param name="band">80 % band of it.</param>
    /// <param name="shapes">80 % band of the shape.</param>
    public static LifeBelief From(LifeForm form, double median, (double Low, double High) band, (double Low, double High) shapes) =>
        new(form, median, Math.Log(band.High / band.Low) / EightyPercent, Math.Sqrt(shapes.Low * shapes.High), Math.Log(shapes.High / shapes.Low) / EightyPercent);
}

/// <summary>Quantities of a belief, with the bands that hold them with 80 %.</summary>
/// <param name="Median">Life that half outlive: middle of the belief, with its band.</param>
/// <param name="TenthBroken">Life by which a tenth has broken.</param>
/// <param name="Shape">Shape.</param>
/// <param name="Nodes">Laws with their weights, which sum to 1: the belief itself.</param>
public sealed record Believed(Bounded Median, Bounded TenthBroken, Bounded Shape, IReadOnlyList<(LifeLaw Law, double Weight)> Nodes)
{
    /// <summary>Chance that the next part is whole at an age.</summary>
    /// <param name="time">Age.</param>
    public double Whole(double time) => Nodes.Sum(n => n.Weight * n.Law.Whole(time));
}

/// <summary>Updates a belief by records, by Bayes' rule.</summary>
/// <remarks>
/// The product of belief and likelihood is smooth and dies away fast on all sides, so the plain sum over an even grid is exact to
/// rounding once the grid covers it; the grid is narrowed to where the product is more than e⁻⁴⁰ of its greatest value. No chance is used.
/// </remarks>
public static class BayesUpdate
{
    private const int Scan = 40, Fine = 120, Rounds = 6;
    private const double Reach = 8, Negligible = 36;

    /// <summary>The belief before the records.</summary>
    /// <param name="belief">Belief.</param>
    public static Believed Before(LifeBelief belief) => After(belief, []);

    /// <summary>The belief after the records.</summary>
    /// <param name="belief">Belief before.</param>
    /// <param name="records">Records.</param>
    public static Believed After(LifeBelief belief, IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(belief);
        LifeLikelihood likelihood = new(belief.Form, records);
        double standard = LifeLaw.Standard(belief.Form, 0.5);
        double x0 = Math.Log(belief.Median), y0 = Math.Log(belief.Shape), sx = belief.MedianSpread, sy = belief.ShapeSpread;
        (double Low, double High) x = (x0 - Reach * sx, x0 + Reach * sx), y = (y0 - Reach * sy, y0 + Reach * sy);
        bool known = sy <= 0;
        for (int round = 0; round < Rounds; round++)
        {
            (x, y) = Narrowed(x, y, known ? 0 : Scan);
        }

        int rows = known ? 0 : Fine;
        double[][] fine = [.. Enumerable.Range(0, rows + 1).Select(j => Enumerable.Range(0, Fine + 1).Select(i => Log(At(x, i, Fine), At(y, j, rows))).ToArray())];
        double greatest = fine.Max(row => row.Max());
        double[][] weights = [.. fine.Select(row => row.Select(log => Math.Exp(log - greatest)).ToArray())];
        double sum = weights.Sum(row => row.Sum());
        List<(LifeLaw Law, double Weight)> nodes = [];
        for (int j = 0; j <= rows; j++)
        {
            nodes.AddRange(weights[j].Select((w, i) => (Law(At(x, i, Fine), At(y, j, rows)), w / sum)));
        }

        EvenSamples[] medians = [.. weights.Select(row => new EvenSamples(x.Low, (x.High - x.Low) / Fine, row))];
        EvenSamples shapes = new(y.Low, (y.High - y.Low) / Fine, [.. weights.Select(row => row.Sum())]);
        double tenth = standard - LifeLaw.Standard(belief.Form, 0.1);
        return new(Band(x, Median), Band((x.Low - tenth * Math.Exp(-y.Low), x.High), Tenth), known ? new(belief.Shape, belief.Shape, belief.Shape) : Band(y, shapes.Below), nodes);

        double Median(double m) => medians.Sum(row => row.Below(m));

        double Tenth(double m)
        {
            double below = 0;
            for (int j = 0; j <= rows; j++)
            {
                below += medians[j].Below(m + tenth * Math.Exp(-At(y, j, rows)));
            }

            return below;
        }

        LifeLaw Law(double m, double s)
        {
            double spread = Math.Exp(-s);
            return new(belief.Form, m - spread * standard, spread);
        }

        double Log(double m, double s)
        {
            double a = Math.Exp(s), dx = (m - x0) / sx, dy = known ? 0 : (s - y0) / sy;
            return likelihood.At(a, standard - a * (m - likelihood.Centre)).Value - 0.5 * (dx * dx + dy * dy);
        }

        ((double Low, double High) X, (double Low, double High) Y) Narrowed((double Low, double High) a, (double Low, double High) b, int count)
        {
            double[,] logs = new double[Scan + 1, count + 1];
            double top = double.NegativeInfinity;
            for (int i = 0; i <= Scan; i++)
            {
                for (int j = 0; j <= count; j++)
                {
                    logs[i, j] = Log(At(a, i, Scan), At(b, j, count));
                    top = Math.Max(top, logs[i, j]);
                }
            }

            int left = Scan, right = 0, low = count, high = 0;
            for (int i = 0; i <= Scan; i++)
            {
                for (int j = 0; j <= count; j++)
                {
                    if (logs[i, j] > top - Negligible)
                    {
                        (left, right, low, high) = (Math.Min(left, i), Math.Max(right, i), Math.Min(low, j), Math.Max(high, j));
                    }
                }
            }

            return ((At(a, Math.Max(0, left - 1), Scan), At(a, Math.Min(Scan, right + 1), Scan)), (At(b, Math.Max(0, low - 1), count), At(b, Math.Min(count, high + 1), count)));
        }
    }

    /// <summary>Middle and 80 % band of a quantity whose logarithm lies between two bounds, from the sum of the belief below it.</summary>
    private static Bounded Band((double Low, double High) span, Func<double, double> below)
    {
        double all = below(span.High);
        return new(At(0.5), At(0.1), At(0.9));

        double At(double share)
        {
            (double low, double high) = span;
            while (high - low > 1e-13 * Math.Max(1, Math.Abs(high)))
            {
                double middle = (low + high) / 2;
                (low, high) = below(middle) < share * all ? (middle, high) : (low, middle);
            }

            return Math.Exp((low + high) / 2);
        }
    }

    private static double At((double Low, double High) span, int i, int count) => count == 0 ? span.Low : span.Low + (span.High - span.Low) * i / count;
}
