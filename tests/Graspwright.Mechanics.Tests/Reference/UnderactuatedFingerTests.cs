namespace Graspwright.Mechanics.Tests.Reference;

/// <summary>The closed form at tabled postures; exact numbers worked out apart from this code, N and mm.</summary>
public sealed class UnderactuatedFingerTests
{
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(0, -41.666666667)]
    [InlineData(30, -32.735026919)]
    [InlineData(60, -8.333333333)]
    [InlineData(75, 7.745396993)]
    [InlineData(90, 25.000000000)]
    public void Two_segments_at_half_the_moment_push_off_until_well_bent(double flexion, double proximal)
    {
        double[] f = Two(1000, 0.5, 20, 15, 40, flexion);
        Assert.Equal(proximal, f[0], 1e-9);
        Assert.Equal(33.333333333, f[1], 1e-9);
    }

    [Theory]
    [InlineData(0, 4.166667)]
    [InlineData(30, 8.632487)]
    [InlineData(60, 20.833333)]
    [InlineData(90, 37.5)]
    public void Two_segments_at_a_quarter_of_the_moment_hold_everywhere(double flexion, double proximal)
    {
        double[] f = Two(1000, 0.25, 20, 15, 40, flexion);
        Assert.Equal(proximal, f[0], 1e-6);
        Assert.Equal(16.666667, f[1], 1e-6);
    }

    [Fact]
    public void Proximal_segment_lets_go_where_k2_times_one_less_R_equals_R_l1_cos()
    {
        double[] f = Two(1000, 0.5, 20, 20, 40, 60);
        Assert.Equal(0, f[0], 1e-10);
        Assert.Equal(25, f[1], 1e-10);
        Assert.Equal(0, Two(1000, 15.0 / 55, 20, 15, 40, 0)[0], 1e-10);
    }

    [Fact]
    public void Three_segments_can_push_off_the_middle_one()
    {
        double[,] j = UnderactuatedFinger.Levers([20, 15, 10], [40, 30, 0], [0, 30 * Degree, 45 * Degree]);
        Assert.Equal(49.64101615, j[1, 0], 1e-8);
        Assert.Equal(41.56596524, j[2, 0], 1e-8);
        Assert.Equal(31.21320344, j[2, 1], 1e-8);
        double[] f = UnderactuatedFinger.Forces(j, [1000, 600, 300]);
        Assert.Equal(43.31453343, f[0], 1e-8);
        Assert.Equal(-22.42640687, f[1], 1e-8);
        Assert.Equal(30, f[2], 1e-10);
        for (int joint = 0; joint < 3; joint++)
        {
            double moment = j[0, joint] * f[0] + j[1, joint] * f[1] + j[2, joint] * f[2];
            Assert.Equal(new[] { 1000.0, 600, 300 }[joint], moment, 1e-9);
        }
    }

    private static double[] Two(double moment, double ratio, double k1, double k2, double l1, double flexion)
    {
        double[] joints = UnderactuatedFinger.JointMoments(new[,] { { 1, -ratio }, { 0, 1 } }, [moment, 0]);
        return UnderactuatedFinger.Forces(UnderactuatedFinger.Levers([k1, k2], [l1, 0], [0, flexion * Degree]), joints);
    }
}
