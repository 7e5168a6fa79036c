using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Thresholds;

/// <summary>What is asked of a threshold.</summary>
/// <param name="DelayLimitSeconds">From the start of the tension in the envelope to acting, hold included, smoothing too [s].</param>
/// <param name="RefractoryLeastSeconds">Least refractory time [s].</param>
/// <param name="CueSlackSeconds">How late a wearer may follow a cue [s].</param>
public sealed record ThresholdWish(double DelayLimitSeconds, double RefractoryLeastSeconds = 0.05, double CueSlackSeconds = 0.6);

/// <summary>Settings of a channel and what they would have done on the recordings.</summary>
/// <param name="Settings">Settings.</param>
/// <param name="Missed">Gestures that did not act in time.</param>
/// <param name="Gestures">Gestures that were made.</param>
/// <param name="Wrong">Other gestures and stretches of rest in which it acted.</param>
/// <param name="Others">Other gestures and stretches of rest.</param>
/// <param name="Repeated">Times it acted again at one and the same gesture.</param>
/// <param name="DelaySeconds">Smoothing and hold together [s].</param>
/// <param name="Room">Level that would just have caught every gesture ÷ level that would just have been silent otherwise; above 1 there is room between.</param>
public sealed record ThresholdResult(SwitchSettings Settings, int Missed, int Gestures, int Wrong, int Others, int Repeated, double DelaySeconds, double Room)
{
    /// <summary>Missed, wrong and repeated together.</summary>
    public int Errors => Missed + Wrong + Repeated;
}

/// <summary>Finds levels, hold and refractory time with the fewest errors within a limit of delay.</summary>
/// <remarks>
/// The upper level is exact for each hold: a stretch has one greatest level at which it still acts (<see cref="HoldLevels"/>),
/// and counting those gives the misses and the wrong activations of every level at once. Lower level and refractory time
/// decide whether it acts twice at a gesture, or is not ready for the next; the switch is run through the recordings with
/// every pair of them that is tried. A stretch that would act wrongly counts even where the switch happened not to be
/// ready then: that is luck.
/// </remarks>
public static class ThresholdSearch
{
    private const int Holds = 24, Offs = 14;
    private const double HighestOff = 0.9, LowestOff = 0.1;
    private static readonly double[] Refractories = [0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1];

    /// <summary>Searches.</summary>
    /// <param name="takes">Recordings with envelopes and marks.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gesture">Its own gesture.</param>
    /// <param name="smoothingSeconds">Delay of the smoothing [s].</param>
    /// <param name="wish">What is asked.</param>
    /// <returns><see langword="null"/> if the gesture was never made where the channel was usable, or smoothing alone takes longer than the limit.</returns>
    public static ThresholdResult? Find(IReadOnlyList<Take> takes, int channel, string gesture, double smoothingSeconds, ThresholdWish wish)
    {
        ArgumentNullException.ThrowIfNull(takes);
        ArgumentNullException.ThrowIfNull(wish);
        double left = wish.DelayLimitSeconds - smoothingSeconds;
        if (left < 0)
        {
            return null;
        }

        Rehearsal[] rehearsals = [.. takes.Select(t => new Rehearsal(t, channel, gesture, wish))];
        double[] holds = [.. Enumerable.Range(0, Holds + 1).Select(i => left * i / Holds)];
        (List<float>[] wanted, List<float>[] unwanted) = Levels(rehearsals, holds);
        if (wanted.All(w => w.Count == 0 || w.Max() <= 0))
        {
            return null;
        }

        ThresholdResult? best = null;
        for (int h = 0; h < holds.Length; h++)
        {
            if (wanted[h].Count == 0 || wanted[h].Max() <= 0)
            {
                continue;
            }

            wanted[h].Sort();
            unwanted[h].Sort();
            (double on, int least) = Level(wanted[h], unwanted[h]);
            // Running the switch can only add errors to those of the level alone.
            if (best is null || least <= best.Errors)
            {
                ThresholdResult one = At(rehearsals, wanted[h], unwanted[h], on, holds[h], smoothingSeconds + holds[h], wish);
                best = best is null || (one.Errors, one.Missed, -one.Room).CompareTo((best.Errors, best.Missed, -best.Room)) < 0 ? one : best;
            }
        }

        return best;
    }

