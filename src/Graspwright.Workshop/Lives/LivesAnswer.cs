using Graspwright.Hand;
using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Lives;

/// <summary>What is asked of a log.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="Log">Its log, sound.</param>
/// <param name="Part">Part asked about; <see langword="null"/> = the one that broke most.</param>
/// <param name="By">Groups to compare: finger, position, material, revision; <see langword="null"/> = finger, material and revision.</param>
public sealed record LivesQuestion(HandModel Hand, LogReading Log, string? Part = null, string? By = null);

/// <summary>The answer with what its pictures and table are drawn from.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Study">The part that it is about.</param>
public sealed record LivesResult(Answer Answer, PartStudy Study);

/// <summary>What broke, when, and what that says: the verb <c>lives</c>.</summary>
public static class LivesAnswer
{
    /// <summary>What the parts can be grouped by.</summary>
    public static IReadOnlyList<string> Groupings { get; } = ["finger", "position", "material", "revision"];

    /// <summary>Cautions of lives and spares.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "A broken hinge is a dropped load, and it breaks without warning: do not hold over people or yourself what must not drop, whatever a life says.",
        "A life is a share of many parts, not a promise for one. Look at every hinge at the days given and after every hard knock.",
        "This is not a rated lifting device. The standard for external limb prostheses (ISO 22523), local codes and a licensed prosthetist come before these figures, and a hand that somebody else wears belongs into licensed practice.",
        "Days are days by the calendar. A change of use, of material or of the way of making begins a new log of lives: give it a revision of its own.",
    ];

    /// <summary>Answers.</summary>
    /// <param name="question">The question; its log is sound and has parts.</param>
    /// <exception cref="ArgumentException">The log has no such part.</exception>
    public static LivesResult Of(LivesQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        IReadOnlyList<PartStudy> parts = Studies(question.Hand, question.Log);
        PartStudy study = question.Part is { } name
            ? parts.FirstOrDefault(p => p.Name == name) ?? throw new ArgumentException($"The log has no {name}.", nameof(question))
            : parts[0];
        IReadOnlyList<string> groupings = question.By is { } by ? [by] : Unlike(study);
        List<Table> tables = [LifeTables.Parts(parts), LifeTables.Laws(study)];
        if (study.After is not null)
        {
            tables.Add(LifeTables.BeforeAndAfter(study));
        }

        foreach (string grouping in groupings)
        {
            if (study.By(Grouped(grouping)) is { Count: > 1 } groups)
            {
                tables.Add(LifeTables.Groups(grouping, groups));
            }
        }

        if (LifeTables.Causes(study) is { } causes)
        {
            tables.Add(causes);
        }

        return new(new()
        {
            Verb = "lives",
            Hand = question.Hand.Name,
            Sentence = Sentence(study),
            Situation = study.Name,
            Figures = LifeFigures.Of(study),
            Findings = [.. LifeFindings.Of(study, groupings)],
            Tables = tables,
            Cautions = Cautions,
        }, study);
    }

    /// <summary>A study of each part of a log, what broke most first.</summary>
    /// <param name="hand">The hand, for the lives that were computed.</param>
    /// <param name="log">The log.</param>
    public static IReadOnlyList<PartStudy> Studies(HandModel hand, LogReading log)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. log.Entries.GroupBy(e => e.Part, StringComparer.Ordinal)
                .Select(g => new PartStudy(g.Key, [.. g], ComputedPart.Of(hand, g.Key, [.. g])))
                .OrderByDescending(p => p.Broke).ThenByDescending(p => p.Entries.Count).ThenBy(p => p.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>What an entry is grouped by.</summary>
    /// <param name="grouping">One of <see cref="Groupings"/>.</param>
    public static Func<LogEntry, string> Grouped(string grouping) => grouping switch
    {
        "finger" => e => e.Finger,
        "position" => e => e.Position,
        "material" => e => e.Material,
        "revision" => e => e.Revision,
        _ => throw new ArgumentException($"Parts are not grouped by {grouping}.", nameof(grouping)),
    };

    /// <summary>Finger, material and revision, less a revision that goes with the material line by line.</summary>
    private static string[] Unlike(PartStudy s)
    {
        int both = s.Entries.Select(e => (e.Material, e.Revision)).Distinct().Count();
        bool same = both == s.Entries.Select(e => e.Revision).Distinct().Count() && both == s.Entries.Select(e => e.Material).Distinct().Count();
        return same ? ["finger", "material"] : ["finger", "material", "revision"];
    }

    /// <summary>What those like the one fitted last live, where the log shows that they live unlike the others.</summary>
    private static string Newest(PartStudy s)
    {
        LogEntry last = s.Entries.MaxBy(e => (e.Fitted, e.Line))!;
        IReadOnlyList<PartStudy> groups = s.By(e => $"{e.Material}{(e.Material.Length > 0 && e.Revision.Length > 0 ? ", " : "")}{(e.Revision.Length > 0 ? $"revision {e.Revision}" : "")}");
        if (groups.Count < 2 || !(Comparison.LogRank([.. groups.Select(g => g.Records)]).Chance < 0.05))
        {
            return "";
        }

        PartStudy newest = groups.First(g => g.Entries.Contains(last));
        return newest.Fitted
            ? $" They do not all live alike: of those fitted now ({newest.Name}) half break by {LifeWords.With(ProfileBounds.Quantile(newest.Best, 0.5))}."
            : $" They do not all live alike, and of those fitted now ({newest.Name}) too few broke for a law of their own.";
    }

    private static string Sentence(PartStudy s)
    {
        string counts = $"The log has {LifeWords.Count(s.Entries.Count, s.Name)}: {s.Broke} broke, {s.Whole} {(s.Whole == 1 ? "was" : "were")} whole when last seen.";
        if (s.Broke == 0)
        {
            string least = s.Records.Any(r => r.Low > 0)
                ? $"None broke, so only this is sure: with 95 % confidence at least half of them outlive {LifeWords.Days(s.MedianAtLeast)}, if lives wear as such parts mostly do (shape {PartStudy.Shapes.Low:0} to {PartStudy.Shapes.High:0})."
                : "None broke, but none was seen on a later day either: the log says nothing of lives yet.";
            return $"{counts} {least} {Corrected(s)}".TrimEnd();
        }

        if (!s.Fitted)
        {
            string mean = s.Best.Standing == FitStanding.Found ? $" Taken as breaking by chance alone, the mean life is {LifeWords.With(ProfileBounds.Mean(s.Best))}." : "";
            return $"{counts} They do not allow a law of life yet: {LifeFigures.Why(s.Fit(LifeForm.Weibull).Standing)}.{mean} {Corrected(s)}".TrimEnd();
        }

        Bounded median = ProfileBounds.Quantile(s.Best, 0.5), tenth = ProfileBounds.Quantile(s.Best, 0.1);
        string few = s.Broke < PartStudy.EnoughBreaks ? $" {char.ToUpperInvariant(LifeWords.Count(s.Broke, "break")[0])}{LifeWords.Count(s.Broke, "break")[1..]} {(s.Broke == 1 ? "is" : "are")} few, and the bounds show it." : "";
        return $"{counts} Half of them break by {LifeWords.With(median)}, a tenth by {LifeWords.With(tenth)}; the spans in brackets hold the truth 19 times in 20.{Newest(s)}{few} {Corrected(s)}".TrimEnd();
    }

    private static string Corrected(PartStudy s) => s is { Before: { } before, After: { } after }
        ? $"Computed, half were to outlive {LifeWords.With(before.Median)}; with the log put to it that becomes {LifeWords.With(after.Median)}, each span holding the truth 4 times in 5."
        : "";
}
