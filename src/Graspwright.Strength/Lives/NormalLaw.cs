namespace Graspwright.Strength.Lives;

/// <summary>The standard normal law, sound far out in its tails.</summary>
/// <remarks>
/// The tail is t·exp(−x² + c(t)) with t = 2/(2 + x) and x = z/√2. The smooth c is a Chebyshev sum that is fitted once, when the
/// program starts, to values from series and continued fraction; relative error below 1e-14.
/// </remarks>
public static class NormalLaw
{
    private const int Terms = 34;

    private static readonly double HalfLogTwoPi = 0.5 * Math.Log(2 * Math.PI);
    private static readonly double[] Chebyshev = FitTail();

    /// <summary>Logarithm of the density.</summary>
    /// <param name="z">Standard value.</param>
    public static double LogDensity(double z) => -0.5 * z * z - HalfLogTwoPi;

    /// <summary>Logarithm of the share above a value.</summary>
    /// <param name="z">Standard value.</param>
    public static double LogAbove(double z)
    {
        if (z < 0)
        {
            return LogOneLess(LogAbove(-z));
        }

        double x = z / Math.Sqrt(2), t = 2 / (2 + x);
        return -0.5 * z * z + Math.Log(0.5 * t) + Tail(t);
    }

    /// <summary>Share above a value.</summary>
    /// <param name="z">Standard value.</param>
    public static double Above(double z) => Math.Exp(LogAbove(z));

    /// <summary>Share below a value.</summary>
    /// <param name="z">Standard value.</param>
    public static double Below(double z) => Math.Exp(LogAbove(-z));

    /// <summary>Value below which a share lies.</summary>
    /// <param name="share">Share, above 0 and below 1.</param>
    /// <remarks>A rational start, then two steps of Newton on the logarithm of the smaller tail.</remarks>
    public static double Quantile(double share)
    {
        if (!(share > 0 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share lies between 0 and 1.");
        }

        bool upper = share > 0.5;
        double wanted = upper ? Math.Log(1 - share) : Math.Log(share), z = Math.Abs(Life.Chance.Normal(share));
        for (int i = 0; i < 2; i++)
        {
            double log = LogAbove(z);
            z += (log - wanted) * Math.Exp(log - LogDensity(z));
        }

        return upper ? z : -z;
    }

    /// <summary>ln(1 − exp(x)) for x below 0.</summary>
    /// <param name="x">Logarithm of a share.</param>
    internal static double LogOneLess(double x) => x > -0.6931471805599453 ? Math.Log(-ExpLessOne(x)) : LogOnePlus(-Math.Exp(x));

    /// <summary>exp(x) − 1 without loss near 0.</summary>
    /// <param name="x">Number.</param>
    internal static double ExpLessOne(double x)
    {
        if (Math.Abs(x) > 0.5)
        {
            return Math.Exp(x) - 1;
        }

        double tangent = Math.Tanh(0.5 * x);
        return 2 * tangent / (1 - tangent);
    }

    /// <summary>ln(1 + x) without loss near 0.</summary>
    /// <param name="x">Number above −1.</param>
    internal static double LogOnePlus(double x)
    {
        double u = 1 + x;
        return u.Equals(1.0) ? x : Math.Log(u) * x / (u - 1);
    }

    private static double Tail(double t)
    {
        // Clenshaw's sum on −1 to 1.
        double s = 4 * t - 2, one = 0, two = 0;
        for (int i = Terms - 1; i > 0; i--)
        {
            (one, two) = (Chebyshev[i] + s * one - two, one);
        }

        return 0.5 * Chebyshev[0] + 0.5 * s * one - two;
    }

    private static double[] FitTail()
    {
        double[] values = new double[Terms], sums = new double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            double t = 0.5 * (1 + Math.Cos(Math.PI * (k + 0.5) / Terms));
            values[k] = LogScaledComplement(2 / t - 2) - Math.Log(t);
        }

        for (int i = 0; i < Terms; i++)
        {
            for (int k = 0; k < Terms; k++)
            {
                sums[i] += 2.0 / Terms * values[k] * Math.Cos(Math.PI * i * (k + 0.5) / Terms);
            }
        }

        return sums;
    }

    /// <summary>ln(exp(x²)·erfc x) for x of 0 or more.</summary>
    private static double LogScaledComplement(double x)
    {
        const double Root = 0.5641895835477563; // 1/√π
        if (x > 2.5)
        {
            double below = x;
            for (int k = 200; k > 0; k--)
            {
                below = x + 0.5 * k / below;
            }

            return Math.Log(Root / below);
        }

        // erf x = 2/√π·exp(−x²)·Σ 2ⁿ x^(2n+1)/(2n+1)!!, all terms of one sign.
        double term = x, sum = x;
        for (int n = 1; n < 200 && term > 1e-18 * sum; n++)
        {
            term *= 2 * x * x / (2 * n + 1);
            sum += term;
        }

        return Math.Log(Math.Exp(x * x) - 2 * Root * sum);
    }
}
