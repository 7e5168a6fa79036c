using Graspwright.Hand;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Grip;

public sealed class GrippingTests
{
    private static readonly GripQuestion Boatyard = new(MadeHand.Boatyard()) { File = "hand.toml" };

    [Fact]
    public void Runs_every_object_and_pattern_all_free_first_at_both_efforts()
    {
        HandModel hand = Boatyard.Hand;
        GripResult result = Gripping.Answer(Boatyard with { Solver = Made });
        string[] expected =
        [
            .. from thing in hand.Objects
               from locks in hand.Locks.Select(l => l.Name).Prepend("all free")
               from effort in (string[])["all-day", "squeeze"]
               select $"{thing.Name}/{locks}/{effort}",
        ];
        Assert.Equal(expected, result.Answer!.Situations.Select(s => $"{s.Label}/{s.Effort}"));
        Assert.Equal(hand.Wrist.AllDayShare, result.Cases[0].Reading.Options.EffortFraction);
        Assert.Equal(hand.Wrist.SqueezeShare, result.Cases[1].Reading.Options.EffortFraction);
        Assert.Equal(result.Cases[0].Situation.Figures, result.Answer.Figures);
    }

    [Fact]
    public void Says_the_runs_own_numbers_in_the_sentence()
    {
        // The made run ends at 2.5 N·m: a quarter of this wrist's 10 N·m.
        HandModel hand = Boatyard.Hand with { Wrist = Boatyard.Hand.Wrist with { FlexionCapacity = new([0], [10]) } };
        GripResult result = Gripping.Answer(Boatyard with { Hand = hand, Solver = Made, Objects = ["mug"], Locks = ["all free"], Efforts = [Effort.AllDay] });
        Assert.Equal("On the 60 mm mug this hand touches at 10.0°, shifts over 3.0° and grips with 24 N (2.4 kgf) at your all-day effort, which can be held 2.8–7.7 min without a pause; the limit is the wrist's effort, not travel.", result.Answer!.Sentence);
    }

    [Fact]
    public void An_overlapping_object_fails_alone()
    {
        GripResult result = Gripping.Answer(Boatyard with { Solver = (drive, held, options) => held is Face ? throw new DriveException(DriveFault.ObjectOverlaps, "index", 0.0012, "overlap") : Made(drive, held, options) });
        Assert.NotNull(result.Answer);
        InputError error = Assert.Single(result.Errors);
        Assert.Contains("1.2 mm inside index", error.Found, StringComparison.Ordinal);
        Situation plate = result.Answer.Situations.First(s => s.ObjectName == "plate");
        Assert.Equal(("object_overlaps", Verdict.Fails), (plate.Findings[0].Key, plate.Findings[0].Verdict));
        Assert.DoesNotContain(result.Cases, c => c.Thing.Name == "plate");
    }

    [Theory]
    [InlineData(DriveFault.NotAssembled, 0.0023, "misses by 2.3 mm")]
    [InlineData(DriveFault.DeadCentreAtRest, 0, "passes through the fulcrum")]
    [InlineData(DriveFault.NoLength, 0, "length of 0 mm")]
    [InlineData(DriveFault.RodWithSlack, 0.001, "slack of 1 mm")]
    public void A_hand_that_cannot_be_put_together_is_bad_input(DriveFault fault, double amount, string words)
    {
        GripResult result = Gripping.Answer(Boatyard with { Solver = (_, _, _) => throw new DriveException(fault, "pull link", amount, "engine words") });
        Assert.Null(result.Answer);
        InputError error = Assert.Single(result.Errors);
        Assert.Equal("pull link", error.Key);
        Assert.Contains(words, error.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_names_that_the_hand_does_not_have_all_at_once()
    {
        GripResult result = Gripping.Answer(Boatyard with { Objects = ["bucket", "mug"], Locks = ["fist"] });
        Assert.Null(result.Answer);
        Assert.Equal(["--object", "--locks"], result.Errors.Select(e => e.Key));
        Assert.Contains("mug", result.Errors[0].Allowed, StringComparison.Ordinal);
        GripResult near = Gripping.Answer(Boatyard with { Objects = ["mugg"] });
        Assert.Equal("Did you mean 'mug'?", Assert.Single(near.Errors).Fix);
    }

    [Fact]
    public void A_lost_path_is_said_and_claims_no_grip()
    {
        GripResult result = Gripping.Answer(Boatyard with { Solver = Lost, Objects = ["mug"] });
        Assert.False(result.AnyFollowed);
        Assert.Contains("could not be followed past 12.0°", result.Answer!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_real_solver_prints_formulas_that_give_the_printed_values()
    {
        GripResult result = Gripping.Answer(Boatyard with { Efforts = [Effort.Squeeze] });
        Assert.NotEmpty(result.Cases);
        foreach (Figure figure in result.Cases.SelectMany(c => c.Situation.Figures).Where(f => f.Value is not null))
        {
            double worked = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
            Assert.True(Math.Abs(worked - figure.Value!.Value) <= 1e-6 * Math.Max(1, Math.Abs(worked)), $"{figure.Key}: {worked} against {figure.Value}");
        }
    }

    private static RunResult Made(Mechanics.Drive.DriveModel drive, HeldObject held, RunOptions options) => MadeRun.Gripping().Result();

    private static RunResult Lost(Mechanics.Drive.DriveModel drive, HeldObject held, RunOptions options)
    {
        MadeRun made = MadeRun.Gripping();
        made.End = RunEnd.NotFollowed;
        made.Failure = new(MadeRun.Radians(12), Opening: false, 1, "no balance was found");
        return made.Result();
    }

}
