namespace Graspwright.Strength.Life;

/// <summary>Numbers between 0 and 1 that look random and are the same every time: a seed and a count give them (SplitMix64).</summary>
public struct Chance
{
    private ulong _state;

    /// <summary>Starts at a seed.</summary>
    /// <param name="seed">Seed.</param>
    public Chance(ulong seed) => _state = seed;

    /// <summary>The next number, above 0 and below 1.</summary>
    public double Next()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        z ^= z >> 31;
        return ((z >> 11) + 0.5) * (1.0 / (1UL << 53));
    }

    /// <summary>Numbers of which each of as many equal slices of 0 to 1 holds one, in random order.</summary>
    /// <param name="into">Where they go.</param>
    public void Stratified(Span<double> into)
    {
        int count = into.Length;
        for (int i = 0; i < count; i++)
        {
            into[i] = (i + Next()) / count;
        }

        for (int i = count - 1; i > 0; i--)
        {
            int j = (int)(Next() * (i + 1));
            (into[i], into[j]) = (into[j], into[i]);
        }
    }

    /// <summary>The standard normal value below which a share lies.</summary>
    /// <param name="share">Share, above 0 and below 1.</param>
    /// <remarks>Rational approximation (Acklam; from memory), within 1.2e-9 of the value in proportion.</remarks>
    public static double Normal(double share)
    {
        ReadOnlySpan<double> a = [-3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.383577518672690e2, -3.066479806614716e1, 2.506628277459239];
        ReadOnlySpan<double> b = [-5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1];
        ReadOnlySpan<double> c = [-7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783];
        ReadOnlySpan<double> d = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416];
        const double Tail = 0.02425;
        if (share is < Tail or > 1 - Tail)
        {
            double q = Math.Sqrt(-2 * Math.Log(Math.Min(share, 1 - share)));
            double value = (((((c[0] * q + c[1]) * q + c[2]) * q + c[3]) * q + c[4]) * q + c[5]) / ((((d[0] * q + d[1]) * q + d[2]) * q + d[3]) * q + 1);
            return share < 0.5 ? value : -value;
        }

        double r = share - 0.5, s = r * r;
        return (((((a[0] * s + a[1]) * s + a[2]) * s + a[3]) * s + a[4]) * s + a[5]) * r / (((((b[0] * s + b[1]) * s + b[2]) * s + b[3]) * s + b[4]) * s + 1);
    }
}
