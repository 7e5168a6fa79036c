using System.Globalization;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Quality;

/// <summary>Judges how each channel is connected, window by window.</summary>
/// <remarks>
/// A dry contact that lifts leaves its amplifier floating: hum rises many times over its own quiet level and over the
/// muscle, or the converter goes to its end. Strong hum that stays is no lift-off: only a rise counts.
/// </remarks>
public static class ContactJudging
{
    /// <summary>Judges every channel.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="kind">What the amplifiers give; <see cref="SignalKind.Unclear"/> is judged as raw.</param>
    /// <param name="mainsHertz">Mains frequency [1/s].</param>
    /// <param name="limits">Limits.</param>
    public static IReadOnlyList<ContactReading> Judge(Recording recording, SignalKind kind, double mainsHertz, ContactLimits limits) =>
        Judge(recording, WindowPowers.Of(recording, mainsHertz), kind, limits);

    /// <summary>Judges every channel by its powers.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="powers">Powers of each channel.</param>
    /// <param name="kind">What the amplifiers give.</param>
    /// <param name="limits">Limits.</param>
    public static IReadOnlyList<ContactReading> Judge(Recording recording, IReadOnlyList<WindowPowers> powers, SignalKind kind, ContactLimits limits)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(powers);
        ArgumentNullException.ThrowIfNull(limits);
        return [.. recording.Channels.Select((c, i) => One(recording, c, powers[i], kind, limits))];
    }

    private static ContactReading One(Recording recording, Channel channel, WindowPowers powers, SignalKind kind, ContactLimits limits)
    {
        ContactState[] states = Plain(recording, channel, powers);
        bool envelope = kind == SignalKind.Envelope;
        bool never = false;
        if (envelope)
        {
            Stuck(powers, states);
        }
        else
        {
            never = Raw(powers, states, limits);
        }

        double seconds = powers.Length / recording.RateHertz;
        int[] usable = [.. Enumerable.Range(0, states.Length).Where(w => states[w] == ContactState.Usable)];
        double share = states.Length == 0 || never ? 0 : (double)usable.Length / states.Length;
        double[] signal = envelope ? [.. powers.Mean.Select(Math.Abs)] : [.. powers.Band.Select(Math.Sqrt)];
        double floor = Statistics.Quantile(usable.Select(w => signal[w]), 0.1), strongest = Statistics.Quantile(usable.Select(w => signal[w]), 0.95);
        IReadOnlyList<Stretch> stretches = Stretches(states, seconds);
        ContactVerdict verdict = share >= limits.Connected ? ContactVerdict.Connected : share >= limits.Loose ? ContactVerdict.Loose : ContactVerdict.NotConnected;
        return new()
        {
            Name = channel.Name,
            Kind = kind,
            WindowSeconds = seconds,
            States = states,
            NoiseFloor = floor,
            Strongest = strongest,
            Hum = Math.Sqrt(Statistics.Median(powers.Hum)),
            Motion = Math.Sqrt(Statistics.Median(powers.Slow)),
            Wander = powers.Count == 0 ? 0 : powers.Mean.Max() - powers.Mean.Min(),
            Stretches = stretches,
            During = During(recording, states, seconds, never),
            UsableShare = share,
            Verdict = verdict,
            Evidence = Evidence(states, stretches, never, share, envelope),
        };
    }

    /// <summary>What needs no comparison: missing samples, the converter's ends, no movement at all.</summary>
    private static ContactState[] Plain(Recording recording, Channel channel, WindowPowers powers)
    {
        ContactState[] states = new ContactState[powers.Count];
        (double least, double greatest) = Rails(channel, powers);
        for (int w = 0; w < states.Length; w++)
        {
            ReadOnlySpan<float> counts = channel.Counts.AsSpan(w * powers.Length, powers.Length);
            if (powers.Low[w] == powers.High[w])
            {
                states[w] = powers.Low[w] <= least || powers.High[w] >= greatest ? ContactState.Saturated : ContactState.Flat;
            }
            else if ((powers.Low[w] <= least || powers.High[w] >= greatest) && AtEnds(counts, least, greatest) > Math.Max(2, powers.Length / 100))
            {
                states[w] = ContactState.Saturated;
            }
        }

        foreach (Gap gap in recording.Gaps)
        {
            for (int w = gap.Start / powers.Length; w <= (gap.Start + gap.Count - 1) / powers.Length && w < states.Length; w++)
            {
                states[w] = ContactState.Missing;
            }
        }

        return states;
    }

    private static int AtEnds(ReadOnlySpan<float> counts, double least, double greatest)
    {
        int n = 0;
        foreach (float c in counts)
        {
            n += c <= least || c >= greatest ? 1 : 0;
        }

        return n;
    }

    /// <summary>Ends of the converter; where the file does not say, the extremes count if the signal rests on them.</summary>
    private static (double Least, double Greatest) Rails(Channel channel, WindowPowers powers)
    {
        if (powers.Count == 0)
        {
            return (double.NegativeInfinity, double.PositiveInfinity);
        }

        float low = powers.Low.Min(), high = powers.High.Max();
        (double least, double greatest) = (channel.LeastCount, channel.GreatestCount);
        if (double.IsNaN(least) || double.IsNaN(greatest))
        {
            least = Rests(channel.Counts, powers, powers.Low, low) ? low : double.NegativeInfinity;
            greatest = Rests(channel.Counts, powers, powers.High, high) ? high : double.PositiveInfinity;
        }

        return low == high ? (double.NegativeInfinity, double.PositiveInfinity) : (least, greatest);
    }

    /// <summary>Whether four samples on end are at an extreme: muscle and noise do not do that.</summary>
    private static bool Rests(float[] counts, WindowPowers powers, float[] extremes, float extreme)
    {
        int run = 0;
        for (int w = 0; w < powers.Count; w++)
        {
            // A window that never comes to the extreme holds no part of a run.
            run = extremes[w] == extreme ? run : 0;
            for (int i = w * powers.Length; extremes[w] == extreme && i < (w + 1) * powers.Length; i++)
            {
                run = counts[i] == extreme ? run + 1 : 0;
                if (run >= 4)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool Raw(WindowPowers powers, ContactState[] states, ContactLimits limits)
    {
        int[] open = [.. Enumerable.Range(0, states.Length).Where(w => states[w] == ContactState.Usable)];
        if (open.Length == 0)
        {
            return true;
        }

        double quietHum = Statistics.Quantile(open.Select(w => powers.Hum[w]), 0.25), quietBand = Statistics.Quantile(open.Select(w => powers.Band[w]), 0.25);
        double strongBand = Statistics.Quantile(open.Select(w => powers.Band[w]), 0.95), usualSlow = Statistics.Median(open.Select(w => powers.Slow[w]));
        double rise = limits.HumRise * limits.HumRise, over = limits.MotionOverMuscle * limits.MotionOverMuscle;
        foreach (int w in open)
        {
            bool hum = powers.Hum[w] > rise * Math.Max(quietHum, quietBand) && powers.Hum[w] > over * powers.Band[w];
            bool motion = powers.Slow[w] > over * powers.Band[w] && powers.Slow[w] > rise * usualSlow;
            states[w] = hum ? ContactState.Lifted : motion ? ContactState.Moving : ContactState.Usable;
        }

        // The window before and after lifting holds the start of it and the settling.
        for (int w = 1; w < states.Length; w++)
        {
            if (states[w - 1] is ContactState.Usable or ContactState.Moving && states[w] is ContactState.Lifted)
            {
                states[w - 1] = ContactState.Lifted;
            }
        }

        double weak = Statistics.Quantile(open.Select(w => powers.Band[w]), 0.1);
        return quietHum > strongBand && strongBand < limits.LeastSwing * limits.LeastSwing * weak;
    }

    /// <summary>An envelope shows only whether it is stuck: its ripple falls far below what it is at other times.</summary>
    private static void Stuck(WindowPowers powers, ContactState[] states)
    {
        const double still = 0.01;
        double usual = Statistics.Median(Enumerable.Range(0, states.Length).Where(w => states[w] == ContactState.Usable).Select(w => powers.Slow[w] + powers.Band[w] + powers.Hum[w]));
        for (int w = 0; w < states.Length; w++)
        {
            if (states[w] == ContactState.Usable && powers.Slow[w] + powers.Band[w] + powers.Hum[w] < still * usual)
            {
                states[w] = ContactState.Flat;
            }
        }
    }

    private static List<Stretch> Stretches(ContactState[] states, double seconds)
    {
        List<Stretch> found = [];
        for (int w = 0; w < states.Length;)
        {
            int end = w;
            while (end < states.Length && states[end] == states[w])
            {
                end++;
            }

            if (states[w] != ContactState.Usable)
            {
                found.Add(new(w * seconds, end * seconds, states[w]));
            }

            w = end;
        }

        return found;
    }

    private static IReadOnlyList<UsableDuring> During(Recording recording, ContactState[] states, double seconds, bool never)
    {
        Dictionary<(string, string), (int All, int Usable)> counts = [];
        List<(string, string)> order = [];
        Mark[] marks = [.. recording.Marks.OrderBy(m => m.StartSeconds)];
        double longest = marks.Length == 0 ? 0 : marks.Max(m => m.EndSeconds - m.StartSeconds);
        for (int w = 0, from = 0; w < states.Length; w++)
        {
            double middle = (w + 0.5) * seconds;
            while (from < marks.Length && marks[from].StartSeconds + longest <= middle)
            {
                from++;
            }

            for (int m = from; m < marks.Length && marks[m].StartSeconds <= middle; m++)
            {
                if (middle < marks[m].EndSeconds)
                {
                    (string, string) key = (marks[m].Gesture, marks[m].Meanwhile);
                    if (!counts.TryGetValue(key, out (int All, int Usable) n))
                    {
                        order.Add(key);
                    }

                    counts[key] = (n.All + 1, n.Usable + (!never && states[w] == ContactState.Usable ? 1 : 0));
                }
            }
        }

        return [.. order.Select(k => new UsableDuring(k.Item1, k.Item2, counts[k].All * seconds, (double)counts[k].Usable / counts[k].All))];
    }

    private static string Evidence(ContactState[] states, IReadOnlyList<Stretch> stretches, bool never, double share, bool envelope)
    {
        if (states.Length == 0)
        {
            return "the recording is shorter than one window of half a second";
        }

        if (states.All(s => s is ContactState.Flat))
        {
            return "it never moves: all samples of each window are alike";
        }

        if (never)
        {
            return states.All(s => s is ContactState.Saturated) ? "the converter stands at its end all the time" : "hum is stronger than anything else, and no gesture shows above it";
        }

        List<string> parts = [string.Create(CultureInfo.InvariantCulture, $"usable {100 * share:0} % of the time")];
        foreach ((ContactState state, string words) in (ReadOnlySpan<(ContactState, string)>)
            [(ContactState.Lifted, "lifted off"), (ContactState.Saturated, "at the converter's end"), (ContactState.Flat, envelope ? "stuck" : "flat"), (ContactState.Moving, "drowned by motion"), (ContactState.Missing, "without samples")])
        {
            int times = stretches.Count(s => s.State == state);
            if (times > 0)
            {
                parts.Add(string.Create(CultureInfo.InvariantCulture, $"{words} {times} {(times == 1 ? "time" : "times")} ({stretches.Where(s => s.State == state).Sum(s => s.EndSeconds - s.StartSeconds):0.#} s)"));
            }
        }

        return string.Join(", ", parts);
    }
}
