using Graspwright.Mechanics.Effort;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Measures;

public sealed class HoldTimeTests
{
    // Rohmert's fit and the hand-and-grip law of Frey Law & Avin 2010 (10.1080/00140130903389068), as tabled from their
    // published coefficients; both seen quoted.
    [Theory]
    [InlineData(0.15, 15.46, 711.5)]
    [InlineData(0.20, 6.50, 447.7)]
    [InlineData(0.30, 2.54, 233.1)]
    [InlineData(0.50, 1.10, 102.4)]
    [InlineData(1.00, 0.10, 33.6)]
    public void Follows_the_published_curves(double share, double rohmertMinutes, double handGripSeconds)
    {
        Assert.Equal(rohmertMinutes, Endurance.RohmertSeconds(share) / 60, 0.005);
        Assert.Equal(handGripSeconds, Endurance.HandGripSeconds(share), 0.06);
    }

    [Fact]
    public void Gives_a_band_that_holds_both_curves()
    {
        Figure figure = new HoldTime().Figure(MadeRun.Gripping().Reading());

        Assert.InRange(Endurance.RohmertSeconds(0.25), figure.Low!.Value, figure.High!.Value);
        Assert.InRange(figure.Value!.Value, figure.Low.Value, figure.High.Value);
        Assert.Equal(Endurance.HandGripSeconds(0.25), figure.Value.Value, 1e-9);
    }

    [Fact]
    public void Holds_the_measured_grip_time_at_fifteen_per_cent()
    {
        // Heinzl 2025, Sci Rep 15:1250, seen quoted: handgrip at 15 % of maximum lasts 455.9 s (SD 34.1 s).
        MadeRun made = MadeRun.Gripping();
        made.Closing[^1][TraceLayout.Tau] = 1.5;
        Figure figure = new HoldTime().Figure(made.Reading());
        Assert.InRange(455.9, figure.Low!.Value, figure.High!.Value);
    }

    [Fact]
    public void Is_silent_where_the_curves_have_no_data()
    {
        MadeRun made = MadeRun.Gripping();
        made.Closing[^1][TraceLayout.Tau] = 0.5;
        Assert.Null(new HoldTime().Figure(made.Reading()).Value);
    }
}
