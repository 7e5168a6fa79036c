using Graspwright.Form.Flattening;
using Graspwright.Form.Reading;
using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Flattening;

/// <summary>A limb of an open human-figure project: a forearm lies flat, a hand with fingers does not.</summary>
public sealed class OpenLimbTests
{
    private static Neighbourhood? Limb()
    {
        string? file = Shared.File("data", "forms", "forearm-hand-male.stl");
        return file is null ? null : Repairing.Of(SurfaceFile.Read(System.IO.File.ReadAllBytes(file), SurfaceKind.Stl).Mesh.Scaled(0.001)).Sides;
    }

    // A reference run on a finer mesh of the dorsal half: worst stretch 1.016 and 0.985, no triangle turned over.
    [Fact]
    public void The_back_of_the_forearm_lies_flat_within_two_per_cent()
    {
        Neighbourhood? limb = Limb();
        Assert.SkipWhen(limb is null, "The data beside the repository is not here.");
        Mesh mesh = Cut(limb, p => p.Z - 0.0);
        mesh = Cut(Neighbourhood.Of(mesh), p => p.Y + 0.02);
        mesh = Cut(Neighbourhood.Of(mesh), p => -0.2 - p.Y);
        Flat flat = LayFlat.Of(Neighbourhood.Of(mesh));
        Assert.Equal(0, flat.Flips);
        double area = SurfaceSums.Of(Neighbourhood.Of(mesh)).Area;
        double[] sizes = [.. Enumerable.Range(0, mesh.FaceCount).Select(f => mesh.Cross(f).Length / 2)];
        double beyond = Enumerable.Range(0, mesh.FaceCount).Where(f => flat.Most[f] > 1.016 || flat.Least[f] < 0.985).Sum(f => sizes[f]) / area;
        Assert.True(Math.Sqrt(flat.Distortion / area / 2) < 0.016 && beyond < 0.1, $"root mean square {Math.Sqrt(flat.Distortion / area / 2)}, share beyond {beyond}, {mesh.FaceCount} triangles, {flat.Way}, {area}");
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
        Assert.True(flat.Flips > 0 || flat.Crossings > 0 || Graspwright.Form.Pattern.Darts.ShareBeyond(pieces[0], flat, 0.05) > 0.3);
    }

    // Keeps where the value is below 0.
    private static Mesh Cut(Neighbourhood sides, Func<Graspwright.Numerics.Vector3D, double> value)
    {
        double[] values = [.. Enumerable.Range(0, sides.Mesh.PointCount).Select(v => value(sides.Mesh.At(v)))];
        Mesh drawn = Imprint.Zero(sides, values).Mesh;
        Mesh kept = drawn.Keep(f => value(drawn.Middle(f)) < 0).Part;
        (int[] part, int count) = Neighbourhood.Of(kept).Parts();
        int largest = Enumerable.Range(0, count).MaxBy(i => part.Count(p => p == i));
        return kept.Keep(f => part[f] == largest).Part;
    }
}
