using Graspwright.Form.Reading;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Repair;

public sealed class ThinningTests
{
    private const double Most = 0.05e-3;

    private static Thinned Thin(Mesh mesh, double most = Most, double longest = double.PositiveInfinity) => Thinning.Of(Neighbourhood.Of(mesh), most, longest)!;

    // Both ways, with samples of our own: corners and middles of all triangles of both, and the middles of sides.
    private static double Apart(Mesh a, Mesh b)
    {
        double worst = 0;
        foreach ((Mesh from, Mesh to) in ((Mesh, Mesh)[])[(a, b), (b, a)])
        {
            Nearest tree = new(Neighbourhood.Of(to));
            for (int h = 0; h < from.Corners.Length; h++)
            {
                Vector3D p = from.At(from.Corners[h]), q = from.At(from.Corners[Neighbourhood.Next(h)]);
                worst = Math.Max(worst, Math.Max(Math.Abs(tree.To(p).Distance), Math.Max(Math.Abs(tree.To(0.5 * (p + q)).Distance), Math.Abs(tree.To(from.Middle(h / 3)).Distance))));
            }
        }

        return worst;
    }

    private static bool LooksAsBefore(Mesh before, Mesh after)
    {
        Nearest tree = new(Neighbourhood.Of(before));
        return Enumerable.Range(0, after.FaceCount).All(f => after.Cross(f).Dot(before.Cross(tree.To(after.Middle(f)).Face)) > 0);
    }

