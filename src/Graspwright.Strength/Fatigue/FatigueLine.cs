namespace Graspwright.Strength.Fatigue;

/// <summary>A straight line of stress amplitude against cycles on logarithmic axes, with a flatter one beyond its knee.</summary>
/// <remarks>Up to the knee N = N_e·(S_e/S)^k. Beyond it the slope is 2k − 1 (Haibach): under mixed loads small cycles still count.</remarks>
/// <source key="haibach-slope">Slope 2k − 1 beyond the knee; from memory, as in EN 1993-1-9 and the FKM guideline.</source>
public readonly record struct FatigueLine
{
    private readonly double _strength, _cycles, _slope;

    /// <summary>A line through the fatigue strength.</summary>
    /// <param name="strength">Fully reversed amplitude at the knee [Pa], above 0.</param>
    /// <param name="cycles">Cycles at the knee, above 1000.</param>
    /// <param name="slope">Slope k, above 0.</param>
    public FatigueLine(double strength, double cycles, double slope)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(strength);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(cycles, 1000);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(slope);
        _strength = strength;
        _cycles = cycles;
        _slope = slope;
    }

    /// <summary>Slope k up to the knee.</summary>
    public double Slope => _slope;

    /// <summary>Amplitude at the knee [Pa].</summary>
    public double Strength => _strength;

    /// <summary>A line through a share of the tensile strength at 1000 cycles and the fatigue strength.</summary>
    /// <param name="tensile">Tensile strength [Pa].</param>
    /// <param name="share">Share of it at 1000 cycles, as 0.9.</param>
    /// <param name="strength">Fully reversed amplitude at the knee [Pa], below that share.</param>
    /// <param name="cycles">Cycles at the knee.</param>
    /// <source key="shigley-9">Equations 6-14 and 6-15, page 285.</source>
    public static FatigueLine Through(double tensile, double share, double strength, double cycles)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(strength, share * tensile);
        return new(strength, cycles, Math.Log(cycles / 1000) / Math.Log(share * tensile / strength));
    }

    /// <summary>Cycles to a break at a fully reversed amplitude.</summary>
    /// <param name="amplitude">Amplitude [Pa], 0 or more.</param>
    public double Cycles(double amplitude)
    {
        double ratio = _strength / amplitude;
        return _cycles * Math.Pow(ratio, ratio > 1 ? 2 * _slope - 1 : _slope);
    }

    /// <summary>Amplitude that is stood for some cycles up to the knee [Pa].</summary>
    /// <param name="cycles">Cycles, at most those of the knee.</param>
    public double Amplitude(double cycles) => _strength * Math.Pow(_cycles / cycles, 1 / _slope);
}

/// <summary>Fully reversed amplitude that does the same damage as one about a mean stress.</summary>
/// <source key="shigley-9">Goodman's line, page 306.</source>
public static class MeanStress
{
    /// <summary>Goodman: S_a/(1 − S_m/S_u); a mean push does not help.</summary>
    /// <param name="amplitude">Amplitude [Pa].</param>
    /// <param name="mean">Mean [Pa].</param>
    /// <param name="strength">Tensile strength [Pa].</param>
    /// <returns>Infinity where the mean reaches the strength.</returns>
    public static double Goodman(double amplitude, double mean, double strength) =>
        mean <= 0 ? amplitude : mean < strength ? amplitude / (1 - mean / strength) : double.PositiveInfinity;

    /// <summary>How many times both stresses may grow by Goodman's line: 1/(S_a/S_e + S_m/S_u).</summary>
    /// <param name="amplitude">Amplitude [Pa].</param>
    /// <param name="mean">Mean [Pa].</param>
    /// <param name="limit">Fully reversed amplitude allowed [Pa].</param>
    /// <param name="strength">Tensile strength [Pa].</param>
    public static double GoodmanFactor(double amplitude, double mean, double limit, double strength) => 1 / (amplitude / limit + mean / strength);
}
