using Graspwright.Hand;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Separation;
using Graspwright.Signals.Thresholds;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Thresholds of a hand.</summary>
/// <param name="Answer">The answer; <see langword="null"/> if there is none.</param>
/// <param name="Errors">What is wrong with the input.</param>
/// <param name="Set">The recordings.</param>
/// <param name="Takes">Their envelopes.</param>
/// <param name="Found">Settings of each channel; <see langword="null"/> where there are none.</param>
public sealed record ThresholdsResult(Answer? Answer, IReadOnlyList<InputError> Errors, SignalSet? Set, IReadOnlyList<Take> Takes, IReadOnlyList<ThresholdResult?> Found);

/// <summary>Which levels and times to load, what they miss, and what may be claimed of false activations.</summary>
public static class ThresholdsAnswer
{
    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of its file.</param>
    public static ThresholdsResult Answer(HandModel hand, string handFile)
    {
        ArgumentNullException.ThrowIfNull(hand);
        List<InputError> errors = [];
        if (SignalSet.Read(hand, handFile, wear: false, errors) is not { } set)
        {
            return new(null, errors, null, [], []);
        }

        IReadOnlyList<Take> takes = set.Takes();
        FrontEnd front = set.FrontEnd(set.Recordings[0].Recording.RateHertz);
        ThresholdResult?[] found = new ThresholdResult?[set.Plan.Channels.Count];
        Parallel.For(0, found.Length, i => found[i] = ThresholdSearch.Find(takes, i, set.Plan.Channels[i].Gesture, front.DelaySeconds, new(set.Plan.DelayLimit)));
        List<Figure> figures = [];
        List<Finding> findings = [];
        List<Table> tables = [];
        Settings(set, front, found, figures, findings, tables);
        string claim = WearClaims.Add(hand, handFile, set, front, found, figures, findings, tables, errors);
        ControllerFindings.Add(set, front, figures, findings, tables);
        findings.AddRange(SignalWords.Locks(hand));
        return new(new()
        {
            Verb = "thresholds",
            Hand = hand.Name,
            Sentence = $"{Sentence(set, found)} {claim}",
            Figures = figures,
            Findings = findings,
            Tables = tables,
            Cautions = SignalWords.Cautions,
        }, errors, set, takes, found);
    }

    private static string Sentence(SignalSet set, ThresholdResult?[] found)
    {
        ThresholdResult[] there = [.. found.OfType<ThresholdResult>()];
        if (there.Length == 0)
        {
            return "No level could be found.";
        }

        int gestures = there.Sum(t => t.Gestures), missed = there.Sum(t => t.Missed), wrong = there.Sum(t => t.Wrong), twice = there.Sum(t => t.Repeated), others = there.Sum(t => t.Others);
        string delay = SignalWords.Number(1e3 * there.Max(t => t.DelaySeconds), "0");
        return $"With these levels {(missed == 0 ? $"all {gestures} gestures act" : $"{gestures - missed} of {gestures} gestures act")} within {delay} ms, smoothing and hold together, and {(wrong == 0 ? "nothing acts" : $"{wrong} acted")} wrongly in {others} other stretches of these recordings{Twice(twice)}{(there.Length < found.Length ? $"; {found.Length - there.Length} {(found.Length - there.Length == 1 ? "channel has" : "channels have")} no level" : "")}.";
    }

    private static bool Recorded(SignalSet set, SignalChannel channel) =>
        set.Recordings.Any(r => r.Recording.Marks.Any(m => string.Equals(m.Gesture, channel.Gesture, StringComparison.OrdinalIgnoreCase)));

    private static string Twice(int repeated) => repeated == 0 ? "" : $", {repeated} {(repeated == 1 ? "time" : "times")} acted twice at one gesture";

    private static void Settings(SignalSet set, FrontEnd front, ThresholdResult?[] found, List<Figure> figures, List<Finding> findings, List<Table> tables)
    {
        (string unit, double factor) = set.Shown;
        List<IReadOnlyList<Cell>> rows = [];
        for (int c = 0; c < found.Length; c++)
        {
            SignalChannel channel = set.Plan.Channels[c];
            if (found[c] is not { } one)
            {
                bool slow = front.DelaySeconds > set.Plan.DelayLimit;
                findings.Add(new("threshold", channel.Name, Verdict.NotKnown,
                    slow ? $"Smoothing alone takes {SignalWords.Number(1e3 * front.DelaySeconds, "0")} ms, longer than the limit of {SignalWords.Number(1e3 * set.Plan.DelayLimit, "0")} ms." : Recorded(set, channel) ? $"{channel.Gesture} was recorded, but {channel.Name} was never usable then, so it gets no level." : $"{channel.Gesture} was never recorded, so {channel.Name} gets no level.",
                    slow ? "Allow a longer delay_limit." : Recorded(set, channel) ? "See what is wrong with its contacts: 'graspwright contacts'." : "Record it on cue, or name the gesture as the labels do."));
                continue;
            }

            rows.Add([channel.Name, channel.Gesture, factor * one.Settings.On, factor * one.Settings.Off, 1e3 * one.Settings.HoldSeconds, 1e3 * one.Settings.RefractorySeconds, one.Missed, one.Gestures, one.Wrong, one.Others, one.Repeated]);
            (double low, double high) = Statistics.Interval((double)one.Missed / one.Gestures, one.Gestures);
            figures.Add(new(SignalWords.Key("missed", channel.Name), $"share of {channel.Gesture} that {channel.Name} misses", "%")
            {
                Value = 100.0 * one.Missed / one.Gestures,
                Low = 100 * low,
                High = 100 * high,
                Working = new("100·missed/gestures", [new("missed", one.Missed, ""), new("gestures", one.Gestures, "")], "wilson-1927"),
            });
            figures.Add(new(SignalWords.Key("delay", channel.Name), $"delay of {channel.Name} from tensing to acting", "ms")
            {
                Value = 1e3 * one.DelaySeconds,
                Working = new("smoothing + hold", [new("smoothing", 1e3 * front.DelaySeconds, "ms"), new("hold", 1e3 * one.Settings.HoldSeconds, "ms")], "farrell-weir-2007"),
            });
            bool clean = one.Errors == 0;
            findings.Add(new("threshold", channel.Name, clean ? one.Room > 1.5 ? Verdict.Good : Verdict.Tight : one.Missed + one.Repeated > 0.1 * one.Gestures || one.Wrong > 0.05 * one.Others ? Verdict.Fails : Verdict.Tight,
                $"{channel.Name} acts on {channel.Gesture} from {SignalWords.Number(factor * one.Settings.On, "0.#")} {unit}: {one.Missed} of {one.Gestures} missed, {one.Wrong} of {one.Others} other stretches wrong{Twice(one.Repeated)}; the weakest {channel.Gesture} is {SignalWords.Number(one.Room)} times the strongest of everything else.",
                "Move the pair ('graspwright sites'), or choose a gesture that the drive of the wrist leaves quiet."));
        }

        tables.Insert(0, new("settings", [new("channel", ""), new("gesture", ""), new("on", unit), new("off", unit), new("hold", "ms"), new("refractory", "ms"), new("missed", ""), new("gestures", ""), new("wrong", ""), new("others", ""), new("twice", "")], rows));
    }
}
