using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>A surface at one distance from a form.</summary>
/// <param name="Mesh">The surface, outward.</param>
/// <param name="Own">Greatest distance of its samples from the true one, valleys left out [m].</param>
/// <param name="Other">Greatest distance of samples of the true one from it, valleys left out [m].</param>
/// <param name="Valley">How deep at most it fills the valleys that the true one has over inner corners sharper than the offset; 0 = it has none [m].</param>
/// <param name="Crossings">Pairs of its triangles that cut each other.</param>
/// <param name="Closed">It has no open edge and no edge of more than two triangles.</param>
public sealed record OffsetSurface(Mesh Mesh, double Own, double Other, double Valley, int Crossings, bool Closed);

/// <summary>Offsets: all points at one distance from a closed form.</summary>
/// <remarks>
/// Distance field on a sparse grid, one point for each sheet of the surface in a cell (Nielson 2004, "Dual marching cubes"), projected onto the true
/// offset and refined where chords sag. Valleys over sharp inner corners are spanned where a sound surface is wanted: to follow them makes triangles that cut each other.
/// </remarks>
public static class Offset
{
    private const int Rounds = 6, PlaceRounds = 3;
    private const double Sag = 0.01e-3, MiddleSag = 0.014e-3, Finest = 40, PlaceFinest = 4; // chords shorter than this share of a cell are left

    /// <summary>Makes an offset.</summary>
    /// <param name="form">The closed form.</param>
    /// <param name="distance">Distance, above 0 outward [m].</param>
    /// <param name="cell">Cell of the grid [m]; NaN = by the size of the form.</param>
    /// <param name="places">Only its places matter, not that its triangles make a sound surface: valleys are followed, chords refined less, nothing checked.</param>
    /// <exception cref="ArgumentException">Inward, nothing is left at that distance.</exception>
    public static OffsetSurface Of(Nearest form, double distance, double cell = double.NaN, bool places = false)
    {
        ArgumentNullException.ThrowIfNull(form);
        (Vector3D low, Vector3D high) = form.Mesh.Box();
        double h = double.IsNaN(cell) ? Math.Clamp(0.008 * (high - low).Length, 0.0008, 0.0025) : cell;
        OffsetGrid grid = new(form, distance, h, places);
        Mesh mesh = grid.Surface();
        if (mesh.FaceCount == 0)
        {
            throw new ArgumentException($"Nothing of the form lies {1000 * Math.Abs(distance):0.#} mm deep.", nameof(distance));
        }

        for (int round = 0; round < (places ? PlaceRounds : Rounds); round++)
        {
            (Mesh finer, bool changed) = Refine(grid, mesh, places);
            mesh = finer;
            if (!changed)
            {
                break;
            }
        }

        if (places)
        {
            return new(mesh, double.NaN, double.NaN, double.NaN, 0, Closed: true);
        }

        Neighbourhood sides = Neighbourhood.Of(mesh);
        Nearest tree = new(sides);
        (double own, double other, double valley) = BothWays(form, grid, distance, tree);
        return new(mesh, own, other, valley, tree.Crossings().Count, !Array.Exists(sides.Across, a => a < 0));
    }

