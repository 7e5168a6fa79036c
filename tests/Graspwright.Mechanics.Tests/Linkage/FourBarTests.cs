using CsCheck;
using Graspwright.Mechanics.Linkage;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Linkage;

/// <summary>The four-bar in closed form against worked examples, differences of its own positions, and its own loop.</summary>
public sealed class FourBarTests
{
    // Lecture problem with printed answers (transtutors.com question 13676847): 35, 25, 15, 10 in, crank at 30°.
    // To half a unit of the last printed digit; then to the digits of an independent computation.
    [Theory]
    [InlineData(Closure.Left, 254.1745, 334.0983, 254.174498380, 334.098340063)]
    [InlineData(Closure.Right, 187.3223, 107.3985, 187.322322751, 107.398481069)]
    public void Finds_both_closures_of_a_printed_example(Closure closure, double printed3, double printed4, double coupler, double rocker)
    {
        FourBarPosture posture = Assembled(new(35, 25, 15, 10), 30, closure);
        Assert.Equal(printed3, Degrees(posture.CouplerRadians), 5e-5);
        Assert.Equal(printed4, Degrees(posture.RockerRadians), 5e-5);
        Assert.Equal(coupler, Degrees(posture.CouplerRadians), 1e-9);
        Assert.Equal(rocker, Degrees(posture.RockerRadians), 1e-9);
    }

    // The same problem's point of the coupler, 10 in from its tip, 70° off its line.
    [Theory]
    [InlineData(Closure.Left, 33.4666, -5.8245)]
    [InlineData(Closure.Right, 10.1047, 5.4293)]
    public void Finds_the_printed_point_of_the_coupler(Closure closure, double x, double y)
    {
        FourBarPosture posture = Assembled(new(35, 25, 15, 10), 30, closure);
        Vector2D tip = 35 * Vector2D.AtAngle(posture.CrankRadians) + 25 * Vector2D.AtAngle(posture.CouplerRadians);
        Vector2D point = tip + 10 * Vector2D.AtAngle(posture.CouplerRadians + Radians(180 - 70));
        Assert.Equal(x, point.X, 5.1e-5);
        Assert.Equal(y, point.Y, 5.1e-5);
    }

    // R. L. Norton, Design of Machinery, ch. 4: 40, 120, 80, 100 mm, crank at 40° (example from memory; printed to 0.001° and 0.01°).
    [Theory]
    [InlineData(Closure.Left, 20.297882788, 57.324880070, 20.298, 57.325)]
    [InlineData(Closure.Right, 299.022033204, 261.995035922, 299.02, 261.99)]
    public void Finds_a_second_books_postures(Closure closure, double coupler, double rocker, double printed3, double printed4)
    {
        FourBarPosture posture = Assembled(new(40, 120, 80, 100), 40, closure);
        Assert.Equal(coupler, Degrees(posture.CouplerRadians), 1e-9);
        Assert.Equal(rocker, Degrees(posture.RockerRadians), 1e-9);
        Assert.Equal(printed3, Degrees(posture.CouplerRadians), 5.1e-3);
        Assert.Equal(printed4, Degrees(posture.RockerRadians), 5.1e-3);
    }

    // T. Bevan, The Theory of Machines, 3rd ed., Example 5, p. 98: 2.5, 7, 4.5, 8 in, 100 rev/min, 60°; answers drawn, to 5 %.
    [Fact]
    public void Agrees_with_the_velocities_and_accelerations_Bevan_drew()
    {
        FourBar bars = new(2.5 / 12, 7.0 / 12, 4.5 / 12, 8.0 / 12);
        double speed = 100 * Math.PI / 30;
        FourBarPosture posture = Assembled(bars, 60, Closure.Left);
        FourBarTurning velocity = bars.Velocity(posture, speed), acceleration = bars.Acceleration(posture, speed, 0);
        Assert.Equal(19.463423174, Degrees(posture.CouplerRadians), 1e-9);
        Assert.Equal(91.910458069, Degrees(posture.RockerRadians), 1e-9);
        Near(1.47, 1.487179832, Math.Abs(velocity.Rocker) * bars.Rocker);
        Near(1.26, 1.209529065, Math.Abs(velocity.Coupler) * bars.Coupler);
        Near(50.9, 50.60196610, Math.Abs(acceleration.Rocker));
        Near(24.7, 25.62540780, Math.Abs(acceleration.Coupler));
    }

    // R. S. Khurmi and J. K. Gupta, Theory of Machines, 14th ed., Example 8.4, p. 184: 62.5, 175, 112.5, 200 mm, 10 rad/s
    // clockwise (the crank's 60° is from memory); answers drawn, to 5 %.
    [Fact]
    public void Agrees_with_the_velocities_and_accelerations_Khurmi_drew()
    {
        FourBar bars = new(0.0625, 0.175, 0.1125, 0.2);
        FourBarPosture posture = Assembled(bars, 60, Closure.Left);
        FourBarTurning velocity = bars.Velocity(posture, -10), acceleration = bars.Acceleration(posture, -10, 0);
        Near(1.9, 1.980026017, velocity.Coupler);
        Near(-3.79, -3.787072343, velocity.Rocker);
        Near(23.43, 23.36756984, acceleration.Coupler);
        Near(47.1, 46.14345990, acceleration.Rocker);
    }

