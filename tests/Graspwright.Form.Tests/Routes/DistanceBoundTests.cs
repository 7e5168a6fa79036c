using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Routes;

/// <summary>Held against the same engine with nothing merged but waves of one source, which is held against CGAL and known answers elsewhere.</summary>
public sealed class DistanceBoundTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string, int> Surfaces => new()
    {
        { "torus", 60 * 61 / 2 }, { "torus", 0 }, { "cone", 0 }, { "cone", 1860 }, { "bumpy 1", 7 }, { "bumpy 2", 1000 }, { "bumpy 3", 2000 }, { "slivers", 11 }, { "holes", 3 }, { "parts", 5 }, { "ball", 0 }, { "closed torus", 17 },
    };

    [Theory]
    [MemberData(nameof(Surfaces))]
    public void No_distance_is_farther_off_than_its_own_bound(string name, int from)
    {
        Mesh mesh = Make(name);
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        double[] exact = SurfaceDistancesTests.Exact(mesh, from);
        double worst = 0;
        foreach (double error in (double[])[1e-2, 1e-3, SurfaceDistances.UsualError])
        {
            DistanceField field = distances.Field(from, error, Stop);
            double off = 0;
            for (int v = 0; v < exact.Length; v++)
            {
                if (!double.IsFinite(exact[v]))
                {
                    Assert.True(double.IsInfinity(field.Distances[v]));
                    continue;
                }

                Assert.True(Math.Abs(field.Distances[v] - exact[v]) <= field.Errors[v], $"point {v}: {field.Distances[v]} for {exact[v]}, bound {field.Errors[v]}");
                Assert.True(field.Errors[v] <= field.Bound * field.Distances[v] * (1 + 1e-12));
                off = exact[v] > 0 ? Math.Max(off, Math.Abs(field.Distances[v] / exact[v] - 1)) : off;
            }

            worst = Math.Max(worst, off);
            Assert.True(field.Bound >= off);
            if (error == SurfaceDistances.UsualError)
            {
                Assert.InRange(field.Bound, off, 1e-3);
            }
        }

        Assert.True(worst > 1e-6 || name == "cone", "nothing was merged: the check would check nothing");
    }

    // Merging is what keeps the windows few: on a saddle they multiply otherwise.
    [Fact]
    public void Windows_grow_no_faster_than_triangles()
    {
        long Windows(int n) => new SurfaceDistances(Neighbourhood.Of(Shapes.TorusPart(n))).Field(0, stop: Stop).Windows;
        Assert.InRange(Windows(120) / (double)Windows(60), 2, 5);
    }

    [Fact]
    public void A_plane_of_any_triangles_has_straight_distances()
    {
        Random random = new(5);
        Mesh plane = Shapes.Grid(30, 20, (u, v) => new(u + 0.4 / 30 * (random.NextDouble() - 0.5) * (u is 0 or 1 ? 0 : 1), v + 0.4 / 20 * (random.NextDouble() - 0.5) * (v is 0 or 1 ? 0 : 1), 0));
        DistanceField field = new SurfaceDistances(Neighbourhood.Of(plane)).Field(333, stop: Stop);
        for (int v = 0; v < plane.PointCount; v++)
        {
            Assert.Equal((plane.At(v) - plane.At(333)).Length, field.Distances[v], 1e-9);
        }
    }

    // Round a square hole in a plane: the straight lines by its corner, worked out by hand.
    [Fact]
    public void A_way_turns_at_the_corner_of_a_hole()
    {
        Mesh grid = Shapes.Grid(20, 20, (u, v) => new(20 * u, 20 * v, 0));
        (Mesh mesh, int[] old) = grid.Keep(f => grid.Middle(f) is var m && !(m.X > 8 && m.X < 12 && m.Y > 4 && m.Y < 16));
        int from = Array.IndexOf(old, 10 * 21 + 2), to = Array.IndexOf(old, 12 * 21 + 18);
        // (2, 10) – (8, 16) – (12, 16) – (18, 12)
        double byHand = Math.Sqrt(72) + 4 + Math.Sqrt(52);
        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        SurfaceRoute route = distances.Route(from, to, Stop)!;
        Assert.Equal(byHand, route.Length, 1e-9);
        Assert.Contains(route.Places, p => (p - new Vector3D(8, 16, 0)).Length < 1e-9);
        Assert.Equal(route.Places.Count - 1, route.Faces.Count);
        Assert.Equal(byHand, distances.Field(from, stop: Stop).Distances[to], byHand * SurfaceDistances.UsualError);
    }

    [Fact]
    public void Every_piece_of_a_way_lies_on_its_triangle()
    {
        Mesh mesh = Make("bumpy 2");
        SurfaceRoute route = new SurfaceDistances(Neighbourhood.Of(mesh)).Route(0, mesh.PointCount - 1, Stop)!;
        for (int i = 0; i < route.Faces.Count; i++)
        {
            int f = route.Faces[i];
            Vector3D normal = mesh.Cross(f).Unit;
            Assert.Equal(0, (route.Places[i] - mesh.Corner(f, 0)).Dot(normal), 1e-9);
            Assert.Equal(0, (route.Places[i + 1] - mesh.Corner(f, 0)).Dot(normal), 1e-9);
        }
    }

    [Fact]
    public void Between_parts_there_is_no_way_and_a_stop_is_heard()
    {
        Mesh parts = Make("parts");
        Assert.Null(new SurfaceDistances(Neighbourhood.Of(parts)).Route(0, parts.PointCount - 1, Stop));
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => new SurfaceDistances(Neighbourhood.Of(parts)).Field(0, stop: stop.Token));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SurfaceDistances(Neighbourhood.Of(parts)).Field(0, 0, Stop));
    }

    [Fact]
    public void It_gives_up_where_windows_are_too_many()
    {
        BoundedSpread run = new(new(Neighbourhood.Of(Make("bumpy 1"))), SurfaceDistances.LeastError, most: 10_000);
        Assert.Contains("too crumpled", Assert.Throws<InvalidOperationException>(() => run.Go(0, Stop)).Message, StringComparison.Ordinal);
    }

    private static Mesh Make(string name)
    {
        Mesh torus = Shapes.TorusPart(60);
        switch (name)
        {
            case "torus":
                return torus;
            case "cone":
                return Shapes.ConeShell(60);
            case "ball":
                return Shapes.Ball(4);
            case "closed torus":
                return Shapes.Torus(60, 40, 0.06, 0.025);
            case "slivers":
                // a closed tube whose rows lie ten times as far apart as its columns, sheared and shaken
                Random shake = new(9);
                return Shapes.Grid(150, 12, (u, v) => new(0.03 * Math.Cos(6 * u + 9 * v) + 0.002 * shake.NextDouble(), 0.03 * Math.Sin(6 * u + 9 * v), 0.2 * v + 0.004 * shake.NextDouble()));
            case "holes":
                return torus.Keep(f => (f / 120 / 7 + f % 120 / 2 / 7) % 3 != 0 || f / 120 % 7 < 2 || f % 120 / 2 % 7 < 2).Part;
            case "parts":
                return torus.Keep(f => f / 120 is not 30).Part;
            default:
                Random random = new(name[^1]);
                return torus with { Points = [.. torus.Points.Select(x => x + 0.0008 * (random.NextDouble() - 0.5))] };
        }
    }
}
