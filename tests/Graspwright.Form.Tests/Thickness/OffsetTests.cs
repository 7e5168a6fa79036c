using Graspwright.Form.Surface;
using Graspwright.Form.Tape;
using Graspwright.Form.Thickness;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Thickness;

public sealed class OffsetTests
{
    private const double Asked = 0.02e-3; // both ways

    private static OffsetSurface Made(Mesh form, double distance) => Made(new OffsetField(new(Neighbourhood.Of(form)), distance));

    // Whatever is made is closed, cuts itself nowhere and lies within a fiftieth of a millimetre both ways.
    private static OffsetSurface Made(OffsetField field)
    {
        OffsetSurface offset = Offset.Of(field, TestContext.Current.CancellationToken);
        Assert.Equal((0, true), (offset.Crossings, offset.Closed));
        Assert.True(Math.Max(offset.Own, offset.Other) < Asked && offset.Filled == 0, $"{offset.Own} {offset.Other} {offset.Filled}");
        return offset;
    }

    [Fact]
    public void The_offset_of_a_ball_holds_what_Steiner_says()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.Ball(4, 0.02));
        OffsetSurface offset = Made(sides.Mesh, 0.003);
        SurfaceSums own = SurfaceSums.Of(sides);
        double sheet = SurfaceSums.Of(Neighbourhood.Of(offset.Mesh)).Volume - own.Volume;
        double steiner = own.Area * 0.003 + own.MeanCurvature * 9e-6 + own.GaussCurvature * 9e-9;
        Assert.Equal(steiner, sheet, 2e-3 * steiner);
    }

    [Theory]
    [InlineData(48, 24, 0.03, 0.01)]
    [InlineData(100, 60, 0.06, 0.025)]
    public void The_offset_of_a_torus_is_a_torus(int m, int n, double ring, double tube) =>
        Assert.Equal(0, SurfaceSums.Of(Neighbourhood.Of(Made(Shapes.Torus(m, n, ring, tube), 0.003).Mesh)).Euler);

    // Between thumb and palm the true offset has a sharp valley.
    [Fact]
    public void The_offset_of_a_limb_follows_the_valley_at_its_thumb()
    {
        TapeMark[] marks = [new(-0.07, 0.205, 0.068, 0.058), new(-0.015, 0.168, 0.058, 0.046), new(0.035, 0.232, 0.088, 0.054), new(0.085, 0.206, 0.085, 0.036)];
        Made(Loft.Of(new(marks), new(0.03, 0.084, 0.074, 0.022, 0.7), 60, 0.004).Mesh, 0.003);
    }

    // Walls at an angle of φ to the middle, offset by t, meet t ÷ sin φ above the bottom of the notch.
    [Theory]
    [InlineData(0.010, 0.010, 0.003)]
    [InlineData(0.003, 0.008, 0.002)]
    public void The_bottom_of_a_notch_is_where_its_walls_meet(double half, double deep, double t)
    {
        (double, double)[] block = [(-0.02, -0.01), (0.02, -0.01), (0.02, 0.01), (half, 0.01), (0, 0.01 - deep), (-half, 0.01), (-0.02, 0.01)];
        Nearest offset = new(Neighbourhood.Of(Made(Shapes.Prism(block, 4, 0.03), t).Mesh));
        double y = 0.01 - deep + t / Math.Sin(Math.Atan2(half, deep));
        for (int i = 0; i <= 200; i++)
        {
            Assert.InRange(Math.Abs(offset.To(new(0, y, 0.002 + 0.026 * i / 200)).Distance), 0, Asked);
        }
    }

    // Walls at 10° to the middle: what is filled is told, and is what was measured from the known bottom.
    [Fact]
    public void The_bottom_of_a_narrow_notch_is_filled_and_told()
    {
        (double, double)[] block = [(-0.02, -0.01), (0.02, -0.01), (0.02, 0.01), (0.0014, 0.01), (0, 0.002), (-0.0014, 0.01), (-0.02, 0.01)];
        OffsetSurface offset = Offset.Of(new(new(Neighbourhood.Of(Shapes.Prism(block, 4, 0.03))), 0.001), TestContext.Current.CancellationToken);
        Assert.True(Math.Max(offset.Own, offset.Other) < Asked && offset.Filled < 5 * Asked, $"{offset.Own} {offset.Other} {offset.Filled}");
        Nearest tree = new(Neighbourhood.Of(offset.Mesh));
        double bottom = 0.002 + 0.001 / Math.Sin(Math.Atan2(0.0014, 0.008)), filled = 0;
        for (int i = 0; i <= 200; i++)
        {
            filled = Math.Max(filled, Math.Abs(tree.To(new(0, bottom, 0.002 + 0.026 * i / 200)).Distance));
        }

        Assert.InRange(filled, Asked, 1.2 * offset.Filled);
    }

    [Fact]
    public void Bumpy_balls_have_sound_offsets_outward_and_inward()
    {
        for (int seed = 1; seed <= 4; seed++)
        {
            Made(Shapes.Bumpy(seed, 3, 0.02, 0.006), seed % 2 == 0 ? 0.002 : -0.002);
        }
    }

    // A gap a hair wider than two sheets stays open, one a hair narrower closes. The valley round that place has walls at 3.5° to its middle:
    // its bottom is too narrow to be drawn, and that is told.
    [Theory]
    [InlineData(0.00605, 4)]
    [InlineData(0.00595, 2)]
    public void Sheets_that_nearly_touch_do_not_cut_each_other(double gap, int euler)
    {
        Mesh one = Shapes.Ball(3, 0.01), other = one with { Points = [.. one.Points.Select((x, i) => i % 3 == 0 ? x + 0.02 + gap : x)] };
        Mesh both = new([.. one.Points, .. other.Points], [.. one.Corners, .. other.Corners.Select(v => v + one.PointCount)]);
        OffsetSurface offset = Offset.Of(new(new(Neighbourhood.Of(both)), 0.003), TestContext.Current.CancellationToken);
        Assert.Equal((0, true, euler), (offset.Crossings, offset.Closed, SurfaceSums.Of(Neighbourhood.Of(offset.Mesh)).Euler));
        Assert.InRange(Math.Max(offset.Own, offset.Other), 0, Asked);
        Assert.InRange(offset.Filled, euler == 4 ? 0 : Asked, euler == 4 ? 0 : 20 * Asked);
    }

    // Over a ball with two thicknesses the outside is two balls, and round the seam the rim of the thicker one's balls.
    [Fact]
    public void Each_part_has_its_own_thickness()
    {
        Neighbourhood ball = Neighbourhood.Of(Shapes.Ball(5, 0.03));
        OffsetField field = new(new(ball), [.. Enumerable.Range(0, ball.Mesh.FaceCount).Select(f => ball.Mesh.Middle(f).Z > 0 ? 0.004 : 0.002)]);
        Mesh mesh = Made(field).Mesh;
        double up = Math.Asin(0.02), down = -0.14; // beyond the edge of the thicker part's balls: acos((0.032² + 0.03² − 0.004²) ÷ (2·0.032·0.03)) = 0.112
        double sag = 0.03 * (1 - Math.Cos(0.06 / 2)) + Asked; // the triangles of the ball lie below it
        for (int v = 0; v < mesh.PointCount; v++)
        {
            Vector3D p = mesh.At(v);
            double angle = Math.Asin(p.Z / p.Length);
            if (angle > up || angle < down)
            {
                Assert.InRange(p.Length - (angle > 0 ? 0.034 : 0.032), -sag, Asked);
            }
        }

        Assert.Contains(Enumerable.Range(0, mesh.PointCount).Select(mesh.At), p => p.Z < -0.0005 && p.Length > 0.0335);
    }

    [Fact]
    public void A_thickness_that_is_none_is_refused()
    {
        Nearest ball = new(Neighbourhood.Of(Shapes.Ball(1, 0.01)));
        Assert.Throws<ArgumentException>(() => new OffsetField(ball, [.. Enumerable.Repeat(0.0, ball.Mesh.FaceCount)]));
        Assert.Throws<ArgumentException>(() => new OffsetField(ball, [0.001]));
    }

    [Fact]
    public void Nothing_is_left_deeper_than_the_middle() =>
        Assert.Throws<ArgumentException>(() => Offset.Of(new(new(Neighbourhood.Of(Shapes.Ball(2, 0.01))), -0.012), TestContext.Current.CancellationToken));

    [Fact]
    public void It_stops_when_told()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Offset.Of(new(new(Neighbourhood.Of(Shapes.Ball(3, 0.02))), 0.003), stop.Token));
    }

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
