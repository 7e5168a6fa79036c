using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests;

/// <summary>Shapes whose sizes are known.</summary>
internal static class Shapes
{
    /// <summary>A grid of squares, each cut in two, laid on a surface.</summary>
    public static Mesh Grid(int across, int along, Func<double, double, Vector3D> at)
    {
        double[] points = new double[3 * (across + 1) * (along + 1)];
        List<int> corners = [];
        for (int j = 0; j <= along; j++)
        {
            for (int i = 0; i <= across; i++)
            {
                Vector3D p = at((double)i / across, (double)j / along);
                int v = j * (across + 1) + i;
                (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (p.X, p.Y, p.Z);
                if (i < across && j < along)
                {
                    corners.AddRange([v, v + 1, v + across + 2, v, v + across + 2, v + across + 1]);
                }
            }
        }

        return new(points, [.. corners]);
    }

    /// <summary>Part of a torus, outward.</summary>
    public static Mesh TorusPart(int n, double ring = 0.060, double tube = 0.025, double around = Math.PI / 2, double over = 2.6) => Grid(n, n, (u, v) =>
    {
        double a = around * (u - 0.5), b = 2 * over * (v - 0.5), r = ring + tube * Math.Cos(b);
        return new(r * Math.Cos(a), r * Math.Sin(a), tube * Math.Sin(b));
    });

    /// <summary>A shell of an elliptic cone.</summary>
    public static Mesh ConeShell(int n) => Grid(n, n, (u, v) =>
    {
        double a = Math.PI * u, s = 0.4 + 0.6 * v;
        return new(0.06 * s * Math.Cos(a), 0.04 * s * Math.Sin(a), -0.2 * s);
    });

    /// <summary>A closed torus.</summary>
    public static Mesh Torus(int m, int n, double ring, double tube)
    {
        double[] points = new double[3 * m * n];
        List<int> corners = [];
        for (int i = 0; i < m; i++)
        {
            for (int j = 0; j < n; j++)
            {
                double a = 2 * Math.PI * i / m, b = 2 * Math.PI * j / n, r = ring + tube * Math.Cos(b);
                int v = i * n + j;
                (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (r * Math.Cos(a), r * Math.Sin(a), tube * Math.Sin(b));
                int w = (i + 1) % m * n + j, x = i * n + (j + 1) % n, y = (i + 1) % m * n + (j + 1) % n;
                corners.AddRange([v, w, y, v, y, x]);
            }
        }

        return new(points, [.. corners]);
    }

    /// <summary>A ball: an icosahedron halved and rounded some times.</summary>
    public static Mesh Ball(int level, double radius = 1)
    {
        double t = (1 + Math.Sqrt(5)) / 2;
        List<Vector3D> p = [new(-1, t, 0), new(1, t, 0), new(-1, -t, 0), new(1, -t, 0), new(0, -1, t), new(0, 1, t), new(0, -1, -t), new(0, 1, -t), new(t, 0, -1), new(t, 0, 1), new(-t, 0, -1), new(-t, 0, 1)];
        int[] c = [0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8, 3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1];
        for (int i = 0; i < level; i++)
        {
            Dictionary<(int, int), int> middle = [];
            List<int> next = [];
            for (int f = 0; f < c.Length; f += 3)
            {
                int ab = Mid(c[f], c[f + 1]), bc = Mid(c[f + 1], c[f + 2]), ca = Mid(c[f + 2], c[f]);
                next.AddRange([c[f], ab, ca, c[f + 1], bc, ab, c[f + 2], ca, bc, ab, bc, ca]);
            }

            c = [.. next];
            int Mid(int a, int b)
            {
                (int, int) key = (Math.Min(a, b), Math.Max(a, b));
                if (!middle.TryGetValue(key, out int m))
                {
                    middle[key] = m = p.Count;
                    p.Add((0.5 * (p[a].Unit + p[b].Unit)).Unit);
                }

                return m;
            }
        }

        return new([.. p.SelectMany(v => (double[])[radius * v.Unit.X, radius * v.Unit.Y, radius * v.Unit.Z])], c);
    }

    /// <summary>An upright prism over an outline that runs anticlockwise and is seen whole from one of its corners.</summary>
    public static Mesh Prism((double X, double Y)[] outline, int from, double height)
    {
        int n = outline.Length;
        double[] points = [.. new[] { 0, height }.SelectMany(z => outline.SelectMany(p => (double[])[p.X, p.Y, z]))];
        List<int> corners = [];
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            corners.AddRange([i, j, n + j, i, n + j, n + i]);
            if (i != from && j != from)
            {
                corners.AddRange([from, j, i, n + from, n + i, n + j]);
            }
        }

        return new(points, [.. corners]);
    }

    /// <summary>A ball with bumps in all directions, the same for the same seed.</summary>
    public static Mesh Bumpy(int seed, int level, double radius, double height)
    {
        Random random = new(seed);
        (Vector3D Way, double Phase)[] waves = [.. Enumerable.Range(0, 6).Select(_ => (new Vector3D(12 * random.NextDouble() - 6, 12 * random.NextDouble() - 6, 12 * random.NextDouble() - 6), 6.3 * random.NextDouble()))];
        Mesh ball = Ball(level);
        double[] points = [.. ball.Points];
        for (int v = 0; v < ball.PointCount; v++)
        {
            double r = radius + height / waves.Length * waves.Sum(w => Math.Sin(w.Way.Dot(ball.At(v)) + w.Phase));
            (points[3 * v], points[3 * v + 1], points[3 * v + 2]) = (r * ball.At(v).X, r * ball.At(v).Y, r * ball.At(v).Z);
        }

        return ball with { Points = points };
    }
}
