using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Routes;

public sealed class SurfaceDistancesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // Square of two triangles: the values of a geometry library's own test.
    [Fact]
    public void A_square_of_two_triangles()
    {
        Mesh square = new([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0], [0, 1, 2, 0, 2, 3]);
        Assert.Equal([0, 1, Math.Sqrt(2), 1], Exact(square, 0));
        Mesh other = new(square.Points, [0, 1, 3, 1, 2, 3]);
        Assert.Equal(Math.Sqrt(2), Exact(other, 0)[2], 1e-12);
    }

    // Cylinder R 25 of 40 sides, a quarter round and 60 along: printed by CGAL 71.6865219243.
    [Fact]
    public void A_quarter_round_a_cylinder()
    {
        Mesh mesh = Shapes.Grid(40, 12, (u, v) => new(25 * Math.Cos(2 * Math.PI * u), 25 * Math.Sin(2 * Math.PI * u), 60 * v));
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        int to = 12 * 41 + 10;
        Assert.Equal(71.6865219243, Exact(mesh, 0)[to], 1e-9);
        SurfaceRoute route = distances.Route(0, to, Stop)!;
        Assert.Equal(71.6865219243, route.Length, 1e-9);
    }

    // Ball: half round, and a quarter to corner 22, printed by CGAL's exact shortest paths (benchmarks/peers/form_cgal.cpp).
    [Theory]
    [InlineData(3, 3.13367160232, 1.56731389022)]
    [InlineData(4, 3.13958442368, 1.56990355707)]
    public void Half_and_quarter_round_a_ball(int level, double half, double quarter)
    {
        Mesh mesh = Shapes.Ball(level);
        Vector3D pole = mesh.At(0);
        double[] far = Exact(mesh, 0);
        int south = Enumerable.Range(0, mesh.PointCount).MinBy(v => mesh.At(v).Dot(pole));
        Assert.Equal(half, far[south], 1e-9);
        Assert.Equal(0, mesh.At(22).Dot(pole), 1e-9);
        Assert.Equal(quarter, far[22], 1e-9);
    }

    // From a corner of two open surfaces, printed by CGAL's exact shortest paths (benchmarks/peers/form_cgal.cpp).
    [Fact]
    public void From_a_corner_of_a_saddle_and_of_a_cone()
    {
        double[] torus = Exact(Shapes.TorusPart(60), 0), cone = Exact(Shapes.ConeShell(60), 0);
        Assert.Equal([0.0793108339724, 0.107673294525, 0.158621566164], (double[])[torus[1860], torus[2303], torus[3720]], Near);
        Assert.Equal([0.0292419891977, 0.0724327916175, 0.159629877355], (double[])[cone[855], cone[1860], cone[3720]], Near);
    }

    // One strip of a cone lies flat: the way along it is the straight line. A filter that was wrong at its rim once gave a way 3e-5 longer.
    [Fact]
    public void Along_a_flat_strip_it_is_the_straight_line()
    {
        Mesh cone = Shapes.ConeShell(60);
        Assert.Equal((cone.At(0) - cone.At(855)).Length, Exact(cone, 0)[855], 1e-12);
    }

    // The spider and the fly (Dudeney 1903): a room of 30 by 12 by 12 feet, the shortest way is 40 feet over five of its faces.
    [Fact]
    public void The_spider_reaches_the_fly_in_forty_feet()
    {
        Mesh room = Box(30, 12, 12);
        int spider = At(room, 0, 6, 11), fly = At(room, 30, 6, 1);
        Assert.Equal(40, Exact(room, spider)[fly], 1e-9);
        Assert.Equal(40, new SurfaceDistances(Neighbourhood.Of(room)).Route(spider, fly, Stop)!.Length, 1e-9);
    }

    [Fact]
    public void A_field_is_the_same_from_both_ends_and_no_longer_than_along_edges()
    {
        Mesh mesh = Shapes.Torus(40, 24, 0.06, 0.025);
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        double[] from = Exact(mesh, 7);
        foreach (int v in (int[])[100, 333, 480, 901])
        {
            Assert.Equal(from[v], Exact(mesh, v)[7], 1e-9);
            SurfaceRoute route = distances.Route(7, v, Stop)!;
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
            double exact = Exact(mesh, 0)[to];
            Assert.Equal(Math.Sqrt(1.25), exact, 1e-9);
            Assert.True(along[to] > 1.05 * exact);
        }
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-12;

    internal static double[] Exact(Mesh mesh, int from) => new SurfaceDistances(Neighbourhood.Of(mesh)).Field(from, SurfaceDistances.LeastError, Stop).Distances;

    private static int At(Mesh mesh, double x, double y, double z) => Enumerable.Range(0, mesh.PointCount).Single(v => (mesh.At(v) - new Vector3D(x, y, z)).Length < 1e-9);

    // A box of unit squares, each cut in two.
    private static Mesh Box(int a, int b, int c)
    {
        List<double> points = [];
        List<int> corners = [];
        Dictionary<(int, int, int), int> known = [];
        Face(a, b, (i, j) => (i, j, 0), flip: true);
        Face(a, b, (i, j) => (i, j, c), flip: false);
        Face(b, c, (i, j) => (0, i, j), flip: true);
        Face(b, c, (i, j) => (a, i, j), flip: false);
        Face(c, a, (i, j) => (j, 0, i), flip: true);
        Face(c, a, (i, j) => (j, b, i), flip: false);
        return new([.. points], [.. corners]);

        void Face(int m, int n, Func<int, int, (int, int, int)> at, bool flip)
        {
            for (int i = 0; i < m; i++)
            {
                for (int j = 0; j < n; j++)
                {
                    int p = V(at(i, j)), q = V(at(i + 1, j)), r = V(at(i + 1, j + 1)), s = V(at(i, j + 1));
                    corners.AddRange(flip ? [p, r, q, p, s, r] : [p, q, r, p, r, s]);
                }
            }
        }

        int V((int X, int Y, int Z) key)
        {
            if (!known.TryGetValue(key, out int v))
            {
                known[key] = v = points.Count / 3;
                points.AddRange([key.X, key.Y, key.Z]);
            }

            return v;
        }
    }
}
