using Graspwright.Signals.Quality;

namespace Graspwright.Signals.Separation;

/// <summary>How well a gesture is told by one channel.</summary>
/// <param name="Channel">Channel.</param>
/// <param name="Gesture">Gesture.</param>
/// <param name="RightShare">Share told right by the best single level, gesture and everything else counting alike: 0.5 = chance, 1 = always.</param>
/// <param name="Level">That level [unit].</param>
public readonly record struct SingleLevel(int Channel, int Gesture, double RightShare, double Level);

/// <summary>How often gestures are told right when they were not learned from.</summary>
/// <param name="RightShare">Mean over gestures of the share told right.</param>
/// <param name="ByGesture">The same, gesture by gesture.</param>
/// <param name="Low">Lower end of the 95 % interval, a repetition counting as one trial.</param>
/// <param name="High">Upper end.</param>
/// <param name="Trials">Repetitions that were held back.</param>
/// <param name="Confusion">Share of windows of a gesture (row) told as another (column).</param>
public sealed record CrossValidation(double RightShare, IReadOnlyList<double> ByGesture, double Low, double High, int Trials, double[,] Confusion);

/// <summary>Cross-talk, separability, and how far both can be trusted.</summary>
public static class Separating
{
    /// <summary>Excess over rest of each channel (row) during the gesture of each other channel (column), as a share of its excess during its own.</summary>
    /// <param name="windows">Windows.</param>
    /// <param name="own">Own gesture of each channel.</param>
    /// <returns>1 on the diagonal; NaN in the row of a channel that does not rise at its own gesture.</returns>
    public static double[,] CrossTalk(LabelledWindows windows, IReadOnlyList<int> own)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(own);
        int n = own.Count;
        double[,] share = new double[n, n];
        for (int c = 0; c < n; c++)
        {
            double rest = Mean(windows, c, 0), mine = Mean(windows, c, own[c]) - rest;
            for (int o = 0; o < n; o++)
            {
                share[c, o] = mine > 0 ? (Mean(windows, c, own[o]) - rest) / mine : double.NaN;
            }
        }

