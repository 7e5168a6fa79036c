namespace Graspwright.Strength.Lives;

/// <summary>The gamma function with its derivatives, and the laws that rest on it: chi-square, Poisson, ranks.</summary>
public static class GammaLaw
{
    private const double Fine = 1e-16;

    /// <summary>Logarithm of Γ(x).</summary>
    /// <param name="x">Number above 0.</param>
    /// <remarks>Lanczos' sum of nine terms (from memory), within 2e-15.</remarks>
    public static double LogGamma(double x)
    {
        ReadOnlySpan<double> c =
        [
            0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
            12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
        ];
        if (x < 0.5)
        {
            return Math.Log(Math.PI / Math.Sin(Math.PI * x)) - LogGamma(1 - x);
        }

        double sum = c[0], t = x + 6.5;
        for (int i = 1; i < c.Length; i++)
        {
            sum += c[i] / (x - 1 + i);
        }

        return 0.5 * Math.Log(2 * Math.PI) + (x - 0.5) * Math.Log(t) - t + Math.Log(sum);
    }

    /// <summary>First derivative of ln Γ.</summary>
    /// <param name="x">Number above 0.</param>
    public static double Digamma(double x)
    {
        double sum = 0;
        for (; x < 10; x++)
        {
            sum -= 1 / x;
        }

        double s = 1 / (x * x);
        return sum + Math.Log(x) - 0.5 / x - s * (1.0 / 12 - s * (1.0 / 120 - s * (1.0 / 252 - s * (1.0 / 240 - s / 132))));
    }

    /// <summary>Second derivative of ln Γ.</summary>
    /// <param name="x">Number above 0.</param>
    public static double Trigamma(double x)
    {
        double sum = 0;
        for (; x < 10; x++)
        {
            sum += 1 / (x * x);
        }

        double s = 1 / (x * x);
        return sum + 1 / x + 0.5 * s + s / x * (1.0 / 6 - s * (1.0 / 30 - s * (1.0 / 42 - s * (1.0 / 30 - s * 5 / 66))));
    }

    /// <summary>Share of a gamma law of shape k that lies above x: Γ(k, x)/Γ(k).</summary>
    /// <param name="k">Shape, above 0.</param>
    /// <param name="x">Value, 0 or more.</param>
    public static double Above(double k, double x)
    {
        if (x <= 0)
        {
            return 1;
        }

        double front = Math.Exp(k * Math.Log(x) - x - LogGamma(k));
        if (x < k + 1)
        {
            double term = 1 / k, sum = term;
            for (int n = 1; n < 10_000 && term > Fine * sum; n++)
            {
                term *= x / (k + n);
                sum += term;
            }

            return Math.Max(0, 1 - front * sum);
        }

        double b = x + 1 - k, c = 1e300, d = 1 / b, fraction = d;
        for (int n = 1; n < 10_000; n++)
        {
            double an = -n * (n - k);
            b += 2;
            d = 1 / (an * d + b);
            c = b + an / c;
            double step = c * d;
            fraction *= step;
            if (Math.Abs(step - 1) < Fine)
            {
                break;
            }
        }

        return front * fraction;
    }

    /// <summary>Share of chi-square above a value.</summary>
    /// <param name="freedom">Degrees of freedom.</param>
    /// <param name="value">Value.</param>
    public static double ChiSquareAbove(double freedom, double value) => Above(freedom / 2, value / 2);

    /// <summary>Value of chi-square below which a share lies.</summary>
    /// <param name="freedom">Degrees of freedom.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    public static double ChiSquareQuantile(double freedom, double share) => Solve(x => 1 - ChiSquareAbove(freedom, x), share, 0, freedom + 10 * Math.Sqrt(2 * freedom) + 100);

    /// <summary>Chance of at most so many events where a Poisson law expects a mean.</summary>
    /// <param name="count">Number of events, 0 or more.</param>
    /// <param name="mean">Mean, 0 or more.</param>
    public static double PoissonAtMost(int count, double mean) => Above(count + 1, mean);

    /// <summary>Rank of the i-th smallest of n that lies above with a given share of chance; a half gives the median rank.</summary>
    /// <param name="i">Which, from 1.</param>
    /// <param name="n">How many.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    /// <remarks>The chance that at least i of n lie below p is a binomial sum; it is solved for p.</remarks>
    public static double Rank(int i, int n, double share) => Solve(p => AtLeast(i, n, p), share, 0, 1);

    private static double AtLeast(int i, int n, double p)
    {
        if (p is <= 0 or >= 1)
        {
            return p <= 0 ? 0 : 1;
        }

        double sum = 0, logs = Math.Log(p), other = NormalLaw.LogOnePlus(-p);
        for (int k = i; k <= n; k++)
        {
            sum += Math.Exp(LogGamma(n + 1) - LogGamma(k + 1) - LogGamma(n - k + 1) + k * logs + (n - k) * other);
        }

        return Math.Min(1, sum);
    }

    /// <summary>Solves a rising function by halving, to the last digit.</summary>
    private static double Solve(Func<double, double> rising, double wanted, double low, double high)
    {
        for (int i = 0; i < 200; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high)
            {
                break;
            }

            (low, high) = rising(middle) < wanted ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
