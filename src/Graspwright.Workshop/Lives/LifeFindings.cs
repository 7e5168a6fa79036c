using System.Globalization;
using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Lives;

/// <summary>What the lives of a part mean for the work.</summary>
internal static class LifeFindings
{
    private const double Chance = 0.05;

    /// <summary>The findings.</summary>
    /// <param name="s">The part.</param>
    /// <param name="groupings">Groups that are compared.</param>
    public static IEnumerable<Finding> Of(PartStudy s, IReadOnlyList<string> groupings)
    {
        yield return Enough(s);
        if (s.Fitted)
        {
            yield return Ageing(s);
            yield return Law(s);
        }

        if (s is { Before: { } before, Fitted: true } && s.Broke >= PartStudy.EnoughBreaks)
        {
            yield return Computed(s, before);
        }

        foreach (string grouping in groupings)
        {
            if (s.By(LivesAnswer.Grouped(grouping)) is { Count: > 1 } groups && s.Broke > 1)
            {
                yield return Alike(s, grouping, groups);
            }
        }
    }

    private static Finding Enough(PartStudy s)
    {
        double margin = (double)(s.Broke - PartStudy.EnoughBreaks) / PartStudy.EnoughBreaks;
        string broke = s.Broke == 0 ? "nothing broke yet" : $"{LifeWords.Count(s.Broke, "break")} in the log";
        return new("enough_breaks", s.Name, s.Broke < PartStudy.EnoughBreaks ? Verdict.NotKnown : Verdicts.Of(margin),
            s.Broke < PartStudy.EnoughBreaks
                ? $"{broke}: from about {PartStudy.EnoughBreaks.ToString(CultureInfo.InvariantCulture)} on a law of life says more than its bounds hide (chosen by us)."
                : $"{broke}: enough for a law of life within the bounds given.",
            "Write down every part that is fitted, and the day on which each was last seen whole: those that do not break count too.")
        {
            Figure = s.Broke,
            Limit = PartStudy.EnoughBreaks,
            Margin = margin,
        };
    }

    private static Finding Ageing(PartStudy s)
    {
        Bounded shape = ProfileBounds.Shape(s.Fit(LifeForm.Weibull));
        string figures = $"shape {LifeWords.Two(shape.Value)} ({LifeWords.Two(shape.Low)} to {LifeWords.Two(shape.High)})";
        (Verdict verdict, string reason, string change) = shape switch
        {
            { Low: > 1 } => (Verdict.Good, $"they wear out, {figures}: an old one is likelier to break tomorrow than a new one.", "Changing before it breaks pays; the verb spares gives the days."),
            { High: < 1 } => (Verdict.Tight, $"new ones break most, {figures}: that is a sign of faults in making or fitting.", "Look at the broken faces: layers, voids, a tight pin. Proving a part before it is worn sorts them out."),
            _ => (Verdict.NotKnown, $"the log cannot tell yet whether age matters, {figures} holds 1.", "Changing a whole part early is no gain until it can."),
        };
        return new("ageing", s.Name, verdict, reason, change) { Figure = shape.Value, Limit = 1 };
    }

    private static Finding Law(PartStudy s) => s.AsGood.Count > 0
        ? new("law", s.Name, Verdict.NotKnown, $"the log cannot tell {s.Best.Law.Form.Word()} from {LifeWords.List([.. s.AsGood.Select(f => f.Word())])}: their criteria lie within 2 of each other. Inside the lives seen they agree; far outside, such as for one in a hundred, they do not.",
            "Do not reckon with lives shorter or longer than those in the log.")
        : new("law", s.Name, Verdict.Good, $"{s.Best.Law.Form.Word()} fits better than the other laws, by more than 2 of the criterion.", "Look at the picture all the same.");

