using Graspwright.Signals.Separation;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Says whether channels are separate.</summary>
internal static class Separation
{
    /// <summary>Adds findings, figures and tables.</summary>
    /// <returns>A sentence.</returns>
    public static string Add(SignalSet set, LabelledWindows windows, List<Finding> findings, List<Figure> figures, List<Table> tables, double levelLimit, double talkLimit)
    {
        SingleLevel[,] levels = Separating.Levels(windows);
        int[] own = [.. set.Plan.Channels.Select(c => IndexOf(windows.Gestures, c.Gesture))], best = Separating.Assign(levels);
        Swapped(set, windows, levels, own, best, findings);
        double[,] talk = Separating.CrossTalk(windows, own);
        for (int c = 0; c < own.Length; c++)
        {
            SingleLevel level = levels[c, own[c]];
            findings.Add(SignalWords.Judged("single_level", set.Channels[c], 100 * level.RightShare, 100 * levelLimit, most: false, "%",
                $"The best single level on {set.Channels[c]} tells {windows.Gestures[own[c]]} from everything else in {SignalWords.Percent(level.RightShare)} of windows (half is chance).",
                "Move this pair: 'graspwright sites' says where."));
            int worst = Enumerable.Range(0, own.Length).Where(o => own[o] != own[c]).DefaultIfEmpty(c).MaxBy(o => double.IsNaN(talk[c, o]) ? 0 : talk[c, o]);
            if (worst != c && !double.IsNaN(talk[c, worst]))
            {
                findings.Add(SignalWords.Judged("cross_talk", set.Channels[c], 100 * talk[c, worst], 100 * talkLimit, most: true, "%",
                    $"At {windows.Gestures[own[worst]]}, {set.Channels[c]} rises to {SignalWords.Percent(talk[c, worst])} of what it does at its own {windows.Gestures[own[c]]}.", "Set the pair farther from that muscle, or turn it along the fibres."));
            }
            else if (double.IsNaN(talk[c, c]))
            {
                findings.Add(new("cross_talk", set.Channels[c], Verdict.Fails, $"{set.Channels[c]} does not rise at its own {windows.Gestures[own[c]]}.", "Look whether two plugs are swapped, then move the pair."));
            }
        }

        tables.Add(new("cross-talk", [new("channel", ""), .. own.Select(g => new Column(windows.Gestures[g], "%"))],
            [.. own.Select((_, c) => (IReadOnlyList<Cell>)[set.Channels[c], .. own.Select((_, o) => (Cell)(Math.Round(100 * talk[c, o], 1) + 0.0))])]));
        return Validate(windows, own, figures, findings, tables);
    }

    private static string Validate(LabelledWindows windows, int[] own, List<Figure> figures, List<Finding> findings, List<Table> tables)
    {
        CrossValidation level = Separating.ByRepetition(windows, Separating.Thresholds(own)), linear = Separating.ByRepetition(windows, Separating.Discriminant);
        Add(figures, "told_by_levels", "gestures told right by levels alone, each repetition held back in turn", level, windows.Gestures);
        Add(figures, "told_by_discriminant", "the same by a linear discriminant, the yardstick", linear, windows.Gestures);
        List<IReadOnlyList<Cell>> rows = [];
        for (int g = 0; g < windows.Gestures.Count; g++)
        {
            rows.Add([windows.Gestures[g], 100 * level.ByGesture[g], 100 * linear.ByGesture[g], Taken(level, windows, g)]);
        }

        tables.Add(new("told right", [new("gesture", ""), new("by levels", "%"), new("by discriminant", "%"), new("most often taken for", "")], rows));
        string across = "";
        if (windows.Windows.Select(w => w.Donning).Distinct().Count() > 1)
        {
            CrossValidation again = Separating.AcrossDonnings(windows, Separating.Thresholds(own));
            Add(figures, "told_across_donnings", "gestures told right by levels learned at another putting-on", again, windows.Gestures);
            double loss = level.RightShare - again.RightShare;
            across = $" Put on again, {SignalWords.Percent(again.RightShare)}.";
            findings.Add(new("donning", "all channels", loss < 0.05 ? Verdict.Good : loss < 0.15 ? Verdict.Tight : Verdict.Fails,
                $"Levels learned at one putting-on tell {SignalWords.Percent(again.RightShare)} at another, against {SignalWords.Percent(level.RightShare)} within one.", "Mark the places on skin and liner, space the contacts of a pair wider (4 cm bears a slip better than 2 cm), or set the levels anew after putting on."));
        }
        else
        {
            findings.Add(new("donning", "all channels", Verdict.NotKnown, "What putting on again changes is not known: all recordings are of one putting-on.", "Take the contacts off, put them on, record again, and give that recording donning = 2."));
        }

        return $"Levels alone tell the gestures right in {SignalWords.Percent(level.RightShare)} of windows that were not learned from ({SignalWords.Percent(level.Low)} to {SignalWords.Percent(level.High)}); a linear discriminant in {SignalWords.Percent(linear.RightShare)}.{across}";
    }

    /// <summary>Mean of the gestures' shares, each an input.</summary>
    private static void Add(List<Figure> figures, string key, string words, CrossValidation v, IReadOnlyList<string> gestures)
    {
        List<WorkingInput> inputs = [];
        for (int g = 0; g < gestures.Count; g++)
        {
            if (!double.IsNaN(v.ByGesture[g]))
            {
                inputs.Add(new(SignalWords.Key("right", gestures[g]), 100 * v.ByGesture[g], "%"));
            }
        }

        figures.Add(new(key, words, "%")
        {
            Value = 100 * v.RightShare,
            Low = 100 * v.Low,
            High = 100 * v.High,
            Working = new($"({string.Join(" + ", inputs.Select(i => i.Name))})/{inputs.Count}", inputs, "wilson-1927"),
        });
    }

    private static string Taken(CrossValidation v, LabelledWindows windows, int g)
    {
        int other = Enumerable.Range(0, windows.Gestures.Count).Where(o => o != g).MaxBy(o => v.Confusion[g, o]);
        return v.Confusion[g, other] > 0 ? windows.Gestures[other] : "–";
    }

    private static void Swapped(SignalSet set, LabelledWindows windows, SingleLevel[,] levels, int[] own, int[] best, List<Finding> findings)
    {
        double now = own.Select((g, c) => levels[c, g].RightShare).Min(), could = best.Select((g, c) => g < 0 ? 1 : levels[c, g].RightShare).Min();
        if (!own.SequenceEqual(best) && could > now + 0.1)
        {
            string[] swaps = [.. Enumerable.Range(0, own.Length).Where(c => own[c] != best[c] && best[c] > 0).Select(c => $"{set.Channels[c]} follows {windows.Gestures[best[c]]}, not {windows.Gestures[own[c]]}")];
            findings.Add(new("channels_swapped", "channels", Verdict.Fails, $"The channels look swapped: {SignalWords.List(swaps)}.", "Swap the plugs, or the gestures in [signals.channels]."));
        }
    }

    private static int IndexOf(IReadOnlyList<string> words, string word) =>
        Enumerable.Range(0, words.Count).First(i => string.Equals(words[i], word, StringComparison.OrdinalIgnoreCase));
}
