using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Tests.Sections;

public sealed class CurvedBarTests
{
    // Boresi & Schmidt, Advanced Mechanics of Materials, examples 9.1 (page 326) and 9.4 (page 330); Shigley's Mechanical
    // Engineering Design, 9th edition, page 120. Printed: 106.18 and −49.32 MPa; 0.0017 and −0.0006 for each newton;
    // 16.9 and −5.63 kpsi. The digits here are recomputed from the stated data.
    [Theory]
    [InlineData(30, 50, 50, 9500 * 155, 9500, 106.181722385, -49.318145895)]
    [InlineData(60, 120, 50, 120, 1, 1.690120663e-3, -5.633735542e-4)]
    [InlineData(2, 4, 0.75, 20_000, 5000, 16901.206626, -5633.735542)]
    public void Agrees_with_the_textbooks(double inner, double depth, double thickness, double moment, double pull, double inside, double outside)
    {
        (double atInner, double atOuter) = CurvedBar.Stress(inner, depth, thickness, moment, pull);
        Assert.Equal(inside, atInner, 1e-9 * Math.Abs(inside));
        Assert.Equal(outside, atOuter, 1e-9 * Math.Abs(inside));
    }

    [Fact]
    public void A_straight_bars_formula_would_say_thirty_per_cent_less_at_the_inner_face()
    {
        double straight = 9500.0 / 2500 + 9500.0 * 155 / (50.0 * 2500 / 6);
        Assert.Equal(74.48, straight, 0.005);
        Assert.InRange(straight / CurvedBar.Stress(30, 50, 50, 9500 * 155, 9500).Inner, 0.69, 0.71);
    }

    [Fact]
    public void A_gentle_curve_comes_to_the_straight_bar_without_losing_digits()
    {
        // To first order in h/R the inner face carries 1 + h/(3R)·… of the straight bar's stress; a million radii away nothing is left of it.
        (double inner, double outer) = CurvedBar.Stress(1e6, 1, 1, 1, 0);
        Assert.Equal(6, inner, 1e-4);
        Assert.Equal(-6, outer, 1e-4);
    }
}
