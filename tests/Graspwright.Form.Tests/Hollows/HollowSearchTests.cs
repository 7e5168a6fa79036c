using Graspwright.Form.Hollows;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Hollows;

public sealed class HollowSearchTests
{
    // A ball with a round dent: another ball that does not go in rests on the rim, ρ − √(ρ² − a²) below its plane.
    [Theory]
    [InlineData(0.010)]
    [InlineData(0.014)]
    public void A_dent_is_as_deep_below_the_resting_ball_as_geometry_says(double radius)
    {
        const double big = 0.04, dent = 0.006, depth = 0.004;
        double half = Math.Sqrt(dent * dent - (dent - depth) * (dent - depth)), plane = Math.Sqrt(big * big - half * half);
        Mesh mesh = Dented(big, dent, half, plane);
        Neighbourhood sides = Neighbourhood.Of(mesh);
        double[] depths = HollowSearch.Depths(sides, new(sides), radius, stop: TestContext.Current.CancellationToken);
        Hollow hollow = HollowSearch.Gather(sides, depths, 0.0002)[0];
        double expected = depth - (radius - Math.Sqrt(radius * radius - half * half));
        Assert.Equal(expected, hollow.Depth, 0.1e-3);
    }

    // A slab with a groove of a circle's section, closed: a ball over the middle of the groove rests on both edges, ρ − √(ρ² − a²) below their plane.
    [Theory]
    [InlineData(0.010)]
    [InlineData(0.020)]
    public void A_groove_is_as_deep_below_the_resting_ball_as_geometry_says(double radius)
    {
        const double groove = 0.006, depth = 0.003;
        double half = Math.Sqrt(groove * groove - (groove - depth) * (groove - depth));
        Neighbourhood sides = Neighbourhood.Of(Grooved(groove, depth, half));
        double[] depths = HollowSearch.Depths(sides, new(sides), radius, stop: TestContext.Current.CancellationToken);
        Hollow hollow = HollowSearch.Gather(sides, depths, 0.0002)[0];
        double expected = depth - (radius - Math.Sqrt(radius * radius - half * half));
        Assert.Equal(0, sides.Mesh.At(hollow.Deepest).X, 1e-3);
        Assert.Equal(expected, hollow.Depth, 0.1e-3);
    }

    [Fact]
    public void A_ball_that_goes_in_leaves_no_hollow()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.Torus(100, 60, 0.06, 0.025));
        Assert.Empty(HollowSearch.Gather(sides, HollowSearch.Depths(sides, new(sides), 0.01, stop: TestContext.Current.CancellationToken), 0.0002));
    }

    // ρ³ = 6·D/p with D = E·h³/9 at ν = ½.
    [Fact]
    public void The_rule_is_that_of_a_clamped_strip()
    {
        BridgingRule rule = new(0.9e6, 0.003, 20e3);
        Assert.Equal(0.9e6 * 2.7e-8 / 9, rule.Bending, 1e-12);
        Assert.Equal(Math.Cbrt(6 * rule.Bending / 20e3), rule.Radius, 1e-12);
        Assert.Equal(0.003, (rule with { Pressure = 1e9 }).Radius);
    }

    private static Mesh Grooved(double groove, double depth, double half)
    {
        const int arc = 24, flat = 12, rows = 40;
        const double wide = 0.03, tall = 0.015, length = 0.08;
        List<(double X, double Y)> outline = [];
        for (int i = 0; i < flat; i++)
        {
            outline.Add((-wide + (wide - half) * i / flat, 0));
        }

        double edge = Math.Asin(half / groove);
        for (int i = 0; i <= arc; i++)
        {
            double a = edge * (2.0 * i / arc - 1);
            outline.Add((groove * Math.Sin(a), groove - depth - groove * Math.Cos(a)));
        }

        for (int i = 1; i <= flat; i++)
        {
            outline.Add((half + (wide - half) * i / flat, 0));
        }

        outline.AddRange([(wide, -tall), (-wide, -tall)]);
        int n = outline.Count;
        List<double> points = [];
        List<int> corners = [];
        for (int j = 0; j <= rows; j++)
        {
            foreach ((double x, double y) in outline)
            {
                points.AddRange([x, y, length * j / rows]);
            }
        }

        for (int j = 0; j < rows; j++)
        {
            for (int i = 0; i < n; i++)
            {
                int a = j * n + i, b = j * n + (i + 1) % n;
                corners.AddRange([a, a + n, b + n, a, b + n, b]);
            }
        }

        // the ends: fans from below, where every corner of the outline is seen
        foreach (int end in (int[])[0, rows])
        {
            int low = points.Count / 3;
            points.AddRange([0, -0.9 * tall, length * end / rows]);
            for (int i = 0; i < n; i++)
            {
                int a = end * n + i, b = end * n + (i + 1) % n;
                corners.AddRange(end == 0 ? [low, a, b] : [low, b, a]);
            }
        }

        return new([.. points], [.. corners]);
    }

    private static Mesh Dented(double big, double dent, double half, double plane)
    {
        const int round = 96, rows = 60;
        List<(double R, double Z)> profile = [];
        double bottom = plane + Math.Sqrt(dent * dent - half * half); // middle of the dent's ball
        double edge = Math.Asin(half / dent), outer = Math.Asin(half / big);
        for (int i = 1; i <= 16; i++)
        {
            double a = edge * i / 16;
            profile.Add((dent * Math.Sin(a), bottom - dent * Math.Cos(a)));
        }

        for (int i = 1; i < rows; i++)
        {
            double a = outer + (Math.PI - outer) * i / rows;
            profile.Add((big * Math.Sin(a), big * Math.Cos(a)));
        }

        List<double> points = [0, 0, bottom - dent];
        List<int> corners = [];
        foreach ((double r, double z) in profile)
        {
            for (int k = 0; k < round; k++)
            {
                points.AddRange([r * Math.Cos(2 * Math.PI * k / round), r * Math.Sin(2 * Math.PI * k / round), z]);
            }
        }

        int last = points.Count / 3;
        points.AddRange([0, 0, -big]);
        for (int k = 0; k < round; k++)
        {
            int n = (k + 1) % round;
            corners.AddRange([0, 1 + k, 1 + n]);
            for (int i = 0; i + 1 < profile.Count; i++)
            {
                int a = 1 + i * round + k, b = 1 + i * round + n;
                corners.AddRange([a, a + round, b + round, a, b + round, b]);
            }

            int e = 1 + (profile.Count - 1) * round;
            corners.AddRange([e + k, last, e + n]);
        }

        return new([.. points], [.. corners]);
    }
}
