using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Tests.Lives;

public sealed class ComparisonTests
{
    [Fact]
    public void Tests_the_remissions_as_printed()
    {
        LikenessTest test = Comparison.LogRank([PublishedLives.Maintained, PublishedLives.NotMaintained]);
        Assert.Equal(3.4, test.Statistic, 0.05); // R's survdiff on the set credited to Miller prints 3.4 on 1 degree, p = 0.07
        Assert.Equal(0.07, test.Chance, 0.005);
        Assert.Equal(1, test.Freedom);
    }

    [Fact]
    public void Sees_the_same_in_any_order_of_groups()
    {
        LikenessTest one = Comparison.LogRank([PublishedLives.Maintained, PublishedLives.NotMaintained, PublishedLives.BallBearings]);
        LikenessTest other = Comparison.LogRank([PublishedLives.BallBearings, PublishedLives.Maintained, PublishedLives.NotMaintained]);
        Assert.Equal(one.Statistic, other.Statistic, 1e-9);
        Assert.True(one.Statistic > 1);
    }

    [Fact]
    public void Compares_within_strata_by_adding_what_each_shows()
    {
        // Two groups: the statistic is (Σ over)² / Σ variance; each stratum alone gives over² / variance, so equal strata double it.
        double one = Comparison.LogRank([PublishedLives.Maintained, PublishedLives.NotMaintained]).Statistic;
        LikenessTest two = Comparison.LogRank([[PublishedLives.Maintained, PublishedLives.NotMaintained], [PublishedLives.Maintained, PublishedLives.NotMaintained]]);
        Assert.Equal(2 * one, two.Statistic, 1e-9);

        // A stratum turned round takes away what the other shows.
        Assert.Equal(0, Comparison.LogRank([[PublishedLives.Maintained, PublishedLives.NotMaintained], [PublishedLives.NotMaintained, PublishedLives.Maintained]]).Statistic, 1e-12);
        Assert.Equal(double.NaN, Comparison.LogRank([[PublishedLives.Maintained, []], [[], PublishedLives.NotMaintained]]).Chance);
    }

    [Fact]
    public void Finds_no_difference_between_a_group_and_itself()
    {
        Assert.Equal(0, Comparison.LogRank([PublishedLives.Maintained, PublishedLives.Maintained]).Statistic, 1e-12);
        LikenessTest ratio = Comparison.LikelihoodRatio(LifeForm.Weibull, [PublishedLives.Maintained, PublishedLives.Maintained]);
        Assert.Equal(0, ratio.Statistic, 1e-9);
        Assert.Equal(1, ratio.Chance, 1e-9);
    }

    [Fact]
    public void Compares_constant_hazards_as_their_formula_does()
    {
        // Exponential lives: 2·Σ d·ln(rate of the group / rate of all), from total times and breaks.
        static (double Breaks, double Time) Sum(IReadOnlyList<LifeRecord> g) => (g.Where(r => r.Broke).Sum(r => r.Count), g.Sum(r => r.Count * r.Low));
        (double d1, double t1) = Sum(PublishedLives.Maintained);
        (double d2, double t2) = Sum(PublishedLives.NotMaintained);
        double all = (d1 + d2) / (t1 + t2), expected = 2 * (d1 * Math.Log(d1 / t1 / all) + d2 * Math.Log(d2 / t2 / all));
        Assert.Equal(expected, Comparison.LikelihoodRatio(LifeForm.Exponential, [PublishedLives.Maintained, PublishedLives.NotMaintained]).Statistic, 1e-9);
    }

    [Fact]
    public void Adds_the_shares_of_all_causes_to_all_that_broke()
    {
        (LifeRecord[] records, int[] cause) = LifeFittingTests.ShockAbsorbers();
        double sum = Causes.Share(records, cause, 1)[^1].Share + Causes.Share(records, cause, 2)[^1].Share;
        Assert.Equal(1 - Survivors.Steps(records)[^1].Whole, sum, 1e-12);
    }

    [Fact]
    public void Gives_the_error_of_a_share_as_counting_does_where_nothing_leaves_early()
    {
        // Ten parts all watched to the end: the share by a cause is a plain count, its error √(p·(1 − p)/n).
        LifeRecord[] records = [.. Enumerable.Range(1, 7).Select(t => LifeRecord.BrokeAt(t)), LifeRecord.WholeAt(9, 3)];
        int[] cause = [1, 2, 1, 1, 2, 2, 1, 0];
        CauseStep last = Causes.Share(records, cause, 1)[^1];
        Assert.Equal(0.4, last.Share, 1e-12);
        Assert.Equal(Math.Sqrt(0.4 * 0.6 / 10), last.Error, 1e-12);
    }
}
