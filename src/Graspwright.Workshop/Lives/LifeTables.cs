using Graspwright.Strength.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Lives;

/// <summary>Tables of lives.</summary>
public static class LifeTables
{
    /// <summary>Every part of the log.</summary>
    /// <param name="parts">Studies.</param>
    internal static Table Parts(IReadOnlyList<PartStudy> parts) => new("parts",
        [new("part", ""), new("fitted", ""), new("broke", ""), new("of these found so", ""), new("retired whole", ""), new("still fitted", ""), new("half break by", "days"), new("from", "days"), new("to", "days")],
        [.. parts.Select(p => Row(p.Name, p))]);

    /// <summary>The three laws side by side.</summary>
    internal static Table Laws(PartStudy s) => new("laws",
        [new("law", ""), new("scale", "days"), new("shape", "1"), new("half break by", "days"), new("a tenth breaks by", "days"), new("criterion (less is better)", "1"), new("", "")],
        [.. Enum.GetValues<LifeForm>().Select(f => (Form: f, Fit: s.Fit(f))).Where(f => f.Fit.Standing == FitStanding.Found).Select(f => (IReadOnlyList<Cell>)
        [
            f.Form.Word(), f.Fit.Law.Scale, f.Form == LifeForm.Exponential ? default(Cell) : f.Fit.Law.Shape, f.Fit.Law.Quantile(0.5), f.Fit.Law.Quantile(0.1), f.Fit.Aic,
            f.Form == s.Best.Law.Form ? "spoken of above" : s.AsGood.Contains(f.Form) ? "as good, by this log" : "fits worse",
        ])]);

    /// <summary>The computed life before the log and after.</summary>
    internal static Table BeforeAndAfter(PartStudy s) => new("computed life",
        [new("", ""), new("before", "days"), new("its 80 % from", "days"), new("its 80 % to", "days"), new("after the log", "days"), new("then 80 % from", "days"), new("then 80 % to", "days")],
        [
            Change("half outlive", s.Before!.Median, s.After!.Median),
            Change("a tenth break by", s.Before.TenthBroken, s.After.TenthBroken),
            Change("shape (no unit)", s.Before.Shape, s.After.Shape),
        ]);

    /// <summary>Groups beside each other.</summary>
    internal static Table Groups(string grouping, IReadOnlyList<PartStudy> groups) => new($"by {grouping}",
        [new(grouping, ""), new("fitted", ""), new("broke", ""), new("of these found so", ""), new("retired whole", ""), new("still fitted", ""), new("half break by", "days"), new("from", "days"), new("to", "days")],
        [.. groups.Select(g => Row(g.Name, g))]);

    /// <summary>Causes beside each other; <see langword="null"/> where no cause is named.</summary>
    internal static Table? Causes(PartStudy s)
    {
        string[] names = [.. s.Entries.Where(e => e.Broke).GroupBy(e => e.Cause, StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key)];
        if (names.All(n => n.Length == 0))
        {
            return null;
        }

        int[] cause = [.. s.Entries.Select(e => Array.IndexOf(names, e.Cause))];
        double last = s.Records.Where(r => r.Broke).Max(r => r.Middle);
        return new("by cause",
            [new("cause", ""), new("broke", ""), new($"share broken by {LifeWords.Days(last)}", "%"), new("error", "%"), new("alone, half would break by", "days")],
            [.. names.Select((name, i) =>
            {
                CauseStep step = Graspwright.Strength.Lives.Causes.Share(s.Records, cause, i)[^1];
                LifeFit alone = LifeFitting.Fit(LifeForm.Weibull, Graspwright.Strength.Lives.Causes.Alone(s.Records, cause, i));
                return (IReadOnlyList<Cell>)[name.Length > 0 ? name : "not said", s.Entries.Count(e => e.Broke && e.Cause == name), 100 * step.Share, 100 * step.Error, alone.Standing == FitStanding.Found ? alone.Law.Quantile(0.5) : (Cell)(double?)null];
            })]);
    }

    /// <summary>The share still whole, step by step, with its bounds and the law.</summary>
    /// <param name="s">The part.</param>
    public static Table Whole(PartStudy s)
    {
        ArgumentNullException.ThrowIfNull(s);
        return new("whole",
            [new("age", "days"), new("watched", ""), new("broke", ""), new("still whole", "%"), new("from", "%"), new("to", "%"), new("by the law", "%")],
            [.. Survivors.Steps(s.Records).Select(step => (IReadOnlyList<Cell>)
                [step.Time, step.AtRisk, step.Breaks, 100 * step.Whole, 100 * step.Low, 100 * step.High, s.Best.Standing == FitStanding.Found ? 100 * s.Best.Law.Whole(step.Time) : (Cell)(double?)null])]);
    }

    private static IReadOnlyList<Cell> Change(string words, Bounded before, Bounded after) => [words, before.Value, before.Low, before.High, after.Value, after.Low, after.High];

    private static IReadOnlyList<Cell> Row(string name, PartStudy p)
    {
        Bounded? median = p.Best.Standing == FitStanding.Found ? ProfileBounds.Quantile(p.Best, 0.5) : null;
        return
        [
            name, p.Entries.Count, p.Broke, p.Entries.Count(e => e.How == Ending.FoundBroken), p.Entries.Count(e => e.How == Ending.Retired), p.Entries.Count(e => e.How == Ending.None),
            median?.Value, median?.Low ?? (p.Broke == 0 && p.Records.Any(r => r.Low > 0) ? p.MedianAtLeast : null), median is { } m && m.High < 1e6 ? m.High : (double?)null,
        ];
    }
}