    // The middle of a triangle of equal sides e with corners on a ball of radius R lies e²/6R inside it: 4πR²÷(√3/4·e²) of them keep a deviation s,
    // which is 8π÷(3√3)·R/s, 4 837 for R = 50 mm and s = 0.05 mm. Drawn together one by one they come within a third more of that, and fewer where corners lie outside.
    [Fact]
    public void A_ball_keeps_its_shape_with_as_few_triangles_as_its_curvature_asks_for()
    {
        Mesh ball = Shapes.Ball(6, 0.05);
        Thinned thin = Thin(ball);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, 4 / 3.0 * 8 * Math.PI / (3 * Math.Sqrt(3)) * 0.05 / Most);
        Assert.InRange(thin.Deviation, 0, Most);
        Assert.InRange(Apart(ball, thin.Sides.Mesh), 0, 1.05 * Most);
        SurfaceSums sums = SurfaceSums.Of(thin.Sides);
        Assert.Equal(4.0 / 3 * Math.PI * Math.Pow(0.05, 3), sums.Volume, Most * sums.Area);
        Assert.Equal(2, sums.Euler);
        Assert.DoesNotContain(thin.Sides.Across, a => a < 0);
        Assert.True(LooksAsBefore(ball, thin.Sides.Mesh));
        Assert.Equal(sums.Volume - SurfaceSums.Of(Neighbourhood.Of(ball)).Volume, thin.VolumeChange, 1e-15);
        Assert.Equal(sums.Area - SurfaceSums.Of(Neighbourhood.Of(ball)).Area, thin.AreaChange, 1e-12);
    }

    [Fact]
    public void A_torus_keeps_its_hole()
    {
        Mesh torus = Shapes.Torus(240, 160, 0.06, 0.02);
        Thinned thin = Thin(torus);
        // no more than a ball of the tube's radius would take over the same area: across the tube the torus is bent less
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, 4 * Math.PI * Math.PI * 0.06 * 0.02 / (Math.Sqrt(3) / 4 * 6 * 0.02 * Most));
        Assert.Equal(0, SurfaceSums.Of(thin.Sides).Euler);
        Assert.DoesNotContain(thin.Sides.Across, a => a < 0);
        Assert.InRange(Apart(torus, thin.Sides.Mesh), 0, 1.05 * Most);
        Assert.True(LooksAsBefore(torus, thin.Sides.Mesh));
        Assert.Empty(new Nearest(thin.Sides).Crossings());
    }

    [Fact]
    public void A_plane_comes_down_to_almost_nothing_and_stays_exact()
    {
        Mesh plane = Shapes.Grid(100, 60, (u, v) => new(0.1 * u, 0.06 * v, 0.01 * u));
        Thinned thin = Thin(plane);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 2, 40);
        Assert.InRange(thin.Deviation, 0, 1e-9);
        Assert.Equal(0, thin.AreaChange, 1e-10);
        Assert.Equal(Rim(plane), Rim(thin.Sides.Mesh), 1e-9);
        foreach (Vector3D corner in (Vector3D[])[new(0, 0, 0), new(0.1, 0, 0.01), new(0, 0.06, 0), new(0.1, 0.06, 0.01)])
        {
            Assert.Contains(Enumerable.Range(0, thin.Sides.Mesh.PointCount), v => (thin.Sides.Mesh.At(v) - corner).Length < 1e-9);
        }
    }

    private static double Rim(Mesh mesh)
    {
        Neighbourhood sides = Neighbourhood.Of(mesh);
        return Enumerable.Range(0, sides.Across.Length).Where(h => sides.Across[h] < 0).Sum(h => SurfaceSums.Length(mesh, h));
    }

    [Fact]
    public void A_curved_rim_keeps_every_point()
    {
        Mesh part = Shapes.TorusPart(80);
        Thinned thin = Thin(part);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, part.FaceCount / 2);
        Assert.Equal(Rim(part), Rim(thin.Sides.Mesh), 1e-12);
        Assert.Equal(1, SurfaceSums.Of(thin.Sides).Euler);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Bumps_and_noise_of_any_kind_leave_one_closed_surface_that_does_not_cross_itself(int seed)
    {
        Random random = new(seed);
        double[] waves = [.. Enumerable.Range(0, 9).Select(_ => random.NextDouble() * 300)];
        double noise = seed % 2 == 0 ? 0.2e-3 : 0;
        Mesh ball = Shapes.Ball(5, 0.04);
        double[] points = [.. ball.Points];
        for (int v = 0; v < ball.PointCount; v++)
        {
            Vector3D p = ball.At(v);
            double lift = 1 + 0.05 * Math.Sin(waves[0] * p.X + waves[1]) * Math.Sin(waves[2] * p.Y) * Math.Cos(waves[3] * p.Z) + noise / 0.04 * (random.NextDouble() - 0.5);
            (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (lift * p.X, lift * p.Y, lift * p.Z);
        }

        Mesh bumpy = new(points, ball.Corners);
        double most = seed % 2 == 0 ? 0.4e-3 : 0.1e-3;
        Thinned thin = Thin(bumpy, most, 0.004);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, bumpy.FaceCount / 2);
        Assert.Equal(2, SurfaceSums.Of(thin.Sides).Euler);
        Assert.DoesNotContain(thin.Sides.Across, a => a < 0);
        Assert.Empty(new Nearest(thin.Sides).Crossings());
        Assert.InRange(Apart(bumpy, thin.Sides.Mesh), 0, 1.05 * most);
        Assert.All(Enumerable.Range(0, thin.Sides.Across.Length).Select(h => SurfaceSums.Length(thin.Sides.Mesh, h)), l => Assert.InRange(l, 0, 0.004 + 1e-12));
    }

    // A shell 0.2 mm thick, thinned within 0.3 mm: a chord of its outside may reach through its inside.
    [Fact]
    public void Sheets_nearer_to_each_other_than_the_deviation_allowed_do_not_cross()
    {
        Mesh outside = Shapes.Ball(6, 0.0202), inside = Shapes.Ball(5, 0.02);
        Mesh both = new([.. outside.Points, .. inside.Points], [.. outside.Corners, .. inside.Corners.Select((_, h) => inside.Corners[h % 3 == 1 ? h + 1 : h % 3 == 2 ? h - 1 : h] + outside.PointCount)]);
        Neighbourhood sides = Neighbourhood.Of(both);
        Assert.Empty(new Nearest(sides).Crossings());
        Thinned thin = Thinning.Of(sides, 0.3e-3, stop: TestContext.Current.CancellationToken)!;
        Assert.Empty(new Nearest(thin.Sides).Crossings(int.MaxValue));
        Assert.InRange(thin.Rounds, 2, int.MaxValue);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 8, both.FaceCount / 4);
        Assert.Equal(4, SurfaceSums.Of(thin.Sides).Euler);
        Assert.InRange(Apart(both, thin.Sides.Mesh), 0, 0.3e-3);

        // what drawing together without looking does to it
        double[] allowed = new double[both.PointCount];
        Array.Fill(allowed, 0.24e-3);
        (Mesh plain, _) = new EdgeCollapse(sides, allowed, double.PositiveInfinity).Run(sides, null, TestContext.Current.CancellationToken);
        Assert.NotEmpty(new Nearest(Neighbourhood.Of(plain)).Crossings());
    }

    [Fact]
    public void What_crossed_itself_before_is_told_and_left_as_it_was()
    {
        Mesh first = Shapes.Ball(5, 0.02), second = first with { Points = [.. first.Points.Select((x, i) => i % 3 == 0 ? x + 0.033 : x)] };
        Mesh both = new([.. first.Points, .. second.Points], [.. first.Corners, .. second.Corners.Select(v => v + first.PointCount)]);
        int own = new Nearest(Neighbourhood.Of(both)).Crossings(int.MaxValue).Count;
        Thinned thin = Thin(both, 0.1e-3);
        Assert.InRange(own, 10, int.MaxValue);
        Assert.Equal(own, thin.OwnCrossings);
        Assert.Equal(own, new Nearest(thin.Sides).Crossings(int.MaxValue).Count);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, both.FaceCount / 2);
    }

    [Theory]
    [InlineData("forearm-hand-male.stl")]
    [InlineData("partial-hand-male.stl")]
    public void An_open_hand_made_smooth_and_fine_is_thinned_without_a_crossing(string name)
    {
        string? file = Shared.File("data", "forms", name);
        Assert.SkipWhen(file is null, "The data beside the repository is not here.");
        Neighbourhood sides = Repairing.Of(SurfaceFile.Read(System.IO.File.ReadAllBytes(file), SurfaceKind.Stl).Mesh.Scaled(0.001)).Sides;
        for (int round = 0; round < 3; round++)
        {
            sides = Neighbourhood.Of(LoopSubdivision.Of(sides));
        }

        int before = new Nearest(sides).Crossings(int.MaxValue).Count;
        Thinned thin = Thinning.Of(sides, Most, stop: TestContext.Current.CancellationToken)!;
        Assert.Equal(before, thin.OwnCrossings);
        Assert.Equal(before, new Nearest(thin.Sides).Crossings(int.MaxValue).Count);
        Assert.InRange(thin.Sides.Mesh.FaceCount, 4, sides.Mesh.FaceCount / 3);
        Assert.Equal(SurfaceSums.Of(sides).Euler, SurfaceSums.Of(thin.Sides).Euler);
        Assert.InRange(Apart(sides.Mesh, thin.Sides.Mesh), 0, 1.05 * Most);
    }

    [Fact]
    public void It_can_be_stopped_and_tells_how_far_it_is()
    {
        Neighbourhood ball = Neighbourhood.Of(Shapes.Ball(6, 0.05));
        using CancellationTokenSource stop = new();
        List<double> said = [];
        Assert.Throws<OperationCanceledException>(() => Thinning.Of(ball, Most, say: share =>
        {
            said.Add(share);
            if (share > 0)
            {
                stop.Cancel();
            }
        }, stop: stop.Token));
        Assert.InRange(said.Count, 2, 1000);
        Assert.All(said, s => Assert.InRange(s, 0, 1));
    }

    [Fact]
    public void A_deviation_of_nothing_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Thinning.Of(Neighbourhood.Of(Shapes.Ball(1)), 0, stop: TestContext.Current.CancellationToken));

    [Fact]
    public void A_tetrahedron_stays_one()
    {
        Mesh four = new([0, 0, 0, 0.01, 0, 0, 0, 0.01, 0, 0, 0, 0.01], [0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2]);
        Assert.Equal(4, Thin(four, 0.1).Sides.Mesh.FaceCount);
    }
}
