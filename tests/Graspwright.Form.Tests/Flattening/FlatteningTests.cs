using Graspwright.Form.Flattening;
using Graspwright.Form.Surface;
using System.Diagnostics;

namespace Graspwright.Form.Tests.Flattening;

public sealed class FlatteningTests(ITestOutputHelper output)
{
    [Fact]
    public void Probe()
    {
        foreach (int n in (int[])[100, 224, 100, 224])
        {
            foreach (Mesh mesh in (Mesh[])[Shapes.TorusPart(n), Shapes.ConeShell(n)])
            {
                Stopwatch w = Stopwatch.StartNew();
                Neighbourhood sides = Neighbourhood.Of(mesh);
                double t0 = w.Elapsed.TotalMilliseconds;
                DiscGraph g = new(sides);
                double t1 = w.Elapsed.TotalMilliseconds;
                var fac = g.Factor()!;
                double t2 = w.Elapsed.TotalMilliseconds;
                Frames.Turns(g, fac);
                double t3 = w.Elapsed.TotalMilliseconds;
                w.Restart();
                Flat flat = LayFlat.Of(Neighbourhood.Of(mesh));
                double all = w.Elapsed.TotalMilliseconds;
                w.Restart();
                Flat safe = LayFlat.Of(sides, guaranteed: true);
                double ts = w.Elapsed.TotalMilliseconds;
                Flat plain = LayFlat.PlainRounds(sides, 20);
                output.WriteLine($"{n} sides {t0:0} graph {t1 - t0:0} factor {t2 - t1:0} frames {t3 - t2:0} all {all:0} ms rounds {flat.Rounds} flips {flat.Flips} D {flat.Distortion:e6} max {flat.Most.Max():0.0000} min {flat.Least.Min():0.0000} {flat.Way} | safe {ts:0} ms {safe.Rounds} flips {safe.Flips} D {safe.Distortion:e4} | plain D {plain.Distortion:e6} flips {plain.Flips}");
            }
        }
    }
}
