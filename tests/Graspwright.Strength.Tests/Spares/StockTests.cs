using Graspwright.Strength.Lives;
using Graspwright.Strength.Spares;

namespace Graspwright.Strength.Tests.Spares;

public sealed class StockTests
{
    private static readonly LifeLaw Constant = new(LifeForm.Exponential, Math.Log(20), 1);

    [Theory]
    [InlineData(0)]
    [InlineData(35)]
    public void Counts_breaks_of_constant_hazard_as_poisson_does(double age)
    {
        // The age does not matter where hazard is constant.
        double[] counts = Renewals.Counts(Constant, age, 50, 30);
        for (int n = 0; n < 20; n++)
        {
            Assert.Equal(Poisson(n, 2.5), counts[n], 1e-8);
        }
    }

    [Fact]
    public void Counts_alike_where_weibull_and_constant_hazard_are_one_law()
    {
        // Shape 1 of Weibull is the constant hazard; the two forms must agree.
        double[] one = Renewals.Counts(LifeLaw.Weibull(20, 1), 0, 50, 30), other = Renewals.Counts(Constant, 0, 50, 30);
        Assert.All(one.Zip(other), p => Assert.Equal(p.First, p.Second, 1e-14));
    }

    [Theory]
    [InlineData(LifeForm.Weibull, 3.0, 0)]
    [InlineData(LifeForm.Weibull, 1.4, 12)]
    [InlineData(LifeForm.Lognormal, 2.0, 12)]
    [InlineData(LifeForm.Weibull, 0.8, 5)]
    public void Counts_breaks_of_other_lives_as_trials_do(LifeForm form, double shape, double age)
    {
        LifeLaw law = new(form, Math.Log(20), 1 / shape);
        double[] counts = Renewals.Counts(law, age, 90, 40);
        const int Trials = 200_000;
        IReadOnlyList<DownShare> trials = StockTrial.Down([new(law, age)], 90, 1000, 20, Trials, seed: 3);
        double above = 1;
        for (int n = 0; n < 12; n++)
        {
            // No supply within the period: the drawer of n runs out where more than n break.
            above -= counts[n];
            Assert.InRange(above, trials[n].Down - 4.5 * trials[n].Error - 3.0 / Trials, trials[n].Down + 4.5 * trials[n].Error + 3.0 / Trials);
        }
    }

    [Fact]
    public void Counts_a_first_break_as_the_law_itself()
    {
        LifeLaw law = LifeLaw.Weibull(20, 2);
        double[] counts = Renewals.Counts(law, 8, 5, 10);
        Assert.Equal(law.Whole(13) / law.Whole(8), counts[0], 1e-12);
    }

    [Fact]
    public void Keeps_for_several_places_what_one_of_their_sum_needs()
    {
        // Four places of constant hazard are one of four times the hazard: Poisson of mean 10. 15 leave 4.9 %, 14 leave 8.3 % (tables of Poisson).
        StockCount count = Stock.Keep([.. Enumerable.Repeat(new Running(Constant, 0), 4)], 50, 0.05)!;
        Assert.Equal(15, count.Keep);
        Assert.Equal(1 - GammaLaw.PoissonAtMost(15, 10), count.RunsOut, 1e-7);
        Assert.Equal(10, count.Expected, 1e-6);
    }

    [Fact]
    public void Keeps_fewer_for_lives_that_scatter_less()
    {
        int wide = Stock.Keep([new(LifeLaw.Weibull(20, 1), 0)], 100, 0.05)!.Keep, narrow = Stock.Keep([new(LifeLaw.Weibull(20, 6), 0)], 100, 0.05)!.Keep;
        Assert.True(narrow < wide);
    }

    [Fact]
    public void Says_so_where_more_break_than_it_counts() =>
        Assert.Null(Stock.Keep([new(LifeLaw.Weibull(0.1, 2), 0)], 100, 0.05));

    [Fact]
    public void Stands_still_at_constant_hazard_as_the_reordered_drawer_does()
    {
        // One place, none kept: still standing at the first break. Chance 1 − e^(−period/mean), whatever the supply time.
        DownShare none = StockTrial.Down([new(Constant, 0)], 10, 4, 3, 100_000, seed: 1)[0];
        Assert.InRange(none.Down, 1 - Math.Exp(-0.5) - 4.5 * none.Error, 1 - Math.Exp(-0.5) + 4.5 * none.Error);

        // One kept: a break within the supply time of the one before. Summed over counts, gaps of a Poisson process in a period T with supply L:
        // no two of n uniform places lie closer than L with chance (1 − (n − 1)·L/T)ⁿ.
        double still = 0, mean = 0.5;
        for (int n = 0; n <= 3; n++)
        {
            still += Poisson(n, mean) * Math.Pow(Math.Max(0, 1 - Math.Max(0, n - 1) * 0.4), n);
        }

        DownShare one = StockTrial.Down([new(Constant, 0)], 10, 4, 3, 100_000, seed: 1)[1];
        Assert.InRange(one.Down, 1 - still - 4.5 * one.Error, 1 - still + 4.5 * one.Error);
    }

    [Fact]
    public void Looks_again_when_the_chance_of_an_unseen_break_reaches_its_target()
    {
        Running[] running = [new(LifeLaw.Weibull(30, 2), 4), new(LifeLaw.Weibull(30, 2), 15), new(Constant, 3)];
        double next = Stock.NextLook(running, 0.1);
        double whole = running.Aggregate(1.0, (p, r) => p * r.Law.Whole(r.Age + next) / r.Law.Whole(r.Age));
        Assert.Equal(0.9, whole, 1e-9);
        Assert.Equal(-20 * Math.Log(0.9), Stock.NextLook([new(Constant, 7)], 0.1), 1e-9);
    }

    private static double Poisson(int n, double mean) => Math.Exp(n * Math.Log(mean) - mean - GammaLaw.LogGamma(n + 1));
}
