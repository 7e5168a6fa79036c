using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Drive;

/// <summary>Changes that must not change the numbers: driving direction with a mirrored trunk, and the unit of length.</summary>
public sealed class SameNumbersTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(17)]
    [InlineData(29)]
    [InlineData(42)]
    public void An_extension_drive_with_the_trunk_mirrored_is_the_flexion_drive(int seed)
    {
        DriveModel flexion = RandomDrive.Frictionless(RandomDrive.Make(seed));
        flexion = flexion with
        {
            Wrist = flexion.Wrist with { Direction = DrivingDirection.Flexion },
            Fingers = [.. flexion.Fingers.Select(f => f with { DrivePin = null, Arms = f.Arms with { First = 9e-3 } })],
        };
        MomentTable capacity = flexion.Wrist.Capacity;
        DriveModel extension = flexion with
        {
            Wrist = flexion.Wrist with
            {
                Direction = DrivingDirection.Extension,
                StartRadians = -flexion.Wrist.StartRadians,
                Capacity = new MomentTable([.. capacity.AnglesRadians.Reverse().Select(a => -a)], [.. capacity.MomentsNewtonMetres.Reverse()]),
            },
            PullLink = flexion.PullLink with { Anchor = Mirrored(flexion.PullLink.Anchor) },
            Crank = flexion.Crank with
            {
                Fulcrum = Mirrored(flexion.Crank.Fulcrum),
                Input = Mirrored(flexion.Crank.Input),
                Output = Mirrored(flexion.Crank.Output),
                Slot = flexion.Crank.Slot is { } slot ? slot with { DirectionRadians = -slot.DirectionRadians } : null,
            },
            Rail = flexion.Rail with { Rest = Mirrored(flexion.Rail.Rest), DirectionRadians = -flexion.Rail.DirectionRadians },
        };
        HeldObject held = RandomDrive.MakeObject(seed);
        RunOptions options = new() { EffortFraction = 0.3, Opening = false };
        Same(ClosingRun.Solve(flexion, held, options), ClosingRun.Solve(extension, held, options), 1, 1);
    }

    [Theory]
    [InlineData(42)]
    [InlineData(17)]
    [InlineData(29)]
    public void A_drive_drawn_twice_as_large_gives_the_same_forces_and_angles_and_twice_the_moment(int seed)
    {
        const double z = 2;
        DriveModel drive = RandomDrive.Frictionless(RandomDrive.Make(seed));
        HeldObject held = RandomDrive.MakeObject(seed);
        HeldObject larger = held switch
        {
            Cylinder c => new Cylinder(z * c.Centre, z * c.Radius),
            Face f => f with { Point = z * f.Point },
            _ => held,
        };
        RunOptions options = new() { EffortFraction = 0.3, Opening = false };
        Same(ClosingRun.Solve(drive, held, options), ClosingRun.Solve(Enlarged(drive, z), larger, options), z, z);
    }

    private static void Same(RunResult a, RunResult b, double length, double moment)
    {
        Assert.Null(a.Failure);
        Assert.Null(b.Failure);
        Assert.Equal(a.End, b.End);
        Assert.Equal(a.Jumps.Count, b.Jumps.Count);
        List<double[]> first = Steps(a), second = Steps(b);
        Assert.Equal(first.Count, second.Count);
        Assert.True(first.Count > 3, $"only {first.Count} states");
        double peak = first.Max(r => Math.Abs(r[TraceLayout.Tau])), force = first.Max(r => Math.Abs(r[TraceLayout.TransferLink]));
        for (int k = 0; k < first.Count; k++)
        {
            Assert.Equal(first[k][TraceLayout.Theta], second[k][TraceLayout.Theta], 1e-6);
            Assert.Equal(first[k][TraceLayout.Phi], second[k][TraceLayout.Phi], 1e-6);
            Assert.Equal(length * first[k][TraceLayout.Carriage], second[k][TraceLayout.Carriage], 1e-8 * length);
            Assert.Equal(moment * first[k][TraceLayout.Tau], second[k][TraceLayout.Tau], 1e-5 * moment * peak);
            Assert.Equal(first[k][TraceLayout.TransferLink], second[k][TraceLayout.TransferLink], 1e-5 * force);
            Assert.Equal(first[k][TraceLayout.Grip], second[k][TraceLayout.Grip], 1e-5 * force);
        }
    }

    private static List<double[]> Steps(RunResult run) => [.. run.Closing.Where(r => r[TraceLayout.OutputStep] == 1)];

    private static Vector2D Mirrored(Vector2D p) => new(p.X, -p.Y);

    private static DriveModel Enlarged(DriveModel d, double z) => d with
    {
        Wrist = d.Wrist with { Capacity = new MomentTable(d.Wrist.Capacity.AnglesRadians, [.. d.Wrist.Capacity.MomentsNewtonMetres.Select(m => z * m)]) },
        PullLink = d.PullLink with { Anchor = z * d.PullLink.Anchor, Stiffness = d.PullLink.Stiffness / z },
        Crank = d.Crank with
        {
            Fulcrum = z * d.Crank.Fulcrum,
            Input = z * d.Crank.Input,
            Output = z * d.Crank.Output,
            Slot = d.Crank.Slot is { } slot ? slot with { Length = z * slot.Length, Rate = slot.Rate / z } : null,
        },
        TransferLink = d.TransferLink with { Stiffness = d.TransferLink.Stiffness / z },
        Rail = d.Rail with { Rest = z * d.Rail.Rest, Travel = z * d.Rail.Travel },
        Tree = Enlarged(d.Tree, z),
        Fingers = [.. d.Fingers.Select(f => Enlarged(f, z))],
    };

    private static BalanceNode Enlarged(BalanceNode node, double z) => node is BalanceBar bar
        ? bar with { FirstArm = z * bar.FirstArm, SecondArm = z * bar.SecondArm, First = Enlarged(bar.First, z), Second = Enlarged(bar.Second, z) }
        : node;

    private static Finger Enlarged(Finger f, double z) => f with
    {
        Mcp = z * f.Mcp,
        Segments = Times(f.Segments, z),
        HalfThickness = Times(f.HalfThickness, z),
        PadStiffness = f.PadStiffness / z,
        Joints = f.Joints is CoupledJoints c ? new CoupledJoints(Enlarged(c.PipFromMcp, z), Enlarged(c.DipFromPip, z)) : f.Joints,
        Arms = Times(f.Arms, z),
        DrivePin = f.DrivePin is { } pin ? pin with { Radius = z * pin.Radius } : null,
        SpringRate = Times(f.SpringRate, z),
        SpringPreload = Times(f.SpringPreload, z),
        Pull = f.Pull with { Stiffness = f.Pull.Stiffness / z },
    };

    private static Coupling Enlarged(Coupling c, double z) => c is FourBarCoupling bar
        ? bar with { BeforeRadius = z * bar.BeforeRadius, AfterRadius = z * bar.AfterRadius }
        : c;

    private static Triple Times(Triple t, double z) => new(z * t.First, z * t.Second, z * t.Third);
}
