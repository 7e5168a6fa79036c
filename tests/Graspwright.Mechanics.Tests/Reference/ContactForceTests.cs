using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Reference;

/// <summary>Our contact forces beside the closed form at the posture, tension and contact stations that the run reports.</summary>
public sealed class ContactForceTests
{
    private const double Degree = Math.PI / 180;
    private const double Agree = 1e-6; // of the greatest force of the posture

    [Fact]
    public void Three_touching_segments_carry_the_forces_of_the_closed_form() => Compare(fused: false, leastPostures: 60);

    [Fact]
    public void Two_touching_segments_carry_the_forces_of_the_closed_form() => Compare(fused: true, leastPostures: 100);

    private static void Compare(bool fused, int leastPostures)
    {
        int postures = 0;
        foreach (double radius in new[] { 0.018, 0.022, 0.026, 0.03 })
        {
            foreach (double station in new[] { 0.105, 0.112, 0.119 })
            {
                foreach ((double second, double third) in new[] { (3e-3, 1e-3), (4e-3, 1.6e-3), (2.5e-3, 0.8e-3) })
                {
                    postures += Follow(radius, station, new Triple(8e-3, second, third), fused);
                }
            }
        }

        Assert.True(postures >= leastPostures, $"only {postures} postures were compared");
    }

    private static int Follow(double radius, double station, Triple arms, bool fused)
    {
        Finger plain = PlainDrive.AdaptiveFinger("index");
        Finger finger = plain with
        {
            Arms = arms,
            PadStiffness = 1e7,
            RangeRadians = plain.RangeRadians with { Third = fused ? 0 : 100 * Degree },
            OpenRadians = plain.OpenRadians with { Third = fused ? 0 : 8 * Degree },
        };
        Cylinder held = new(new(station, -radius - 14e-3), radius);
        RunResult run = ClosingRun.Solve(PlainDrive.With(new FingerLeaf(0), finger), held, PlainDrive.ToTheEnd);
        Assert.Null(run.Failure);
        int postures = 0;
        foreach (double[] row in run.Closing)
        {
            postures += fused ? TwoSegments(run.Layout, row, finger) : ThreeSegments(run.Layout, row, finger);
        }

        return postures;
    }

    private static int ThreeSegments(TraceLayout l, double[] row, Finger finger)
    {
        double[] f = [l_(0), l_(1), l_(2)], q = [row[l.Joint(0, 0)], row[l.Joint(0, 1)], row[l.Joint(0, 2)]];
        double l_(int i) => row[l.Contact(0, i)];
        if (f.Any(x => x <= 0) || AtStop(finger, q, 3))
        {
            return 0;
        }

        Vector2D[] joints = Joints(finger, q);
        double[] stations = [.. Enumerable.Range(0, 3).Select(i => (Point(l, row, i) - joints[i]).Length)];
        if (!Inside(stations[0], finger.Segments.First) || !Inside(stations[1], finger.Segments.Second) || !Inside(stations[2], finger.Segments.Third))
        {
            return 0; // at an end of a segment the push is not square to it
        }

        double[] turned = [0, finger.OpenRadians.Second + q[1], finger.OpenRadians.Third + q[2]];
        Agrees(UnderactuatedFinger.Forces(
            UnderactuatedFinger.Levers(stations, [finger.Segments.First, finger.Segments.Second, 0], turned), Moments(l, row, finger, q, 3)), f, row);
        return 1;
    }

    /// <summary>Fused and straight, the middle and distal segments are one.</summary>
    private static int TwoSegments(TraceLayout l, double[] row, Finger finger)
    {
        double[] f = [row[l.Contact(0, 0)], row[l.Contact(0, 1)], row[l.Contact(0, 2)]], q = [row[l.Joint(0, 0)], row[l.Joint(0, 1)], 0];
        bool middle = f[1] > 0 && f[2] == 0, distal = f[1] == 0 && f[2] > 0;
        if (f[0] <= 0 || !(middle || distal) || AtStop(finger, q, 2))
        {
            return 0;
        }

        Vector2D[] joints = Joints(finger, q);
        int far = middle ? 1 : 2;
        double[] stations = [(Point(l, row, 0) - joints[0]).Length, (Point(l, row, far) - joints[1]).Length];
        double own = (Point(l, row, far) - joints[far]).Length;
        if (!Inside(stations[0], finger.Segments.First) || !Inside(own, finger.Segments[far]))
        {
            return 0;
        }

        double[,] levers = UnderactuatedFinger.Levers(stations, [finger.Segments.First, 0], [0, finger.OpenRadians.Second + q[1]]);
        Agrees(UnderactuatedFinger.Forces(levers, Moments(l, row, finger, q, 2)), [f[0], f[far]], row);
        return 1;
    }

    /// <summary>Tension times arms, less what the springs take.</summary>
    private static double[] Moments(TraceLayout l, double[] row, Finger finger, double[] q, int count) =>
        [.. Enumerable.Range(0, count).Select(j => row[l.FingerPull(0)] * finger.Arms[j] - finger.SpringPreload[j] - finger.SpringRate[j] * q[j])];

    private static void Agrees(double[] closed, double[] ours, double[] row)
    {
        double greatest = closed.Max(Math.Abs);
        for (int i = 0; i < closed.Length; i++)
        {
            Assert.True(
                Math.Abs(closed[i] - ours[i]) <= Agree * greatest,
                FormattableString.Invariant($"θ {row[TraceLayout.Theta] / Degree:0.####}°, segment {i + 1}: closed form {closed[i]:r} N, ours {ours[i]:r} N"));
        }
    }

    private static Vector2D Point(TraceLayout l, double[] row, int segment) => new(row[l.ContactPointX(0, segment)], row[l.ContactPointX(0, segment) + 1]);

    private static Vector2D[] Joints(Finger finger, double[] q)
    {
        Vector2D[] joints = [finger.Mcp, default, default];
        double angle = 0;
        for (int i = 0; i < 2; i++)
        {
            angle -= finger.OpenRadians[i] + q[i];
            joints[i + 1] = joints[i] + finger.Segments[i] * Vector2D.AtAngle(angle);
        }

        return joints;
    }

    private static bool AtStop(Finger finger, double[] q, int count) => Enumerable.Range(0, count).Any(j => q[j] <= 0 || q[j] >= finger.RangeRadians[j]);

    private static bool Inside(double station, double length) => station > 1e-6 && station < length - 1e-6;
}
