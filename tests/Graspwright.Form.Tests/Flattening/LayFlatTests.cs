using CsCheck;
using Graspwright.Form.Flattening;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Flattening;

public sealed class LayFlatTests
{
    private static Flat Of(Mesh mesh, bool guaranteed = false) => LayFlat.Of(Neighbourhood.Of(mesh), guaranteed);

    // Cylinder R 25, 40 segments, H 60: a rectangle of 156.918191456 × 60 (worked example, recomputed by a conformal flattening elsewhere).
    [Fact]
    public void A_cylinder_becomes_a_rectangle()
    {
        Mesh mesh = Shapes.Grid(40, 12, (u, v) => new(0.025 * Math.Cos(2 * Math.PI * u), 0.025 * Math.Sin(2 * Math.PI * u), 0.06 * v));
        Flat flat = Of(mesh);
        Assert.Equal(0, flat.Flips);
        Assert.True(flat.Distortion < 1e-15);
        Assert.Equal(0.156918191456, Between(flat, 0, 40), 1e-8);
        Assert.Equal(0.06, Between(flat, 0, 12 * 41), 1e-8);
    }

    // Cone frustum, slant 10 to 50, r = 0.6 s, 48 segments: each ring keeps its slant distance from the apex, whole angle 215.901256609°.
    [Fact]
    public void A_cone_becomes_a_sector()
    {
        Mesh mesh = Shapes.Grid(48, 8, (u, v) =>
        {
            double s = 0.01 + 0.04 * v, a = 2 * Math.PI * u;
            return new(0.6 * s * Math.Cos(a), 0.6 * s * Math.Sin(a), -0.8 * s);
        });
        Flat flat = Of(mesh);
        Assert.True(flat.Distortion < 1e-15);
        double chord = 2 * 0.05 * Math.Sin(double.DegreesToRadians(360 - 215.901256609) / 2);
        Assert.Equal(chord, Between(flat, 8 * 49, 8 * 49 + 48), 1e-8);
    }

    // Few, uneven triangles, some a hundred times as long as high, inscribed in a cylinder: what is folded from flat triangles along straight rulings lies flat without stretch.
    [Fact]
    public void A_coarse_cylinder_of_slivers_lies_flat_without_stretch()
    {
        double[] u = [0, 0.002, 0.2, 0.205, 0.45, 0.6, 0.601, 0.9, 1];
        Mesh mesh = Shapes.Grid(8, 5, (s, t) =>
        {
            double a = Math.PI * u[(int)Math.Round(8 * s)];
            return new(0.03 * Math.Cos(a), 0.03 * Math.Sin(a), 0.2 * t * t);
        });
        Flat flat = Of(mesh);
        Assert.Equal((0, 0), (flat.Flips, flat.Crossings));
        Assert.True(flat.Most.Max() < 1 + 1e-6 && flat.Least.Min() > 1 - 1e-6, $"{flat.Most.Max()} {flat.Least.Min()}");
    }

    [Fact]
    public void A_part_of_a_torus_is_stretched_no_more_than_by_twenty_plain_rounds()
    {
        Neighbourhood sides = Neighbourhood.Of(Shapes.TorusPart(48));
        Flat flat = LayFlat.Of(sides), plain = LayFlat.PlainRounds(sides, 20);
        Assert.Equal(0, flat.Flips);
        Assert.True(flat.Distortion <= 1.001 * plain.Distortion, $"{flat.Distortion} against {plain.Distortion}");
    }

    [Fact]
    public void The_way_without_flips_holds_on_fifty_rough_discs()
    {
        for (int seed = 0; seed < 50; seed++)
        {
            Random random = new(seed);
            double[] bumps = [.. Enumerable.Range(0, 12).Select(_ => random.NextDouble())];
            Mesh mesh = Shapes.Grid(14, 14, (u, v) =>
            {
                double z = 0;
                for (int k = 0; k < 12; k += 3)
                {
                    z += 0.5 * bumps[k] * Math.Exp(-30 * ((u - bumps[k + 1]) * (u - bumps[k + 1]) + (v - bumps[k + 2]) * (v - bumps[k + 2])));
                }

                return new(u + 0.02 * (random.NextDouble() - 0.5), v + 0.02 * (random.NextDouble() - 0.5), z);
            });
            Assert.Equal(0, Of(mesh).Flips);
            Assert.Equal(0, Of(mesh, guaranteed: true).Flips);
        }
    }

    [Fact]
    public void Scaling_the_surface_scales_the_flat_one() => Gen.Double[0.1, 10].Sample(scale =>
    {
        Mesh mesh = Shapes.TorusPart(10);
        Flat one = Of(mesh), other = Of(mesh.Scaled(scale));
        Assert.Equal(scale * scale * one.Distortion, other.Distortion, 1e-3 * scale * scale * one.Distortion);
    }, iter: 10);

    [Fact]
    public void Refuses_what_is_no_disc() => Assert.Throws<ArgumentException>(() => Of(Shapes.Ball(1)));

    [Fact]
    public void A_torus_and_a_ball_are_cut_into_one_disc_each()
    {
        foreach (Mesh mesh in (Mesh[])[Shapes.Torus(24, 12, 0.03, 0.01), Shapes.Ball(2)])
        {
            (IReadOnlyList<Piece> pieces, _) = Discs.Of(Neighbourhood.Of(mesh), new HashSet<(int, int)>());
            Piece piece = Assert.Single(pieces);
            Assert.Equal(1, SurfaceSums.EulerOf(piece.Sides));
            Assert.Single(piece.Sides.Loops());
            Assert.Equal(mesh.FaceCount, piece.Sides.Mesh.FaceCount);
        }
    }

    [Fact]
    public void A_line_drawn_across_keeps_the_area_and_parts_the_surface()
    {
        Mesh mesh = Shapes.Ball(3);
        double[] values = [.. Enumerable.Range(0, mesh.PointCount).Select(v => mesh.At(v).Z - 0.3)];
        Imprinted drawn = Imprint.Zero(Neighbourhood.Of(mesh), values);
        Neighbourhood sides = Neighbourhood.Of(drawn.Mesh);
        Assert.Equal(SurfaceSums.Of(Neighbourhood.Of(mesh)).Area, SurfaceSums.Of(sides).Area, 1e-12);
        (Mesh open, _) = Cutting.Open(sides, drawn.Line);
        Assert.Equal(2, Neighbourhood.Of(open).Parts().Count);
    }

    private static double Between(Flat flat, int a, int b) => double.Hypot(flat.X[b] - flat.X[a], flat.Y[b] - flat.Y[a]);
}