    private static Finding Computed(PartStudy s, Believed before)
    {
        Bounded seen = ProfileBounds.Quantile(s.Best, 0.5);
        bool apart = before.Median.High < seen.Low || before.Median.Low > seen.High, outside = before.Median.Value < seen.Low || before.Median.Value > seen.High;
        string both = $"computed {LifeWords.With(before.Median)}, by the log alone {LifeWords.With(seen)}";
        return new("computed_life", s.Name, apart ? Verdict.Fails : outside ? Verdict.Tight : Verdict.Good,
            apart ? $"the computed life and the log contradict each other: {both}." : outside ? $"the computed life lies beside what the log shows: {both}." : $"the computed life agrees with the log: {both}.",
            "Count grips and knocks for a week and put your own figures under [use]: they move a computed life most.")
        {
            Figure = before.Median.Value,
            Limit = seen.Value,
            Unit = "days",
        };
    }

    private static Finding Alike(PartStudy s, string grouping, IReadOnlyList<PartStudy> groups)
    {
        bool within = grouping is "finger" or "position";
        LikenessTest test = within ? Within(s, grouping, groups) : Comparison.LogRank([.. groups.Select(g => g.Records)]), ratio = Comparison.LikelihoodRatio(LifeForm.Weibull, [.. groups.Select(g => g.Records)]);
        string also = !within && double.IsFinite(ratio.Chance) ? $", {Times(ratio.Chance)} by the fitted laws" : "";
        string compared = within && s.Entries.Select(e => (e.Material, e.Revision)).Distinct().Count() > 1 ? "log-rank within each material and revision" : "log-rank";
        if (!double.IsFinite(test.Chance))
        {
            return new($"alike_{grouping}", s.Name, Verdict.NotKnown, $"lives by {grouping} cannot be compared: no two groups were watched at one age.", "Wait for more breaks.");
        }

        string chance = $"alike, the log would show this much by chance {Times(test.Chance)} ({compared}){also}";
        if (test.Chance >= Chance)
        {
            return new($"alike_{grouping}", s.Name, Verdict.Good, $"no difference by {grouping} can be seen: {chance}. With {LifeWords.Count(s.Broke, "break")} a small one would not show.", "Keep them in one log.") { Figure = test.Chance, Limit = Chance };
        }

        PartStudy[] ranked = [.. groups.Where(g => g.Best.Standing == FitStanding.Found).OrderBy(g => g.Best.Law.Quantile(0.5))];
        string shortest = ranked.Length > 0 ? $" Shortest: {ranked[0].Name}, half by {LifeWords.Days(ranked[0].Best.Law.Quantile(0.5))}{(ranked.Length > 1 ? $"; longest: {ranked[^1].Name}, {LifeWords.Days(ranked[^1].Best.Law.Quantile(0.5))}" : "")}." : "";
        return new($"alike_{grouping}", s.Name, Verdict.Tight, $"lives differ by {grouping}: {chance}.{shortest}", grouping switch
        {
            "finger" or "position" => "Look first at the shortest; strengthen or shield it there, or let its pin go first.",
            "material" => "Fit the one that lives longer, if nothing else was changed with it.",
            _ => "The newer revision changed something; reckon spares with it alone.",
        })
        {
            Figure = test.Chance,
            Limit = Chance,
        };
    }

    /// <summary>Fingers compared among parts of one material and revision only, so that a change of these does not hide or feign a difference.</summary>
    private static LikenessTest Within(PartStudy s, string grouping, IReadOnlyList<PartStudy> groups)
    {
        Func<LogEntry, string> by = LivesAnswer.Grouped(grouping);
        return Comparison.LogRank([.. s.Entries.GroupBy(e => (e.Material, e.Revision)).Select(alike =>
            (IReadOnlyList<IReadOnlyList<LifeRecord>>)[.. groups.Select(g => (IReadOnlyList<LifeRecord>)[.. alike.Where(e => by(e) == by(g.Entries[0])).Select(e => e.Life)])])]);
    }

    private static string Times(double chance)
    {
        foreach (int of in (int[])[10, 100, 1000])
        {
            int times = (int)Math.Round(of * chance);
            if (times >= 1)
            {
                return times == of ? "every time" : times == 1 ? $"once in {LifeWords.Plain(of)}" : $"{LifeWords.Plain(times)} times in {LifeWords.Plain(of)}";
            }
        }

        return "less than once in 1000";
    }
}
