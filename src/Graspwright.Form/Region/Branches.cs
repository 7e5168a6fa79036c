using Graspwright.Form.Surface;

namespace Graspwright.Form.Region;

/// <summary>A part of a limb that stands out from it by itself: a thumb, a finger.</summary>
/// <param name="Tip">Its point farthest from the elbow.</param>
/// <param name="Web">The point at which it parts from what it is joined to.</param>
/// <param name="Out">How far the way to its tip goes on beyond the web [m].</param>
/// <param name="Points">Its points, farther from the elbow than the web.</param>
/// <param name="Other">Points of what it parts from, as far as that goes on beyond the web too.</param>
public sealed record Branch(int Tip, int Web, double Out, IReadOnlyList<int> Points, IReadOnlyList<int> Other);

/// <summary>Where a limb parts: rings of equal distance from the elbow, looked at from the far ends backward, until two become one.</summary>
/// <remarks>The join tree of a function on a graph (Carr, Snoeyink and Axen 2003); the function is the way along edges, which is good enough to tell fingers apart and stands for nothing else.</remarks>
public static class Branches
{
    /// <summary>How far something goes on beyond its web to count [m].</summary>
    public const double Least = 0.012;

    /// <summary>Finds the branches, the one that parts nearest to the elbow first. Of two that part, the one of less surface is the branch.</summary>
    /// <param name="sides">The form, z toward the fingertips.</param>
    /// <param name="near">Where the elbow's end stops to count: distances start from there [m].</param>
    public static IReadOnlyList<Branch> Of(Neighbourhood sides, double near)
    {
        ArgumentNullException.ThrowIfNull(sides);
        Mesh mesh = sides.Mesh;
        int n = mesh.PointCount;
        int[] start = [.. Enumerable.Range(0, n).Where(v => mesh.At(v).Z <= near)];
        if (start.Length == 0)
        {
            return [];
        }

        EdgePaths paths = new(sides);
        (double[] far, _) = paths.Spread(start, _ => false, out _);
        double[] area = new double[n];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            for (int k = 0; k < 3; k++)
            {
                area[mesh.Corners[3 * f + k]] += mesh.Cross(f).Length / 6;
            }
        }

        int[] order = [.. Enumerable.Range(0, n).Where(v => far[v] > 0 && double.IsFinite(far[v])).OrderByDescending(v => far[v]).ThenBy(v => v)];
        int[] root = new int[n];
        Array.Fill(root, -1);
        Dictionary<int, (int Tip, double Area, List<int> Points)> grown = [];
        List<Branch> found = [];
        foreach (int v in order)
        {
            int[] beside = [.. paths.Around(v).Where(w => root[w] >= 0).Select(w => Root(root, w)).Distinct().OrderByDescending(r => far[grown[r].Tip])];
            root[v] = v;
            grown[v] = (v, area[v], [v]);
            foreach (int r in beside)
            {
                if (beside.Length > 1 && r != beside[0])
                {
                    Part(v, beside[0] is var first ? Root(root, first) : first, r);
                }

                Join(v, r);
            }
        }

        found.Reverse();
        return found;

        void Part(int web, int one, int other)
        {
            ((int Tip, double Area, List<int> Points) a, (int Tip, double Area, List<int> Points) b) = (grown[Root(root, one)], grown[other]);
            double least = Math.Min(far[a.Tip], far[b.Tip]) - far[web];
            if (least < Least)
            {
                return;
            }

            (a, b) = a.Area <= b.Area ? (a, b) : (b, a);
            found.Add(new(a.Tip, web, far[a.Tip] - far[web], [.. a.Points], [.. b.Points]));
        }

        void Join(int v, int r)
        {
            int own = Root(root, v);
            (int Tip, double Area, List<int> Points) a = grown[own], b = grown[r];
            (int keep, int drop) = a.Points.Count >= b.Points.Count ? (own, r) : (r, own);
            grown[keep].Points.AddRange(grown[drop].Points);
            grown[keep] = (far[a.Tip] >= far[b.Tip] ? a.Tip : b.Tip, a.Area + b.Area, grown[keep].Points);
            grown.Remove(drop);
            root[drop] = keep;
        }
    }

    private static int Root(int[] root, int v)
    {
        while (root[v] != v)
        {
            v = root[v] = root[root[v]];
        }

        return v;
    }
}
