using CsCheck;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Tests.Reference;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Linkage;

public sealed class FourBarTests
{
    private const double Degree = Math.PI / 180;
    private const double Exact = 1e-9; // relative, against values worked out apart from this code

    // Lecture problem with printed answers, transtutors.com question 13676847: crank 35, coupler 25, rocker 15, ground 10 in,
    // 30°; coupler point 10 in from the rocker pin at 70°. Printed to 1e-4.
    [Theory]
    [InlineData(Closure.Open, 254.1745, 334.0983, 33.4666, -5.8245, 254.174498380, 334.098340063, 33.46664662, -5.82447476)]
    [InlineData(Closure.Crossed, 187.3223, 107.3985, 10.1047, 5.4293, 187.322322751, 107.398481069, 10.10472487, 5.42933911)]
    public void Both_closures_and_the_coupler_point_are_those_of_the_lecture_problem(
        Closure closure, double coupler, double rocker, double x, double y, double couplerExact, double rockerExact, double xExact, double yExact)
    {
        FourBarPosition p = new FourBar(10, 35, 25, 15).At(30 * Degree, closure)!.Value;
        Assert.Equal(coupler, Turn(p.CouplerRadians), 5.1e-5);
        Assert.Equal(rocker, Turn(p.RockerRadians), 5.1e-5);
        Assert.Equal(couplerExact, Turn(p.CouplerRadians), 1e-9);
        Assert.Equal(rockerExact, Turn(p.RockerRadians), 1e-9);
        Vector2D point = p.RockerPin + 10 * Vector2D.AtAngle(p.CouplerRadians + 110 * Degree);
        Assert.Equal(x, point.X, 5.1e-5);
        Assert.Equal(y, point.Y, 5.1e-5);
        Assert.Equal(xExact, point.X, 1e-8);
        Assert.Equal(yExact, point.Y, 1e-8);
    }

    // R. L. Norton, Design of Machinery, ch. 4: 40, 120, 80, 100 mm at 40° (angles printed there to 1e-3, from memory).
    [Theory]
    [InlineData(Closure.Open, 20.298, 57.325, 20.297882788, 57.324880070)]
    [InlineData(Closure.Crossed, -60.98, -98.01, -60.977966796, -98.004964078)]
    public void Both_closures_are_those_of_Nortons_set(Closure closure, double coupler, double rocker, double couplerExact, double rockerExact)
    {
        FourBarPosition p = new FourBar(100, 40, 120, 80).At(40 * Degree, closure)!.Value;
        Assert.Equal(coupler, Signed(p.CouplerRadians), 6e-3);
        Assert.Equal(rocker, Signed(p.RockerRadians), 6e-3);
        Assert.Equal(couplerExact, Signed(p.CouplerRadians), 1e-9);
        Assert.Equal(rockerExact, Signed(p.RockerRadians), 1e-9);
    }

    // Bevan, The Theory of Machines, 3rd ed., Example 5, p. 98: 2.5, 7, 4.5, 8 in, 100 rpm, 60°. Answers by drawing.
    [Fact]
    public void Velocities_and_accelerations_are_those_of_Bevans_example()
    {
        const double rate = 100 * 2 * Math.PI / 60;
        FourBarPosition p = new FourBar(8, 2.5, 7, 4.5).At(60 * Degree, Closure.Open)!.Value;
        (double coupler, double rocker) = p.Accelerations(rate, 0);
        Drawn(1.47, 1.487179832, Math.Abs(p.RockerRatio) * rate * 4.5 / 12);
        Drawn(1.26, 1.209529065, Math.Abs(p.CouplerRatio) * rate * 7 / 12);
        Drawn(50.9, 50.60196610, Math.Abs(rocker));
        Drawn(24.7, 25.62540780, Math.Abs(coupler));
    }

