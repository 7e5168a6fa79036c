using Graspwright.Hand;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Jobs;

public sealed class WristWeightTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();
    private static readonly IReadOnlyList<JobOutcome> Outcomes = JobRuns.Outcomes(Boatyard, Boatyard.Jobs, ClosingRun.Solve);

    /// <summary>
    /// Plagenhoef 1983, table seen at d.umn.edu: hand 0.65 % (men) and 0.50 % (women) of body mass. With the mean body masses of
    /// ANSUR 2012 a man's hand weighs 0.556 kg, a woman's 0.339 kg.
    /// </summary>
    [Theory]
    [InlineData(85.5, 0.0065, 0.556)]
    [InlineData(67.8, 0.0050, 0.339)]
    public void A_whole_hand_weighs_what_the_published_shares_say(double body, double share, double kilograms)
    {
        HandBody whole = Boatyard.Body! with { Mass = body, HandShare = share, HandLeft = 1 };
        Assert.Equal(kilograms, whole.HandMass, 5e-4);
        Assert.Equal(whole.HandMass * 0.87, (whole with { HandLeft = 0.87 }).HandMass, 1e-12);
    }

    /// <summary>By hand: m·g·lever, level forearm and straight wrist; palm down flexes, palm up extends, thumb up bends sideways, upright and hanging turn by the height alone.</summary>
    [Fact]
    public void A_weight_turns_the_wrist_by_its_lever_in_every_attitude()
    {
        Carried device = new("device", 0.25, new(0.08, 0.01, 0));
        double newtons = 0.25 * 9.80665;
        Vector3D Down(ForearmAttitude a) => Attitude.Down(a, 0);
        Assert.Equal(newtons * 0.08, device.Flexing(Down(ForearmAttitude.PalmDown)), 1e-12);
        Assert.Equal(-newtons * 0.08, device.Flexing(Down(ForearmAttitude.PalmUp)), 1e-12);
        Assert.Equal(0, device.Flexing(Down(ForearmAttitude.ThumbUp)), 1e-12);
        Assert.Equal(newtons * 0.08, device.Sideways(Down(ForearmAttitude.ThumbUp)), 1e-12);
        Assert.Equal(newtons * 0.01, Math.Abs(device.Flexing(Down(ForearmAttitude.Overhead))), 1e-12);
        Assert.Equal(-device.Flexing(Down(ForearmAttitude.Overhead)), device.Flexing(Down(ForearmAttitude.Hanging)), 1e-12);
    }

    [Fact]
    public void The_wrist_holds_the_drive_less_what_hand_device_and_load_give()
    {
        Assert.All(Outcomes, o =>
        {
            double weights = o.FlexingMoment + o.Carried.Sum(c => c.Mass * 9.80665 * -(c.Place.X * o.Down.Y - c.Place.Y * o.Down.X));
            Assert.Equal(o.DriveMoment - weights, o.WristNeeds, 1e-9);
        });
        Assert.Equal(82 * 0.0065 * 0.87, Outcomes[0].Carried[0].Mass, 1e-9);
    }

    [Fact]
    public void A_heavier_device_takes_more_of_the_wrist_palm_up_and_less_palm_down()
    {
        HandModel heavy = Boatyard with { Body = Boatyard.Body! with { Device = 0.9 } };
        double Needs(HandModel hand, string forearm) => JobRuns.Outcomes(hand, [Boatyard.Jobs.Single(j => j.Name == "screwdriver") with { Forearm = forearm }], ClosingRun.Solve)[0].WristNeeds;
        Assert.True(Needs(heavy, "palm up") > Needs(Boatyard, "palm up"));
        Assert.True(Needs(heavy, "palm down") < Needs(Boatyard, "palm down"));
    }

    /// <summary>Shares by hand: 200 of 557 between fingers and thumb, 4 hooked; published, of gripping alone: pinches and lumbrical 54.6 ÷ 81.4, cylindrical 12 ÷ 81.4 (Gracia-Ibáñez 2017, abstract).</summary>
    [Fact]
    public void Grips_of_the_list_stand_beside_the_published_shares()
    {
        IReadOnlyList<GripShares.Group> groups = GripShares.Of(Boatyard);
        Assert.Equal([200, 353, 4], groups.Select(g => g.PerDay));
        Assert.Equal(100 * 200 / 557.0, groups[0].Share, 1e-9);
        Assert.Equal(100 * 54.6 / 81.4, groups[0].Low, 1e-9);
        Assert.Equal(100 * 12.0 / 81.4, groups[1].Low, 1e-9);
        Assert.Equal(100, groups[0].Low + groups[1].Low + groups[2].High, 1e-9);
        Assert.Equal(["under-represented", "over-represented", "as published"], groups.Select(g => g.Stands));
        Assert.Contains(GripShares.Findings(groups), f => f.Verdict == Verdict.Tight && f.Reason.Contains("round a thing", StringComparison.Ordinal));
        Assert.Empty(GripShares.Of(Boatyard with { Jobs = [], Structure = Boatyard.Structure with { Use = new() } }));
    }

    [Fact]
    public void Any_answer_can_say_how_many_jobs_work()
    {
        GripResult grip = Gripping.Answer(new(Boatyard));
        Answer told = JobCount.Add(grip.Answer!, new(Boatyard), JobCount.Known(grip)), anew = JobCount.Add(grip.Answer!, new(Boatyard));
        Assert.Equal(anew.Sentence, told.Sentence);
        Assert.Contains($"{Outcomes.Count(o => o.Works)} of 10 jobs work", told.Sentence, StringComparison.Ordinal);
        Assert.Contains(told.Figures, f => f.Key == "jobs_done");
        Assert.Contains("names no jobs", JobCount.Add(grip.Answer!, new(Boatyard with { Jobs = [] })).Sentence, StringComparison.Ordinal);
    }
}
