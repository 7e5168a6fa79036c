using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Bench;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Bench;

public sealed class PlanningTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();
    private static readonly (Answer? Answer, ReadingPlan? Plan, IReadOnlyList<BenchParameter> Parameters, IReadOnlyList<InputError> Errors) Planned = Planning.Answer(new(Boatyard));

    [Fact]
    public void The_demo_s_readings_tell_give_and_pads_apart_and_say_what_they_cannot_tell()
    {
        (Answer? answer, ReadingPlan? plan, IReadOnlyList<BenchParameter> parameters, IReadOnlyList<InputError> errors) = Planned;
        Assert.Empty(errors);
        Assert.Equal(16, plan!.Readings.Count);
        Assert.Equal(16, plan.Readings.Distinct().Count());
        double Known(string name) => plan.Spread[parameters.Select(p => p.Name).ToList().IndexOf(name)];
        Assert.InRange(Known("cuff give"), 0, 0.1);
        Assert.InRange(Known("pad stiffness"), 0, 0.1);
        Assert.InRange(Known("shift spring"), 0, 0.1);
        Assert.InRange(Known("slot friction"), 0, 0.2);
        int slot = parameters.Select(p => p.Name).ToList().IndexOf("slot friction"), spring = parameters.Select(p => p.Name).ToList().IndexOf("shift spring");
        Assert.InRange(Math.Abs(plan.Correlation[slot, spring]), 0, 0.9);
        Assert.Contains(plan.Readings, r => r is { Quantity: "shift", Opening: true });
        Assert.DoesNotContain(BenchParameter.Of(DriveMapping.ToDrive(Boatyard) with { Crank = DriveMapping.ToDrive(Boatyard).Crank with { Slot = null } }), p => p.Name is "slot friction" or "shift spring");
        Assert.Contains(plan.Readings, r => r.Opening);
        Assert.Contains(plan.Readings, r => r.Thing == "nothing");
        Assert.Contains("cannot tell rail friction", answer!.Sentence, StringComparison.Ordinal);
        Assert.Equal(17, Planning.Csv(plan).TrimEnd('\n').Split('\n').Length);
        Assert.Equal("reading,stroke,object,locks,wrist_deg,quantity,finger,x_mm,y_mm,direction_deg,value,unit,sd", Planning.Csv(plan).Split('\n')[0]);
    }

    [Fact]
    public void An_object_that_lies_in_a_finger_is_left_out_and_named()
    {
        RunResult Solve(DriveModel drive, HeldObject held, RunOptions options) =>
            held is Face ? throw new DriveException(DriveFault.ObjectOverlaps, "index", 0.0086, "overlap") : ClosingRun.Solve(drive, held, options);
        (Answer? answer, ReadingPlan? plan, _, IReadOnlyList<InputError> errors) = Planning.Answer(new(Boatyard) { Solver = Solve });
        Assert.Empty(errors);
        Finding left = Assert.Single(answer!.Findings, f => f.Key == "object_overlaps");
        Assert.Equal("plate", left.Subject);
        Assert.DoesNotContain(plan!.Readings, r => r.Thing == "plate");
    }

    // With two readings made again on a hand whose cuff is a tenth stiffer, the sensitivities must foretell the change.
    [Fact]
    public void Sensitivities_foretell_what_a_stiffer_cuff_does()
    {
        (_, ReadingPlan? plan, IReadOnlyList<BenchParameter> parameters, _) = Planned;
        int cuff = parameters.Select(p => p.Name).ToList().IndexOf("cuff give");
        BenchReading reading = plan!.Readings.Where(r => r is { Opening: false, Quantity: "wrist moment" }).MaxBy(r => Math.Abs(r.Sensitivity[cuff]))!;
        DriveModel drive = DriveMapping.ToDrive(Boatyard);
        HeldObject held = HoldMapping.ToHeld(Boatyard, Boatyard.Objects.First(o => o.Name == reading.Thing));
        const double stiffer = 1.02;
        double foretold = reading.Sensitivity[cuff] * reading.Deviation * Math.Log(stiffer);
        double changed = Moment(parameters[cuff].Scaled!(stiffer)) - Moment(drive);
        Assert.Equal(foretold, changed, 0.15 * Math.Abs(foretold));

        double Moment(DriveModel model)
        {
            RunResult run = ClosingRun.Solve(model, held, new() { EffortFraction = Boatyard.Wrist.SqueezeShare, OutputStepRadians = 0.002 });
            double joint = double.DegreesToRadians(reading.WristDegrees);
            int after = run.Closing.Select((r, i) => (r, i)).First(x => x.r[TraceLayout.JointTravel] >= joint).i;
            double[] a = run.Closing[after - 1], b = run.Closing[after];
            return a[TraceLayout.Tau] + (b[TraceLayout.Tau] - a[TraceLayout.Tau]) * ((joint - a[TraceLayout.JointTravel]) / (b[TraceLayout.JointTravel] - a[TraceLayout.JointTravel]));
        }
    }
}
