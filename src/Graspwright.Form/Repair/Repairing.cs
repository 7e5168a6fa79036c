using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>A kind of repair that was made.</summary>
/// <param name="What">What was done, in words.</param>
/// <param name="Count">How often.</param>
/// <param name="Place">Place of the first or worst of them; NaN where it has none [m].</param>
public sealed record Mend(string What, int Count, Vector3D Place);

/// <summary>What is still open or odd after the repair.</summary>
/// <param name="What">What it is, in words.</param>
/// <param name="Count">How many.</param>
/// <param name="Place">Place of the worst [m].</param>
public sealed record Leftover(string What, int Count, Vector3D Place);

/// <summary>A repaired surface.</summary>
/// <param name="Sides">The surface with its neighbours.</param>
/// <param name="Mends">What was done.</param>
/// <param name="Leftovers">What is left.</param>
/// <param name="Closed">It has no open edge.</param>
public sealed record Repaired(Neighbourhood Sides, IReadOnlyList<Mend> Mends, IReadOnlyList<Leftover> Leftovers, bool Closed)
{
    /// <summary>The surface.</summary>
    public Mesh Mesh => Sides.Mesh;
}

/// <summary>Makes one sound surface of what a scanner wrote: joined, turned outward, the largest part, small holes closed.</summary>
public static class Repairing
{
    private static readonly Vector3D Nowhere = new(double.NaN, double.NaN, double.NaN);

    /// <summary>Repairs.</summary>
    /// <param name="mesh">The surface [m].</param>
    /// <param name="smallHole">Longest rim of a hole that is closed [m].</param>
    /// <param name="weld">How far open points may lie apart to be one; NaN = a millionth of the size [m].</param>
    public static Repaired Of(Mesh mesh, double smallHole = 0.06, double weld = double.NaN)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        List<Mend> mends = [];
        List<Leftover> left = [];
        (Vector3D low, Vector3D high) = mesh.Box();
        double size = (high - low).Length, near = double.IsNaN(weld) ? 1e-6 * size : weld;
        mesh = Same(mesh, mends);
        mesh = Distinct(mesh, mends);
        Neighbourhood sides = Neighbourhood.Of(mesh);
        if (Array.Exists(sides.Across, a => a == Neighbourhood.Open) && Welding.Near(sides, near) is { Joined: > 0 } welded)
        {
            mends.Add(new("points that lay a hair apart joined", welded.Joined, welded.Place));
            mesh = Distinct(welded.Mesh, mends);
        }

        mesh = Largest(mesh, mends);
        mesh = Turning.Outward(mesh, mends, left);
        (mesh, sides) = Slivers(mesh, 1e-9 * size, mends);
        (mesh, sides) = Holes.Close(sides, smallHole, mends, left);
        (mesh, sides) = Folds.Undo(sides, mends, left);
        int crowded = sides.Across.Count(a => a == Neighbourhood.Crowded);
        if (crowded > 0)
        {
            int h = Array.IndexOf(sides.Across, Neighbourhood.Crowded);
            left.Add(new("edges where more than two triangles meet", crowded / 3 + (crowded % 3 > 0 ? 1 : 0), mesh.At(mesh.Corners[h])));
        }