    private static (Mesh Mesh, bool Changed) Refine(OffsetGrid grid, Mesh mesh, bool places)
    {
        Neighbourhood sides = Neighbourhood.Of(mesh);
        int[] c = mesh.Corners;
        bool[] split = new bool[c.Length];
        Parallel.For(0, c.Length, h =>
        {
            int g = sides.Across[h];
            if (g >= 0 && g < h)
            {
                return;
            }

            Vector3D a = mesh.At(c[h]), b = mesh.At(c[Neighbourhood.Next(h)]);
            bool wide = Math.Abs(grid.Miss(0.5 * (a + b))) > Sag && SurfaceSums.Length(mesh, h) > grid.Cell / (places ? PlaceFinest : Finest) && (places || !grid.SpansValley(a, b));
            split[h] = wide;
            if (g >= 0)
            {
                split[g] = wide;
            }
        });
        bool[] middles = new bool[mesh.FaceCount];
        Parallel.For(0, mesh.FaceCount, f => middles[f] = !places && !split[3 * f] && !split[3 * f + 1] && !split[3 * f + 2] && Math.Abs(grid.Miss(mesh.Middle(f))) > MiddleSag);
        for (int h = 0; h < c.Length; h++)
        {
            // sides that lie well and a middle that does not: in four, which keeps its shape
            if (middles[h / 3] && !grid.SpansValley(mesh.At(c[h]), mesh.At(c[Neighbourhood.Next(h)])))
            {
                split[h] = true;
                if (sides.Across[h] is >= 0 and var g)
                {
                    split[g] = true;
                }
            }
        }

        if (!split.Any(s => s))
        {
            return (mesh, false);
        }

        List<double> points = [.. mesh.Points];
        List<int> corners = [];
        Dictionary<(int, int), int> middle = [];
        int[] t = new int[3], mid = new int[3];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            for (int k = 0; k < 3; k++)
            {
                int h = 3 * f + k;
                t[k] = c[h];
                mid[k] = -1;
                if (split[h])
                {
                    (int, int) key = Region.Imprint.Pair(c[h], c[Neighbourhood.Next(h)]);
                    if (!middle.TryGetValue(key, out mid[k]))
                    {
                        Vector3D p = grid.Onto(0.5 * (mesh.At(c[h]) + mesh.At(c[Neighbourhood.Next(h)])));
                        middle[key] = mid[k] = points.Count / 3;
                        points.AddRange([p.X, p.Y, p.Z]);
                    }
                }
            }

            Region.Imprint.Split(t, mid, corners);
        }

        return (new([.. points], [.. corners]), true);
    }

    private static (double Own, double Other, double Valley) BothWays(Nearest form, OffsetGrid grid, double distance, Nearest tree)
    {
        Mesh mesh = tree.Mesh, source = form.Mesh;
        double[] own = new double[mesh.FaceCount], other = new double[source.FaceCount], fill = new double[mesh.FaceCount], deep = new double[source.FaceCount];
        bool[] beside = new bool[mesh.PointCount];
        Parallel.For(0, mesh.FaceCount, f =>
        {
            Vector3D a = mesh.Corner(f, 0), b = mesh.Corner(f, 1), c = mesh.Corner(f, 2);
            double worst = 0;
            foreach (Vector3D p in (ReadOnlySpan<Vector3D>)[a, 0.5 * (a + b), 1.0 / 3 * (a + b + c)])
            {
                worst = Math.Max(worst, Math.Abs(form.To(p).Distance - distance));
            }

            own[f] = worst;
            if (worst > Sag && (grid.SpansValley(a, b) || grid.SpansValley(b, c) || grid.SpansValley(c, a)))
            {
                for (int k = 0; k < 3; k++)
                {
                    beside[mesh.Corners[3 * f + k]] = true;
                }
            }
        });
        bool Valley(int f) => beside[mesh.Corners[3 * f]] || beside[mesh.Corners[3 * f + 1]] || beside[mesh.Corners[3 * f + 2]];
        for (int f = 0; f < own.Length; f++)
        {
            (own[f], fill[f]) = Valley(f) ? (0.0, own[f]) : (own[f], 0.0);
        }

        Vector3D[] normals = SurfaceSums.Normals(source);
        Parallel.For(0, source.FaceCount, f =>
        {
            Vector3D n = source.Cross(f).Unit;
            foreach (Vector3D q in (ReadOnlySpan<Vector3D>)[source.Middle(f) + distance * n, source.Corner(f, 0) + distance * normals[source.Corners[3 * f]]])
            {
                // only where the point really is on the true offset
                if (Math.Abs(form.To(q).Distance - distance) < 1e-9)
                {
                    Foot foot = tree.To(q);
                    ref double to = ref Valley(foot.Face) ? ref deep[f] : ref other[f];
                    to = Math.Max(to, Math.Abs(foot.Distance));
                }
            }
        });
        return (own.Max(), other.Max(), Math.Max(fill.Max(), deep.Max()));
    }
}
