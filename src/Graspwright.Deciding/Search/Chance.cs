namespace Graspwright.Deciding.Search;

/// <summary>A stream of chance of its own for each individual: the same seed and number give the same stream on any machine and thread.</summary>
/// <source key="blackman-vigna-2021">xoshiro256**, seeded by SplitMix64.</source>
public struct Chance
{
    private ulong _a, _b, _c, _d;

    /// <summary>The stream of an individual.</summary>
    /// <param name="seed">Seed of the search.</param>
    /// <param name="number">Number of the individual.</param>
    public Chance(long seed, long number)
    {
        ulong state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL ^ Mixed((ulong)number + 0x632BE59BD9B4E019UL));
        _a = Next(ref state);
        _b = Next(ref state);
        _c = Next(ref state);
        _d = Next(ref state);
    }

    /// <summary>A number from 0 to below 1.</summary>
    public double Share() => (Bits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A whole number from 0 to below a count.</summary>
    /// <param name="count">The count, above 0.</param>
    public int Below(int count) => (int)(Share() * count);

    /// <summary>A number of the normal law with mean 0 and spread 1 (Box and Muller).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Share())) * Math.Cos(2 * Math.PI * Share());

    private ulong Bits()
    {
        ulong result = unchecked(ulong.RotateLeft(_b * 5, 7) * 9);
        ulong shifted = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= shifted;
        _d = ulong.RotateLeft(_d, 45);
        return result;
    }

    private static ulong Next(ref ulong state)
    {
        state = unchecked(state + 0x9E3779B97F4A7C15UL);
        return Mixed(state);
    }

    private static ulong Mixed(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
