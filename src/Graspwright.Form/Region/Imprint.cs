using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Region;

/// <summary>A line drawn into a surface: its triangles are cut along it.</summary>
/// <param name="Mesh">The surface, cut.</param>
/// <param name="OldFace">The triangle that each came from.</param>
/// <param name="Line">Edges of the line, as pairs of points with the lower first.</param>
public sealed record Imprinted(Mesh Mesh, int[] OldFace, HashSet<(int A, int B)> Line);

/// <summary>Draws lines into surfaces.</summary>
public static class Imprint
{
    private const int Halvings = 16;

    /// <summary>Draws the line where a function of the points is 0.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="values">Value at each point; straight between.</param>
    /// <param name="where">Triangles on which the line is drawn.</param>
    /// <param name="share">A crossing nearer than this share of an edge to one of its points goes through that point.</param>
    /// <param name="slide">Points that the line would pass so near are moved onto it along their edge, so that it stays smooth; else the line is moved to them.</param>
    /// <param name="exact">The function between the points too, where it is not straight there; else it is taken as straight.</param>
    /// <remarks>Values at points that the line is moved to become exactly 0.</remarks>
    public static Imprinted Zero(Neighbourhood sides, double[] values, Func<int, bool>? where = null, double share = 0.02, bool slide = false, Func<Vector3D, double>? exact = null)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(values);
        Mesh mesh = sides.Mesh;
        int[] c = mesh.Corners;
        double[] moved = slide ? [.. mesh.Points] : mesh.Points;
        for (int h = 0; h < c.Length; h++)
        {
            if (where is not null && !where(h / 3))
            {
                continue;
            }

            int a = c[h], b = c[Neighbourhood.Next(h)];
            if (values[a] * values[b] < 0)
            {
                double t = Crossing(mesh.At(a), values[a], mesh.At(b), values[b], exact);
                if (t < share)
                {
                    Snap(a, b, t);
                }
                else if (t > 1 - share)
                {
                    Snap(b, a, 1 - t);
                }
            }
        }

        mesh = mesh with { Points = moved };
        Dictionary<(int, int), int> crossing = [];
        List<double> points = [.. moved];
        List<int> corners = new(c.Length), old = new(c.Length / 3);
        HashSet<(int, int)> line = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            if (where is not null && !where(f))
            {
                Plain(f);
                continue;
            }

            Cut(f);
        }

        // Neighbours of what was cut may lie outside "where": their edges are cut too, so that no corner hangs on an edge.
        return where is null ? new(new([.. points], [.. corners]), [.. old], line) : Mended();

        void Snap(int v, int toward, double t)
        {
            values[v] = 0;
            for (int d = 0; d < 3 && slide; d++)
            {
                moved[3 * v + d] += t * (moved[3 * toward + d] - moved[3 * v + d]);
            }
        }

        void Plain(int f)
        {
            corners.AddRange([c[3 * f], c[3 * f + 1], c[3 * f + 2]]);
            old.Add(f);
        }

        void Cut(int f)
        {
            int k = 0;
            int zeros = 0, signs = 0;
            for (int i = 0; i < 3; i++)
            {
                double v = values[c[3 * f + i]];
                zeros += v == 0 ? 1 : 0;
                signs += Math.Sign(v);
            }

            if (zeros == 2)
            {
                int other = Enumerable.Range(0, 3).First(i => values[c[3 * f + i]] != 0);
                line.Add(Pair(c[3 * f + (other + 1) % 3], c[3 * f + (other + 2) % 3]));
            }

            if (zeros >= 2 || Math.Abs(signs) + zeros == 3 || (zeros == 1 && Math.Abs(signs) == 2))
            {
                Plain(f);
                return;
            }

            if (zeros == 1)
            {
                k = Enumerable.Range(0, 3).First(i => values[c[3 * f + i]] == 0);
                int z = c[3 * f + k], p = c[3 * f + (k + 1) % 3], q = c[3 * f + (k + 2) % 3], x = At(p, q);
                corners.AddRange([z, p, x, z, x, q]);
                old.AddRange([f, f]);
                line.Add(Pair(z, x));
                return;
            }

            // one corner lies alone on its side
            k = Enumerable.Range(0, 3).First(i => Math.Sign(values[c[3 * f + i]]) != Math.Sign(signs) && signs != 0);
            int a = c[3 * f + k], b = c[3 * f + (k + 1) % 3], d = c[3 * f + (k + 2) % 3], ab = At(a, b), ad = At(a, d);
            corners.AddRange([a, ab, ad, ab, b, d, ab, d, ad]);
            old.AddRange([f, f, f]);
            line.Add(Pair(ab, ad));
        }

        int At(int a, int b)
        {
            (int, int) key = Pair(a, b);
            if (crossing.TryGetValue(key, out int x))
            {
                return x;
            }

            (a, b) = key;
            Vector3D p = mesh.At(a) + Crossing(mesh.At(a), values[a], mesh.At(b), values[b], exact) * (mesh.At(b) - mesh.At(a));
            crossing[key] = x = points.Count / 3;
            points.AddRange([p.X, p.Y, p.Z]);
            return x;
        }

        Imprinted Mended()
        {
            List<int> done = [], oldDone = [];
            for (int t = 0; t < old.Count; t++)
            {
                int[] tri = [corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]];
                int[] mid = [.. Enumerable.Range(0, 3).Select(i => crossing.TryGetValue(Pair(tri[i], tri[(i + 1) % 3]), out int x) ? x : -1)];
                Split(tri, mid, done);
                while (oldDone.Count < done.Count / 3)
                {
                    oldDone.Add(old[t]);
                }
            }

            return new(new([.. points], [.. done]), [.. oldDone], line);
        }
    }

    // Share of the way from one point to the other at which the function is 0; halved as often as a micrometre asks for.
    private static double Crossing(Vector3D p, double atP, Vector3D q, double atQ, Func<Vector3D, double>? exact)
    {
        if (exact is null)
        {
            return atP / (atP - atQ);
        }

        double low = 0, high = 1;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = exact(p + middle * (q - p)) * atP > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>A pair of points with the lower first.</summary>
    /// <param name="a">One point.</param>
    /// <param name="b">The other.</param>
    public static (int A, int B) Pair(int a, int b) => a < b ? (a, b) : (b, a);

    // A triangle with points on some of its edges (−1 = none), in as many triangles as it takes.
    internal static void Split(int[] t, int[] mid, List<int> into)
    {
        int count = mid.Count(m => m >= 0);
        if (count == 0)
        {
            into.AddRange(t);
            return;
        }

        int k = Array.FindIndex(mid, m => m >= 0);
        (int a, int b, int c) = (t[k], t[(k + 1) % 3], t[(k + 2) % 3]);
        int ab = mid[k], bc = mid[(k + 1) % 3], ca = mid[(k + 2) % 3];
        if (count == 1)
        {
            into.AddRange([a, ab, c, ab, b, c]);
        }
        else if (count == 3)
        {
            into.AddRange([a, ab, ca, ab, b, bc, bc, c, ca, ab, bc, ca]);
        }
        else if (bc >= 0)
        {
            into.AddRange([ab, b, bc, a, ab, bc, a, bc, c]);
        }
        else
        {
            into.AddRange([a, ab, ca, ab, b, c, ab, c, ca]);
        }
    }
}