    // Khurmi and Gupta, Example 7.10, p. 162: crank 300, coupler and rocker 360, pivots 600 mm apart, 100 rev/min, 50 N·m in,
    // 0.70 of the power comes through (the crank's 60° is from memory); answers drawn, to 1.5 %.
    [Fact]
    public void Passes_torque_on_in_the_inverse_ratio_of_the_velocities()
    {
        FourBar bars = new(0.300, 0.360, 0.360, 0.600);
        double speed = 100 * Math.PI / 30;
        double output = bars.Velocity(Assembled(bars, 60, Closure.Left), speed).Rocker;
        double torque = 0.70 * 50 * speed / output;
        Assert.Equal(6.303388528, output, 1e-8);
        Assert.Equal(6.25, output, 0.015 * 6.25);
        Assert.Equal(58.14636704, torque, 1e-7);
        Assert.Equal(58.6, torque, 0.015 * 58.6);
    }

    // F. Freudenstein's equation K1 cos θ4 − K2 cos θ2 + K3 = cos(θ2 − θ4) (form seen; numbers made for this check): three
    // pairs of angles of the 40, 120, 80, 100 linkage must give its proportions back.
    [Fact]
    public void Gives_angles_from_which_Freudensteins_equation_returns_the_bars()
    {
        FourBar bars = new(40, 120, 80, 100);
        double[,] rows = new double[3, 4];
        double[] expected = [55.267777223, 64.943481106, 80.256912829];
        for (int row = 0; row < 3; row++)
        {
            FourBarPosture posture = Assembled(bars, 30 * (row + 1), Closure.Left);
            Assert.Equal(expected[row], Degrees(posture.RockerRadians), 1e-9);
            rows[row, 0] = Math.Cos(posture.RockerRadians);
            rows[row, 1] = -Math.Cos(posture.CrankRadians);
            rows[row, 2] = 1;
            rows[row, 3] = Math.Cos(posture.CrankRadians - posture.RockerRadians);
        }

        double all = Determinant(rows, -1);
        double k1 = Determinant(rows, 0) / all, k2 = Determinant(rows, 1) / all, k3 = Determinant(rows, 2) / all;
        Assert.Equal(2.5, k1, 1e-9);
        Assert.Equal(1.25, k2, 1e-9);
        Assert.Equal(0.5625, k3, 1e-9);
        double crank = 1 / k1, rocker = 1 / k2, coupler = Math.Sqrt(crank * crank + rocker * rocker + 1 - 2 * crank * rocker * k3);
        Assert.Equal((0.4, 1.2, 0.8), (Math.Round(crank, 9), Math.Round(coupler, 9), Math.Round(rocker, 9)));
    }

    [Fact]
    public void Closes_its_loop_wherever_it_can_be_assembled() => Cases.Sample(c =>
    {
        if (!c.Bars.TryAssemble(c.Crank, c.Closure, out FourBarPosture posture))
        {
            Assert.True(c.Bars.Gap(c.Crank) > 0);
            return;
        }

        Assert.Equal(0, Loop(c.Bars, posture).Length, 1e-12 * (c.Bars.Crank + c.Bars.Coupler + c.Bars.Rocker + c.Bars.Ground));
        Vector2D tip = c.Bars.Crank * Vector2D.AtAngle(c.Crank), line = new Vector2D(c.Bars.Ground, 0) - tip;
        double side = line.Cross(Vector2D.AtAngle(posture.CouplerRadians));
        Assert.True(c.Closure == Closure.Left ? side >= -1e-9 : side <= 1e-9);
    });

    [Fact]
    public void Turns_as_differences_of_its_positions_say() => Cases.Sample(c =>
    {
        const double h = 1e-4;
        if (!TryAround(c.Bars, c.Crank, c.Closure, h, out FourBarPosture[] at)
            || Math.Abs(Math.Sin(at[2].RockerRadians - at[2].CouplerRadians)) < 0.2)
        {
            return;
        }

        // The crank speeds up: θ2(t) = θ2 + ω t + ½ α t², so that both terms of the acceleration count.
        const double speed = 1.5, gain = 0.7;
        FourBarTurning ratio = c.Bars.Velocity(at[2], 1), velocity = c.Bars.Velocity(at[2], speed);
        FourBarTurning acceleration = c.Bars.Acceleration(at[2], speed, gain);
        foreach ((Func<FourBarPosture, double> angle, double first, double rate, double second) in
            new (Func<FourBarPosture, double>, double, double, double)[]
            {
                (p => p.CouplerRadians, ratio.Coupler, velocity.Coupler, acceleration.Coupler),
                (p => p.RockerRadians, ratio.Rocker, velocity.Rocker, acceleration.Rocker),
            })
        {
            double[] q = [.. at.Select(p => Math.IEEERemainder(angle(p) - angle(at[2]), 2 * Math.PI))];
            double slope = (q[0] - 8 * q[1] + 8 * q[3] - q[4]) / (12 * h);
            double bend = (-q[0] + 16 * q[1] - 30 * q[2] + 16 * q[3] - q[4]) / (12 * h * h);
            Assert.Equal(slope, first, 1e-8 * (1 + Math.Abs(slope)));
            Assert.Equal(speed * first, rate, 1e-12 * (1 + Math.Abs(rate)));
            double scale = 1 + Math.Abs(bend) + slope * slope;
            Assert.Equal(speed * speed * bend + gain * slope, second, 1e-5 * scale);
        }
    });

