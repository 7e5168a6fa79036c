using Graspwright.Hand;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Separation;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>An answer with what its pictures need.</summary>
/// <param name="Answer">The answer; <see langword="null"/> if there is none.</param>
/// <param name="Errors">What is wrong with the input.</param>
/// <param name="Set">The recordings.</param>
/// <param name="Readings">How the channels are connected, recording by recording.</param>
/// <param name="Takes">Their envelopes.</param>
public sealed record ContactsResult(Answer? Answer, IReadOnlyList<InputError> Errors, SignalSet? Set, IReadOnlyList<IReadOnlyList<ContactReading>> Readings, IReadOnlyList<Take> Takes);

/// <summary>Is each channel connected, are they separate, and what does the stud do?</summary>
public static class ContactsAnswer
{
    /// <summary>Length of a window in which gestures are told [s].</summary>
    public const double WindowSeconds = 0.2;

    /// <summary>From window to window [s].</summary>
    public const double HopSeconds = 0.1;

    private const double LevelLimit = 0.9, TalkLimit = 0.5;
    private static readonly ContactLimits Limits = new();

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="handFile">Path of its file.</param>
    public static ContactsResult Answer(HandModel hand, string handFile)
    {
        ArgumentNullException.ThrowIfNull(hand);
        List<InputError> errors = [];
        if (SignalSet.Read(hand, handFile, wear: false, errors) is not { } set)
        {
            return new(null, errors, null, [], []);
        }

        IReadOnlyList<IReadOnlyList<ContactReading>> readings = [.. set.Recordings.Select(set.Judged)];
        IReadOnlyList<Take> takes = set.Takes(readings);
        List<Figure> figures = [];
        List<Finding> findings = [KindFinding(set)];
        findings.AddRange(Connected(set, readings, figures));
        findings.AddRange(RateFindings.Of(set, figures));
        List<Table> tables = [Channels(set, readings), During(set, readings)];
        string separate = "";
        LabelledWindows windows = LabelledWindows.Cut(set.Channels, [.. set.Gestures.Distinct(StringComparer.OrdinalIgnoreCase)], takes, WindowSeconds, HopSeconds);
        if (Enough(windows, set, findings))
        {
            separate = " " + Separation.Add(set, windows, findings, figures, tables, LevelLimit, TalkLimit);
        }

        findings.AddRange(StudFindings.Of(set.Plan, figures));
        findings.AddRange(SignalWords.Locks(hand));
        return new(new()
        {
            Verb = "contacts",
            Hand = hand.Name,
            Sentence = Sentence(set, readings) + separate,
            Figures = figures,
            Findings = findings,
            Tables = tables,
            Cautions = SignalWords.Cautions,
        }, errors, set, readings, takes);
    }

    private static string Sentence(SignalSet set, IReadOnlyList<IReadOnlyList<ContactReading>> readings)
    {
        string[] all = [.. set.Channels], good = [.. all.Where((_, c) => readings.All(r => r[c].Verdict == ContactVerdict.Connected))];
        string signal = set.Kind switch { SignalKind.Raw => "The amplifiers give the raw signal.", SignalKind.Envelope => "The amplifiers give a smoothed envelope, which hides hum and noise: only stuck and saturated channels show.", _ => "Raw signal or envelope cannot be told, so it is judged as raw." };
        string connected = good.Length == all.Length ? "Every channel stays connected" : $"{good.Length} of {all.Length} channels {(good.Length == 1 ? "stays" : "stay")} connected; not {SignalWords.List([.. all.Except(good, StringComparer.Ordinal)])}";
        return $"{connected}. {signal}";
    }

    private static Finding KindFinding(SignalSet set) => set.Kind == SignalKind.Unclear
        ? new("signal_kind", "signals", Verdict.NotKnown, $"Raw signal or envelope? It cannot be told: {set.KindWhy}.", "Tense each muscle hard a few times in the recording, or set signals.kind to \"raw\" or \"envelope\".")
        : new("signal_kind", "signals", set.KindWhy.Contains(", but ", StringComparison.Ordinal) ? Verdict.Tight : Verdict.Good,
            set.KindWhy.Contains(", but ", StringComparison.Ordinal) ? $"Raw signal or envelope? {Capital(set.KindWhy)}." : $"These are {(set.Kind == SignalKind.Raw ? "raw signals" : "smoothed envelopes")} ({set.KindWhy}).",
            "Look at the amplifier's papers and correct signals.kind.");

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static IEnumerable<Finding> Connected(SignalSet set, IReadOnlyList<IReadOnlyList<ContactReading>> readings, List<Figure> figures)
    {
        for (int c = 0; c < set.Channels.Count; c++)
        {
            int usable = readings.Sum(r => (int)Math.Round(r[c].UsableShare * r[c].States.Count)), all = readings.Sum(r => r[c].States.Count);
            figures.Add(new(SignalWords.Key("usable", set.Channels[c]), $"share of the time that {set.Channels[c]} is usable", "%")
            {
                Value = all > 0 ? 100.0 * usable / all : null,
                Why = all > 0 ? null : "no whole window was recorded",
                Working = all > 0 ? new("100·usable_windows/windows", [new("usable_windows", usable, ""), new("windows", all, "")], "signal-windows") : null,
            });
            for (int r = 0; r < readings.Count; r++)
            {
                ContactReading one = readings[r][c];
                string where = readings.Count > 1 ? $" in '{set.Recordings[r].Plan.Name}'" : "";
                Verdict verdict = one.Verdict switch { ContactVerdict.Connected => Verdict.Good, ContactVerdict.Loose => Verdict.Tight, _ => Verdict.Fails };
                yield return new("connection", one.Name, verdict, $"{one.Name}{where}: {one.Evidence}.", Change(one))
                {
                    Figure = 100 * one.UsableShare,
                    Limit = 100 * Limits.Connected,
                    Unit = "%",
                    Margin = (one.UsableShare - Limits.Connected) / Limits.Connected,
                };
            }

            if (readings.Max(r => r[c].Hum) is var hum && hum > 2 * readings.Max(r => r[c].NoiseFloor) && set.Kind != SignalKind.Envelope)
            {
                (string unit, double factor) = set.Shown;
                yield return new("hum", set.Channels[c], Verdict.Tight, $"Hum of {SignalWords.Number(factor * hum, "0.#")} {unit} lies on {set.Channels[c]}, above its own noise; the notch takes it out, but it shows a poor reference or a long lead.",
                    "Wet the reference contact, twist the leads of the pair together, keep away from chargers and lamps.");
            }
        }
    }

