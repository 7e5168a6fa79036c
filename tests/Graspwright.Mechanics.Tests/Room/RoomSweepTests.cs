using CsCheck;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Room;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Room;

public sealed class RoomSweepTests
{
    private static readonly Gen<Vector3D> Place = Gen.Select(Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1], Gen.Double[-0.1, 0.1], (x, y, z) => new Vector3D(x, y, z));

    /// <summary>Gaps of capsules against a search over points of both axes.</summary>
    [Fact]
    public void A_gap_is_the_least_over_all_points_of_both_axes() => Gen.Select(Place, Place, Place, Place).Sample(p =>
    {
        double gap = new Capsule(p.Item1, p.Item2, 0.004).GapTo(new Capsule(p.Item3, p.Item4, 0.003)), sampled = double.PositiveInfinity;
        for (int i = 0; i <= 60; i++)
        {
            Vector3D a = p.Item1 + i / 60.0 * (p.Item2 - p.Item1), along = p.Item4 - p.Item3;
            double t = along.Length < 1e-9 ? 0 : Math.Clamp((a - p.Item3).Dot(along) / along.Dot(along), 0, 1);
            sampled = Math.Min(sampled, (a - p.Item3 - t * along).Length - 0.007);
        }

        Assert.InRange(gap, sampled - (p.Item2 - p.Item1).Length / 120 - 1e-9, sampled + 1e-9);
    }, iter: 300);

    /// <summary>Two axes a ten-millionth of a radian apart: the second ends on the first.</summary>
    [Fact]
    public void Capsules_that_are_as_good_as_parallel_have_their_least_gap_at_an_end()
    {
        Capsule one = new(new(1.5e-11, 0, 9.4e-10), new(0, 0, 0.0964), 0.004), other = new(new(0, 9.3e-9, 0), new(0, 0, 0.041), 0.003);
        Assert.Equal(-0.007, one.GapTo(other), 1e-10);
        Assert.Equal(-0.007, other.GapTo(one), 1e-10);
    }

    [Fact]
    public void Parallel_and_point_capsules_have_their_plain_distances()
    {
        Capsule bar = new(default, new(0.05, 0, 0), 0.002);
        Assert.Equal(0.007, bar.GapTo(new(new(0.01, 0.01, 0), new(0.08, 0.01, 0), 0.001)), 1e-15);
        Assert.Equal(0.017, bar.GapTo(new(new(0.07, 0, 0), new(0.07, 0, 0), 0.001)), 1e-15);
        Assert.Equal(-0.003, bar.GapTo(new(new(0.02, 0, -0.01), new(0.02, 0, 0.01), 0.001)), 1e-15);
    }

    /// <summary>The sweep against 400 samples of every piece: no sample lies below its least gap, and it is reached; the first clash has no clash before it.</summary>
    [Fact]
    public void Finds_what_dense_sampling_finds_and_nothing_less()
    {
        int clashes = 0, fists = 0;
        RandomDrive.ForEachSeed(10, seed =>
        {
            DriveModel drive = RandomDrive.Make(seed);
            RunResult run;
            try
            {
                run = ClosingRun.Solve(drive, HeldObject.None, new() { EffortFraction = null, Opening = false, OutputStepRadians = 0.09 });
            }
            catch (DriveException)
            {
                return; // the random drive cannot be put together
            }

            if (run.Closing.Count < 2)
            {
                return;
            }

            // A still sphere where the first fingertip ends up: a palm that it must come down on.
            MovingBodies bodies = new(RoomOf(drive), run.Layout);
            Capsule[] placed = new Capsule[bodies.Names.Count];
            bodies.Place(bodies.Of(run.Closing[^1]), placed);
            Vector3D tip = placed[^(3 * drive.Fingers.Count - 2)].To;
            RoomModel room = RoomOf(drive);
            RoomSweep sweep = new(room with { Still = [.. room.Still, new("palm", new(tip, tip, 0.004))] }, run.Layout);
            SweepResult swept = sweep.Sweep(run.Closing);
            foreach (NearPair pair in swept.Pairs.Concat(swept.OnPalm))
            {
                double least = double.PositiveInfinity, first = double.PositiveInfinity;
                for (int piece = 1; piece < run.Closing.Count; piece++)
                {
                    double from = run.Closing[piece - 1][TraceLayout.Theta], to = run.Closing[piece][TraceLayout.Theta];
                    for (int i = 0; i <= 400; i++)
                    {
                        double gap = sweep.GapAt(pair.First, pair.Second, piece, i / 400.0);
                        least = Math.Min(least, gap);
                        first = gap <= 0 && double.IsPositiveInfinity(first) ? from + i / 400.0 * (to - from) : first;
                    }
                }

                Assert.InRange(pair.Gap, least - 2e-5, least + 2e-6);
                clashes += pair.ClashTheta is null ? 0 : 1;
                fists += pair.ClashTheta is not null && swept.OnPalm.Contains(pair) ? 1 : 0;
                if (double.IsFinite(first))
                {
                    Assert.NotNull(pair.ClashTheta);
                    Assert.InRange(pair.ClashTheta.Value, first - 0.09 / 400 - 1e-9, first + 1e-9);
                }
            }
        });
        Assert.True(fists > 0, "No finger came down on the palm: the check of fists saw nothing.");
        Assert.True(clashes > 0, "No random drive clashed: the check of first clashes saw nothing.");
    }

    /// <summary>Two fingers side by side, splayed toward each other by σ: the axes are d − 2·l·sin σ apart at the tips.</summary>
    [Fact]
    public void Splayed_fingers_come_as_near_as_their_angles_say()
    {
        const double splay = 0.06, across = 0.012;
        DriveModel drive = PlainDrive.With(PlainDrive.EqualBar("root", new FingerLeaf(0), new FingerLeaf(1)), PlainDrive.CoupledFinger("a"), PlainDrive.CoupledFinger("b"));
        Finger finger = drive.Fingers[0] with { OpenRadians = default, Mcp = new(0.09, 0), HalfThickness = new(0.004, 0.004, 0.004) };
        drive = drive with { Fingers = [finger with { Name = "a", Across = across, SplayRadians = -splay }, finger with { Name = "b", Across = -across, SplayRadians = splay }] };
        TraceLayout layout = new(["a", "b"], ["root"]);
        SweepResult swept = new RoomSweep(RoomOf(drive) with { Still = [] }, layout).Sweep([new double[layout.Columns]]);
        double length = finger.Segments.First + finger.Segments.Second + finger.Segments.Third;
        NearPair tips = swept.Pairs.Single(p => p is { First: "a distal", Second: "b distal" });
        Assert.Equal(2 * across - 2 * length * Math.Sin(splay) - 0.008, tips.Gap, 1e-12);
    }

    private static RoomModel RoomOf(DriveModel drive) => new()
    {
        Drive = drive,
        LinkRadius = 0.003,
        BarRadius = 0.003,
        BarPitch = 0.010,
        Still = [new("shell", new(new(0, 0, 0), new(0.06, 0, 0), 0.015))],
        BackOfShell = 0.015,
    };
}
