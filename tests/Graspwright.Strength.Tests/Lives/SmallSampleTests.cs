using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Tests.Lives;

public sealed class SmallSampleTests
{
    private static readonly LifeRecord[] Whole = [LifeRecord.WholeAt(40), LifeRecord.WholeAt(25), LifeRecord.WholeAt(60)];

    [Fact]
    public void Bounds_a_constant_hazard_as_the_chi_square_formula_prints()
    {
        // Documents of an open reliability library: 10 000 h, 6 breaks, one-sided 80 % → 1101.8815940201; 19 520 h, 7 breaks, two-sided 80 % → 1658.3248534993.
        LifeRecord[] six = [LifeRecord.BrokeAt(1000, 6), LifeRecord.WholeAt(4000)], seven = [LifeRecord.BrokeAt(1000, 7), LifeRecord.WholeAt(12520)];
        Assert.Equal(1101.8815940201, LowerBound.ScaleAtLeast(six, 1, 0.8), 1e-7);
        Assert.Equal(1658.3248534993, LowerBound.ScaleAtLeast(seven, 1, 0.9), 1e-7);
    }

    [Fact]
    public void Bounds_a_life_without_breaks_by_the_chance_of_seeing_none()
    {
        foreach (double shape in (double[])[1, 2.3, 4])
        {
            double scale = LowerBound.ScaleAtLeast(Whole, shape, 0.95);
            Assert.Equal(0.05, Whole.Aggregate(1.0, (p, r) => p * LifeLaw.Weibull(scale, shape).Whole(r.Low)), 1e-10);
        }

        double least = LowerBound.QuantileAtLeast(Whole, (1, 4), 0.5, 0.95);
        Assert.True(least <= LifeLaw.Weibull(LowerBound.ScaleAtLeast(Whole, 2, 0.95), 2).Quantile(0.5));
        Assert.Equal(double.PositiveInfinity, LowerBound.BestScale(Whole, 2));
    }

    [Fact]
    public void Updates_a_normal_belief_as_the_closed_form_does()
    {
        // Lognormal lives of known spread 0.5, belief about ln median N(ln 20, 0.6): the textbook's weighted mean.
        double[] lives = [12, 31, 18, 26];
        LifeBelief belief = new(LifeForm.Lognormal, 20, 0.6, 2, 0);
        Believed after = BayesUpdate.After(belief, [.. lives.Select(t => LifeRecord.BrokeAt(t))]);
        double weight = 1 / 0.36 + lives.Length / 0.25, mean = (Math.Log(20) / 0.36 + lives.Sum(Math.Log) / 0.25) / weight, spread = 1 / Math.Sqrt(weight);
        Assert.Equal(Math.Exp(mean), after.Median.Value, 1e-6 * after.Median.Value);
        Assert.Equal(Math.Exp(mean - 1.2815515655446004 * spread), after.Median.Low, 1e-6 * after.Median.Low);
        Assert.Equal(Math.Exp(mean + 1.2815515655446004 * spread), after.Median.High, 1e-6 * after.Median.High);

        // The chance that the next one is whole at 15: normal of both spreads together; a smooth sum, so to nine digits.
        double z = (Math.Log(15) - mean) / Math.Sqrt(spread * spread + 0.25);
        Assert.Equal(NormalLaw.Above(z), after.Whole(15), 1e-9);
    }

    [Fact]
    public void Returns_the_belief_where_nothing_was_seen()
    {
        LifeBelief belief = LifeBelief.From(LifeForm.Weibull, 21, (9, 49), (1, 4));
        Believed before = BayesUpdate.Before(belief);
        Assert.Equal(21, before.Median.Value, 21e-6);
        Assert.Equal(9, before.Median.Low, 9e-6);
        Assert.Equal(49, before.Median.High, 49e-6);
        Assert.Equal(2, before.Shape.Value, 2e-6);
        Assert.Equal(1, before.Shape.Low, 1e-6);
        Assert.Equal(4, before.Shape.High, 4e-6);
        Assert.Equal(1, before.Nodes.Sum(n => n.Weight), 1e-12);
    }

    [Fact]
    public void Comes_to_the_fit_where_the_records_are_many()
    {
        LifeRecord[] many = [.. PublishedLives.BallBearings.Select(r => r with { Count = 400 })];
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, many);
        Believed after = BayesUpdate.After(LifeBelief.From(LifeForm.Weibull, 20, (5, 80), (1, 4)), many);
        Assert.Equal(fit.Law.Quantile(0.5), after.Median.Value, 0.003 * after.Median.Value);
        Assert.Equal(fit.Law.Shape, after.Shape.Value, 0.003 * fit.Law.Shape);
        Assert.True(after.Median.High - after.Median.Low < 0.05 * after.Median.Value);
    }

    [Fact]
    public void Believes_in_longer_lives_where_nothing_broke()
    {
        LifeBelief belief = LifeBelief.From(LifeForm.Weibull, 21, (9, 49), (1, 4));
        Believed before = BayesUpdate.Before(belief), after = BayesUpdate.After(belief, Whole);
        Assert.True(after.Median.Value > before.Median.Value * 1.5);
        Assert.True(after.Whole(30) > before.Whole(30));
    }
}
