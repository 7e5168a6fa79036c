using Graspwright.Form.Hollows;
using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;
using Graspwright.Form.Tape;
using System.Diagnostics;

namespace Graspwright.Form.Tests.Thickness;

public sealed class OffsetTests(ITestOutputHelper output)
{
    [Fact]
    public void Probe()
    {
        foreach ((string name, Mesh mesh, double t) in ((string, Mesh, double)[])[("loft0", Loft.Of(Demo, null).Mesh, 0.003), ("ball", Shapes.Ball(6, 0.03), 0.003), ("torus", Shapes.Torus(150, 100, 0.06, 0.025), 0.003), ("ball in", Shapes.Ball(5, 0.03), -0.003), ("loft", Loft.Of(Demo, new(0.03, 0.084, 0.074, 0.022, 0.7)).Mesh, 0.003)])
        {
            Stopwatch w = Stopwatch.StartNew();
            Neighbourhood sides = Neighbourhood.Of(mesh);
            Nearest tree = new(sides);
            SurfaceSums s = SurfaceSums.Of(sides);
            OffsetSurface o = Offset.Of(tree, t);
            SurfaceSums so = SurfaceSums.Of(Neighbourhood.Of(o.Mesh));
            double steiner = s.Area * t + s.MeanCurvature * t * t + s.GaussCurvature * t * t * t / 3;
            output.WriteLine($"{name} faces {mesh.FaceCount} -> {o.Mesh.FaceCount} open {sides.Across.Count(a => a < 0)} own {1e3 * o.Own:0.0000} other {1e3 * o.Other:0.0000} crossings {o.Crossings} closed {o.Closed} vol {(so.Volume - s.Volume) * 1e6:0.0000} steiner {steiner * 1e6:0.0000} euler {so.Euler} {w.ElapsedMilliseconds} ms crossings of form {tree.Crossings().Count}");
            w.Restart();
            double[] depth = HollowSearch.Depths(sides, tree, 0.009);
            var hs = HollowSearch.Gather(sides, depth, 0.0003);
            output.WriteLine($"   hollows {hs.Count} {string.Join("; ", hs.Take(4).Select(h => $"{1e3 * h.Depth:0.00} mm {1e6 * h.Area:0} mm2 at {1e3 * mesh.At(h.Deepest).Z:0}"))} {w.ElapsedMilliseconds} ms");
        }
    }

    private static TapeForm Demo => new([new(-0.07, 0.205, 0.068, 0.058), new(-0.015, 0.168, 0.058, 0.046), new(0, 0.172, 0.060, 0.045), new(0.035, 0.232, 0.088, 0.054), new(0.060, 0.218, 0.087, 0.042), new(0.085, 0.206, 0.085, 0.036)]);
}