    [Fact]
    public void Stays_exact_when_it_lies_nearly_flat()
    {
        // Bars that reach only a hair further than the pivots: a needle of a triangle whose height is √(2·gap·b·c/(b+c)).
        const double hair = 1e-14, coupler = 0.06, rocker = 0.03;
        FourBar bars = new(0.01, coupler, rocker, 0.1 - hair);
        FourBarPosture posture = Assembled(bars, 0, Closure.Left);
        double slack = 0.01 + coupler + rocker - bars.Ground;
        double height = Math.Sqrt(2 * slack * coupler * rocker / (coupler + rocker));
        Assert.Equal(height, coupler * Math.Sin(posture.CouplerRadians), 0.15 * height);
        Assert.True(Loop(bars, posture).Length < 1e-16);
    }

    [Theory]
    [InlineData(0.01, 0.06, 0.03, 0.102, 0, 0.002)]
    [InlineData(0.01, 0.06, 0.03, 0.030, 180, 0)]
    [InlineData(0.01, 0.06, 0.03, 0.030, 0, 0.010)]
    public void Says_by_how_much_it_cannot_be_assembled(double crank, double coupler, double rocker, double ground, double degrees, double gap)
    {
        FourBar bars = new(crank, coupler, rocker, ground);
        Assert.Equal(gap, bars.Gap(Radians(degrees)), 1e-15);
        Assert.Equal(gap <= 0, bars.TryAssemble(Radians(degrees), Closure.Left, out _));
    }

    [Fact]
    public void Refuses_to_choose_when_the_tip_lies_on_the_rockers_pivot() =>
        Assert.False(new FourBar(0.02, 0.03, 0.03, 0.02).TryAssemble(0, Closure.Left, out _));

    [Theory]
    [InlineData(0)]
    [InlineData(-0.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Refuses_a_bar_that_has_no_length(double length)
    {
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new FourBar(0.01, length, 0.03, 0.04));
        Assert.Equal("coupler", refusal.ParamName);
    }

    private static Gen<(FourBar Bars, double Crank, Closure Closure)> Cases =>
        Gen.Select(Gen.Double[0.01, 0.1], Gen.Double[0.01, 0.1], Gen.Double[0.01, 0.1], Gen.Double[0.01, 0.1], Gen.Double[-4, 4], Gen.Bool)
            .Select((a, b, c, d, q, left) => (new FourBar(a, b, c, d), q, left ? Closure.Left : Closure.Right));

    private static FourBarPosture Assembled(FourBar bars, double degrees, Closure closure)
    {
        Assert.True(bars.TryAssemble(Radians(degrees), closure, out FourBarPosture posture));
        return posture;
    }

    private static bool TryAround(FourBar bars, double crank, Closure closure, double h, out FourBarPosture[] at)
    {
        at = new FourBarPosture[5];
        bool all = true;
        for (int i = 0; i < 5; i++)
        {
            all &= bars.TryAssemble(crank + (i - 2) * h, closure, out at[i]);
        }

        return all;
    }

    private static Vector2D Loop(FourBar bars, FourBarPosture posture) =>
        bars.Crank * Vector2D.AtAngle(posture.CrankRadians) + bars.Coupler * Vector2D.AtAngle(posture.CouplerRadians)
        - bars.Rocker * Vector2D.AtAngle(posture.RockerRadians) - new Vector2D(bars.Ground, 0);

    /// <summary>Determinant of the three left columns, with the fourth in place of one of them.</summary>
    private static double Determinant(double[,] m, int replaced)
    {
        double At(int row, int column) => m[row, column == replaced ? 3 : column];
        return At(0, 0) * (At(1, 1) * At(2, 2) - At(1, 2) * At(2, 1))
            - At(0, 1) * (At(1, 0) * At(2, 2) - At(1, 2) * At(2, 0))
            + At(0, 2) * (At(1, 0) * At(2, 1) - At(1, 1) * At(2, 0));
    }

    private static void Near(double drawn, double computed, double ours)
    {
        Assert.Equal(drawn, ours, 0.05 * Math.Abs(drawn));
        Assert.Equal(computed, ours, 2e-9 * Math.Abs(computed));
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;

    private static double Degrees(double radians) => (radians * 180 / Math.PI + 360) % 360;
}