    // Khurmi & Gupta, Theory of Machines, 14th ed., Example 8.4, p. 184: the same proportions, 10 rad/s clockwise (60° from memory).
    [Fact]
    public void Velocities_and_accelerations_are_those_of_Khurmis_example()
    {
        FourBarPosition p = new FourBar(200, 62.5, 175, 112.5).At(60 * Degree, Closure.Open)!.Value;
        (double coupler, double rocker) = p.Accelerations(-10, 0);
        Drawn(1.9, 1.980026017, p.CouplerRatio * -10);
        Drawn(-3.79, -3.787072343, p.RockerRatio * -10);
        Drawn(23.43, 23.36756984, coupler);
        Drawn(47.1, 46.14345990, rocker);
        Assert.Equal(19.463423174, Signed(p.CouplerRadians), 1e-9);
        Assert.Equal(91.910458069, Signed(p.RockerRadians), 1e-9);
    }

    // Khurmi & Gupta Example 7.10, p. 162: 300, 360, 360, 600 mm, 100 rpm, 50 N·m, efficiency 0.70 (60° from memory).
    [Fact]
    public void Moment_through_the_links_is_that_of_Khurmis_example()
    {
        const double rate = 100 * 2 * Math.PI / 60, efficiency = 0.7, moment = 50;
        FourBarPosition p = new FourBar(0.6, 0.3, 0.36, 0.36).At(60 * Degree, Closure.Open)!.Value;
        double driven = Math.Abs(p.RockerRatio) * rate;
        Assert.Equal(6.303388528, driven, 6.3 * Exact);
        Assert.Equal(2.269219870, driven * 0.36, 2.3 * Exact);
        Assert.Equal(1.661324773, Math.Abs(p.MomentRatio), 1.7 * Exact);
        double delivered = efficiency * moment * Math.Abs(p.MomentRatio);
        Assert.Equal(58.14636704, delivered, 58 * Exact);
        Assert.True(Math.Abs(delivered - 58.6) < 0.015 * 58.6, "published 58.6 N·m, drawn");
        Assert.Equal(rate * moment * efficiency, driven * delivered, 1e-12 * rate * moment);
    }

    // Freudenstein's equation K₁ cos θ₄ − K₂ cos θ₂ + K₃ = cos(θ₂ − θ₄), K₁ = d/a, K₂ = d/c, K₃ = (a² − b² + c² + d²)/2ac.
    [Theory]
    [InlineData(30, 55.267777223)]
    [InlineData(60, 64.943481106)]
    [InlineData(90, 80.256912829)]
    public void Positions_satisfy_Freudensteins_equation(double crank, double rocker)
    {
        FourBarPosition p = new FourBar(1, 0.4, 1.2, 0.8).At(crank * Degree, Closure.Open)!.Value;
        Assert.Equal(rocker, Signed(p.RockerRadians), 1e-9);
        double left = 2.5 * Math.Cos(p.RockerRadians) - 1.25 * Math.Cos(p.CrankRadians) + 0.5625;
        Assert.Equal(Math.Cos(p.CrankRadians - p.RockerRadians), left, 1e-13);
    }

    [Fact]
    public void Links_that_do_not_reach_have_no_position() => Assert.Null(new FourBar(100, 10, 20, 30).At(0, Closure.Open));

    [Fact]
    public void Loop_closes_and_rates_are_slopes_of_the_position() =>
        Gen.Select(Gen.Double[0.2, 1], Gen.Double[0.5, 1.5], Gen.Double[0.5, 1.5], Gen.Double[0, 6.28], Gen.Bool).Sample((a, b, c, angle, open) =>
        {
            FourBar bar = new(1, a, b, c);
            Closure closure = open ? Closure.Open : Closure.Crossed;
            const double h = 1e-5;
            if (bar.At(angle, closure) is not { } p || bar.At(angle - h, closure) is not { } before || bar.At(angle + h, closure) is not { } after
                || Math.Abs(Math.Sin(p.RockerRadians - p.CouplerRadians)) < 0.2)
            {
                return; // cannot be put together there, or coupler and rocker nearly in line
            }

            Vector2D gap = p.RockerPin - new Vector2D(1, 0) - c * Vector2D.AtAngle(p.RockerRadians);
            Assert.True(gap.Length < 1e-12, $"the loop is open by {gap.Length}");
            double slope = Math.IEEERemainder(after.RockerRadians - before.RockerRadians, 2 * Math.PI) / (2 * h);
            Assert.Equal(slope, p.RockerRatio, 1e-7 * (1 + Math.Abs(slope)));
            double bend = (after.RockerRatio - before.RockerRatio) / (2 * h);
            Assert.Equal(bend, p.Accelerations(1, 0).Rocker, 1e-6 * (1 + Math.Abs(bend)));
            double couplerBend = (after.CouplerRatio - before.CouplerRatio) / (2 * h);
            Assert.Equal(couplerBend, p.Accelerations(1, 0).Coupler, 1e-6 * (1 + Math.Abs(couplerBend)));
        });