        return new(sides, mends, left, !Array.Exists(sides.Across, a => a < 0));
    }

    // Points of equal coordinates become one.
    private static Mesh Same(Mesh mesh, List<Mend> mends)
    {
        Reading.PointTable table = new(mesh.PointCount);
        int[] index = new int[mesh.PointCount];
        for (int v = 0; v < index.Length; v++)
        {
            index[v] = table.Index(mesh.Points[3 * v], mesh.Points[3 * v + 1], mesh.Points[3 * v + 2]);
        }

        if (table.Count == index.Length)
        {
            return mesh;
        }

        mends.Add(new("points written more than once joined", index.Length - table.Count, Nowhere));
        int[] corners = new int[mesh.Corners.Length];
        for (int h = 0; h < corners.Length; h++)
        {
            corners[h] = index[mesh.Corners[h]];
        }

        return new(table.Points(), corners);
    }

    // Triangles that lost a corner, and those written twice.
    private static Mesh Distinct(Mesh mesh, List<Mend> mends)
    {
        bool[] keep = new bool[mesh.FaceCount];
        int flat = 0, twice = 0, firstFlat = -1, firstTwice = -1;
        HashSet<(int, int, int)>? seen = null;
        int[] c = mesh.Corners;
        for (int f = 0; f < keep.Length; f++)
        {
            (int a, int b, int d) = (c[3 * f], c[3 * f + 1], c[3 * f + 2]);
            keep[f] = a != b && b != d && a != d;
            if (!keep[f])
            {
                firstFlat = flat++ == 0 ? f : firstFlat;
            }
        }

        // Only triangles at crowded edges can be double.
        Neighbourhood sides = Neighbourhood.Of(mesh);
        for (int f = 0; f < keep.Length; f++)
        {
            if (keep[f] && (sides.Across[3 * f] == Neighbourhood.Crowded || sides.Across[3 * f + 1] == Neighbourhood.Crowded || sides.Across[3 * f + 2] == Neighbourhood.Crowded))
            {
                (int a, int b, int d) = (c[3 * f], c[3 * f + 1], c[3 * f + 2]);
                int least = Math.Min(a, Math.Min(b, d)), most = Math.Max(a, Math.Max(b, d));
                if (!(seen ??= []).Add((least, a ^ b ^ d ^ least ^ most, most)))
                {
                    keep[f] = false;
                    firstTwice = twice++ == 0 ? f : firstTwice;
                }
            }
        }

        if (flat + twice == 0)
        {
            return mesh;
        }

        if (flat > 0)
        {
            mends.Add(new("triangles without area dropped", flat, mesh.Corner(firstFlat, 0)));
        }

        if (twice > 0)
        {
            mends.Add(new("triangles written more than once dropped", twice, mesh.Corner(firstTwice, 0)));
        }

        return mesh.Keep(f => keep[f]).Part;
    }

    private static Mesh Largest(Mesh mesh, List<Mend> mends)
    {
        (int[] part, int count) = Turning.Parts(mesh);
        if (count <= 1)
        {
            return mesh;
        }

        double[] area = new double[count];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            area[part[f]] += mesh.Cross(f).Length / 2;
        }

        int largest = Array.IndexOf(area, area.Max()), next = -1;
        for (int i = 0; i < count; i++)
        {
            next = i != largest && (next < 0 || area[i] > area[next]) ? i : next;
        }

        mends.Add(new($"loose parts dropped, the largest with {100 * area[next] / area[largest]:0.#} % of the area kept", count - 1, mesh.Middle(Array.IndexOf(part, next))));
        return mesh.Keep(f => part[f] == largest).Part;
    }

    // A triangle whose three corners lie on a line: its long side is given to the neighbour across, which is cut in two.
    private static (Mesh Mesh, Neighbourhood Sides) Slivers(Mesh mesh, double height, List<Mend> mends)
    {
        int swapped = 0;
        Vector3D place = Nowhere;
        for (int round = 0; round < 8; round++)
        {
            Neighbourhood sides = Neighbourhood.Of(mesh);
            int[] corners = [.. mesh.Corners];
            HashSet<int> touched = [];
            for (int f = 0; f < mesh.FaceCount; f++)
            {
                int longest = 3 * f;
                for (int k = 1; k < 3; k++)
                {
                    longest = SurfaceSums.Length(mesh, 3 * f + k) > SurfaceSums.Length(mesh, longest) ? 3 * f + k : longest;
                }

                int other = sides.Across[longest];
                if (mesh.Cross(f).Length > height * SurfaceSums.Length(mesh, longest) || other < 0 || touched.Contains(f) || touched.Contains(other / 3))
                {
                    continue;
                }

                int tip = mesh.Corners[Neighbourhood.Previous(longest)], far = mesh.Corners[Neighbourhood.Previous(other)], a = mesh.Corners[longest], b = mesh.Corners[Neighbourhood.Next(longest)];
                if (tip == far || Joined(sides, tip, far))
                {
                    continue;
                }

                (corners[3 * f], corners[3 * f + 1], corners[3 * f + 2]) = (tip, a, far);
                (corners[other / 3 * 3], corners[other / 3 * 3 + 1], corners[other / 3 * 3 + 2]) = (far, b, tip);
                touched.Add(f);
                touched.Add(other / 3);
                for (int k = 0; k < 3; k++)
                {
                    _ = sides.Across[3 * f + k] >= 0 && touched.Add(sides.Across[3 * f + k] / 3);
                    _ = sides.Across[other / 3 * 3 + k] >= 0 && touched.Add(sides.Across[other / 3 * 3 + k] / 3);
                }

                place = swapped++ == 0 ? mesh.At(tip) : place;
            }

            if (touched.Count == 0)
            {
                if (swapped > 0)
                {
                    mends.Add(new("triangles without height given to their neighbours", swapped, place));
                }

                return (mesh, sides);
            }

            mesh = new(mesh.Points, corners);
        }

        mends.Add(new("triangles without height given to their neighbours", swapped, place));
        return (mesh, Neighbourhood.Of(mesh));
    }

    private static bool Joined(Neighbourhood sides, int v, int w)
    {
        // rare: only for triangles without height
        int[] c = sides.Mesh.Corners;
        for (int h = 0; h < c.Length; h++)
        {
            if (c[h] == v && (c[Neighbourhood.Next(h)] == w || c[Neighbourhood.Previous(h)] == w))
            {
                return true;
            }
        }

        return false;
    }
}
