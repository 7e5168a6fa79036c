using Graspwright.Moulding.Batch;

namespace Graspwright.Moulding.Tests.Batch;

public sealed class BatchTests
{
    private static readonly BatchInputs Plain = new() { Area = 0.04, Thickness = 0.003, DensityA = 1200, DensityB = 1200, ScaleStep = 0.001 };

    [Fact]
    public void Weighs_a_plain_sheet()
    {
        BatchSum sum = BatchSums.Of(Plain); // 200 × 200 × 3 mm = 120 cm³ = 144 g
        Assert.Equal(120e-6, sum.Volume, 1e-15);
        Assert.Equal(0.144, sum.Mass, 1e-12);
        Assert.Equal(0.072, sum.A.Mass, 1e-12);
        Assert.Equal(2 / 72.0, sum.RatioErrorWorst, 1e-12);
        Assert.Equal(Math.Sqrt(2.0 / 6) / 72, sum.RatioErrorDeviation, 1e-12);
    }

    [Fact]
    public void Keeps_ten_to_one_by_weight_whatever_the_densities()
    {
        BatchSum sum = BatchSums.Of(Plain with { RatioA = 10, RatioB = 1, DensityA = 1300, DensityB = 1000, Waste = 0.2, Spare = 0.05 });
        Assert.Equal(10, sum.A.Mass / sum.B.Mass, 1e-12);
        Assert.Equal(sum.Volume, sum.A.Volume + sum.B.Volume, 1e-15);
        Assert.Equal(120e-6 * 1.05 / 0.8, sum.Volume, 1e-15);
        Assert.Equal(11 / (10 / 1300.0 + 1 / 1000.0), sum.Density, 1e-9);
    }

    // The check value of the trade: 1 mm on a ball of 50 mm is 6 % (common practice, no source); a ball of 50 mm holds 65.4 cm³.
    [Fact]
    public void A_millimetre_on_a_ball_of_fifty_is_six_per_cent()
    {
        Assert.Equal(0.06, BatchSums.BallError(0.05, 0.001), 0.0013);
        Assert.Equal(0.05, BatchSums.Ball(Math.PI / 6 * 125e-6), 1e-15);
    }

    [Fact]
    public void Refuses_a_ratio_of_nought() => Assert.Throws<ArgumentException>(() => BatchSums.Of(Plain with { RatioB = 0 }));

    [Fact]
    public void Lays_the_steps_end_to_end_and_shares_all_but_mixing()
    {
        WorkRates rates = new(60, 1000, 2000, 100, 20, 500);
        IReadOnlyList<WorkStep> one = Splitting.Steps(rates, 0.04, 0.3, 2), two = Splitting.Steps(rates, 0.04, 0.3, 2, hands: 2);
        Assert.Equal(60 + 40 + 80 + 30 + 40 + 20, one[^1].End, 1e-9);
        Assert.Equal(60 + 105, two[^1].End, 1e-9);
        Assert.All(one.Zip(one.Skip(1)), p => Assert.Equal(p.First.End, p.Second.Start));
    }

    [Fact]
    public void Cuts_a_trapezium_into_equal_areas()
    {
        // Width 1 + s from 0 to 2, area 4: the half lies where s + s²/2 = 2.
        double cut = Assert.Single(Splitting.EqualAreas([0, 2], [1, 3], 2));
        Assert.Equal(Math.Sqrt(5) - 1, cut, 1e-12);
        Assert.Equal([0.5, 1.0, 1.5], Splitting.EqualAreas([0, 0.7, 2], [1, 1, 1], 4).Select(c => Math.Round(c, 12)));
    }
}
