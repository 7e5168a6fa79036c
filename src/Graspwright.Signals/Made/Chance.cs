namespace Graspwright.Signals.Made;

/// <summary>Random numbers from a seed, the same on every machine.</summary>
/// <remarks>SplitMix64 (G. L. Steele, D. Lea and C. H. Flood 2014; constants from memory).</remarks>
/// <param name="seed">Seed.</param>
public sealed class Chance(ulong seed)
{
    private ulong _state = seed;

    /// <summary>Evenly from 0 up to 1.</summary>
    public double Even()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>About normal, mean 0, deviation 1: twelve even numbers added, which needs no function that rounds differently elsewhere.</summary>
    public double Normal()
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += Even();
        }

        return sum;
    }
}
