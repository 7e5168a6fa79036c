using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Grip;

/// <summary>What the example's README promises of the boatyard hand, through the real solver.</summary>
public sealed class BoatyardTests
{
    private static readonly GripResult Result = Gripping.Answer(new(MadeHand.Boatyard()) { File = "hand.toml" });

    [Theory]
    [InlineData("rail", 10)]
    [InlineData("mug", 10)]
    [InlineData("tin", 10)]
    [InlineData("plate", 3)]
    public void Grips_with_every_finger_at_all_day_effort_and_opens_again(string thing, double newtons)
    {
        GripCase held = AllDay(thing);
        Assert.Equal(RunEnd.Effort, held.Reading.Run.End);
        Assert.NotNull(held.Reading.Closing(EventKind.AllTouch));
        Assert.True(Value(held, "grip_force") >= newtons, $"{thing}: {Value(held, "grip_force")} N");
        Assert.True(Value(held, "reopening_left") <= 1, $"{thing}: {Value(held, "reopening_left")}° left");
        Assert.True(Value(held, "wrist_left") >= 3, $"{thing}: {Value(held, "wrist_left")}° of wrist left");
    }

    [Theory]
    [InlineData("rail", 2.5)]
    [InlineData("mug", 2)]
    [InlineData("tin", 1.2)]
    public void Shifts_its_arm_on_every_cylinder_once_it_grips(string thing, double degrees)
    {
        GripCase held = AllDay(thing);
        Assert.NotNull(held.Reading.Closing(EventKind.ShiftEnd));
        Assert.InRange(Value(held, "shift_cost"), 0.1, degrees);
        Assert.True(held.Reading.Closing(EventKind.ShiftStart)!.ThetaRadians > held.Reading.Closing(EventKind.Touch)!.ThetaRadians, $"{thing}: shifts before it touches");
    }

    [Theory]
    [InlineData("mug")]
    [InlineData("tin")]
    public void Presses_what_is_wide_into_the_palm(string thing) => Assert.True(Value(AllDay(thing), "object_resultant_y") > 0);

    [Fact]
    public void Says_of_the_rail_which_fingers_push_it_out()
    {
        Finding pushed = Assert.Single(AllDay("rail").Situation.Findings, f => f.Key == "pushed_out");
        Assert.Equal(Verdict.Fails, pushed.Verdict);
        Assert.Contains("little", pushed.Reason, StringComparison.Ordinal);
        Assert.Contains("away from the palm", pushed.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Follows_every_object_lock_pattern_and_effort()
    {
        Assert.Empty(Result.Errors);
        Assert.Equal(24, Result.Cases.Count);
        Assert.All(Result.Cases, c => Assert.NotEqual(RunEnd.NotFollowed, c.Reading.Run.End));
        Assert.Contains("all 12 pairs of object and lock pattern work at all-day effort", Result.Answer!.Sentence, StringComparison.Ordinal);
    }

    private static GripCase AllDay(string thing) => Result.Cases.Single(c => c.Thing.Name == thing && c.Pattern is null && c.Effort == Effort.AllDay);

    private static double Value(GripCase held, string key) => held.Situation.Find(key)!.Value!.Value;
}
