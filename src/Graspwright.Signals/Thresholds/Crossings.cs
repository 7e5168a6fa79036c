using System.Runtime.Intrinsics;

namespace Graspwright.Signals.Thresholds;

/// <summary>Where an envelope is at or above an upper level, and how low it falls between: all that a switch depends on, whatever its other settings.</summary>
public sealed class Crossings
{
    private readonly List<(int From, int To, float LowestBefore)> _runs = [];

    /// <summary>Finds the crossings.</summary>
    /// <param name="envelope">Envelope [unit].</param>
    /// <param name="on">Upper level [unit].</param>
    public Crossings(ReadOnlySpan<float> envelope, double on)
    {
        int from = -1;
        float lowest = float.PositiveInfinity;
        float level = LeastAtOrAbove(on);
        Vector256<float> levels = Vector256.Create(level);
        for (int i = 0; i < envelope.Length; i++)
        {
            // Eight at a time where nothing changes.
            while (i + Vector256<float>.Count <= envelope.Length)
            {
                Vector256<float> eight = Vector256.Create(envelope.Slice(i, Vector256<float>.Count));
                if (from >= 0 ? !Vector256.GreaterThanOrEqualAll(eight, levels) : Vector256.GreaterThanOrEqualAny(eight, levels))
                {
                    break;
                }

                lowest = from >= 0 ? lowest : Math.Min(lowest, Least(eight));
                i += Vector256<float>.Count;
            }

            if (i == envelope.Length)
            {
                break;
            }

            float v = envelope[i];
            if (v >= level)
            {
                from = from < 0 ? i : from;
                continue;
            }

            if (from >= 0)
            {
                _runs.Add((from, i, lowest));
                (from, lowest) = (-1, float.PositiveInfinity);
            }

            lowest = v < lowest ? v : lowest;
        }

        if (from >= 0)
        {
            _runs.Add((from, envelope.Length, lowest));
        }
    }

    /// <summary>The least number of 24 bits that is not below a level.</summary>
    private static float LeastAtOrAbove(double level)
    {
        float near = (float)level;
        return near >= level ? near : MathF.BitIncrement(near);
    }

    private static float Least(Vector256<float> eight)
    {
        Vector128<float> four = Vector128.Min(eight.GetLower(), eight.GetUpper());
        return Math.Min(Math.Min(four[0], four[1]), Math.Min(four[2], four[3]));
    }

    /// <summary>When a <see cref="Switch"/> would have acted, exactly.</summary>
    /// <param name="settings">Settings, with the upper level that was given.</param>
    /// <param name="rateHertz">Samples a second [1/s].</param>
    /// <param name="at">Takes the samples, rising.</param>
    public void Activations(SwitchSettings settings, double rateHertz, List<int> at)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(at);
        int hold = Switch.SamplesOf(settings.HoldSeconds, rateHertz), refractory = Switch.RefractoryOf(settings.RefractorySeconds, rateHertz);
        bool armed = true;
        long free = 0;
        at.Clear();
        foreach ((int from, int to, float lowest) in _runs)
        {
            armed |= lowest < settings.Off;
            long first = Math.Max(from + hold - 1, free);
            if (armed && first < to)
            {
                at.Add((int)first);
                (armed, free) = (false, first + refractory);
            }
        }
    }
}
