using Graspwright.Hand;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;

namespace Graspwright.Workshop.Measures;

/// <summary>Reads the text by which a measure is asked for.</summary>
internal sealed class AskedReader(string text, HandModel hand)
{
    private const string WorstStart = "worst(";

    private readonly string _text = text.Trim();

    public AskedMeasure? Read(out AskedFault? why)
    {
        bool worst = _text.StartsWith(WorstStart, StringComparison.Ordinal);
        if (worst && !_text.EndsWith(')'))
        {
            why = new($"'{_text}', without its closing bracket", "worst(KEY)", $"Write '{_text})'.");
            return null;
        }

        (string key, string? of) = Split(worst ? _text[WorstStart.Length..^1] : _text);
        Measure? run = MeasureTable.All.FirstOrDefault(m => m.Key == key);
        HandMeasure? whole = HandMeasureTable.All.FirstOrDefault(m => m.Key == key);
        if (run is null && whole is null)
        {
            why = Unknown(key, "measure", MeasureTable.All.Select(m => m.Key).Concat(HandMeasureTable.All.Select(m => m.Key)).Distinct());
            return null;
        }

        if (worst)
        {
            return Worst(key, of, run, whole, out why);
        }

        if (whole is not null && (of is null ? !whole.HasSubject : whole.HasSubject))
        {
            return OfHand(whole, of ?? "", out why);
        }

        if (run is not null)
        {
            return OfRun(run, of, out why);
        }

        why = of is null
            ? new($"'{key}' without a name", $"{key}@NAME, or worst({key})", Named(whole!))
            : new($"'{_text}'", $"'{key}' alone: it is of the whole hand", $"Write '{key}'.");
        return null;
    }

    private static (string Key, string? Of) Split(string text)
    {
        int at = text.IndexOf('@', StringComparison.Ordinal);
        return at < 0 ? (text.Trim(), null) : (text[..at].Trim(), text[(at + 1)..].Trim());
    }

    private AskedOfHand? OfHand(HandMeasure measure, string subject, out AskedFault? why)
    {
        string[] known = [.. measure.Subjects(hand)];
        why = measure.HasSubject && !known.Contains(subject, StringComparer.Ordinal) ? Unknown(subject, measure == HandMeasureTable.KnuckleRoom ? "finger with a stump" : "job", known) : null;
        return why is null ? Of(measure, subject, _text) : null;
    }

    private AskedOfHand Of(HandMeasure measure, string subject, string text) =>
        new(text, measure, subject, measure == HandMeasureTable.JobSpare ? new JobOutcome(hand.Jobs.First(j => j.Name == subject)).Unit : measure.Unit);

    private AskedOfRun? OfRun(Measure measure, string? of, out AskedFault? why)
    {
        string[] parts = of?.Split('/', StringSplitOptions.TrimEntries) ?? [];
        string[] things = [.. hand.Objects.Select(o => o.Name)];
        if (parts.Length is 0 or > 3)
        {
            why = new($"'{_text}'", $"{measure.Key}@OBJECT, {measure.Key}@OBJECT/LOCKS or worst({measure.Key})", things.Length > 0 ? $"Write '{measure.Key}@{things[0]}'." : "Name an object in the hand file.");
            return null;
        }

        string locks = parts.Length > 1 ? parts[1] : GripQuestion.AllFree, effort = parts.Length > 2 ? parts[2] : Effort.AllDay.Word();
        string[] patterns = [.. Patterns()], efforts = [.. Efforts.Both.Select(e => e.Word())];
        why = !things.Contains(parts[0], StringComparer.Ordinal) ? Unknown(parts[0], "object", things)
            : !patterns.Contains(locks, StringComparer.Ordinal) ? Unknown(locks, "lock pattern", patterns)
            : !efforts.Contains(effort, StringComparer.Ordinal) ? Unknown(effort, "effort", efforts) : null;
        return why is null ? new(_text, measure, new(parts[0], locks, Efforts.Both.First(e => e.Word() == effort))) : null;
    }

    private WorstOf? Worst(string key, string? of, Measure? run, HandMeasure? whole, out AskedFault? why)
    {
        if (of is not null)
        {
            why = new($"'{_text}'", $"worst({key}), over everything it can be asked of", $"Write 'worst({key})', or '{key}@{of}'.");
            return null;
        }

        AskedMeasure[] all = whole is { HasSubject: true }
            ? [.. whole.Subjects(hand).Select(s => Of(whole, s, $"{key}@{s}"))]
            : run is null ? []
            : [.. hand.Objects.Where(o => o is not NothingHeld).SelectMany(o => Patterns(), (o, p) => new SituationKey(o.Name, p, Effort.AllDay)).Select(s => new AskedOfRun($"{key}@{s}", run, s))];
        why = (run?.Better ?? whole!.Better) == Better.Neither ? new($"'{_text}'", "a measure of which more or less is better", $"Say where: '{key}@OBJECT'.")
            : key == HandMeasureTable.JobSpare.Key ? new($"'{_text}'", "spares in one unit, which jobs do not have", $"Write 'worst({HandMeasureTable.JobMargin.Key})'.")
            : run is null && whole is { HasSubject: false } ? new($"'{_text}'", $"'{key}' alone: it is of the whole hand", $"Write '{key}'.")
            : all.Length == 0 ? new($"'{_text}'", "something to ask it of", "The hand file names nothing that it could be asked of.") : null;
        return why is null ? new(_text, all) : null;
    }

    private IEnumerable<string> Patterns() => hand.Locks.Select(l => l.Name).Where(n => n != GripQuestion.AllFree).Prepend(GripQuestion.AllFree);

    private string Named(HandMeasure measure) => measure.Subjects(hand).FirstOrDefault() is { } first ? $"Write '{measure.Key}@{first}'." : "The hand file names nothing that it could be asked of.";

    private static AskedFault Unknown(string name, string what, IEnumerable<string> known)
    {
        string[] names = [.. known];
        return new($"'{name}', which is no {what}", names.Length == 0 ? "none: the hand file names none" : string.Join(", ", names),
            Nearest.To(name, names) is { } near ? $"Did you mean '{near}'?" : "Use one of these names.");
    }
}
