using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Form.Tape;

namespace Graspwright.Form.Tests.Region;

public sealed class BranchesTests
{
    private static readonly TapeMark[] Marks = [new(-0.07, 0.205, 0.068, 0.058), new(-0.015, 0.168, 0.058, 0.046), new(0.035, 0.232, 0.088, 0.054), new(0.085, 0.206, 0.085, 0.036)];

    // As a coarse scan would have it: 24 corners round, 8 mm apart.
    private static Neighbourhood Scan(TapeThumb? thumb, int round = 24, double step = 0.008) => Neighbourhood.Of(Loft.Of(new(Marks), thumb, round, step).Mesh);

    [Fact]
    public void A_limb_without_thumb_has_no_branch() => Assert.Empty(Branches.Of(Scan(null), -0.065));

    [Fact]
    public void The_thumb_is_the_branch_and_its_root_has_its_girth()
    {
        Neighbourhood sides = Scan(new(0.03, 0.084, 0.074, 0.05, 0.9), 96, 0.003);
        Branch thumb = Assert.Single(Branches.Of(sides, -0.065));
        Assert.True(sides.Mesh.At(thumb.Tip).X > 0.06);
        BranchRoot root = BranchRoot.Of(sides, thumb)!;
        Assert.Equal(0.9, Math.Acos(root.Along.Z), 0.15);
        // the tube goes from the girth at its root to that of its knuckle, and the web lies between; 1 % for its corners
        Assert.InRange(root.Girth, 0.99 * 0.074, 0.084);
        Assert.Equal((0.0, 0.0), (root.Along.Dot(root.Outer), root.Outer.Length - 1), (a, b) => Math.Abs(a.Item1) + Math.Abs(a.Item2) < 1e-9);
        // the web lies toward the fingertips of it
        Assert.True(root.Outer.Z < 0);
    }

    [Fact]
    public void The_line_round_the_root_parts_the_surface_and_keeps_its_area()
    {
        Neighbourhood sides = Scan(new(0.03, 0.084, 0.074, 0.05, 0.9));
        BranchRoot root = BranchRoot.Of(sides, Branches.Of(sides, -0.065)[0])!;
        Neighbourhood cut = Neighbourhood.Of(root.Mesh);
        Assert.Equal(SurfaceSums.Of(sides).Area, SurfaceSums.Of(cut).Area, 1e-12);
        Assert.DoesNotContain(cut.Across, a => a < 0);
        foreach (bool side in (bool[])[true, false])
        {
            (Mesh part, _) = root.Mesh.Keep(f => root.IsBranch[f] == side);
            Assert.Equal((1, 1), (Neighbourhood.Of(part).Loops().Count, Neighbourhood.Of(part).Parts().Count));
        }
    }

    [Fact]
    public void Uneven_ends_are_no_branches()
    {
        Neighbourhood ball = Neighbourhood.Of(Shapes.Ball(3, 0.04));
        Assert.Empty(Branches.Of(ball, -0.035));
    }
}