    /// <summary>Greatest levels of all stretches, hold by hold.</summary>
    private static (List<float>[] Wanted, List<float>[] Unwanted) Levels(Rehearsal[] rehearsals, double[] holds)
    {
        List<float>[] wanted = [.. holds.Select(_ => new List<float>())], unwanted = [.. holds.Select(_ => new List<float>())];
        foreach (Rehearsal rehearsal in rehearsals)
        {
            int[] samples = [.. holds.Select(h => Switch.SamplesOf(h, rehearsal.Take.RateHertz))];
            float[] levels = new float[samples.Max()];
            foreach ((int from, int to, bool own) in rehearsal.Stretches)
            {
                HoldLevels.Of(rehearsal.Envelope.AsSpan(from, to - from), levels);
                for (int h = 0; h < holds.Length && samples[h] <= to - from; h++)
                {
                    (own ? wanted : unwanted)[h].Add(levels[samples[h] - 1]);
                }
            }
        }

        return (wanted, unwanted);
    }

    private static ThresholdResult At(Rehearsal[] rehearsals, List<float> wanted, List<float> unwanted, double on, double hold, double delay, ThresholdWish wish)
    {
        double silent = unwanted.Count > 0 ? unwanted[^1] : 0;
        Crossings[] crossings = [.. rehearsals.Select(r => new Crossings(r.Envelope, on))];
        (SwitchSettings Settings, Rehearsed Done)? best = null;
        foreach (double refractory in Refractories.Where(r => r >= wish.RefractoryLeastSeconds).DefaultIfEmpty(wish.RefractoryLeastSeconds))
        {
            (SwitchSettings Settings, Rehearsed Done) one = Off(rehearsals, crossings, new(on, on, hold, refractory));
            best = best is null || (one.Done.Errors, one.Done.Missed).CompareTo((best.Value.Done.Errors, best.Value.Done.Missed)) < 0 ? one : best;
            if (best.Value.Done.Errors == 0)
            {
                break; // a longer wait can be no better
            }
        }

        (SwitchSettings settings, Rehearsed done) = best!.Value;
        return new(settings, done.Missed, wanted.Count, unwanted.Count(u => u >= on), unwanted.Count, done.Repeated, delay, silent > 0 ? wanted[0] / silent : double.PositiveInfinity);
    }

    /// <summary>The lower level with the fewest errors: the middle, by ratio, of the longest run of levels that are as good.</summary>
    private static (SwitchSettings Settings, Rehearsed Done) Off(Rehearsal[] rehearsals, Crossings[] crossings, SwitchSettings settings)
    {
        Rehearsed[] done = new Rehearsed[Offs];
        SwitchSettings[] tried = new SwitchSettings[Offs];
        for (int o = 0; o < Offs; o++)
        {
            tried[o] = settings with { Off = settings.On * HighestOff * Math.Pow(LowestOff / HighestOff, o / (Offs - 1.0)) };
            for (int r = 0; r < rehearsals.Length; r++)
            {
                Rehearsed one = rehearsals[r].Of(crossings[r], tried[o]);
                done[o] = new(done[o].Missed + one.Missed, done[o].Repeated + one.Repeated);
            }
        }

        (int Errors, int Missed) least = done.Min(d => (d.Errors, d.Missed));
        int bestFirst = 0, bestLength = 0;
        for (int first = 0; first < Offs;)
        {
            int end = first;
            while (end < Offs && (done[end].Errors, done[end].Missed) == least)
            {
                end++;
            }

            (bestFirst, bestLength) = end - first > bestLength ? (first, end - first) : (bestFirst, bestLength);
            first = Math.Max(end, first + 1);
        }

        int middle = bestFirst + (bestLength - 1) / 2;
        return (tried[middle], done[middle]);
    }

    /// <summary>The level with the fewest misses and wrong activations; in the middle (by ratio) of the widest range that is as good.</summary>
    private static (double Level, int Errors) Level(List<float> wanted, List<float> unwanted)
    {
        double[] edges = [.. wanted.Concat(unwanted).Where(v => v > 0).Select(v => (double)v).Distinct().Order()];
        (double Level, int Errors, double Width) best = (double.NaN, int.MaxValue, 0);
        for (int i = 0, missed = 0, quiet = 0; i <= edges.Length; i++)
        {
            double low = i == 0 ? edges[0] / 4 : edges[i - 1], high = i == edges.Length ? edges[^1] * 1.2 : edges[i], level = Math.Sqrt(low * high);
            while (missed < wanted.Count && wanted[missed] < level)
            {
                missed++;
            }

            while (quiet < unwanted.Count && unwanted[quiet] < level)
            {
                quiet++;
            }

            int errors = missed + unwanted.Count - quiet;
            best = errors < best.Errors || errors == best.Errors && high / low > best.Width ? (level, errors, high / low) : best;
        }

        return (best.Level, best.Errors);
    }
}
