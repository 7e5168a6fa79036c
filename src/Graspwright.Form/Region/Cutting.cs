using Graspwright.Form.Surface;

namespace Graspwright.Form.Region;

/// <summary>Opens surfaces along edges.</summary>
public static class Cutting
{
    /// <summary>Opens along edges: each point gets as many copies as there are fans round it.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="edges">Edges, the lower point first.</param>
    /// <returns>The surface, and the old index of each point.</returns>
    public static (Mesh Mesh, int[] OldPoints) Open(Neighbourhood sides, IReadOnlySet<(int A, int B)> edges)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(edges);
        Mesh mesh = sides.Mesh;
        int[] c = mesh.Corners, copy = new int[c.Length];
        Array.Fill(copy, -1);
        List<int> old = [];
        List<double> points = [];
        for (int h = 0; h < c.Length; h++)
        {
            if (copy[h] >= 0)
            {
                continue;
            }

            int id = old.Count;
            old.Add(c[h]);
            points.AddRange([mesh.Points[3 * c[h]], mesh.Points[3 * c[h] + 1], mesh.Points[3 * c[h] + 2]]);
            for (int g = h; g >= 0 && copy[g] < 0; g = Step(sides, edges, g, forward: true))
            {
                copy[g] = id;
            }

            for (int g = Step(sides, edges, h, forward: false); g >= 0 && copy[g] < 0; g = Step(sides, edges, g, forward: false))
            {
                copy[g] = id;
            }
        }

        return (new([.. points], copy), [.. old]);
    }

    // The corner beside this one round the same point, across a side that is not cut.
    private static int Step(Neighbourhood sides, IReadOnlySet<(int A, int B)> edges, int corner, bool forward)
    {
        int side = forward ? Neighbourhood.Previous(corner) : corner;
        int across = sides.Across[side];
        if (across < 0 || edges.Contains(Imprint.Pair(sides.From(side), sides.To(side))))
        {
            return -1;
        }

        return forward ? across : Neighbourhood.Next(across);
    }
}
