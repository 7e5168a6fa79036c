using CsCheck;
using Graspwright.Mechanics.Effort;

namespace Graspwright.Mechanics.Tests.Effort;

public sealed class DayLoadTests
{
    // Potvin 2012, the equation as quoted (from memory), at round duty cycles: three printed digits.
    [Theory]
    [InlineData(0.01, 0.669)]
    [InlineData(0.05, 0.513)]
    [InlineData(0.10, 0.425)]
    [InlineData(0.20, 0.320)]
    [InlineData(0.30, 0.251)]
    [InlineData(0.50, 0.153)]
    [InlineData(0.70, 0.082)]
    [InlineData(0.90, 0.025)]
    public void Acceptable_effort_is_that_of_the_published_equation(double duty, double share) => Assert.Equal(share, DayLoad.Acceptable(duty), 0.0006);

    [Fact]
    public void One_second_in_eight_hours_may_take_everything() => Assert.Equal(1, DayLoad.Acceptable(1.0 / 28800));

    [Fact]
    public void A_day_worked_by_hand()
    {
        // 600 grips of 4 s at 20 %, closing 1 s: 600·0.2·4.5 = 540 s of full effort in 28 800 s; 3000 s under load.
        DayLoadResult day = DayLoad.Of([new(0.2, 600, 4, 1)], 28800);
        Assert.Equal(540.0 / 28800, day.MeanShare, 1e-15);
        Assert.Equal(3000.0 / 28800, day.DutyShare, 1e-15);
        Assert.Equal((0.2, 0.0), (day.PeakShare, day.StaticShare));
    }

    [Fact]
    public void A_load_that_is_never_let_go_is_static()
    {
        Assert.Equal(0.04, DayLoad.Of([new(0.04, 1, 28800, 0)], 28800).StaticShare);
        Assert.Equal(0.02, DayLoad.Of([new(0.02, 1, 5000, 0), new(0.3, 1, 23800, 0)], 28800).StaticShare);
        Assert.Equal(0.3, DayLoad.Of([new(0.02, 1, 1000, 0), new(0.3, 1, 27800, 0)], 28800).StaticShare);
    }

    [Fact]
    public void Grips_that_take_longer_than_the_day_have_no_mean() => Assert.True(double.IsNaN(DayLoad.Of([new(0.2, 10000, 4, 1)], 28800).MeanShare));

    [Fact]
    public void The_mean_lies_below_the_peak_times_the_time_under_load() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 900], Gen.Double[0, 9], Gen.Double[0, 2], (share, times, hold, close) => DayLoad.Of([new(share, times, hold, close), new(share / 2, times, hold, close)], 28800))
            .Sample(d => double.IsNaN(d.MeanShare) || (d.MeanShare <= d.PeakShare * d.DutyShare + 1e-12 && d.StaticShare <= d.PeakShare));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Nonsense_is_refused(double duty)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DayLoad.Acceptable(duty));
        Assert.Throws<ArgumentOutOfRangeException>(() => DayLoad.Of([], 0));
    }
}
