using Graspwright.Form.Flattening;
using Graspwright.Form.Pattern;
using Graspwright.Form.Reading;
using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests.Flattening;

/// <summary>A limb of an open human-figure project: the back of its forearm lies flat, its hand with fingers does not.</summary>
public sealed class OpenLimbTests
{
    private static Neighbourhood? Limb(string name = "forearm-hand-male.stl")
    {
        string? file = Shared.File("data", "forms", name);
        return file is null ? null : Repairing.Of(SurfaceFile.Read(System.IO.File.ReadAllBytes(file), SurfaceKind.Stl).Mesh.Scaled(0.001)).Sides;
    }

    // The coarse scan as it is: about 200 triangles, some of them slivers of 1 : 200. As-rigid-as-possible rounds written apart (NumPy, 60 rounds
    // from the unrolled cylinder) reach Σ area·((σ₁ − 1)² + (σ₂ − 1)²) = 1.38129 mm² on the same triangles. The elbow's flat end cap, at −0.1968 m, is no skin.
    [Fact]
    public void The_back_of_the_coarse_forearm_lies_as_flat_as_a_separate_program_lays_it()
    {
        Neighbourhood? limb = Limb();
        Assert.SkipWhen(limb is null, "The data beside the repository is not here.");
        Mesh mesh = Back(limb, -0.19);
        Flat flat = LayFlat.Of(Neighbourhood.Of(mesh));
        Assert.Equal((0, 0), (flat.Flips, flat.Crossings));
        Assert.InRange(flat.Distortion, 0.999 * 1.38129e-6, 1.001 * 1.38129e-6);
    }

    // Rounds written apart (NumPy) on the same surface, smoothed and cut there anew (the triangles of the cut split otherwise): distortion 0.31647 mm².
    // A reference run on a half-shell of 13 951 triangles, its cut not stated, found 0.985 to 1.016 at worst: here 99 % of the area lie within that.
    [Fact]
    public void The_back_of_the_smooth_forearm_lies_flat_within_two_per_cent()
    {
        Neighbourhood? limb = Limb();
        Assert.SkipWhen(limb is null, "The data beside the repository is not here.");
        (Mesh forearm, _) = limb.Mesh.Keep(f => limb.Mesh.Middle(f).Y < 0.03);
        for (int round = 0; round < 3; round++)
        {
            forearm = LoopSubdivision.Of(Neighbourhood.Of(forearm));
        }

        Mesh mesh = Back(Neighbourhood.Of(forearm), -0.18);
        Flat flat = LayFlat.Of(Neighbourhood.Of(mesh));
        Assert.Equal((0, 0), (flat.Flips, flat.Crossings));
        Assert.Equal(0.31647e-6, flat.Distortion, 0.02 * 0.31647e-6);
        Piece piece = new(Neighbourhood.Of(mesh), [.. Enumerable.Range(0, mesh.PointCount)]);
        Assert.InRange(Darts.Reached(piece, f => -flat.Least[f]).Value, -1, -0.985);
        Assert.InRange(Darts.Reached(piece, f => flat.Most[f]).Value, 1, 1.016);
    }

    // A reference run of plain rounds turned 42 % of its triangles over.
    [Fact]
    public void A_whole_hand_with_fingers_is_far_past_what_a_sheet_takes()
    {
        Neighbourhood? limb = Limb();
        Assert.SkipWhen(limb is null, "The data beside the repository is not here.");
        (Mesh hand, _) = limb.Mesh.Keep(f => limb.Mesh.Middle(f).Y > -0.15);
        (IReadOnlyList<Piece> pieces, _) = Discs.Of(Neighbourhood.Of(hand), new HashSet<(int, int)>());
        Flat flat = LayFlat.Of(pieces[0].Sides);
        Assert.True(flat.Flips > 0 || flat.Crossings > 0 || Darts.ShareBeyond(pieces[0], flat, 0.05) > 0.3);
    }

    // Five digits part in four places; the joint centres that come with the limb put the middle knuckle line at 99 to 113 mm.
    [Fact]
    public void Digits_are_found_where_they_part()
    {
        Neighbourhood? whole = Limb(), part = Limb("partial-hand-male.stl");
        Assert.SkipWhen(whole is null || part is null, "The data beside the repository is not here.");
        IReadOnlyList<Branch> all = Branches.Of(Turned(whole), -0.19), rest = Branches.Of(Turned(part), -0.19);
        Assert.Equal(4, all.Count);
        Assert.Single(rest);
        double[] webs = [.. all.Select(b => whole.Mesh.At(b.Web).Y)];
        Assert.InRange(webs[0], 0.05, 0.09);
        Assert.All(webs[1..], w => Assert.InRange(w, 0.1, 0.13));
        Assert.True(part.Mesh.At(rest[0].Tip).X > 0.08);
        BranchRoot root = BranchRoot.Of(Turned(part), rest[0])!;
        Assert.InRange(root.Girth, 0.06, 0.085);
        // the joint centres finger-1-2 and finger-1-4 that come with the limb: the thumb's bones
        Vector3D bones = new Vector3D(86.0 - 52.81, -(68.378 - 29.181), 95.938 - 48.284).Unit;
        Assert.InRange(Math.Acos(bones.Dot(root.Along)), 0, 0.15);
        Assert.Equal(SurfaceSums.Of(part).Area, SurfaceSums.Of(Neighbourhood.Of(root.Mesh)).Area, 1e-9);
    }

    // Fingertips at +z, as the forms have it.
    private static Neighbourhood Turned(Neighbourhood limb)
    {
        double[] points = [.. limb.Mesh.Points];
        for (int v = 0; v < limb.Mesh.PointCount; v++)
        {
            (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (limb.Mesh.Points[3 * v], -limb.Mesh.Points[3 * v + 2], limb.Mesh.Points[3 * v + 1]);
        }

        return Neighbourhood.Of(limb.Mesh with { Points = points });
    }

    private static Mesh Back(Neighbourhood limb, double low)
    {
        Mesh mesh = Cut(limb, p => p.Z);
        mesh = Cut(Neighbourhood.Of(mesh), p => p.Y + 0.02);
        return Cut(Neighbourhood.Of(mesh), p => low - p.Y);
    }

    // Keeps where the value is below 0.
    private static Mesh Cut(Neighbourhood sides, Func<Vector3D, double> value)
    {
        double[] values = [.. Enumerable.Range(0, sides.Mesh.PointCount).Select(v => value(sides.Mesh.At(v)))];
        Mesh drawn = Imprint.Zero(sides, values, share: 0).Mesh;
        Mesh kept = drawn.Keep(f => value(drawn.Middle(f)) < 0).Part;
        (int[] part, int count) = Neighbourhood.Of(kept).Parts();
        int largest = Enumerable.Range(0, count).MaxBy(i => part.Count(p => p == i));
        return kept.Keep(f => part[f] == largest).Part;
    }
}
