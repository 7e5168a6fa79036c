using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>A surface of fewer triangles that stays near the first one.</summary>
/// <param name="Sides">The surface with its neighbours.</param>
/// <param name="Deviation">Greatest distance that sampling both ways found [m].</param>
/// <param name="Place">Where it was found [m].</param>
/// <param name="OwnCrossings">Pairs of triangles that cut each other in the first surface, and do so still: their triangles were left as they were.</param>
/// <param name="Rounds">How often it was begun: 1, and one more for each time that it had strayed or crossed itself.</param>
/// <param name="AreaChange">Area after less area before [m²].</param>
/// <param name="VolumeChange">Volume after less volume before [m³]; without meaning where the surface is open.</param>
public sealed record Thinned(Neighbourhood Sides, double Deviation, Vector3D Place, int OwnCrossings, int Rounds, double AreaChange, double VolumeChange);

/// <summary>Thins a surface by drawing edges together, without straying farther than allowed and without bringing in places where it cuts itself.</summary>
/// <source key="garland-heckbert-1997">Garland and Heckbert, Surface simplification using quadric error metrics, 1997: which edge next, and where to.</source>
/// <remarks>
/// What holds: every point of the first surface lies near a triangle while edges are drawn together. Then the finished surface is
/// sampled against the first one both ways and looked through for triangles that cut each other. Where either is not as it should
/// be, the points there are held tighter, or held fast, and it begins anew, so that the surface handed back has passed both.
/// </remarks>
public static class Thinning
{
    private const double Reserve = 0.7; // of the deviation allowed while drawing together: the rest is for places between points
    private const double Tighter = 0.7, MuchTighter = 0.5; // times what was allowed, where it strayed; where it crossed itself, or late, the second
    private const int MostRounds = 16, GentleRounds = 7, MostCrossings = 200_000, Along = 4;

    // shares of the corners at a small grid over a triangle, its corners and sides with it
    private static readonly (double A, double B, double C)[] Grid =
        [.. from i in Enumerable.Range(0, Along + 1) from j in Enumerable.Range(0, Along + 1 - i) select ((double)i / Along, (double)j / Along, (double)(Along - i - j) / Along)];

    /// <summary>Thins.</summary>
    /// <param name="sides">The surface, open or closed.</param>
    /// <param name="most">How far the two surfaces may lie apart [m].</param>
    /// <param name="longest">Longest edge that may come about [m].</param>
    /// <param name="say">Told now and then what share of the triangles is gone in this round.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The thinned surface; <see langword="null"/> = none that keeps what is asked: the surface cuts itself in too many places, or went on straying.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Thinned? Of(Neighbourhood sides, double most, double longest = double.PositiveInfinity, Action<double>? say = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        Mesh mesh = sides.Mesh;
        double[] allowed = new double[mesh.PointCount];
        Array.Fill(allowed, Reserve * most);
        Nearest tree = new(sides);
        stop.ThrowIfCancellationRequested();
        IReadOnlyList<(int A, int B)> own = tree.Crossings(MostCrossings);
        if (own.Count >= MostCrossings)
        {
            return null;
        }

        foreach ((int a, int b) in own)
        {
            Hold(mesh, [a, b], allowed);
        }

