using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Holding;

public sealed class GripOfRunTests
{
    private static readonly DriveModel Drive = PlainDrive.With(PlainDrive.EqualBar("root", new FingerLeaf(0), new FingerLeaf(1)),
        PlainDrive.CoupledFinger("index") with { Across = 0.011 }, PlainDrive.CoupledFinger("middle") with { Across = -0.011 });

    private static readonly RunResult Run = ClosingRun.Solve(Drive, PlainDrive.Bottle, new() { EffortFraction = 0.3, Opening = false });

    private static readonly BesideFingers Beside = new()
    {
        PadFriction = 0.6, PalmFriction = 0.4, ThumbFriction = 0.4, Palm = true, PalmPoint = new(0, -0.012), PalmBreadth = 0.085, HeelRadians = -0.3, PadRadius = 0.004, ThumbForce = 80, ThumbAcross = 0.02,
    };

    /// <summary>Virtual work: what the contacts' forces do on a finger's motion is what its pull does less what its springs take.</summary>
    [Fact]
    public void A_fingers_drive_is_its_pull_less_its_springs()
    {
        Grasp grasp = GripOfRun.Squeezed(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, Beside)!;
        Assert.Equal(2, grasp.Drives.Count);
        foreach (FingerDrive d in grasp.Drives)
        {
            Finger finger = Drive.Fingers[d.Finger];
            double pip = 0.7, dip = 0.7 * 0.6, springs = 0;
            double[] rates = [1, pip, dip];
            for (int j = 0; j < 3; j++)
            {
                springs += rates[j] * (finger.SpringPreload[j] + finger.SpringRate[j] * Run.AtEnd[Run.Layout.Joint(d.Finger, j)]);
            }

            double pull = Run.AtEnd[Run.Layout.FingerPull(d.Finger)] * finger.Arms.First;
            Assert.Equal(pull - springs, d.Drive, 1e-6 * pull);
        }
    }

    [Fact]
    public void Palm_and_heel_balance_the_fingers_before_any_load()
    {
        Grasp grasp = GripOfRun.Squeezed(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, Beside with { PadRadius = 0 })!;
        Vector3D[] forces = new LoadLimit(grasp).Unloaded()!;
        Vector3D sum = default, moment = default;
        for (int c = 0; c < forces.Length; c++)
        {
            sum += forces[c];
            moment += (grasp.Contacts[c].Place - grasp.Centre).Cross(forces[c]);
            double normal = forces[c].Dot(grasp.Contacts[c].Normal);
            Assert.True((forces[c] - normal * grasp.Contacts[c].Normal).Length <= grasp.Contacts[c].Friction * normal + 1e-6);
        }

        Assert.True(sum.Length < 1e-6, $"{sum}");
        Assert.True(moment.Length < 1e-6, $"{moment}");
    }

    [Fact]
    public void Forces_at_the_limit_balance_the_load_inside_their_cones()
    {
        Grasp grasp = GripOfRun.Squeezed(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, Beside with { PadRadius = 0 })!;
        OutsideLoad load = new(new(0.3, -2, -4), grasp.Centre + new Vector3D(0.01, 0.02, 0.05), new(0, 0, 0.01));
        HoldResult held = new LoadLimit(grasp).Hold(load, new(0, 0, -1));
        Assert.InRange(held.Factor, 0.05, 99);
        Vector3D sum = held.Factor * load.Force, moment = held.Factor * load.MomentAbout(grasp.Centre);
        for (int c = 0; c < held.Forces.Count; c++)
        {
            HoldContact contact = grasp.Contacts[c];
            sum += held.Forces[c];
            moment += (contact.Place - grasp.Centre).Cross(held.Forces[c]);
            double normal = held.Forces[c].Dot(contact.Normal);
            Assert.True((held.Forces[c] - normal * contact.Normal).Length <= contact.Friction * normal + 1e-6);
        }

        Assert.True(sum.Length < 1e-5, $"{sum}");
        Assert.True(moment.Length < 1e-6, $"{moment}");
        Assert.True(held.Gap < 1e-4, $"{held.Gap}");
    }

    [Fact]
    public void A_rigid_lock_without_play_keeps_the_grip()
    {
        RelaxedGrip relaxed = RelaxedLock.Relax(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, new(0, 0, double.PositiveInfinity, null));
        Assert.Equal(relaxed.GripBefore, relaxed.GripAfter, 1e-9 * relaxed.GripBefore);
    }

