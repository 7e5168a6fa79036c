using Graspwright.Strength.Sections;

namespace Graspwright.Strength.Tests.Sections;

public sealed class ColumnTests
{
    [Fact]
    public void A_slender_rod_buckles_by_eulers_formula() =>
        Assert.Equal(Math.PI * Math.PI * 70e9 * Section.Round(0.004).InertiaFlat / (0.3 * 0.3), Column.Buckling(0.004, 0.3, 70e9, 276e6), 1e-9);

    [Fact]
    public void The_two_curves_meet_at_half_the_yield()
    {
        double radius = 0.004 / 4, length = radius * Math.PI * Math.Sqrt(2 * 70e9 / 276e6);
        double area = Section.Round(0.004).Area;
        Assert.Equal(138e6 * area, Column.Buckling(0.004, length * (1 + 1e-9), 70e9, 276e6), 1e-5);
        Assert.Equal(138e6 * area, Column.Buckling(0.004, length * (1 - 1e-9), 70e9, 276e6), 1e-5);
    }

    [Fact]
    public void A_stub_yields() => Assert.Equal(276e6 * Section.Round(0.004).Area, Column.Buckling(0.004, 1e-6, 70e9, 276e6), 1e-3);
}
