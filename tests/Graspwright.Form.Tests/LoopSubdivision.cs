using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tests;

/// <summary>A coarse surface made smooth: each triangle in four, points moved (Loop 1987; weights of Warren 1995, rims as cubic curves).</summary>
internal static class LoopSubdivision
{
    public static Mesh Of(Neighbourhood sides)
    {
        Mesh mesh = sides.Mesh;
        int n = mesh.PointCount;
        Vector3D[] around = new Vector3D[n], rim = new Vector3D[n];
        int[] count = new int[n], open = new int[n];
        Dictionary<(int, int), int> middle = [];
        List<Vector3D> edges = [];
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            int a = sides.From(h), b = sides.To(h), other = sides.Across[h];
            around[a] += mesh.At(b);
            count[a]++;
            if (other < 0)
            {
                rim[a] += mesh.At(b);
                rim[b] += mesh.At(a);
                (open[a], open[b]) = (open[a] + 1, open[b] + 1);
            }

            if (other < h)
            {
                middle[(Math.Min(a, b), Math.Max(a, b))] = n + edges.Count;
                Vector3D ends = mesh.At(a) + mesh.At(b);
                edges.Add(other < 0 ? 0.5 * ends : 3.0 / 8 * ends + 1.0 / 8 * (mesh.At(mesh.Corners[Neighbourhood.Previous(h)]) + mesh.At(mesh.Corners[Neighbourhood.Previous(other)])));
            }
        }

        Vector3D Moved(int v)
        {
            double beta = count[v] == 3 ? 3.0 / 16 : 3.0 / (8 * count[v]);
            return open[v] > 0 ? 0.75 * mesh.At(v) + 0.25 / open[v] * rim[v] : (1 - count[v] * beta) * mesh.At(v) + beta * around[v];
        }

        int Middle(int a, int b) => middle[(Math.Min(a, b), Math.Max(a, b))];
        Vector3D[] points = [.. Enumerable.Range(0, n).Select(Moved), .. edges];
        List<int> corners = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            int a = mesh.Corners[3 * f], b = mesh.Corners[3 * f + 1], c = mesh.Corners[3 * f + 2], ab = Middle(a, b), bc = Middle(b, c), ca = Middle(c, a);
            corners.AddRange([a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca]);
        }

        return new([.. points.SelectMany(p => (double[])[p.X, p.Y, p.Z])], [.. corners]);
    }
}
