using CsCheck;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Linkage;

/// <summary>The closed form itself against tabulated forces and against the work of small turnings.</summary>
public sealed class UnderactuatedFingerTests
{
    // No published numbers were found; these were computed apart from this code. 1000 N·mm and half of it, contacts at
    // 20 and 15 mm, first segment 40 mm.
    [Theory]
    [InlineData(0, -41.666666667)]
    [InlineData(30, -32.735026919)]
    [InlineData(60, -8.333333333)]
    [InlineData(75, 7.745396993)]
    [InlineData(90, 25.000000000)]
    public void Gives_the_tabulated_forces_on_two_segments(double degrees, double first)
    {
        (double f1, double f2) = UnderactuatedFinger.Two((1, 0.5), (0.020, 0.015), 0.040, Radians(degrees));
        Assert.Equal(first, f1, 1e-9);
        Assert.Equal(33.333333333, f2, 1e-9);
    }

    [Theory]
    [InlineData(0, 4.166666667)]
    [InlineData(30, 8.632486540)]
    [InlineData(60, 20.833333333)]
    [InlineData(90, 37.5)]
    public void Keeps_both_segments_on_with_a_quarter_of_the_moment(double degrees, double first)
    {
        (double f1, double f2) = UnderactuatedFinger.Two((1, 0.25), (0.020, 0.015), 0.040, Radians(degrees));
        Assert.Equal(first, f1, 1e-6);
        Assert.Equal(16.666666667, f2, 1e-9);
    }

    // The first segment leaves where k2 (1 − R) = R l1 cos θ2.
    [Theory]
    [InlineData(0.5, 60, 0.020)]
    [InlineData(15.0 / 55, 0, 0.015)]
    public void Pushes_the_first_segment_off_at_the_known_threshold(double ratio, double degrees, double place)
    {
        Assert.Equal(0, UnderactuatedFinger.Two((1, ratio), (0.020, place), 0.040, Radians(degrees)).First, 1e-12);
        Assert.True(UnderactuatedFinger.Two((1, ratio * 1.01), (0.020, place), 0.040, Radians(degrees)).First < 0);
        Assert.True(UnderactuatedFinger.Two((1, ratio * 0.99), (0.020, place), 0.040, Radians(degrees)).First > 0);
    }

    [Fact]
    public void Gives_the_tabulated_forces_on_three_segments()
    {
        (double f1, double f2, double f3) = UnderactuatedFinger.Three(
            (1, 0.6, 0.3), (0.020, 0.015, 0.010), (0.040, 0.030), Radians(30), Radians(45));
        Assert.Equal(43.31453343, f1, 5e-9);
        Assert.Equal(-22.42640687, f2, 5e-9);
        Assert.Equal(30, f3, 1e-12);
    }

    [Fact]
    public void Does_the_work_of_the_joint_moments_in_every_small_turning() =>
        Gen.Select(Gen.Double[0.1, 2].Array[3], Gen.Double[0.005, 0.03].Array[3], Gen.Double[0.02, 0.05].Array[2], Gen.Double[0, 1.6].Array[3])
            .Sample((moments, places, lengths, q) =>
            {
                (double f1, double f2, double f3) = UnderactuatedFinger.Three(
                    (moments[0], moments[1], moments[2]), (places[0], places[1], places[2]), (lengths[0], lengths[1]), q[1], q[2]);
                (double two1, double two2) = UnderactuatedFinger.Two((moments[0], moments[1]), (places[0], places[1]), lengths[0], q[1]);
                Assert.Equal(moments[0], Work(q, 0, places, lengths, [f1, f2, f3]), 1e-6);
                Assert.Equal(moments[1], Work(q, 1, places, lengths, [f1, f2, f3]), 1e-6);
                Assert.Equal(moments[2], Work(q, 2, places, lengths, [f1, f2, f3]), 1e-6);
                Assert.Equal(moments[0], Work(q, 0, places, lengths, [two1, two2, 0]), 1e-6);
                Assert.Equal(moments[1], Work(q, 1, places, lengths, [two1, two2, 0]), 1e-6);
            });

    /// <summary>Work of forces square to the segments, per turning of one joint, by differences of where the contacts are.</summary>
    private static double Work(double[] q, int joint, double[] places, double[] lengths, double[] forces)
    {
        const double h = 1e-5;
        double work = 0;
        for (int segment = 0; segment < 3; segment++)
        {
            Vector2D moved = Contact(q, joint, h, segment, places, lengths) - Contact(q, joint, -h, segment, places, lengths);
            work += forces[segment] * moved.Dot(Vector2D.AtAngle(q.Take(segment + 1).Sum()).Perpendicular) / (2 * h);
        }

        return work;
    }

    private static Vector2D Contact(double[] q, int joint, double turn, int segment, double[] places, double[] lengths)
    {
        Vector2D place = default;
        double angle = 0;
        for (int i = 0; i <= segment; i++)
        {
            angle += q[i] + (i == joint ? turn : 0);
            place += (i < segment ? lengths[i] : places[segment]) * Vector2D.AtAngle(angle);
        }

        return place;
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
