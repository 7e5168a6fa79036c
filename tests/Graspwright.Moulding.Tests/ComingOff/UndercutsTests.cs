using System.Numerics;
using Graspwright.Moulding.ComingOff;
using Graspwright.Moulding.Limb;

namespace Graspwright.Moulding.Tests.ComingOff;

public sealed class UndercutsTests
{
    [Fact]
    public void Half_a_sphere_holds_the_shell_back()
    {
        List<Vector3> normals = [];
        List<double> areas = [];
        for (int i = 0; i < 200; i++)
        {
            for (int k = 0; k < 50; k++)
            {
                double z = 1 - 2 * (i + 0.5) / 200, r = Math.Sqrt(1 - z * z), a = 2 * Math.PI * k / 50;
                normals.Add(new((float)(r * Math.Cos(a)), (float)(r * Math.Sin(a)), (float)z));
                areas.Add(4 * Math.PI / 10_000);
            }
        }

        UndercutSum sum = Undercuts.Of(normals, areas, Vector3.UnitZ);
        Assert.Equal(0.5, sum.Share, 1e-12);
        Assert.Equal(2 * Math.PI, sum.Area, 1e-9);
        Assert.True(sum.WorstAngle > 1.4);
    }

    [Fact]
    public void A_cone_lets_its_shell_off_one_way_only()
    {
        TapeForm cone = new([new(0, 0.3, double.NaN, double.NaN), new(0.2, 0.2, double.NaN, double.NaN)]);
        FacedSurface faces = cone.Faces(0, 0.2);
        Assert.Equal(-1, Undercuts.Of(faces.Normals, faces.Areas, Vector3.UnitZ).Worst);
        UndercutSum back = Undercuts.Of(faces.Normals, faces.Areas, -Vector3.UnitZ);
        Assert.Equal(1, back.Share, 1e-9);
        // Half angle of the cone: radius changes by 0.1/2π over 0.2; the 48 flat faces round it lean a little less.
        Assert.Equal(Math.Atan(0.1 / (2 * Math.PI) / 0.2), back.WorstAngle, 5e-4);
        Assert.Equal(0, Undercuts.Best(faces.Normals, faces.Areas).Sum.Area, 1e-9);
    }
}
