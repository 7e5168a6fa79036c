using CsCheck;
using Graspwright.Mechanics.Effort;

namespace Graspwright.Mechanics.Tests.Effort;

/// <summary>Holding times against the values that the two published curves give.</summary>
public sealed class EnduranceTests
{
    // Rohmert 1960, as later fitted and quoted: minutes by share of the maximum, to the digits tabulated.
    [Theory]
    [InlineData(0.15, 15.46)]
    [InlineData(0.20, 6.50)]
    [InlineData(0.25, 3.70)]
    [InlineData(0.30, 2.54)]
    [InlineData(0.40, 1.56)]
    [InlineData(0.50, 1.10)]
    [InlineData(0.70, 0.57)]
    [InlineData(1.00, 0.10)]
    public void Follows_Rohmerts_curve(double share, double minutes) => Assert.Equal(minutes, Endurance.RohmertSeconds(share) / 60, 0.0051);

    // Frey Law and Avin 2010, Table 2, hand and grip, as quoted: seconds by share of the maximum.
    [Theory]
    [InlineData(0.15, 711.5)]
    [InlineData(0.20, 447.7)]
    [InlineData(0.25, 312.6)]
    [InlineData(0.30, 233.1)]
    [InlineData(0.40, 146.7)]
    [InlineData(0.50, 102.4)]
    [InlineData(0.70, 59.6)]
    [InlineData(1.00, 33.55)]
    public void Follows_the_law_for_hand_and_grip(double share, double seconds) => Assert.Equal(seconds, Endurance.HandGripSeconds(share), 0.051);

    [Fact]
    public void Holds_both_curves_in_its_band_and_a_measured_point_too()
    {
        // Grip at 15 % of the maximum, measured: 455.9 s (Heinzl 2025, Sci Rep 15:1250, seen quoted).
        HoldingTime time = Endurance.Hold(0.15);
        Assert.Equal(EnduranceReach.ThinData, time.Reach);
        Assert.InRange(455.9, time.Low, time.High!.Value);
        Assert.Equal(0.53 * Endurance.HandGripSeconds(0.15), time.Low, 1e-9);
        Assert.Equal(1.47 * Endurance.HandGripSeconds(0.15), time.High!.Value, 1e-9);
    }

    [Fact]
    public void Keeps_a_band_in_order_that_shrinks_with_the_effort() =>
        Gen.Select(Gen.Double[0.15, 1], Gen.Double[0.15, 1]).Where((a, b) => a != b).Sample((a, b) =>
        {
            HoldingTime easy = Endurance.Hold(Math.Min(a, b)), hard = Endurance.Hold(Math.Max(a, b));
            Assert.True(easy.Low > hard.Low && easy.High > hard.High);
            Assert.InRange(easy.HandGrip!.Value, easy.Low, easy.High!.Value);
            Assert.InRange(easy.Rohmert!.Value, easy.Low, easy.High!.Value);
        });

    [Theory]
    [InlineData(0.2499, EnduranceReach.ThinData)]
    [InlineData(0.25, EnduranceReach.Covered)]
    [InlineData(1, EnduranceReach.Covered)]
    public void Says_how_well_the_data_cover_the_effort(double share, EnduranceReach reach) => Assert.Equal(reach, Endurance.Hold(share).Reach);

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.1499)]
    public void Gives_only_a_least_time_below_the_curves(double share)
    {
        HoldingTime time = Endurance.Hold(share);
        Assert.Equal(new(EnduranceReach.LongerThan, null, null, Endurance.Hold(0.15).Low, null), time);
        Assert.Throws<ArgumentOutOfRangeException>(() => Endurance.HandGripSeconds(share));
        Assert.Throws<ArgumentOutOfRangeException>(() => Endurance.RohmertSeconds(share));
    }

    [Fact]
    public void Holds_nothing_above_the_maximum() => Assert.Equal(new(EnduranceReach.AboveMaximum, null, null, 0, null), Endurance.Hold(1.01));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(double.NaN)]
    public void Refuses_what_is_no_share(double share) => Assert.Throws<ArgumentOutOfRangeException>(() => Endurance.Hold(share));
}