        HashSet<(int, int)> known = [.. own];
        for (int round = 1; round <= MostRounds; round++)
        {
            EdgeCollapse collapse = new(sides, allowed, longest);
            (Mesh left, int[] old) = collapse.Run(sides, say, stop);
            Neighbourhood thin = Neighbourhood.Of(left);
            Nearest thinTree = new(thin);
            List<int> strayed = [];
            (double Away, Vector3D Place) worst = Apart(mesh, tree, left, thinTree, most, strayed, stop);
            (int A, int B)[] crossed = [.. thinTree.Crossings(MostCrossings).Where(c => !known.Contains((Math.Min(old[c.A], old[c.B]), Math.Max(old[c.A], old[c.B]))))];
            if (strayed.Count == 0 && crossed.Length == 0)
            {
                (SurfaceSums before, SurfaceSums after) = (SurfaceSums.Of(sides), SurfaceSums.Of(thin));
                return new(thin, worst.Away, worst.Place, own.Count, round, after.Area - before.Area, after.Volume - before.Volume);
            }

            HashSet<int> tighter = [.. strayed.SelectMany(f => collapse.Samples(old[f])), .. strayed.SelectMany(f => Under(mesh, tree, left, f))];
            foreach (int s in tighter)
            {
                allowed[s] *= round <= GentleRounds ? Tighter : MuchTighter;
            }

            HashSet<int> apart = [.. crossed.SelectMany(c => (int[])[c.A, c.B]).Distinct().SelectMany(f => collapse.Samples(old[f]).Concat(Under(mesh, tree, left, f)))];
            foreach (int s in apart)
            {
                allowed[s] *= round <= GentleRounds ? MuchTighter : 0;
            }
        }

        return null;
    }

    private static void Hold(Mesh mesh, ReadOnlySpan<int> faces, double[] allowed)
    {
        foreach (int f in faces)
        {
            allowed[mesh.Corners[3 * f]] = allowed[mesh.Corners[3 * f + 1]] = allowed[mesh.Corners[3 * f + 2]] = 0;
        }
    }

    // Points of the first surface beside a thinned triangle, which may stand for none of them.
    private static IEnumerable<int> Under(Mesh mesh, Nearest tree, Mesh left, int face) =>
        Grid.Select(share => tree.To(Sample(left, face, share)).Face).Distinct().SelectMany(f => mesh.Corners[(3 * f)..(3 * f + 3)]);

    // The greatest distance of samples (corners, middles of sides and of triangles of the first surface, a grid on the thinned one) of each surface from the other, and the thinned triangles at which it is more than allowed.
    private static (double Away, Vector3D Place) Apart(Mesh mesh, Nearest tree, Mesh left, Nearest thinTree, double most, List<int> strayed, CancellationToken stop)
    {
        ParallelOptions options = new() { CancellationToken = stop };
        Lock gate = new();
        (double Away, Vector3D Place) worst = (0, mesh.PointCount > 0 ? mesh.At(0) : default);
        HashSet<int> far = [];
        Search(mesh.PointCount, v => mesh.At(v), thinTree, (_, foot) => foot.Face);
        Search(mesh.FaceCount, f => mesh.Middle(f), thinTree, (_, foot) => foot.Face);
        Search(mesh.Corners.Length, h => mesh.Corners[h] < mesh.Corners[Neighbourhood.Next(h)] ? 0.5 * (mesh.At(mesh.Corners[h]) + mesh.At(mesh.Corners[Neighbourhood.Next(h)])) : null, thinTree, (_, foot) => foot.Face);
        Search(Grid.Length * left.FaceCount, i => Sample(left, i / Grid.Length, Grid[i % Grid.Length]), tree, (i, _) => i / Grid.Length);
        strayed.AddRange(far.Order());
        return worst;

        void Search(int count, Func<int, Vector3D?> sample, Nearest other, Func<int, Foot, int> face) =>
            Parallel.For(0, count, options, () => (Away: 0.0, Place: default(Vector3D), Far: new List<int>()), (i, _, own) =>
            {
                if (sample(i) is not { } p)
                {
                    return own;
                }

                Foot foot = other.To(p);
                double away = Math.Abs(foot.Distance);
                own = away > own.Away ? (away, p, own.Far) : own;
                if (away > most)
                {
                    own.Far.Add(face(i, foot));
                }

                return own;
            }, own =>
            {
                lock (gate)
                {
                    worst = own.Away > worst.Away ? (own.Away, own.Place) : worst;
                    far.UnionWith(own.Far);
                }
            });
    }

    private static Vector3D Sample(Mesh mesh, int face, (double A, double B, double C) share) => share.A * mesh.Corner(face, 0) + share.B * mesh.Corner(face, 1) + share.C * mesh.Corner(face, 2);
}
