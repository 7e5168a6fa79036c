using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;

namespace Graspwright.Form.Tests.Thickness;

public sealed class OffsetTests
{
    [Fact]
    public void The_offset_of_a_ball_lies_within_a_fiftieth_of_a_millimetre_both_ways()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.Ball(4, 0.02));
        OffsetSurface offset = Offset.Of(new(sides), 0.003);
        Assert.True(offset.Closed);
        Assert.Equal(0, offset.Crossings);
        Assert.True(offset.Own < 0.02e-3 && offset.Other < 0.02e-3, $"{offset.Own} {offset.Other}");
        SurfaceSums own = SurfaceSums.Of(sides);
        double sheet = SurfaceSums.Of(Neighbourhood.Of(offset.Mesh)).Volume - own.Volume;
        double steiner = own.Area * 0.003 + own.MeanCurvature * 9e-6 + own.GaussCurvature * 9e-9;
        Assert.Equal(steiner, sheet, 2e-3 * steiner);
    }

    [Fact]
    public void Nothing_is_left_deeper_than_the_middle() =>
        Assert.Throws<ArgumentException>(() => Offset.Of(new(Neighbourhood.Of(Shapes.Ball(2, 0.01))), -0.012, 0.002));

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
