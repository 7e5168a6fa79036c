using Graspwright.Signals.Recordings;
using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Thresholds;

/// <summary>What is asked of a threshold.</summary>
/// <param name="DelayLimitSeconds">From the start of the tension in the envelope to acting, hold included, smoothing too [s].</param>
/// <param name="RefractoryLeastSeconds">Least refractory time [s].</param>
/// <param name="CueSlackSeconds">How late a wearer may follow a cue [s].</param>
public sealed record ThresholdWish(double DelayLimitSeconds, double RefractoryLeastSeconds = 0.2, double CueSlackSeconds = 0.6);

/// <summary>Settings of a channel and what they would have done on the recordings.</summary>
/// <param name="Settings">Settings.</param>
/// <param name="Missed">Gestures that did not act in time.</param>
/// <param name="Gestures">Gestures that were made.</param>
/// <param name="Wrong">Other gestures and stretches of rest in which it acted.</param>
/// <param name="Others">Other gestures and stretches of rest.</param>
/// <param name="DelaySeconds">Smoothing and hold together [s].</param>
/// <param name="Room">Level that would just have caught every gesture ÷ level that would just have been silent otherwise; above 1 there is room between.</param>
public sealed record ThresholdResult(SwitchSettings Settings, int Missed, int Gestures, int Wrong, int Others, double DelaySeconds, double Room);

/// <summary>Finds levels, hold and refractory time with the fewest misses within a limit of delay; exact on the recordings.</summary>
/// <remarks>
/// For a given hold a stretch acts at a level exactly if somewhere the least of the envelope over the hold reaches the
/// level. So each stretch has one greatest level at which it still acts, and counting those gives the misses and the
/// wrong activations of every level at once.
/// </remarks>
public static class ThresholdSearch
{
    private const int Holds = 12;

    /// <summary>Searches.</summary>
    /// <param name="takes">Recordings with envelopes and marks.</param>
    /// <param name="channel">Channel.</param>
    /// <param name="gesture">Its own gesture.</param>
    /// <param name="smoothingSeconds">Delay of the smoothing [s].</param>
    /// <param name="wish">What is asked.</param>
    /// <returns><see langword="null"/> if the gesture was never made, or smoothing alone takes longer than the limit.</returns>
    public static ThresholdResult? Find(IReadOnlyList<Take> takes, int channel, string gesture, double smoothingSeconds, ThresholdWish wish)
    {
        ArgumentNullException.ThrowIfNull(takes);
        ArgumentNullException.ThrowIfNull(wish);
        double left = wish.DelayLimitSeconds - smoothingSeconds;
        if (left < 0 || !takes.Any(t => t.Marks.Any(m => Is(m, gesture))))
        {
            return null;
        }

        ThresholdResult? best = null;
        for (int i = 0; i <= Holds; i++)
        {
            double hold = left * i / Holds;
            ThresholdResult one = At(takes, channel, gesture, hold, smoothingSeconds, wish);
            if (best is null || (one.Missed + one.Wrong, -one.Room).CompareTo((best.Missed + best.Wrong, -best.Room)) < 0)
            {
                best = one;
            }
        }

        return best;
    }

    /// <summary>Greatest level at which a stretch still acts after a hold.</summary>
    /// <param name="stretch">Envelope.</param>
    /// <param name="hold">Samples of the hold, from 1.</param>
    /// <returns>Negative infinity if the stretch is shorter than the hold.</returns>
    public static double GreatestLevel(ReadOnlySpan<double> stretch, int hold)
    {
        double best = double.NegativeInfinity;
        // Indices of rising values within the last hold; the first is the least of them.
        int[] queue = new int[stretch.Length];
        int head = 0, tail = 0;
        for (int i = 0; i < stretch.Length; i++)
        {
            while (tail > head && stretch[queue[tail - 1]] >= stretch[i])
            {
                tail--;
            }

            queue[tail++] = i;
            if (queue[head] <= i - hold)
            {
                head++;
            }

            if (i >= hold - 1)
            {
                best = Math.Max(best, stretch[queue[head]]);
            }
        }

        return best;
    }

    private static ThresholdResult At(IReadOnlyList<Take> takes, int channel, string gesture, double hold, double smoothing, ThresholdWish wish)
    {
        List<double> wanted = [], unwanted = [];
        foreach (Take take in takes)
        {
            int samples = Switch.SamplesOf(hold, take.RateHertz);
            foreach (Mark mark in take.Marks)
            {
                bool own = Is(mark, gesture);
                double end = own ? Math.Min(mark.EndSeconds, mark.StartSeconds + wish.CueSlackSeconds + wish.DelayLimitSeconds) : mark.EndSeconds;
                // Behind a mark of another gesture the wearer may still be on the way from this one.
                double start = own ? mark.StartSeconds : mark.StartSeconds + Math.Min(wish.CueSlackSeconds, (mark.EndSeconds - mark.StartSeconds) / 2);
                int from = Math.Clamp((int)(start * take.RateHertz), 0, take.Envelopes[channel].Length), to = Math.Clamp((int)(end * take.RateHertz), from, take.Envelopes[channel].Length);
                if (to - from >= samples && take.IsUsable(channel, from / take.RateHertz, to / take.RateHertz))
                {
                    (own ? wanted : unwanted).Add(GreatestLevel(take.Envelopes[channel].AsSpan(from, to - from), samples));
                }
            }
        }

        (double level, int missed, int wrong) = Level(wanted, unwanted);
        double rest = unwanted.Count > 0 ? unwanted.Order().ElementAt(unwanted.Count / 2) : level / 2;
        double off = Math.Sqrt(Math.Max(rest, level * 1e-3) * level);
        double silent = unwanted.Count > 0 ? unwanted.Max() : 0, caught = wanted.Count > 0 ? wanted.Min() : 0;
        return new(new(level, Math.Min(off, 0.9 * level), hold, wish.RefractoryLeastSeconds), missed, wanted.Count, wrong, unwanted.Count, smoothing + hold, silent > 0 ? caught / silent : double.PositiveInfinity);
    }

    /// <summary>The level with the fewest misses and wrong activations; in the middle (by ratio) of the range that is as good.</summary>
    private static (double Level, int Missed, int Wrong) Level(List<double> wanted, List<double> unwanted)
    {
        double[] edges = [.. wanted.Concat(unwanted).Where(v => v > 0).Distinct().Order()];
        (double Level, int Missed, int Wrong, double Width) best = (double.NaN, int.MaxValue / 2, int.MaxValue / 2, 0);
        for (int i = 0; i <= edges.Length; i++)
        {
            double low = i == 0 ? edges[0] / 4 : edges[i - 1], high = i == edges.Length ? edges[^1] * 1.2 : edges[i];
            double level = Math.Sqrt(low * high);
            int missed = wanted.Count(w => w < level), wrong = unwanted.Count(u => u >= level);
            double width = high / low;
            if ((missed + wrong, -width).CompareTo((best.Missed + best.Wrong, -best.Width)) < 0)
            {
                best = (level, missed, wrong, width);
            }
        }

        return (best.Level, best.Missed, best.Wrong);
    }

    private static bool Is(Mark mark, string gesture) => string.Equals(mark.Gesture, gesture, StringComparison.OrdinalIgnoreCase);
}
