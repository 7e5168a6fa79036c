using System.Buffers.Binary;
using System.Diagnostics;
using Graspwright.Form.Flattening;
using Graspwright.Form.Hollows;
using Graspwright.Form.Reading;
using Graspwright.Form.Repair;
using Graspwright.Form.Routes;
using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;
using Graspwright.Numerics;

namespace Graspwright.Benchmarks;

/// <summary>Flattening, distances, reading with repair, hollows and offset on surfaces of stated size.</summary>
internal static class FormTimes
{
    /// <summary>Times each, best of a few runs: other processes only add.</summary>
    public static Section Measure()
    {
        Neighbourhood torus = Neighbourhood.Of(TorusPart(224)), small = Neighbourhood.Of(TorusPart(100)), cone = Neighbourhood.Of(ConeShell(224));
        Flat flat = LayFlat.Of(torus);
        SurfaceDistances distances = new(torus);
        int middle = 112 * 225 + 112;
        double bound = new[] { distances.Field(middle), distances.Field(0), new SurfaceDistances(cone).Field(0) }.Max(f => f.Bound);
        byte[] scan = Stl(Tube(1000, 500));
        Neighbourhood limb = Neighbourhood.Of(Tube(400, 250)), rough = Neighbourhood.Of(Rough(Tube(1000, 500)));
        Nearest tree = new(limb);
        double before = GC.GetTotalAllocatedBytes();
        SurfaceSums.Of(Repairing.Of(SurfaceFile.Read(scan, SurfaceKind.Stl).Mesh).Sides);
        double allocated = (GC.GetTotalAllocatedBytes() - before) / 1e9;
        List<Row> rows =
        [
            Row.AtMost("flatten a part of a torus, 100 352 triangles", Best(5, () => LayFlat.Of(torus)), 0.5, 1, "s"),
            Row.AtMost("flatten a shell of an elliptic cone, 100 352 triangles", Best(5, () => LayFlat.Of(cone)), 0.5, 1, "s"),
            Row.AtMost("flatten a part of a torus, 20 000 triangles", Best(8, () => LayFlat.Of(small)), 0.06, 1000, "ms"),
            Row.AtMost("its distortion ÷ that of twenty as-rigid-as-possible rounds, 100 352 triangles", flat.Distortion / LayFlat.PlainRounds(torus, 20).Distortion, 1, 1, ""),
            Row.AtMost("the way without flips, 100 352 triangles", Best(2, () => LayFlat.Of(torus, guaranteed: true)), 2.5, 1, "s"),
            Row.AtMost("field of distances with bound from the middle, 100 352 triangles", Best(3, () => new SurfaceDistances(torus).Field(middle)), 1, 1, "s"),
            Row.AtMost("the same from a corner", Best(3, () => new SurfaceDistances(torus).Field(0)), 1, 1, "s"),
            Row.AtMost("the same on the shell of the cone, from a corner", Best(3, () => new SurfaceDistances(cone).Field(0)), 1, 1, "s"),
            Row.AtMost("the bound that came out, worst of the three", bound, 0.001, 100, "%"),
            Row.AtMost("one way across the middle of it", Best(5, () => distances.Route(112 * 225 + 60, 112 * 225 + 160)), 0.05, 1000, "ms"),
            Row.AtMost("read, repair and report one million triangles, binary STL", Best(3, () => SurfaceSums.Of(Repairing.Of(SurfaceFile.Read(scan, SurfaceKind.Stl).Mesh).Sides)), 2, 1, "s"),
            Row.AtMost("allocated by it", allocated, 1, 1, "GB"),
            Row.AtMost("thin a rough surface of one million triangles within 0.05 mm, checked both ways and for crossings", Best(1, () => Thinning.Of(rough, 0.05e-3, 0.004)), 10, 1, "s"),
            Row.AtMost("hollows of a ball of 9 mm and offset of 3 mm, sampled both ways, 200 000 triangles", Best(1, () =>
            {
                HollowSearch.Depths(limb, tree, 0.009);
                return Offset.Of(new(tree, 0.003));
            }), 10, 1, "s"),
        ];
        return new("The form", "Surfaces in memory; part of a torus R 60, r 25, a quarter round and 298° over; a tube of a limb's size. Best of a few runs, in a process that has run each before.", rows);
    }

