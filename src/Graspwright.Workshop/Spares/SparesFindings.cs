using Graspwright.Strength.Spares;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Spares;

/// <summary>What the drawer and the days mean for the work.</summary>
internal static class SparesFindings
{
    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Of(IReadOnlyList<ArticleStudy> articles, IReadOnlyList<DrawerLine> lines, IReadOnlyList<Look> looks, DateOnly today, double unseen)
    {
        if (articles.Any(a => a.Best.Count > 0))
        {
            yield return Unseen(articles, today, unseen);
        }

        foreach (DrawerLine line in lines.Where(l => l.Keep is null))
        {
            string name = line.Study.Article.Name;
            yield return line.Study.Best.Count == 0
                ? new("spares_known", name, Verdict.NotKnown, $"{name}: {line.Study.Basis}, so no number can be said.", $"Give a computed life under [computed_lives.\"{line.Study.Article.Part}\"], and write down the days on which it was seen whole.")
                : new("spares_known", name, Verdict.Fails, $"{name} breaks more than {Stock.MostEach} times at one place in the time to be bridged.", "Change the part, not the drawer; or shorten period and supply under [drawer].");
        }

        foreach (DrawerLine line in lines.Where(l => l is { Keep: not null, Safe: null }))
        {
            yield return new("spares_safe", line.Study.Article.Name, Verdict.NotKnown, $"{line.Study.Article.Name}: the bounds of its life are so wide that no number is safe.", "Wait for more breaks before you rely on the number.");
        }

        foreach (Look look in looks.Where(l => l.Days.Count > 0))
        {
            int days = look.Days[0].DayNumber - today.DayNumber;
            string parts = LifeWords.Plural(look.Study.Article.Part);
            if (days <= 1)
            {
                yield return new("look_often", look.Study.Article.Name, Verdict.Tight, $"of the {parts} fitted now, even from one day to the next the chance that one breaks unseen is about {LifeWords.Share(unseen)} or more.", $"Look at the {parts} before each day's first load; change the oldest now.")
                {
                    Figure = days,
                    Limit = 1,
                    Unit = "days",
                };
            }
        }
    }

    private static Finding Unseen(IReadOnlyList<ArticleStudy> articles, DateOnly today, double unseen)
    {
        double log = 0;
        (double Chance, string Name) worst = (0, "");
        foreach (ArticleStudy a in articles.Where(a => a.Best.Count > 0))
        {
            for (int i = 0; i < a.Fitted.Count; i++)
            {
                double one = a.Best[i].Law.LogWhole(a.Best[i].Age) - a.Best[i].Law.LogWhole(a.Fitted[i].Age(a.Fitted[i].LastSeenWhole ?? a.Fitted[i].Fitted));
                log += one;
                double chance = 1 - Math.Exp(one);
                worst = chance > worst.Chance ? (chance, $"{a.Fitted[i].Part} at {(a.Fitted[i].Position.Length > 0 ? a.Fitted[i].Position : "its place")}") : worst;
            }
        }

        double broken = 1 - Math.Exp(log), margin = (unseen - broken) / unseen;
        string likeliest = worst.Chance > 0 ? $" Likeliest: the {worst.Name}, {LifeWords.Share(worst.Chance)}." : "";
        return new("broken_unseen", "hand", Verdicts.Of(margin), $"since the parts were last seen whole, the chance that one has broken unseen is {LifeWords.Share(broken)} on {LogReader.Day(today)}.{likeliest}", "Look over the hand and write the day as last_seen_whole.")
        {
            Figure = 100 * broken,
            Limit = 100 * unseen,
            Unit = "%",
            Margin = margin,
        };
    }
}
