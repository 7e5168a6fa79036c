using Graspwright.Form.Reading;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Repair;

public sealed class RepairingTests
{
    private static readonly Mesh Ball = Shapes.Ball(3, 0.05);

    private static Mesh Soup(Mesh mesh) => new([.. mesh.Corners.SelectMany(v => mesh.Points[(3 * v)..(3 * v + 3)])], [.. Enumerable.Range(0, mesh.Corners.Length)]);

    private static double Volume(Mesh mesh) => SurfaceSums.Of(Neighbourhood.Of(mesh)).Volume;

    [Fact]
    public void Loose_triangles_become_one_closed_surface()
    {
        Repaired repaired = Repairing.Of(Soup(Ball));
        Assert.True(repaired.Closed);
        Assert.Equal(Ball.PointCount, repaired.Mesh.PointCount);
        Assert.Contains(repaired.Mends, m => m.What.Contains("more than once joined", StringComparison.Ordinal));
        Assert.Equal(Volume(Ball), Volume(repaired.Mesh), 1e-15);
    }

    [Fact]
    public void Points_a_hair_apart_are_joined()
    {
        Random random = new(3);
        Mesh soup = Soup(Ball);
        Mesh shaken = soup with { Points = [.. soup.Points.Select(x => x + 1e-9 * random.NextDouble())] };
        Assert.True(Repairing.Of(shaken).Closed);
    }

    [Fact]
    public void Turned_triangles_and_an_inside_out_surface_are_set_right()
    {
        Random random = new(5);
        int[] corners = [.. Ball.Corners];
        for (int f = 0; f < Ball.FaceCount; f++)
        {
            if (random.NextDouble() < 0.8)
            {
                (corners[3 * f + 1], corners[3 * f + 2]) = (corners[3 * f + 2], corners[3 * f + 1]);
            }
        }

        Assert.Equal(Volume(Ball), Volume(Repairing.Of(Ball with { Corners = corners }).Mesh), 1e-15);
    }

    [Fact]
    public void Small_holes_are_closed_and_large_ones_told()
    {
        (Mesh holed, _) = Ball.Keep(f => f is not (10 or 200));
        Repaired repaired = Repairing.Of(holed);
        Assert.True(repaired.Closed);
        Assert.Equal(2, Assert.Single(repaired.Mends, m => m.What.Contains("holes", StringComparison.Ordinal)).Count);
        (Mesh half, _) = Ball.Keep(f => Ball.Middle(f).Z < 0.01);
        Repaired open = Repairing.Of(half);
        Assert.False(open.Closed);
        Assert.Contains(open.Leftovers, l => l.What.StartsWith("open", StringComparison.Ordinal));
    }

    [Fact]
    public void The_largest_of_several_bodies_is_kept()
    {
        Mesh small = Shapes.Ball(1, 0.01);
        Mesh both = new([.. small.Points.Select(x => x + 1), .. Ball.Points], [.. small.Corners, .. Ball.Corners.Select(c => c + small.PointCount)]);
        Repaired repaired = Repairing.Of(both);
        Assert.Equal(Ball.FaceCount, repaired.Mesh.FaceCount);
        Assert.Contains(repaired.Mends, m => m.What.StartsWith("loose parts", StringComparison.Ordinal));
    }

    [Fact]
    public void Double_and_flat_triangles_and_fins_are_dropped()
    {
        int[] c = Ball.Corners;
        Mesh doubled = Ball with { Corners = [.. c, c[0], c[1], c[2], c[3], c[3], c[4]] };
        Assert.True(Repairing.Of(doubled).Closed);
        Mesh fin = new([.. Ball.Points, 0, 0, 0.2], [.. c, c[0], c[1], Ball.PointCount]);
        Repaired finned = Repairing.Of(fin); // a fin hangs on an edge of three triangles: it is a part of its own
        Assert.True(finned.Closed);
        Assert.Contains(finned.Mends, m => m.What.StartsWith("loose parts", StringComparison.Ordinal));
    }

    [Fact]
    public void A_corner_in_the_middle_of_an_edge_gets_no_flat_triangle()
    {
        // a square whose diagonal has a point in its middle, with the flat triangle that closes the gap
        Mesh mesh = new([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0.5, 0.5, 0], [0, 1, 2, 0, 4, 3, 4, 2, 3, 0, 2, 4]);
        Repaired repaired = Repairing.Of(mesh, 0);
        for (int f = 0; f < repaired.Mesh.FaceCount; f++)
        {
            Assert.True(repaired.Mesh.Cross(f).Length > 1e-3);
        }
    }

    [Theory]
    [InlineData(0.3, "m")]
    [InlineData(300, "mm")]
    [InlineData(12, "cm", "in")]
    [InlineData(50, "cm")]
    [InlineData(5000, null)]
    public void The_unit_is_guessed_from_the_size_and_doubt_is_told(double extent, string? unit, params string[] others)
    {
        UnitGuess guess = UnitGuess.Of(Ball.Scaled(extent / 0.1), metres: false);
        Assert.Equal(unit, guess.Unit?.Name);
        Assert.Equal(others, guess.Others.Select(o => o.Name));
    }

    // A cover laid as a fan over a bent rim lies back on itself: what the cover holds is known, area and volume of the prism.
    [Fact]
    public void A_cover_folded_back_onto_itself_is_laid_anew()
    {
        (double, double)[] angle = [(0, 0), (0.04, 0), (0.04, 0.01), (0.01, 0.01), (0.01, 0.04), (0, 0.04)];
        Mesh sound = Shapes.Prism(angle, 3, 0.02), folded = Shapes.Prism(angle, 2, 0.02);
        Assert.DoesNotContain(Repairing.Of(sound).Mends, m => m.What.Contains("folded", StringComparison.Ordinal));
        Repaired repaired = Repairing.Of(folded);
        Assert.Contains(repaired.Mends, m => m.What.Contains("folded", StringComparison.Ordinal));
        Assert.True(repaired.Closed);
        Assert.Empty(repaired.Leftovers);
        Assert.Equal(SurfaceSums.Of(Neighbourhood.Of(sound)).Area, SurfaceSums.Of(repaired.Sides).Area, 1e-12);
        Assert.Equal(Volume(sound), Volume(repaired.Mesh), 1e-15);
    }
}