    private static double Best(int runs, Func<object?> work)
    {
        double best = double.PositiveInfinity;
        for (int i = 0; i <= runs; i++)
        {
            long start = Stopwatch.GetTimestamp();
            _ = work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return best;
    }

    private static Mesh Grid(int n, Func<double, double, Vector3D> at)
    {
        double[] points = new double[3 * (n + 1) * (n + 1)];
        List<int> corners = [];
        for (int v = 0; v < points.Length / 3; v++)
        {
            int i = v % (n + 1), j = v / (n + 1);
            Vector3D p = at((double)i / n, (double)j / n);
            (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (p.X, p.Y, p.Z);
            if (i < n && j < n)
            {
                corners.AddRange([v, v + 1, v + n + 2, v, v + n + 2, v + n + 1]);
            }
        }

        return new(points, [.. corners]);
    }

    private static Mesh TorusPart(int n) => Grid(n, (u, v) =>
    {
        double a = Math.PI / 2 * (u - 0.5), b = 5.2 * (v - 0.5), r = 0.06 + 0.025 * Math.Cos(b);
        return new(r * Math.Cos(a), r * Math.Sin(a), 0.025 * Math.Sin(b));
    });

    private static Mesh ConeShell(int n) => Grid(n, (u, v) => new(0.06 * (0.4 + 0.6 * v) * Math.Cos(Math.PI * u), 0.04 * (0.4 + 0.6 * v) * Math.Sin(Math.PI * u), -0.2 * (0.4 + 0.6 * v)));

    // A closed tube of elliptic section that waists, as a forearm does.
    private static Mesh Tube(int round, int along)
    {
        List<double> points = [];
        List<int> corners = [];
        for (int j = 0; j <= along; j++)
        {
            double t = (double)j / along, r = 1 - 0.25 * Math.Sin(Math.PI * t);
            for (int i = 0; i < round; i++)
            {
                points.AddRange([0.036 * r * Math.Cos(2 * Math.PI * i / round), 0.028 * r * Math.Sin(2 * Math.PI * i / round), 0.25 * t]);
                if (j < along)
                {
                    int a = j * round + i, b = j * round + (i + 1) % round;
                    corners.AddRange([a, b, b + round, a, b + round, a + round]);
                }
            }
        }

        int low = points.Count / 3;
        points.AddRange([0, 0, 0, 0, 0, 0.25]);
        for (int i = 0; i < round; i++)
        {
            int n = (i + 1) % round, top = along * round;
            corners.AddRange([n, i, low, top + i, top + n, low + 1]);
        }

        return new([.. points], [.. corners]);
    }

    // A scanner's noise: each point moved along its distance from the middle line, 0.02 mm either way.
    private static Mesh Rough(Mesh mesh)
    {
        Random random = new(3);
        double[] points = [.. mesh.Points];
        for (int v = 0; v < mesh.PointCount; v++)
        {
            double r = double.Hypot(points[3 * v], points[3 * v + 1]), off = r > 0 ? 1 + 0.04e-3 * (random.NextDouble() - 0.5) / r : 1;
            (points[3 * v], points[3 * v + 1]) = (off * points[3 * v], off * points[3 * v + 1]);
        }

        return mesh with { Points = points };
    }

    private static byte[] Stl(Mesh mesh)
    {
        byte[] file = new byte[84 + 50 * mesh.FaceCount];
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(80), mesh.FaceCount);
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            for (int d = 0; d < 3; d++)
            {
                BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(84 + 50 * (h / 3) + 12 + 12 * (h % 3) + 4 * d), (float)mesh.Points[3 * mesh.Corners[h] + d]);
            }
        }

        return file;
    }
}
