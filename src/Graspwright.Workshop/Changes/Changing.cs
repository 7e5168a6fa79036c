using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Variants;

namespace Graspwright.Workshop.Changes;

/// <summary>What each item of the list of changes buys: the verb <c>changes</c>.</summary>
public static class Changing
{
    /// <summary>Most items that are judged with all their pairs at once.</summary>
    private const int MostItems = 24;

    /// <summary>Answers.</summary>
    /// <param name="question">The hand file, its measures and items.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ChangesResult Answer(ChangesQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        HandModel hand = question.Editor.Reading.Hand!;
        List<InputError> errors = [];
        IReadOnlyList<Change> items = Items(question, hand, errors);
        List<AskedMeasure> measures = Asked(question, hand, errors);
        if (errors.Count > 0 || ChangeVariants.Of(question.Editor, question.File, items, errors) is not { } variants)
        {
            return new(null, null, errors);
        }

        try
        {
            // A hand that cannot be put together as it is has nothing to compare with.
            AskedHand asItIs = new(hand);
            _ = measures[0].Value(asItIs);
        }
        catch (DriveException fault)
        {
            return new(null, null, [Faults.OfHand(question.File, fault)]);
        }

        ChangeStudy study = ChangeStudies.Of(variants, measures, question);
        return new(ChangesAnswer.Of(hand, study, variants), study, []);
    }

    private static IReadOnlyList<Change> Items(ChangesQuestion question, HandModel hand, List<InputError> errors)
    {
        IReadOnlyList<Change> all = hand.Decisions.Changes;
        if (all.Count == 0)
        {
            errors.Add(new(question.File, 0, 0, "changes", "the file lists no changes", "at least one", "Add [changes.\"softer pads\".edits] with the path of a value and its new value."));
        }

        foreach (string name in question.Only.Where(n => !all.Any(c => c.Name == n)))
        {
            errors.Add(Faults.Unknown(question.File, "--only", name, all.Select(c => c.Name)));
        }

        IReadOnlyList<Change> items = question.Only.Count == 0 ? all : [.. all.Where(c => question.Only.Contains(c.Name))];
        if (items.Count > MostItems)
        {
            errors.Add(new(question.File, 0, 0, "changes", FormattableString.Invariant($"{items.Count} changes at once"), FormattableString.Invariant($"up to {MostItems}"), "Name those that are in question with --only."));
        }

        return items;
    }

    private static List<AskedMeasure> Asked(ChangesQuestion question, HandModel hand, List<InputError> errors)
    {
        bool option = question.Measures.Count > 0;
        IReadOnlyList<string> texts = option ? question.Measures : hand.Decisions.Measures.Count > 0 ? hand.Decisions.Measures : Choice(hand);
        List<AskedMeasure> measures = [];
        foreach (string text in texts.Distinct(StringComparer.Ordinal))
        {
            if (AskedMeasure.Read(text, hand, out AskedFault? why) is not { } measure)
            {
                errors.Add(Fault(text, why!.Found, why.Allowed, why.Fix));
            }
            else if (measure.Better == Better.Neither)
            {
                errors.Add(Fault(text, $"'{text}', of which neither more nor less is better", "a measure that can be better or worse", "Ask 'grip' for it instead."));
            }
            else
            {
                measures.Add(measure);
            }
        }

        if (measures.Count == 0 && errors.Count == 0)
        {
            errors.Add(new(question.File, 0, 0, "objects", "the hand names neither jobs nor objects to weigh changes by", "at least one object or job", "Add an object, such as a cylinder with its diameter and its station."));
        }

        return measures;

        InputError Fault(string text, string found, string allowed, string fix) => option
            ? new(question.File, 0, 0, "--measure", found, allowed, fix)
            : Faults.At(question.Editor, question.File, FormattableString.Invariant($"weighing.measures[{texts.ToList().IndexOf(text) + 1}]"), found, allowed, fix);
    }

    /// <summary>Measures where the file and the maker name none.</summary>
    private static List<string> Choice(HandModel hand)
    {
        List<string> texts = hand.Jobs.Count > 0 ? ["jobs_done", "worst(job_margin)"] : [];
        if (hand.Objects.FirstOrDefault(o => o is not NothingHeld) is { } thing)
        {
            texts.AddRange([$"grip_force@{thing.Name}", $"all_touch@{thing.Name}", $"reopening_left@{thing.Name}"]);
        }

        return texts;
    }
}