        return share;
    }

    /// <summary>Every gesture but rest at every channel by its best single level.</summary>
    /// <param name="windows">Windows.</param>
    public static SingleLevel[,] Levels(LabelledWindows windows)
    {
        ArgumentNullException.ThrowIfNull(windows);
        SingleLevel[,] levels = new SingleLevel[windows.Channels.Count, windows.Gestures.Count];
        for (int c = 0; c < windows.Channels.Count; c++)
        {
            for (int g = 1; g < windows.Gestures.Count; g++)
            {
                levels[c, g] = Best(windows.Windows, c, g);
            }
        }

        return levels;
    }

    /// <summary>Which gesture each channel serves so that the worst is told best; exact, by trying every way.</summary>
    /// <param name="levels">From <see cref="Levels"/>.</param>
    /// <returns>Gesture of each channel; −1 = none left for it.</returns>
    public static int[] Assign(SingleLevel[,] levels)
    {
        ArgumentNullException.ThrowIfNull(levels);
        int channels = levels.GetLength(0), gestures = levels.GetLength(1) - 1;
        int[] now = new int[channels], best = new int[channels];
        Array.Fill(now, -1);
        double bestWorst = double.NegativeInfinity, bestSum = double.NegativeInfinity;
        void Try(int channel, int used, int taken, double worst, double sum)
        {
            if (channel == channels)
            {
                if (taken == Math.Min(channels, gestures) && (worst > bestWorst || worst == bestWorst && sum > bestSum))
                {
                    (bestWorst, bestSum) = (worst, sum);
                    now.CopyTo(best, 0);
                }

                return;
            }

            for (int g = 1; g <= gestures; g++)
            {
                double right = levels[channel, g].RightShare;
                if ((used & (1 << g)) == 0 && Math.Min(worst, right) >= bestWorst)
                {
                    now[channel] = g;
                    Try(channel + 1, used | (1 << g), taken + 1, Math.Min(worst, right), sum + right);
                }
            }

            now[channel] = -1;
            if (channels - channel - 1 + taken >= Math.Min(channels, gestures))
            {
                Try(channel + 1, used, taken, worst, sum);
            }
        }

        Try(0, 0, 0, double.PositiveInfinity, 0);
        return best;
    }

    /// <summary>Holds each repetition back in turn, learns from the others, and tells its windows.</summary>
    /// <param name="windows">Windows.</param>
    /// <param name="learn">Learns from windows and gives back how to tell one.</param>
    public static CrossValidation ByRepetition(LabelledWindows windows, Learning learn)
    {
        ArgumentNullException.ThrowIfNull(windows);
        return Validate(windows, learn, w => w.Repetition);
    }

    /// <summary>Holds back all windows of each putting-on in turn.</summary>
    /// <param name="windows">Windows of at least two.</param>
    /// <param name="learn">Learns from windows and gives back how to tell one.</param>
    public static CrossValidation AcrossDonnings(LabelledWindows windows, Learning learn)
    {
        ArgumentNullException.ThrowIfNull(windows);
        return Validate(windows, learn, w => w.Donning);
    }

    /// <summary>The linear discriminant, as a yardstick of what the signals hold.</summary>
    /// <param name="windows">Windows to learn from.</param>
    public static Func<LabelledWindow, int> Discriminant(IReadOnlyList<LabelledWindow> windows)
    {
        ArgumentNullException.ThrowIfNull(windows);
        int[] known = [.. windows.Select(w => w.Gesture).Distinct().Order()];
        LinearDiscriminant fit = LinearDiscriminant.Fit([.. windows.Select(w => w.Row)], [.. windows.Select(w => Array.IndexOf(known, w.Gesture))], equalPriors: true);
        return w => known[fit.Classify(w.Row)];
    }

    /// <summary>Levels alone, as a small controller does it: the channel that is farthest above its level wins; none above is rest.</summary>
    /// <param name="own">Own gesture of each channel; −1 = not used.</param>
    public static Learning Thresholds(IReadOnlyList<int> own) => windows =>
    {
        double[] level = [.. own.Select((g, c) => g < 0 ? double.NaN : Best(windows, c, g).Level)];
        return w =>
        {
            int told = 0;
            double most = 1;
            for (int c = 0; c < own.Count; c++)
            {
                double over = w.Level[c] / level[c];
                (told, most) = over > most ? (own[c], over) : (told, most);
            }

            return told;
        };
    };

    /// <summary>The best level between a gesture and everything else; exact, every level tried.</summary>
    internal static SingleLevel Best(IReadOnlyList<LabelledWindow> windows, int channel, int gesture)
    {
        (double Level, bool Is, double Weight)[] sorted = Weighed(windows, channel, gesture);
        double right = 0.5, best = 0.5, at = sorted.Length > 0 ? sorted[^1].Level * 2 : double.NaN;
        // From below all: everything is told as the gesture, so half is right. Each step up moves one window to the other side.
        for (int i = 0; i < sorted.Length; i++)
        {
            right += sorted[i].Is ? -sorted[i].Weight / 2 : sorted[i].Weight / 2;
            bool apart = i + 1 == sorted.Length || sorted[i + 1].Level > sorted[i].Level;
            if (apart && right > best)
            {
                best = right;
                at = i + 1 < sorted.Length ? Math.Sqrt(Math.Max(sorted[i].Level, 1e-300) * sorted[i + 1].Level) : sorted[i].Level * 1.01;
            }
        }

        return new(channel, gesture, best, at);
    }

    /// <summary>Windows by level, so weighed that the gesture counts as much as everything else, and each other gesture alike.</summary>
    private static (double Level, bool Is, double Weight)[] Weighed(IReadOnlyList<LabelledWindow> windows, int channel, int gesture)
    {
        Dictionary<int, int> counts = windows.GroupBy(w => w.Gesture).ToDictionary(g => g.Key, g => g.Count());
        int others = counts.Keys.Count(k => k != gesture);
        (double Level, bool Is, double Weight)[] sorted =
            [.. windows.Select(w => (w.Level[channel], w.Gesture == gesture, 1.0 / counts[w.Gesture] / (w.Gesture == gesture ? 1 : others)))];
        Array.Sort(sorted, (a, b) => a.Level.CompareTo(b.Level));
        return sorted;
    }

    private static CrossValidation Validate(LabelledWindows windows, Learning learn, Func<LabelledWindow, int> fold)
    {
        int gestures = windows.Gestures.Count;
        double[,] confusion = new double[gestures, gestures];
        foreach (IGrouping<int, LabelledWindow> held in windows.Windows.GroupBy(fold))
        {
            LabelledWindow[] rest = [.. windows.Windows.Where(w => fold(w) != held.Key)];
            if (rest.Select(w => w.Gesture).Distinct().Count() < 2)
            {
                continue;
            }

            Func<LabelledWindow, int> tell = learn(rest);
            foreach (LabelledWindow w in held)
            {
                confusion[w.Gesture, tell(w)]++;
            }
        }

        List<double> right = [];
        for (int g = 0; g < gestures; g++)
        {
            double all = Enumerable.Range(0, gestures).Sum(o => confusion[g, o]);
            for (int o = 0; o < gestures && all > 0; o++)
            {
                confusion[g, o] /= all;
            }

            right.Add(all > 0 ? confusion[g, g] : double.NaN);
        }

        double mean = right.Where(r => !double.IsNaN(r)).DefaultIfEmpty(double.NaN).Average();
        int trials = windows.Windows.Select(w => w.Repetition).Distinct().Count();
        (double low, double high) = double.IsNaN(mean) ? (double.NaN, double.NaN) : Statistics.Interval(mean, trials);
        return new(mean, right, low, high, trials, confusion);
    }

    private static double Mean(LabelledWindows windows, int channel, int gesture) =>
        windows.Windows.Where(w => w.Gesture == gesture).Select(w => w.Level[channel]).DefaultIfEmpty(double.NaN).Average();
}

/// <summary>Learns from windows and gives back how to tell one.</summary>
/// <param name="windows">Windows to learn from.</param>
public delegate Func<LabelledWindow, int> Learning(IReadOnlyList<LabelledWindow> windows);
