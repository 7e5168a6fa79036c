using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Flattening;

/// <summary>What every step of flattening needs of a disc: each triangle laid flat by itself, its cotangents, and the graph of its edges.</summary>
internal sealed class DiscGraph
{
    public DiscGraph(Neighbourhood sides)
    {
        Sides = sides;
        Mesh mesh = sides.Mesh;
        int faces = mesh.FaceCount, n = mesh.PointCount;
        Local = new double[3 * faces];
        Area = new double[faces];
        Cotangents = new double[3 * faces];
        for (int f = 0; f < faces; f++)
        {
            Vector3D p = mesh.Corner(f, 0), a = mesh.Corner(f, 1) - p, b = mesh.Corner(f, 2) - p, c = b - a;
            double length = a.Length, x = b.Dot(a) / length, twice = a.Cross(b).Length, y = twice / length;
            (Local[3 * f], Local[3 * f + 1], Local[3 * f + 2]) = (length, x, y);
            Area[f] = twice / 2;
            // the cotangent belongs to the side opposite to the corner
            Cotangents[3 * f + 1] = Math.Clamp(a.Dot(b) / twice, -1e4, 1e4);
            Cotangents[3 * f + 2] = Math.Clamp(-a.Dot(c) / twice, -1e4, 1e4);
            Cotangents[3 * f] = Math.Clamp(b.Dot(c) / twice, -1e4, 1e4);
        }

        int[] corners = mesh.Corners, start = new int[n + 1], cornerStart = new int[n + 1];
        for (int h = 0; h < corners.Length; h++)
        {
            cornerStart[corners[h] + 1]++;
            start[corners[h] + 1]++;
            if (sides.Across[h] < 0)
            {
                start[sides.To(h) + 1]++;
            }
        }

        for (int v = 0; v < n; v++)
        {
            start[v + 1] += start[v];
            cornerStart[v + 1] += cornerStart[v];
        }

        int[] neighbours = new int[start[n]], at = start[..^1], cornerAt = cornerStart[..^1];
        Entry = new int[corners.Length];
        EntryBack = new int[corners.Length];
        AtPoint = new int[corners.Length];
        for (int h = 0; h < corners.Length; h++)
        {
            int v = corners[h], w = sides.To(h);
            AtPoint[cornerAt[v]++] = h;
            Entry[h] = at[v];
            neighbours[at[v]++] = w;
            if (sides.Across[h] < 0)
            {
                EntryBack[h] = at[w];
                neighbours[at[w]++] = v;
            }
        }

        for (int h = 0; h < corners.Length; h++)
        {
            EntryBack[h] = sides.Across[h] >= 0 ? Entry[sides.Across[h]] : EntryBack[h];
        }

        (Start, Neighbours, PointStart) = (start, neighbours, cornerStart);
        Order = Dissection.Of(start, neighbours, mesh.Points, 3);
        (Weights, Diagonal) = (new double[neighbours.Length], new double[n]);
        for (int h = 0; h < corners.Length; h++)
        {
            double w = Cotangents[h] / 2;
            Weights[Entry[h]] -= w;
            Weights[EntryBack[h]] -= w;
            Diagonal[corners[h]] += w;
            Diagonal[sides.To(h)] += w;
        }
    }

    public Neighbourhood Sides { get; }

    public Mesh Mesh => Sides.Mesh;

    /// <summary>Each triangle flat: first corner at (0, 0), second at (l, 0), third at (x, y): l, x, y.</summary>
    public double[] Local { get; }

    public double[] Area { get; }

    /// <summary>Cotangent of the angle opposite to each side.</summary>
    public double[] Cotangents { get; }

    public int[] Start { get; }

    public int[] Neighbours { get; }

    /// <summary>Entry of each side in the graph, from its start.</summary>
    public int[] Entry { get; }

    /// <summary>Entry of each side in the graph, from its end.</summary>
    public int[] EntryBack { get; }

    /// <summary>Corners at each point: where they begin, and which.</summary>
    public int[] PointStart { get; }

    public int[] AtPoint { get; }

    public Dissection Order { get; }

    /// <summary>The cotangent Laplacian: entries and diagonal.</summary>
    public double[] Weights { get; }

    public double[] Diagonal { get; }

    /// <summary>Its factor, one point held; <see langword="null"/> = triangles too poor.</summary>
    public SparseCholesky? Factor()
    {
        double mean = 0;
        foreach (double d in Diagonal)
        {
            mean += Math.Abs(d) / Diagonal.Length;
        }

        double[] diagonal = new double[Diagonal.Length];
        for (int v = 0; v < diagonal.Length; v++)
        {
            diagonal[v] = Diagonal[v] + 1e-12 * mean;
        }

        diagonal[0] += mean;
        return SparseCholesky.Factorise(Order, diagonal, Weights);
    }
}
