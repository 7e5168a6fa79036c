using Graspwright.Form.Surface;
using Graspwright.Form.Tape;
using Graspwright.Form.Thickness;

namespace Graspwright.Form.Tests.Thickness;

public sealed class OffsetTests
{
    [Fact]
    public void The_offset_of_a_ball_lies_within_a_fiftieth_of_a_millimetre_both_ways()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.Ball(4, 0.02));
        OffsetSurface offset = Offset.Of(new(new(sides), 0.003));
        Assert.True(offset.Closed);
        Assert.Equal(0, offset.Crossings);
        Assert.True(offset.Own < 0.02e-3 && offset.Other < 0.02e-3, $"{offset.Own} {offset.Other}");
        SurfaceSums own = SurfaceSums.Of(sides);
        double sheet = SurfaceSums.Of(Neighbourhood.Of(offset.Mesh)).Volume - own.Volume;
        double steiner = own.Area * 0.003 + own.MeanCurvature * 9e-6 + own.GaussCurvature * 9e-9;
        Assert.Equal(steiner, sheet, 2e-3 * steiner);
    }

    [Theory]
    [InlineData(48, 24, 0.03, 0.01)]
    [InlineData(100, 60, 0.06, 0.025)]
    public void The_offset_of_a_torus_is_true_both_ways_and_cuts_itself_nowhere(int m, int n, double ring, double tube)
    {
        OffsetSurface offset = Offset.Of(new(new(Neighbourhood.Of(Shapes.Torus(m, n, ring, tube))), 0.003));
        Assert.Equal((0, true), (offset.Crossings, offset.Closed));
        Assert.True(offset.Own < 0.02e-3 && offset.Other < 0.02e-3, $"{offset.Own} {offset.Other}");
    }

    // Between thumb and palm the true offset has a valley sharper than a sheet can lie: it is spanned and told, and nothing else is off.
    [Fact]
    public void The_offset_of_a_limb_with_its_thumb_cuts_itself_nowhere()
    {
        TapeMark[] marks = [new(-0.07, 0.205, 0.068, 0.058), new(-0.015, 0.168, 0.058, 0.046), new(0.035, 0.232, 0.088, 0.054), new(0.085, 0.206, 0.085, 0.036)];
        OffsetSurface offset = Offset.Of(new(new(Neighbourhood.Of(Loft.Of(new(marks), new(0.03, 0.084, 0.074, 0.022, 0.7), 60, 0.004).Mesh)), 0.003));
        Assert.Equal((0, true), (offset.Crossings, offset.Closed));
        Assert.True(offset.Own < 0.02e-3 && offset.Other < 0.02e-3, $"{offset.Own} {offset.Other}");
    }

    [Fact]
    public void Nothing_is_left_deeper_than_the_middle() =>
        Assert.Throws<ArgumentException>(() => Offset.Of(new(new(Neighbourhood.Of(Shapes.Ball(2, 0.01))), -0.012)));

    // Steiner on a ball of radius R: 4/3·π·((R + t)³ − R³).
    [Fact]
    public void A_sheet_on_a_ball_has_Steiners_volume()
    {
        Mesh ball = Shapes.Ball(5, 0.03);
        SheetVolume sheet = SheetVolume.Of(Neighbourhood.Of(ball), SurfaceSums.Normals(ball), _ => 0.003, 0.003);
        double exact = 4.0 / 3 * Math.PI * (Math.Pow(0.033, 3) - Math.Pow(0.03, 3));
        Assert.Equal(exact, sheet.Volume, 1e-3 * exact);
        Assert.Equal(exact, sheet.Steiner, 1e-3 * exact);
        Assert.True(sheet.Flat < 0.95 * exact);
    }
}
