using Graspwright.Hand;
using Graspwright.Strength.Spares;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Spares;

/// <summary>What to keep in the drawer, and when to look: the verb <c>spares</c>.</summary>
public static class SparesAnswer
{
    private const double SecondsADay = 86400;
    private const int Trials = 20_000, MostKept = 60, MostLooks = 12, MostNamed = 4;
    private const ulong Seed = 20260;

    /// <summary>Answers.</summary>
    /// <param name="hand">The hand, with what it wants of the drawer.</param>
    /// <param name="log">Its log, sound.</param>
    /// <param name="today">Today; <see langword="null"/> = the last day that the log speaks of.</param>
    public static SparesResult Of(HandModel hand, LogReading log, DateOnly? today = null)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(log);
        DateOnly day = today ?? log.LastDay;
        IReadOnlyList<ArticleStudy> articles = ArticleStudy.All(hand, log, day);
        double period = hand.Drawer.PeriodSeconds / SecondsADay, supply = hand.Drawer.SupplySeconds / SecondsADay, chance = hand.Drawer.Chance;
        int reckoned = articles.Count(a => a.Best.Count > 0);

        // Articles run out independently: each gets the share of the chance that leaves the hand as a whole with what was asked.
        double each = reckoned > 0 ? 1 - Math.Pow(1 - chance, 1.0 / reckoned) : chance;
        IReadOnlyList<DrawerLine> lines = [.. articles.Select(a => Line(a, period, supply, each))];
        IReadOnlyList<Look> looks = [.. articles.Where(a => a.Best.Count > 0).Select(a => new Look(a, Looks(a.Best, day, period, hand.Drawer.Unseen))).OrderBy(l => l.Days.Count > 0 ? l.Days[0] : DateOnly.MaxValue)];
        return new(new()
        {
            Verb = "spares",
            Hand = hand.Name,
            Sentence = Sentence(lines, looks, hand.Drawer, day),
            Figures = [Kept(lines), RunsOut(lines), .. lines.Where(l => l.Keep is not null).Select(Expected)],
            Findings = [.. SparesFindings.Of(articles, lines, looks, day, hand.Drawer.Unseen)],
            Tables = [SparesTables.Drawer(lines), SparesTables.Fitted(articles, day), SparesTables.Looks(looks, day)],
            Cautions = LivesAnswer.Cautions,
        }, lines, looks, day);
    }

    private static DrawerLine Line(ArticleStudy a, double period, double supply, double chance)
    {
        if (a.Best.Count == 0)
        {
            return new(a, null, null, null);
        }

        int? reordered = null;
        if (supply < period && supply > 0)
        {
            IReadOnlyList<DownShare> down = StockTrial.Down(a.Best, period, supply, MostKept, Trials, Seed);
            for (int kept = 0; kept <= MostKept && reordered is null; kept++)
            {
                reordered = down[kept].Down <= chance ? kept : null;
            }
        }

        return new(a, Stock.Keep(a.Best, period + supply, chance), Stock.Keep(a.Cautious, period + supply, chance), reordered);
    }

    private static List<DateOnly> Looks(IReadOnlyList<Running> running, DateOnly day, double period, double unseen)
    {
        List<DateOnly> looks = [];
        double now = 0;
        while (looks.Count < MostLooks)
        {
            now += Math.Max(1, Math.Floor(Math.Min(1e6, Stock.NextLook([.. running.Select(r => r with { Age = r.Age + now })], unseen))));
            if (now > period)
            {
                break;
            }

            looks.Add(day.AddDays((int)now));
        }

        return looks;
    }

    private static string Sentence(IReadOnlyList<DrawerLine> lines, IReadOnlyList<Look> looks, Hand.Drawer drawer, DateOnly day)
    {
        double bridged = (drawer.PeriodSeconds + drawer.SupplySeconds) / SecondsADay;
        if (lines.Count == 0)
        {
            return "By the log nothing is fitted to the hand now, so there is nothing to keep spares of.";
        }

        DrawerLine[] kept = [.. lines.Where(l => l.Keep is not null).OrderByDescending(l => l.Keep!.Keep)];
        if (kept.Length == 0)
        {
            return $"No number to keep can be said yet: {lines[0].Study.Basis}.";
        }

        DrawerLine[] needed = [.. kept.Where(l => l.Keep!.Keep > 0)];
        string list = needed.Length > 0 ? LifeWords.List([.. needed.Take(MostNamed).Select(l => $"{LifeWords.Count(l.Keep!.Keep, l.Study.Article.Part)}{(l.Study.Article.Kind.Length > 0 ? $" ({l.Study.Article.Kind})" : "")}")]) : "nothing";
        string more = needed.Length > MostNamed ? $", and {LifeWords.Count(needed.Length - MostNamed, "further article")} of the list" : "";
        DrawerLine[] wider = [.. needed.Where(l => l.Safe is { } s && s.Keep > l.Keep!.Keep).Take(MostNamed)];
        string safe = wider.Length > 0 ? $" Against how little the log knows of lives, make that {LifeWords.List([.. wider.Select(l => LifeWords.Count(l.Safe!.Keep, l.Study.Article.Part))])}." : "";
        Look[] due = [.. looks.Where(l => l.Days.Count > 0).Take(MostNamed)];
        string look = due.Length > 0
            ? $" Looked over today ({LogReader.Day(day)}) and found whole, look again at the {LifeWords.List([.. due.Select(l => $"{LifeWords.Plural(l.Study.Article.Part)} on {LogReader.Day(l.Days[0])}")])}."
            : $" Looked over today ({LogReader.Day(day)}) and found whole, nothing need be looked at again within the period.";
        return $"To last {LifeWords.Chosen(drawer.PeriodSeconds / SecondsADay)} and {LifeWords.Chosen(drawer.SupplySeconds / SecondsADay)} of supply, {LifeWords.Chosen(bridged)} in all, with a chance of at most {LifeWords.Share(drawer.Chance)} that the hand stands still for want of a part, keep {list}{more}.{safe}{look}";
    }

    private static Figure Kept(IReadOnlyList<DrawerLine> lines)
    {
        Terms terms = new();
        foreach ((DrawerLine line, int i) in lines.Select((l, i) => (l, i)).Where(l => l.l.Keep is not null))
        {
            terms.Add(terms.Input($"article_{i + 1}", line.Keep!.Keep, "1"));
        }

        double sum = lines.Sum(l => l.Keep?.Keep ?? 0);
        Figure figure = new("spares_kept", "parts to keep in all", "1");
        return lines.Any(l => l.Keep is not null) ? figure with { Value = sum, Working = terms.Working(terms.Sum, "cox-renewal-1962") } : figure with { Why = "no article has a law of life yet" };
    }

    private static Figure RunsOut(IReadOnlyList<DrawerLine> lines)
    {
        Terms terms = new();
        List<string> factors = [];
        double stays = 1;
        foreach ((DrawerLine line, int i) in lines.Select((l, i) => (l, i)).Where(l => l.l.Keep is not null))
        {
            stays *= 1 - line.Keep!.RunsOut;
            factors.Add($"(1 - {terms.Input($"runs_out_{i + 1}", line.Keep.RunsOut, "1")})");
        }

        Figure figure = new("spares_run_out", "chance that the hand stands still for want of a part", "%");
        return factors.Count > 0 ? figure with { Value = 100 * (1 - stays), Working = terms.Working($"100·(1 - {string.Join("·", factors)})", "cox-renewal-1962") } : figure with { Why = "no article has a law of life yet" };
    }

    private static Figure Expected(DrawerLine line)
    {
        Terms terms = new();
        for (int n = 1; n < line.Keep!.Chances.Count && n <= 200; n++)
        {
            if (line.Keep.Chances[n] > 1e-12)
            {
                string number = LifeWords.Plain(n);
                terms.Add($"{number}·{terms.Input($"chance_of_{number}", line.Keep.Chances[n], "1")}");
            }
        }

        return new($"breaks_expected/{line.Study.Article.Name}", $"breaks expected of {line.Study.Article.Name}", "1") { Value = line.Keep.Expected, Working = terms.Working(terms.Sum, "cox-renewal-1962") };
    }
}

/// <summary>One line of the drawer list.</summary>
/// <param name="Study">The article.</param>
/// <param name="Keep">What to keep by the best law; <see langword="null"/> = not known.</param>
/// <param name="Safe">What to keep by the shortest lives that the bounds allow; <see langword="null"/> = not known, or beyond counting.</param>
/// <param name="Reordered">What to keep if each break orders a part at once, by trial; <see langword="null"/> = not tried or more than is tried.</param>
public sealed record DrawerLine(ArticleStudy Study, StockCount? Keep, StockCount? Safe, int? Reordered);

/// <summary>The answer with its list and days.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Lines">Lines of the drawer list.</param>
/// <param name="Looks">Days to look, the most urgent first.</param>
/// <param name="Today">Today.</param>
public sealed record SparesResult(Answer Answer, IReadOnlyList<DrawerLine> Lines, IReadOnlyList<Look> Looks, DateOnly Today);

/// <summary>Days on which to look at what is fitted of an article, each for the case that all was whole at the look before.</summary>
/// <param name="Study">The article.</param>
/// <param name="Days">The days within the period, a dozen at most.</param>
public sealed record Look(ArticleStudy Study, IReadOnlyList<DateOnly> Days);
