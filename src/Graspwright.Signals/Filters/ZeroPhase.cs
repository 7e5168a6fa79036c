using System.Runtime.Intrinsics;

namespace Graspwright.Signals.Filters;

/// <summary>Filtering forward, then backward: no delay, twice the order. For looking back at recordings; a controller cannot do it.</summary>
public static class ZeroPhase
{
    /// <summary>Filters a signal.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="values">The signal, longer than <see cref="Padding"/>.</param>
    /// <returns>As many values.</returns>
    /// <exception cref="ArgumentException">The signal is too short.</exception>
    public static double[] Filter(SectionChain chain, ReadOnlySpan<double> values)
    {
        ArgumentNullException.ThrowIfNull(chain);
        int pad = Padding(chain);
        if (values.Length <= pad)
        {
            throw new ArgumentException(FormattableString.Invariant($"{values.Length} samples are too few: more than {pad} are needed."), nameof(values));
        }

        // The ends are lengthened by the signal turned about its first and its last sample.
        double[] extended = new double[values.Length + 2 * pad];
        values.CopyTo(extended.AsSpan(pad));
        for (int i = 0; i < pad; i++)
        {
            extended[pad - 1 - i] = 2 * values[0] - values[i + 1];
            extended[pad + values.Length + i] = 2 * values[^1] - values[^(i + 2)];
        }

        Pass(chain, extended);
        Array.Reverse(extended);
        Pass(chain, extended);
        Array.Reverse(extended);
        return extended[pad..^pad];
    }

    /// <summary>Samples by which each end is lengthened: three times the number of coefficients.</summary>
    /// <param name="chain">The chain.</param>
    public static int Padding(SectionChain chain)
    {
        ArgumentNullException.ThrowIfNull(chain);
        int single = Math.Min(chain.Sections.Count(s => s.B2 == 0), chain.Sections.Count(s => s.A2 == 0));
        return 3 * (2 * chain.Sections.Count + 1 - single);
    }

    private static void Pass(SectionChain chain, double[] values)
    {
        Filtering filter = new(chain);
        filter.Settle(Vector256.CreateScalar(values[0]));
        filter.Run(values.AsSpan());
    }
}
