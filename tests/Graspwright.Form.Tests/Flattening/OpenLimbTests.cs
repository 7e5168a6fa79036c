using Graspwright.Form.Flattening;
using Graspwright.Form.Reading;
using Graspwright.Form.Region;
using Graspwright.Form.Repair;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Tests.Flattening;

/// <summary>A limb of an open human-figure project: a hand with fingers does not lie flat.</summary>
public sealed class OpenLimbTests
{
    private static Neighbourhood? Limb()
    {
        string? file = Shared.File("data", "forms", "forearm-hand-male.stl");
        return file is null ? null : Repairing.Of(SurfaceFile.Read(System.IO.File.ReadAllBytes(file), SurfaceKind.Stl).Mesh.Scaled(0.001)).Sides;
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
}