    private static string Change(ContactReading one) => one.Stretches.GroupBy(s => s.State).OrderByDescending(g => g.Sum(s => s.EndSeconds - s.StartSeconds)).FirstOrDefault()?.Key switch
    {
        ContactState.Lifted => "Raise the dome by half a millimetre, or press the liner there with a pad behind it.",
        ContactState.Saturated => "Turn the amplifier's gain down, and look at the reference contact.",
        ContactState.Flat => "Look at plug and wire of this channel, and whether it is switched on.",
        ContactState.Moving => "Lead the wire in a loop, fix it to the liner, and let the contacts sit tighter.",
        ContactState.Missing => "Use a faster line or fewer channels, so that no sample is lost.",
        _ => "Nothing need change.",
    };

    private static Table Channels(SignalSet set, IReadOnlyList<IReadOnlyList<ContactReading>> readings)
    {
        (string unit, double factor) = set.Shown;
        List<IReadOnlyList<Cell>> rows = [];
        for (int r = 0; r < readings.Count; r++)
        {
            foreach (ContactReading one in readings[r])
            {
                bool raw = one.Kind != SignalKind.Envelope;
                rows.Add([one.Name, set.Recordings[r].Plan.Name, 100 * one.UsableShare, factor * one.NoiseFloor, factor * one.Strongest, raw ? factor * one.Hum : double.NaN, raw ? factor * one.Motion : double.NaN, factor * one.Wander, Word(one.Verdict)]);
            }
        }

        return new("channels", [new("channel", ""), new("recording", ""), new("usable", "%"), new("quiet", unit), new("strong", unit), new("hum", unit), new("below 20 Hz", unit), new("wander", unit), new("verdict", "")], rows);
    }

    private static string Word(ContactVerdict verdict) => verdict switch { ContactVerdict.Connected => "connected", ContactVerdict.Loose => "loose", _ => "not connected" };

    private static Table During(SignalSet set, IReadOnlyList<IReadOnlyList<ContactReading>> readings)
    {
        List<IReadOnlyList<Cell>> rows = [];
        foreach (IGrouping<(string Gesture, string Meanwhile), (string Channel, UsableDuring During)> group in readings
            .SelectMany(r => r.SelectMany(c => c.During.Select(d => (c.Name, d)))).GroupBy(p => (p.d.Gesture, p.d.Meanwhile)))
        {
            List<Cell> row = [group.Key.Gesture, group.Key.Meanwhile.Length > 0 ? group.Key.Meanwhile : "–"];
            foreach (string channel in set.Channels)
            {
                UsableDuring[] own = [.. group.Where(g => g.Channel == channel).Select(g => g.During)];
                row.Add(own.Length == 0 ? double.NaN : 100 * own.Sum(d => d.UsableShare * d.Seconds) / own.Sum(d => d.Seconds));
            }

            rows.Add(row);
        }

        return new("usable during", [new("gesture", ""), new("meanwhile", ""), .. set.Channels.Select(c => new Column(c, "%"))], rows);
    }

    private static bool Enough(LabelledWindows windows, SignalSet set, List<Finding> findings)
    {
        int[] repetitions = [.. Enumerable.Range(0, windows.Gestures.Count).Select(g => windows.Windows.Where(w => w.Gesture == g).Select(w => w.Repetition).Distinct().Count())];
        string[] missing = [.. windows.Gestures.Where((_, g) => repetitions[g] < 2)];
        if (missing.Length == 0)
        {
            return true;
        }

        string[] labels = [.. set.Recordings.SelectMany(r => r.Recording.Marks).Select(m => m.Gesture).Distinct(StringComparer.OrdinalIgnoreCase)];
        findings.Add(new("gestures_recorded", "recordings", Verdict.NotKnown,
            $"Whether the channels are separate cannot be told: {SignalWords.List(missing)} {(missing.Length == 1 ? "was" : "were")} recorded fewer than two times. Labels in the recordings: {SignalWords.List(labels)}.",
            "Record rest and every gesture at least two times (six are better), and name the gestures of the channels as the labels do."));
        return false;
    }
}
