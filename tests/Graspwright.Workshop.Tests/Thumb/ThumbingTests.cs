using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Thumb;

namespace Graspwright.Workshop.Tests.Thumb;

public sealed class ThumbingTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard();
    private static readonly Answer Answered = Thumbing.Answer(Demo, "hand.toml").Answer!;

    [Fact]
    public void Prints_formulas_that_give_the_printed_values() => PrintedFormulas.GiveTheirValues(Answered.Figures);

    [Fact]
    public void Warns_that_the_hand_can_hurt_the_wearers_own_thumb()
    {
        Assert.Contains(Answered.Cautions, c => c.Contains("hurt its wearer's own thumb", StringComparison.Ordinal));
        HandModel tender = Demo with { Thumb = Demo.Thumb! with { Limit = 5000 } };
        Assert.Contains(Thumbing.Answer(tender, "hand.toml").Answer!.Findings, f => f is { Key: "thumb_pressure", Verdict: Verdict.Fails } && f.Reason.Contains("can hurt", StringComparison.Ordinal));
    }

    [Fact]
    public void A_thumb_that_reaches_nothing_is_said()
    {
        ThumbPosture far = new("far away", new(0.05, -0.15, 0.09), new(0.09, -0.12, 0.09));
        Answer answer = Thumbing.Answer(Demo with { Thumb = Demo.Thumb! with { Postures = [far] } }, "hand.toml").Answer!;
        Assert.Contains("meets none", answer.Sentence, StringComparison.Ordinal);
        Assert.Equal(Verdict.Fails, answer.Findings.First(f => f.Key == "thumb_reach").Verdict);
    }

    [Fact]
    public void A_thumb_without_postures_is_bad_input() =>
        Assert.Equal("thumb.postures", Assert.Single(Thumbing.Answer(Demo with { Thumb = null }, "hand.toml").Errors).Key);

    /// <summary>Smaby 2004: 1.4 N a remote control, nine of twelve below 10.5 N, 31.4 N a mains plug.</summary>
    [Theory]
    [InlineData(1.3, 0)]
    [InlineData(1.4, 1)]
    [InlineData(10.4, 1)]
    [InlineData(10.5, 9)]
    [InlineData(31.3, 9)]
    [InlineData(31.4, 12)]
    public void Counts_the_daily_tasks_that_a_pinch_does(double newtons, int tasks) => Assert.Equal(tasks, DailyPinch.AtLeast(newtons));
}
