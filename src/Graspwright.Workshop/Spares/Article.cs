using Graspwright.Strength.Lives;
using Graspwright.Strength.Spares;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;

namespace Graspwright.Workshop.Spares;

/// <summary>A thing that lies in the drawer: a part of one material and revision, whatever position it is for.</summary>
/// <param name="Part">Part.</param>
/// <param name="Material">Material; empty = not said.</param>
/// <param name="Revision">Revision; empty = not said.</param>
public sealed record Article(string Part, string Material, string Revision)
{
    /// <summary>Its name on the list.</summary>
    public string Name => Kind.Length > 0 ? $"{Part}, {Kind}" : Part;

    /// <summary>Material and revision; empty where neither is said.</summary>
    public string Kind => string.Join(", ", new[] { Material, Revision.Length > 0 ? $"revision {Revision}" : "" }.Where(w => w.Length > 0));
}

/// <summary>An article with what is fitted of it and the law by which its lives are reckoned.</summary>
public sealed record ArticleStudy
{
    /// <summary>The article.</summary>
    public required Article Article { get; init; }

    /// <summary>What is fitted now.</summary>
    public required IReadOnlyList<LogEntry> Fitted { get; init; }

    /// <summary>Where it runs, by the best law of each place, ages of today; empty where the log and the hand file give no law.</summary>
    public IReadOnlyList<Running> Best { get; init; } = [];

    /// <summary>The same by the shortest lives that the bounds allow.</summary>
    public IReadOnlyList<Running> Cautious { get; init; } = [];

    /// <summary>What the law rests on, in words.</summary>
    public required string Basis { get; init; }

    private const int Fewest = 3;
    private const double Differ = 0.05;

    /// <summary>Studies every article that is fitted.</summary>
    /// <param name="hand">The hand, for lives that were computed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="today">Today.</param>
    public static IReadOnlyList<ArticleStudy> All(Hand.HandModel hand, LogReading log, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. log.Entries.Where(e => e.How == Ending.None).GroupBy(e => new Article(e.Part, e.Material, e.Revision))
                .OrderBy(g => g.Key.Part, StringComparer.Ordinal).ThenBy(g => g.Key.Name, StringComparer.Ordinal)
                .Select(g => Of(hand, log, g.Key, [.. g], today)),
        ];
    }

    private static ArticleStudy Of(Hand.HandModel hand, LogReading log, Article article, LogEntry[] fitted, DateOnly today)
    {
        Hand.ComputedLife? computed = ComputedPart.Of(hand, article.Part, [.. log.Entries.Where(e => e.Part == article.Part)]);
        (PartStudy study, string basis) = Alike(log, article, computed);
        if (study.Fitted && study.Broke >= Fewest && (study.After is null || study.Broke >= PartStudy.EnoughBreaks))
        {
            IReadOnlyList<PartStudy> fingers = study.By(e => e.Finger);
            bool apart = fingers.Count > 1 && fingers.All(f => f.Fitted && f.Broke >= Fewest) && fitted.All(e => fingers.Any(f => f.Name == e.Finger))
                && Comparison.LogRank([.. fingers.Select(f => f.Records)]).Chance < Differ;
            (LifeLaw Law, LifeLaw Cautious) LawOf(LogEntry e) => Bounds(apart ? fingers.First(f => f.Name == e.Finger) : study);
            return new()
            {
                Article = article,
                Fitted = fitted,
                Best = [.. fitted.Select(e => new Running(LawOf(e).Law, e.Age(today)))],
                Cautious = [.. fitted.Select(e => new Running(LawOf(e).Cautious, e.Age(today)))],
                Basis = $"{LifeWords.Count(study.Broke, "break")} of {basis}{(apart ? ", each finger by its own" : "")}",
            };
        }

        if (study.After is { } after)
        {
            return Same(LifeLaw.Weibull(Scale(after.Median.Value, after.Shape.Value), after.Shape.Value), LifeLaw.Weibull(Scale(after.Median.Low, after.Shape.Value), after.Shape.Value),
                $"the computed life, corrected by {LifeWords.Count(study.Broke, "break")} and {study.Whole} whole");
        }

        if (study.Broke > 0 && study.Fitted)
        {
            (LifeLaw law, LifeLaw cautious) = Bounds(study);
            return Same(law, cautious, $"only {LifeWords.Count(study.Broke, "break")} of {basis}");
        }

        if (study.Broke == 0 && study.Records.Any(r => r.Low > 0))
        {
            double shape = PartStudy.Shapes.Low;
            LifeLaw least = LifeLaw.Weibull(LowerBound.ScaleAtLeast(study.Records, shape, 0.5), shape), safe = LifeLaw.Weibull(LowerBound.ScaleAtLeast(study.Records, shape, 0.95), shape);
            return Same(least, safe, $"none of {basis} broke: bounds from below at constant hazard, even odds and 95 %");
        }

        return new() { Article = article, Fitted = fitted, Basis = study.Broke > 0 ? LifeFigures.Why(study.Fit(LifeForm.Weibull).Standing) : "nothing is known of its life" };

        ArticleStudy Same(LifeLaw law, LifeLaw cautious, string words) => new()
        {
            Article = article,
            Fitted = fitted,
            Best = [.. fitted.Select(e => new Running(law, e.Age(today)))],
            Cautious = [.. fitted.Select(e => new Running(cautious, e.Age(today)))],
            Basis = words,
        };
    }

    /// <summary>The narrowest set of entries like the article that holds enough breaks.</summary>
    private static (PartStudy Study, string Basis) Alike(LogReading log, Article a, Hand.ComputedLife? computed)
    {
        (Func<LogEntry, bool> Like, string Words)[] wider =
        [
            (e => e.Part == a.Part && e.Material == a.Material && e.Revision == a.Revision, "this article"),
            (e => e.Part == a.Part && e.Material == a.Material, "any revision"),
            (e => e.Part == a.Part, "any material and revision"),
        ];
        Func<LogEntry, bool> narrow = wider[0].Like;
        foreach ((Func<LogEntry, bool> like, string words) in wider)
        {
            LogEntry[] entries = [.. log.Entries.Where(like)];
            if (Comparison.LogRank([[.. entries.Where(narrow).Select(e => e.Life)], [.. entries.Where(e => !narrow(e)).Select(e => e.Life)]]).Chance < Differ)
            {
                break; // the log shows that the others live unlike this article
            }

            if (entries.Count(e => e.Broke) >= Fewest && new PartStudy(a.Part, entries, computed) is { Fitted: true } study)
            {
                return (study, words);
            }
        }

        return (new PartStudy(a.Part, [.. log.Entries.Where(wider[0].Like)], computed), wider[0].Words);
    }

    /// <summary>The law, and the law of the same shape whose median is the lower bound.</summary>
    private static (LifeLaw Law, LifeLaw Cautious) Bounds(PartStudy study)
    {
        LifeLaw law = study.Best.Law;
        return (law, law with { Location = law.Location + Math.Log(ProfileBounds.Quantile(study.Best, 0.5).Low / law.Quantile(0.5)) });
    }

    private static double Scale(double median, double shape) => median / Math.Pow(Math.Log(2), 1 / shape);
}
