using System.Numerics;
using Graspwright.Moulding.ComingOff;

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

    // Faces round a cone of half angle atan(0.1/2π ÷ 0.2): all normals lean by that angle.
    [Fact]
    public void A_cone_lets_its_shell_off_one_way_only()
    {
        double half = Math.Atan(0.1 / (2 * Math.PI) / 0.2);
        List<Vector3> normals = [];
        List<double> areas = [];
        for (int k = 0; k < 48; k++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * k / 48);
            normals.Add(new((float)(Math.Cos(half) * cos), (float)(Math.Cos(half) * sin), (float)Math.Sin(half)));
            areas.Add(1e-3);
        }

        Assert.Equal(-1, Undercuts.Of(normals, areas, Vector3.UnitZ).Worst);
        UndercutSum back = Undercuts.Of(normals, areas, -Vector3.UnitZ);
        Assert.Equal(1, back.Share, 1e-9);
        Assert.Equal(half, back.WorstAngle, 1e-6);
        Assert.Equal(0, Undercuts.Best(normals, areas).Sum.Area, 1e-9);
    }
}
