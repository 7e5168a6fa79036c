using Graspwright.Moulding.Limb;

namespace Graspwright.Moulding.Tests.Limb;

public sealed class TapeFormTests
{
    private static TapeForm Round(double near, double far, double length) =>
        new([new(0, near, double.NaN, double.NaN), new(length, far, double.NaN, double.NaN)]);

    [Fact]
    public void A_cone_has_the_volume_and_sheet_of_the_textbook()
    {
        double r0 = 0.05, r1 = 0.03, length = 0.2, slant = Math.Sqrt(0.02 * 0.02 + 0.04);
        TapeForm cone = Round(2 * Math.PI * r0, 2 * Math.PI * r1, length);
        Assert.Equal(Math.PI * length * (r0 * r0 + r0 * r1 + r1 * r1) / 3, cone.Volume(0, length), 1e-12);
        Assert.Equal(Math.PI * (r0 + r1) * slant, TapeForm.Area(cone.Outline(0, length, 0, 0)), 1e-12);
    }

    [Fact]
    public void The_sheet_grows_by_half_its_thickness_and_the_overlap()
    {
        TapeForm cylinder = Round(0.2, 0.2, 0.1);
        Assert.Equal(0.1 * (0.2 + Math.PI * 0.004 + 0.008), TapeForm.Area(cylinder.Outline(0, 0.1, 0.004, 0.008)), 1e-12);
    }

    // Half axes 2 and 1: 9.688448220547676 (complete elliptic integral, widely tabulated).
    [Fact]
    public void Knows_the_perimeter_of_an_ellipse() => Assert.Equal(9.688448220547676, Ellipse.Perimeter(2, 1), 1e-12);

    [Fact]
    public void Keeps_girth_and_proportion_of_a_flat_wrist()
    {
        TapeForm wrist = new([new(0, 0.17, 0.06, 0.04), new(0.1, 0.25, 0.08, 0.08)]);
        (double a, double b) = wrist.HalfAxes(0);
        Assert.Equal(0.17, Ellipse.Perimeter(a, b), 1e-12);
        Assert.Equal(1.5, a / b, 1e-12);
        Assert.Equal(Math.PI * a * b, wrist.Section(0), 1e-15);
    }
}
