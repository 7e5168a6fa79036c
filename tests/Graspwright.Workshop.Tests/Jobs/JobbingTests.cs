using Graspwright.Hand;
using Graspwright.Mechanics.Holding;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Jobs;

public sealed class JobbingTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard();
    private static readonly JobsResult Result = Jobbing.Answer(new(Demo));

    [Fact]
    public void Counts_the_jobs_and_says_which_fail_by_how_much()
    {
        string sentence = Result.Answer!.Sentence;
        Assert.StartsWith("7 of 10 jobs work; ", sentence, StringComparison.Ordinal);
        Assert.Contains("the bucket fails by 1.9", sentence, StringComparison.Ordinal);
        Assert.Equal(["bucket", "grab rail", "sheet rope"], Result.Outcomes.Where(o => !o.Works).Select(o => o.Job.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Prints_formulas_that_give_the_printed_values() => PrintedFormulas.GiveTheirValues(Result.Answer!.Figures);

    [Fact]
    public void Better_pads_never_make_a_job_worse_and_help_some()
    {
        JobsResult better = Jobbing.Answer(new(Demo with { Pads = Demo.Pads! with { Friction = 0.9 } }));
        double gained = 0;
        foreach ((JobOutcome before, JobOutcome after) in Result.Outcomes.Zip(better.Outcomes))
        {
            Assert.True(after.Margin >= before.Margin - 1e-4, before.Job.Name);
            gained += after.Margin - before.Margin;
        }

        Assert.True(gained > 0.5);
    }

    [Fact]
    public void A_wet_mug_keeps_what_the_wet_factor_leaves()
    {
        JobOutcome dry = Result.Outcomes.Single(o => o.Job.Name == "full mug"), wet = Result.Outcomes.Single(o => o.Job.Name == "wet mug");
        Assert.Equal(0.6 * dry.FrictionThere, wet.FrictionThere, 1e-12);
        Assert.True(wet.Margin < dry.Margin);
        Assert.Equal(GiveWay.Drop, wet.Held!.Mode);
    }

    [Fact]
    public void The_friction_needed_holds_the_job_and_a_little_less_does_not()
    {
        foreach (JobOutcome o in Result.Outcomes.Where(o => o.Held!.Factor > 0 && o.FrictionNeeded is > 0 and < 5 && !o.Grasp!.Locked))
        {
            double scale = o.FrictionNeeded / o.FrictionThere;
            LoadLimit limit = new(o.Grasp!);
            Assert.True(limit.Factor(o.Load, scale) >= 1 - 1e-6, o.Job.Name);
            Assert.True(limit.Factor(o.Load, 0.99 * scale) < 1, o.Job.Name);
        }
    }

    [Fact]
    public void Refuses_a_job_that_is_not_there_and_a_hand_without_jobs()
    {
        InputError unknown = Assert.Single(Jobbing.Answer(new(Demo) { Jobs = ["buckett"] }).Errors);
        Assert.Equal("Did you mean 'bucket'?", unknown.Fix);
        InputError none = Assert.Single(Jobbing.Answer(new(Demo with { Jobs = [] })).Errors);
        Assert.Contains("[jobs.NAME]", none.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void An_object_inside_the_open_fingers_is_not_known_and_the_others_still_answer()
    {
        Job[] jobs = [.. Demo.Jobs.Select(j => j.Name == "bucket" ? j with { Centre = new Point(0.110, -0.010) } : j)];
        JobsResult result = Jobbing.Answer(new(Demo with { Jobs = jobs }));
        JobOutcome bucket = result.Outcomes.Single(o => o.Job.Name == "bucket");
        Assert.Equal(Verdict.NotKnown, bucket.Verdict);
        Assert.Contains("of 1 nothing can be said", result.Answer!.Sentence, StringComparison.Ordinal);
        Assert.Equal(7, result.Outcomes.Count(o => o.Works));
    }

    [Fact]
    public void A_coarse_lock_gives_back_all_of_the_grip_and_says_so()
    {
        JobsResult result = Jobbing.Answer(new(Demo with { ClosingLock = Demo.ClosingLock! with { Pitch = 0.002 } }) { Jobs = ["paint pot held up"] });
        Assert.False(result.Outcomes[0].Works);
        Assert.Contains(result.Answer!.Findings, f => f is { Key: "lock_left", Verdict: Verdict.Fails });
    }

    [Fact]
    public void A_load_heavier_than_the_arm_bears_is_found()
    {
        Job[] jobs = [.. Demo.Jobs.Where(j => j.Name == "tin of paint").Select(j => j with { Load = 12 })];
        Finding finding = Jobbing.Answer(new(Demo with { Jobs = jobs })).Answer!.Findings.Single(f => f.Key == "sideways_load");
        Assert.Equal(Verdict.Fails, finding.Verdict);
    }

    [Fact]
    public void A_wrist_without_strength_there_is_found()
    {
        HandModel weak = Demo with { Wrist = Demo.Wrist with { FlexionCapacity = new([-1, 1], [0, 0]), ExtensionCapacity = new([0], [0]) } };
        JobsResult result = Jobbing.Answer(new(weak) { Jobs = ["bucket"] });
        Assert.DoesNotContain(result.Outcomes, o => o.Works);
    }
}
