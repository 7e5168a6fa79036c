using Graspwright.Form.Region;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Region;

/// <summary>Lines drawn on a round tube of 30 mm radius, on which a place and an angle roll out exactly.</summary>
public sealed class DrawnLoopTests
{
    private const double Radius = 0.03;
    private static readonly Mesh Tube = Shapes.Grid(180, 100, (u, v) => new(Radius * Math.Sin(2 * Math.PI * u), Radius * Math.Cos(2 * Math.PI * u), 0.1 * v));
    private static readonly LimbFrame Frame = new(Tube);

    private static DrawnLoop Loop(params (double Mm, double Degrees)[] corners) => new(Frame, [.. corners.Select(c => (c.Mm / 1000, double.DegreesToRadians(c.Degrees)))]);

    [Fact]
    public void A_square_patch_cuts_out_its_own_area_wherever_it_lies()
    {
        // the 20 mm by 60° of the tube: 20 · 30 · π/3 mm²; the zero line passes through triangles straight
        foreach (double turn in (double[])[0, 77, 180, 300, -350])
        {
            DrawnLoop loop = Loop((40, turn), (60, turn), (60, turn + 30), (60, turn + 60), (40, turn + 60), (40, turn + 30));
            Assert.False(loop.GoesRound);
            Imprinted drawn = Imprint.Zero(Neighbourhood.Of(Tube), loop.Values(Tube));
            double area = Enumerable.Range(0, drawn.Mesh.FaceCount).Where(f => loop.At(drawn.Mesh.Middle(f)) < 0).Sum(f => drawn.Mesh.Cross(f).Length / 2);
            Assert.Equal(0.02 * Radius * Math.PI / 3, area, 0.02 * 0.02 * Radius);
        }
    }

    [Fact]
    public void Distances_are_those_on_the_rolled_out_tube()
    {
        DrawnLoop loop = Loop((40, -20), (60, -20), (60, 20), (40, 20));
        double a(double degrees) => double.DegreesToRadians(degrees);
        Assert.Equal(-0.01, loop.At(0.05, 0), 1e-4);
        Assert.Equal(0.02, loop.At(0.02, a(355)), 1e-9);
        Assert.Equal(Radius * a(30), loop.At(0.05, a(-50)), 2e-4);
        Assert.Equal(double.Hypot(0.01, Radius * a(10)), loop.At(0.07, a(30)), 2e-4);
    }

    // A patch of more than half the limb, and one whose corners come the other way round.
    [Fact]
    public void Patches_may_reach_round_most_of_the_limb_and_run_either_way()
    {
        DrawnLoop wide = Loop((40, 0), (40, 100), (40, 200), (40, 300), (60, 300), (60, 200), (60, 100), (60, 0)), back = Loop((60, 0), (60, 100), (60, 200), (60, 300), (40, 300), (40, 200), (40, 100), (40, 0));
        foreach (double degrees in (double[])[1, 90, 179, 181, 299])
        {
            Assert.True(wide.At(0.05, double.DegreesToRadians(degrees)) < 0);
            Assert.Equal(wide.At(0.05, double.DegreesToRadians(degrees)), back.At(0.05, double.DegreesToRadians(degrees)), 1e-12);
        }

        Assert.All((double[])[301, 330, 359], degrees => Assert.True(wide.At(0.05, double.DegreesToRadians(degrees)) > 0));
    }

    // An oblique plane z = 50 mm + 10 mm · cos angle cuts a tube of 30 mm radius in an ellipse; drawn by its corners every 10°.
    [Fact]
    public void An_edge_once_round_parts_the_tube_as_the_plane_through_its_corners_does()
    {
        DrawnLoop edge = Loop([.. Enumerable.Range(0, 36).Select(i => (50 + 10 * Math.Cos(double.DegreesToRadians(10 * i)), 10.0 * i))]);
        Assert.True(edge.GoesRound);
        double[] values = edge.Values(Tube);
        for (int v = 0; v < values.Length; v++)
        {
            double plane = Tube.At(v).Z - 0.05 - 0.01 * Tube.At(v).Y / Radius;
            if (Math.Abs(plane) > 1e-4)
            {
                Assert.Equal(Math.Sign(plane), Math.Sign(values[v]));
            }
        }

        // the shaft below it: mean height 50 mm
        Imprinted drawn = Imprint.Zero(Neighbourhood.Of(Tube), values);
        double area = Enumerable.Range(0, drawn.Mesh.FaceCount).Where(f => edge.At(drawn.Mesh.Middle(f)) < 0).Sum(f => drawn.Mesh.Cross(f).Length / 2);
        Assert.Equal(2 * Math.PI * Radius * 0.05, area, 1e-3 * 2 * Math.PI * Radius * 0.05);
    }

    [Fact]
    public void Points_that_are_slid_onto_a_line_lie_on_it()
    {
        double[] values = [.. Enumerable.Range(0, Tube.PointCount).Select(v => Tube.At(v).Z - 0.0501)];
        Imprinted drawn = Imprint.Zero(Neighbourhood.Of(Tube), values, share: 0.15, slide: true);
        Assert.NotEmpty(drawn.Line);
        Assert.All(drawn.Line, e => Assert.Equal(0.0501, drawn.Mesh.At(e.A).Z, 1e-12));
        // points that slide along a slanting side leave the folds of the tube by a little: 2° from strip to strip, of which the area feels the square
        double area = SurfaceSums.Of(Neighbourhood.Of(Tube)).Area;
        Assert.Equal(area, SurfaceSums.Of(Neighbourhood.Of(drawn.Mesh)).Area, area * Math.Pow(2 * Math.PI / 180, 2) / 100);
    }
}
