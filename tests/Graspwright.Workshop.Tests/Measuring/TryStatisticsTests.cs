using Graspwright.Workshop.Measuring;

namespace Graspwright.Workshop.Tests.Measuring;

public sealed class TryStatisticsTests
{
    // Critical range factors of ISO 5725-6 (from memory): 2.8, 3.3, 3.6, 3.9 for 2 to 5 results; each is exceeded once in twenty.
    [Theory]
    [InlineData(2, 2.8)]
    [InlineData(3, 3.3)]
    [InlineData(4, 3.6)]
    [InlineData(5, 3.9)]
    public void The_critical_range_is_exceeded_by_chance_once_in_twenty(int tries, double factor)
    {
        double[] ranges = Ranges(tries);
        Assert.Equal(0.05, ranges.Count(r => r > factor) / (double)ranges.Length, 0.005); // the factors have two digits
        AngleTries angle = new(0, [.. Enumerable.Repeat(10.0, tries)], [], []);
        Assert.Equal(factor * TryStatistics.AssumedScatter * 10, new TryStatistics([angle]).CriticalRange(angle), 1e-12);
    }

    [Fact]
    public void The_scatter_of_a_sheet_is_that_of_its_tries_and_one_bad_angle_does_not_move_it()
    {
        Random chance = new(11);
        AngleTries[] angles = [.. Enumerable.Range(0, 4001).Select(i => new AngleTries(i, [.. Enumerable.Range(0, 3).Select(_ => 10 * (1 + 0.04 * Normal(chance)))], [], []))];
        Assert.Equal(0.04, new TryStatistics(angles).Scatter, 0.001);
        Assert.Equal(0.04, new TryStatistics(angles).Pooled, 0.002); // some two hundred angles that disagree by chance are left out of it
        AngleTries[] few = [.. angles.Take(7), new(99, [3, 10, 12], [], [])];
        Assert.InRange(new TryStatistics(few).Scatter, 0.02, 0.07);
        Assert.False(new TryStatistics(few).Agree(few[^1]));
    }

    [Fact]
    public void Intervals_hold_the_true_mean_nineteen_times_in_twenty()
    {
        Random chance = new(5);
        int held = 0;
        const int sheets = 2000;
        for (int s = 0; s < sheets; s++)
        {
            AngleTries[] angles = [.. Enumerable.Range(0, 6).Select(i => new AngleTries(i, [.. Enumerable.Range(0, 3).Select(_ => 10 * (1 + 0.04 * Normal(chance)))], [], []))];
            TryStatistics statistics = new(angles);
            held += Math.Abs(angles[0].Mean - 10) <= statistics.HalfWidth(angles[0]) ? 1 : 0;
        }

        Assert.InRange(held / (double)sheets, 0.93, 0.97);
    }

    // Printed in every table of Student's t (two-sided 95 %).
    [Theory]
    [InlineData(1, 12.706)]
    [InlineData(2, 4.303)]
    [InlineData(10, 2.228)]
    [InlineData(30, 2.042)]
    [InlineData(40, 2.021)]
    [InlineData(60, 2.000)]
    [InlineData(120, 1.980)]
    public void Student_s_t_is_that_of_the_tables(int freedom, double t) => Assert.Equal(t, StudentT.Quantile975(freedom), 0.0015);

    private static double[] Ranges(int tries)
    {
        Random chance = new(tries);
        return [.. Enumerable.Range(0, 60_000).Select(_ =>
        {
            double[] values = [.. Enumerable.Range(0, tries).Select(_ => Normal(chance))];
            return values.Max() - values.Min();
        })];
    }

    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(Math.Tau * chance.NextDouble());
}