    [Fact]
    public void Coupling_of_a_finger_is_the_four_bar_seen_from_its_segment()
    {
        int compared = 0;
        Gen.Select(Gen.Double[5, 8], Gen.Double[60, 100], Gen.Double[6, 10], Gen.Double[-110, -60], Gen.Double[20, 48], Gen.Double[0, 1.2])
            .Sample((before, beforeAngle, after, afterAngle, segment, driver) =>
            {
                FourBarCoupling coupling = new(before * 1e-3, beforeAngle * Degree, after * 1e-3, afterAngle * Degree);
                JointCoupling joint = new(coupling, segment * 1e-3);
                FourBar bar = Seen(coupling, segment * 1e-3, out Closure closure);
                FourBarPosition? position = bar.At(coupling.BeforeRadians + driver, closure);
                if (!joint.TryEvaluate(driver, out double value, out double first, out double second))
                {
                    Assert.Null(position);
                    return;
                }

                FourBarPosition p = position!.Value;
                if (Math.Abs(Math.Sin(p.RockerRadians - p.CouplerRadians)) < 0.05)
                {
                    return; // nearly in line: both slopes grow without bound
                }

                Interlocked.Increment(ref compared);
                Assert.Equal(0, Math.IEEERemainder(coupling.AfterRadians - p.RockerRadians - value, 2 * Math.PI), 1e-11);
                Assert.Equal(-p.RockerRatio, first, 1e-9 * (1 + Math.Abs(first)));
                Assert.Equal(-p.Accelerations(1, 0).Rocker, second, 1e-7 * (1 + Math.Abs(second)));

                // Statics: one coupler force gives both moments, and their ratio is that of the four-bar.
                CouplerLine line = joint.Line(driver, value, first);
                double atDriver = -p.CrankPin.Cross(line.Unit), atDriven = line.Lever;
                Assert.Equal(atDriver, first * atDriven, 1e-12);
                Assert.Equal(p.RockerRatio, -atDriver / atDriven, 1e-9 * (1 + Math.Abs(first)));
            });
        Assert.True(compared > 50, $"only {compared} were compared");
    }

    private static FourBar Seen(FourBarCoupling c, double segment, out Closure closure)
    {
        Vector2D a = c.BeforeRadius * Vector2D.AtAngle(c.BeforeRadians);
        Vector2D b = new Vector2D(segment, 0) + c.AfterRadius * Vector2D.AtAngle(c.AfterRadians);
        FourBar bar = new(segment, c.BeforeRadius, (b - a).Length, c.AfterRadius);
        double Off(Closure way) => Math.Abs(Math.IEEERemainder(bar.At(c.BeforeRadians, way)!.Value.RockerRadians - c.AfterRadians, 2 * Math.PI));
        closure = Off(Closure.Open) < Off(Closure.Crossed) ? Closure.Open : Closure.Crossed;
        return bar;
    }

    private static void Drawn(double published, double exact, double ours)
    {
        Assert.True(Math.Abs(ours - published) <= 0.05 * Math.Abs(published), $"published {published}, ours {ours}");
        Assert.True(Math.Abs(ours - exact) <= 2 * Exact * Math.Abs(exact), $"exact {exact}, ours {ours:r}");
    }

    private static double Signed(double radians) => Math.IEEERemainder(radians, 2 * Math.PI) / Degree;

    private static double Turn(double radians) => (Signed(radians) + 360) % 360;
}
