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
        for (int i = 0; i < envelope.Length; i++)
        {
            float v = envelope[i];
            if (v >= on)
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
