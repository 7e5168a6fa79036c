using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Spares;

/// <summary>Tables of spares.</summary>
public static class SparesTables
{
    /// <summary>The drawer list.</summary>
    /// <param name="lines">Its lines.</param>
    public static Table Drawer(IReadOnlyList<DrawerLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return new("drawer list",
            [new("article", ""), new("fitted now", ""), new("breaks expected", "1"), new("keep", ""), new("keep to be safe", ""), new("chance to run out", "%"), new("keep if each break orders at once", ""), new("rests on", "")],
            [.. lines.Select(l => (IReadOnlyList<Cell>)
            [
                l.Study.Article.Name, l.Study.Fitted.Count, l.Keep?.Expected, l.Keep?.Keep, l.Safe?.Keep, 100 * l.Keep?.RunsOut, l.Reordered, l.Study.Basis,
            ])]);
    }

    /// <summary>What is fitted now, the likeliest to break first.</summary>
    internal static Table Fitted(IReadOnlyList<ArticleStudy> articles, DateOnly today) => new("fitted now",
        [new("part", ""), new("position", ""), new("fitted", ""), new("age", ""), new("last seen whole", ""), new("chance to break in 7 days", "%"), new("half such break within", "days")],
        [.. articles.SelectMany(a => a.Fitted.Select((e, i) => (Entry: e, Law: a.Best.Count > 0 ? a.Best[i] : (Graspwright.Strength.Spares.Running?)null)))
            .OrderByDescending(e => e.Law is { } r ? Chance(r, 7) : -1).ThenBy(e => e.Entry.Part, StringComparer.Ordinal).ThenBy(e => e.Entry.Position, StringComparer.Ordinal)
            .Select(e => (IReadOnlyList<Cell>)
            [
                e.Entry.Part, e.Entry.Position, LogReader.Day(e.Entry.Fitted), e.Entry.Age(today), LogReader.Day(e.Entry.LastSeenWhole ?? e.Entry.Fitted),
                e.Law is { } r ? 100 * Chance(r, 7) : (double?)null, e.Law is { } l ? l.Law.BrokenAfter(l.Age, 0.5) : (double?)null,
            ])]);

    /// <summary>Days to look.</summary>
    internal static Table Looks(IReadOnlyList<Look> looks, DateOnly today) => new("look over",
        [new("article", ""), new("look again on", ""), new("in", "days"), new("then on", ""), new("and on", "")],
        [.. looks.Select(l => (IReadOnlyList<Cell>)
        [
            l.Study.Article.Name, Day(l, 0) ?? "not within the period", l.Days.Count > 0 ? l.Days[0].DayNumber - today.DayNumber : (double?)null, Day(l, 1), Day(l, 2),
        ])]);

    private static string? Day(Look l, int i) => i < l.Days.Count ? LogReader.Day(l.Days[i]) : null;

    private static double Chance(Graspwright.Strength.Spares.Running r, double days) => -Math.Exp(r.Law.LogWhole(r.Age + days) - r.Law.LogWhole(r.Age)) + 1;
}
