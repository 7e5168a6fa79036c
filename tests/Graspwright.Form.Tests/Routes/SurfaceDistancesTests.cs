using Graspwright.Form.Routes;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Routes;

public sealed class SurfaceDistancesTests
{
    // Square of two triangles: the values of a geometry library's own test.
    [Fact]
    public void A_square_of_two_triangles()
    {
        Mesh square = new([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0], [0, 1, 2, 0, 2, 3]);
        Assert.Equal([0, 1, Math.Sqrt(2), 1], new SurfaceDistances(Neighbourhood.Of(square)).Field(0).Distances);
        Mesh other = new(square.Points, [0, 1, 3, 1, 2, 3]);
        Assert.Equal(Math.Sqrt(2), new SurfaceDistances(Neighbourhood.Of(other)).Field(0).Distances[2], 1e-12);
    }

    // Cylinder R 25 of 40 sides, a quarter round and 60 along: printed by CGAL 71.6865219243.
    [Fact]
    public void A_quarter_round_a_cylinder()
    {
        Mesh mesh = Shapes.Grid(40, 12, (u, v) => new(25 * Math.Cos(2 * Math.PI * u), 25 * Math.Sin(2 * Math.PI * u), 60 * v));
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        int to = 12 * 41 + 10;
        Assert.Equal(71.6865219243, distances.Field(0).Distances[to], 1e-9);
        SurfaceRoute route = distances.Route(0, to)!;
        Assert.Equal(71.6865219243, route.Length, 1e-9);
    }

    // Ball: half round, and a quarter to corner 22, printed by CGAL's exact shortest paths (benchmarks/peers/form_cgal.cpp).
    [Theory]
    [InlineData(3, 3.13367160232, 1.56731389022)]
    [InlineData(4, 3.13958442368, 1.56990355707)]
    public void Half_and_quarter_round_a_ball(int level, double half, double quarter)
    {
        Mesh mesh = Shapes.Ball(level);
        Graspwright.Numerics.Vector3D pole = mesh.At(0);
        double[] far = new SurfaceDistances(Neighbourhood.Of(mesh)).Field(0).Distances;
        int south = Enumerable.Range(0, mesh.PointCount).MinBy(v => mesh.At(v).Dot(pole));
        Assert.Equal(half, far[south], 1e-9);
        Assert.Equal(0, mesh.At(22).Dot(pole), 1e-9);
        Assert.Equal(quarter, far[22], 1e-9);
    }

    // A saddle part of a torus: without the rule of one split an angle the stretches of edges multiply with every row.
    [Fact]
    public void Stretches_of_edges_do_not_multiply()
    {
        long Windows(int n) => new SurfaceDistances(Neighbourhood.Of(Shapes.TorusPart(n))).Field(0).Windows;
        Assert.InRange(Windows(40) / (double)Windows(20), 2, 20);
    }

    [Fact]
    public void A_field_is_the_same_from_both_ends_and_no_longer_than_along_edges()
    {
        Mesh mesh = Shapes.Torus(40, 24, 0.06, 0.025);
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        double[] from = distances.Field(7).Distances;
        foreach (int v in (int[])[100, 333, 480, 901])
        {
            Assert.Equal(from[v], distances.Field(v).Distances[7], 1e-9);
            SurfaceRoute route = distances.Route(7, v)!;
            Assert.Equal(from[v], route.Length, 1e-9);
            (double[] along, _) = new Graspwright.Form.Region.EdgePaths(Neighbourhood.Of(mesh)).Spread([7], _ => false, out _);
            Assert.True(from[v] <= along[v] + 1e-12);
        }
    }

    // Along edges it is too long by some per cent however fine the surface: never used for lengths.
    [Fact]
    public void Ways_along_edges_do_not_converge()
    {
        foreach (int n in (int[])[20, 40, 80])
        {
            Mesh mesh = Shapes.Grid(n, n, (u, v) => new(u, v, 0));
            int to = n * (n + 1) + n / 2;
            (double[] along, _) = new Graspwright.Form.Region.EdgePaths(Neighbourhood.Of(mesh)).Spread([0], _ => false, out _);
            double exact = new SurfaceDistances(Neighbourhood.Of(mesh)).Field(0).Distances[to];
            Assert.Equal(Math.Sqrt(1.25), exact, 1e-9);
            Assert.True(along[to] > 1.05 * exact);
        }
    }
}
