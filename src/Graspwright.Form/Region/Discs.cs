using Graspwright.Form.Surface;

namespace Graspwright.Form.Region;

/// <summary>A piece that can be laid flat.</summary>
/// <param name="Sides">The piece with its neighbours.</param>
/// <param name="OldPoints">Point of the whole surface for each of its points.</param>
public sealed record Piece(Neighbourhood Sides, int[] OldPoints);

/// <summary>Cuts a surface into discs: along given seams, then along the shortest further ones.</summary>
public static class Discs
{
    private const int MostCuts = 40;

    /// <summary>Cuts.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="seams">Edges of given seams, the lower point first.</param>
    /// <param name="dear">How many times dearer a seam past a point is: tender skin, contacts.</param>
    /// <returns>Pieces, the largest first, and the edges of the seams that had to be added.</returns>
    /// <exception cref="InvalidOperationException">It cannot be cut into discs with a sensible number of cuts.</exception>
    public static (IReadOnlyList<Piece> Pieces, IReadOnlySet<(int A, int B)> Added) Of(Neighbourhood sides, IReadOnlySet<(int A, int B)> seams, Func<int, double>? dear = null)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(seams);
        (Mesh open, int[] old) = Cutting.Open(sides, seams);
        Neighbourhood whole = Neighbourhood.Of(open);
        (int[] part, int count) = whole.Parts();
        HashSet<(int, int)> added = [];
        List<Piece> pieces = [];
        for (int p = 0; p < count; p++)
        {
            (Mesh mesh, int[] points) = open.Keep(f => part[f] == p);
            int[] back = [.. points.Select(v => old[v])];
            pieces.Add(Disc(mesh, back, dear, added));
        }

        return ([.. pieces.OrderByDescending(p => p.Sides.Mesh.FaceCount)], added);
    }

    private static Piece Disc(Mesh mesh, int[] back, Func<int, double>? dear, HashSet<(int, int)> added)
    {
        for (int cuts = 0; cuts < MostCuts; cuts++)
        {
            Neighbourhood sides = Neighbourhood.Of(mesh);
            IReadOnlyList<int[]> loops = sides.Loops();
            int euler = SurfaceSums.EulerOf(sides);
            if (loops.Count == 1 && euler == 1)
            {
                return new(sides, back);
            }

            int[] from = back;
            EdgePaths paths = new(sides, dear is null ? null : v => dear(from[v]));
            int[] way = loops.Count == 0 ? AcrossClosed(sides, paths)
                : euler + loops.Count < 2 ? RoundHandle(sides)
                : Join(sides, loops, paths);
            HashSet<(int, int)> edges = [];
            for (int i = 1; i < way.Length; i++)
            {
                edges.Add(Imprint.Pair(way[i - 1], way[i]));
                added.Add(Imprint.Pair(back[way[i - 1]], back[way[i]]));
            }

            (Mesh cut, int[] points) = Cutting.Open(sides, edges);
            (mesh, back) = (cut, [.. points.Select(v => from[v])]);
        }

        throw new InvalidOperationException($"The surface is no sheet: {MostCuts} cuts do not make it one.");
    }

    private static int[] AcrossClosed(Neighbourhood sides, EdgePaths paths)
    {
        int a = paths.Farthest([sides.From(0)]), b = paths.Farthest([a]);
        return paths.Between([a], v => v == b);
    }

    private static int[] Join(Neighbourhood sides, IReadOnlyList<int[]> loops, EdgePaths paths)
    {
        int[] least = loops.MinBy(l => l.Sum(h => SurfaceSums.Length(sides.Mesh, h)))!;
        HashSet<int> own = [.. least.Select(sides.From)], others = [.. loops.Where(l => l != least).SelectMany(l => l.Select(sides.From))];
        return paths.Between(own, others.Contains);
    }

    // A closed way that does not part the surface: an edge outside a tree of points and a tree of triangles (Eppstein 2003), with its two ways to the root.
    private static int[] RoundHandle(Neighbourhood sides)
    {
        Mesh mesh = sides.Mesh;
        (double[] far, int[] before) = new EdgePaths(sides).Spread([sides.From(0)], _ => false, out _);
        bool[] crossed = new bool[mesh.FaceCount];
        bool[] used = new bool[mesh.Corners.Length];
        Stack<int> stack = new([0]);
        crossed[0] = true;
        while (stack.Count > 0)
        {
            int f = stack.Pop();
            for (int h = 3 * f; h < 3 * f + 3; h++)
            {
                int g = sides.Across[h];
                if (g >= 0 && !crossed[g / 3] && before[sides.From(h)] != sides.To(h) && before[sides.To(h)] != sides.From(h))
                {
                    crossed[g / 3] = used[h] = used[g] = true;
                    stack.Push(g / 3);
                }
            }
        }

        int best = -1;
        double length = double.PositiveInfinity;
        for (int h = 0; h < used.Length; h++)
        {
            int v = sides.From(h), w = sides.To(h);
            double around = far[v] + far[w] + SurfaceSums.Length(mesh, h);
            if (sides.Across[h] > h && !used[h] && before[v] != w && before[w] != v && around < length)
            {
                (best, length) = (h, around);
            }
        }

        List<int> one = Up(before, sides.From(best)), other = Up(before, sides.To(best));
        while (one.Count > 1 && other.Count > 1 && one[^2] == other[^2])
        {
            one.RemoveAt(one.Count - 1);
            other.RemoveAt(other.Count - 1);
        }

        one.Reverse();
        return [.. one, .. other];
    }

    private static List<int> Up(int[] before, int v)
    {
        List<int> way = [];
        for (; v >= 0; v = before[v])
        {
            way.Add(v);
        }

        return way;
    }
}