    /// <summary>A contact of stiffness k at lever h loses k·h·δ for a small opening δ = pitch ÷ arm.</summary>
    [Fact]
    public void A_small_pitch_costs_pad_stiffness_times_lever_times_opening()
    {
        const double pitch = 1e-6;
        RelaxedGrip relaxed = RelaxedLock.Relax(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, new(pitch, 0, double.PositiveInfinity, null));
        Grasp grasp = GripOfRun.Squeezed(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, Beside)!;
        double expected = 0;
        foreach (HoldContact c in grasp.Contacts.Where(c => c.Kind == ContactKind.Finger))
        {
            expected += c.Stiffness * c.Normal.InPlane.Dot(c.Motions[0]) * pitch / Drive.Fingers[c.Finger].Arms.First;
        }

        Assert.Equal(expected, relaxed.GripBefore - relaxed.GripAfter, 2e-3 * expected);
    }

    [Fact]
    public void A_lock_that_gives_stands_where_its_spring_carries_the_contacts()
    {
        PullLock pull = new(2e-5, 1e-5, 4e5, null);
        RelaxedGrip relaxed = RelaxedLock.Relax(Drive, PlainDrive.Bottle, Run.Layout, Run.AtEnd, pull);
        Grasp grasp = GripOfRun.Squeezed(Drive, PlainDrive.Bottle, Run.Layout, relaxed.State, Beside)!;
        foreach (FingerDrive d in grasp.Drives)
        {
            double arm = Drive.Fingers[d.Finger].Arms.First, opening = relaxed.OpeningRadians[d.Finger];
            Assert.Equal(pull.Stiffness * arm * arm * (opening - (pull.Pitch + pull.Backlash) / arm), d.Drive, 5e-3 * d.Drive);
        }
    }

    [Fact]
    public void Gravity_turns_with_forearm_and_wrist()
    {
        Assert.Equal(new Vector3D(0, -1, 0), Attitude.Down(ForearmAttitude.PalmDown, 0));
        Assert.True((Attitude.Down(ForearmAttitude.PalmDown, Math.PI / 2) - new Vector3D(1, 0, 0)).Length < 1e-15);
        Assert.True((Attitude.Down(ForearmAttitude.ThumbUp, 0.7) - new Vector3D(0, 0, -1)).Length < 1e-15);
        Assert.Equal(0, Attitude.Tips(ForearmAttitude.ThumbUp, 0, 0.5), 1e-12);
        Assert.Equal(0.5, Attitude.Tips(ForearmAttitude.PalmUp, -0.1, 0.4), 1e-12);
    }

    /// <summary>1 kg held 80 mm before the wrist axis: 0.785 N·m, flexing palm down, extending palm up, sideways thumb up.</summary>
    [Theory]
    [InlineData(ForearmAttitude.PalmDown, 0.7845, 0)]
    [InlineData(ForearmAttitude.PalmUp, -0.7845, 0)]
    [InlineData(ForearmAttitude.ThumbUp, 0, 0.7845)]
    [InlineData(ForearmAttitude.Hanging, 0, 0)]
    public void A_load_helps_a_flexion_drive_palm_down_and_opens_it_palm_up(ForearmAttitude attitude, double flexing, double sideways)
    {
        OutsideLoad load = new(Attitude.Gravity * Attitude.Down(attitude, 0), new(0.08, 0, 0), default);
        Assert.Equal(flexing, Attitude.FlexingMoment(load), 1e-4);
        Assert.Equal(sideways, Attitude.SidewaysMoment(load), 1e-4);
    }

    [Fact]
    public void A_fingertip_is_found_where_its_own_path_comes_nearest()
    {
        RunResult free = ClosingRun.Solve(Drive, HeldObject.None, new() { EffortFraction = null, Opening = false });
        double[] row = free.Closing[free.Closing.Count / 2];
        Vector3D tip = new(row[free.Layout.TipX(0)], row[free.Layout.TipX(0) + 1], Drive.Fingers[0].Across);
        FingertipOnThumb found = ThumbReach.Nearest(Drive, free.Layout, free.Closing, tip, new(0, 1, 0))[0];
        Assert.Equal(-Drive.Fingers[0].HalfThickness.Third, found.Gap, 1e-5);
    }
}
