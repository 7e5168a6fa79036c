using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>Distances over a surface from one of its points.</summary>
/// <param name="From">The point.</param>
/// <param name="Distances">Distance of each point; infinite = on another part [m].</param>
/// <param name="Errors">How far each of them may be off, either way, as computed on the way [m].</param>
/// <param name="Bound">The greatest of the errors as a share of its distance.</param>
/// <param name="Windows">Stretches of sides that were carried over a triangle.</param>
public sealed record DistanceField(int From, double[] Distances, double[] Errors, double Bound, long Windows);

/// <summary>A shortest way over a surface.</summary>
/// <param name="Places">Its corners: the ends, and where it crosses sides [m].</param>
/// <param name="Length">Its length [m].</param>
public sealed record SurfaceRoute(IReadOnlyList<Vector3D> Places, double Length)
{
    /// <summary>A triangle on which each piece of the way lies; one less than the places.</summary>
    public IReadOnlyList<int> Faces { get; init; } = [];
}

/// <summary>Shortest ways over the triangles themselves, not along their edges.</summary>
/// <remarks>
/// Stretches of sides that see one source straight (windows) are carried over the unfolded triangles, as Mitchell, Mount and Papadimitriou do
/// ("The discrete geodesic problem", SIAM J. Comput. 16 (1987)). Windows that touch are taken for one where that is off by little enough, an idea of
/// Surazhsky, Surazhsky, Kirsanov, Gortler and Hoppe ("Fast exact and approximate geodesics on meshes", ACM TOG 24 (2005)); here each window carries
/// the sum of what that cost, which makes the bound a computed number.
/// </remarks>
public sealed class SurfaceDistances
{
    /// <summary>Error as a share of the distance that is allowed unless another is asked for.</summary>
    public const double UsualError = 1e-4;

    /// <summary>Error as a share of the distance at which only waves of one source are taken for one.</summary>
    public const double LeastError = 1e-12;

    /// <summary>Share by which rounding may move a distance.</summary>
    public const double Rounding = 1e-9;

    private readonly Unfolded _flat;

    /// <summary>Prepares a surface.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public SurfaceDistances(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        _flat = new(sides);
    }

    /// <summary>Distances of all points from one.</summary>
    /// <param name="from">The point.</param>
    /// <param name="error">Error allowed as a share of the distance; the bound that comes out may pass it by a few hundredths of it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="InvalidOperationException">The surface is so crumpled that it would take too much time or memory.</exception>
    public DistanceField Field(int from, double error = UsualError, CancellationToken stop = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(error, LeastError);
        BoundedSpread run = new(_flat, error);
        run.Go(from, stop);
        double bound = 0;
        for (int v = 0; v < run.Far.Length; v++)
        {
            run.Error[v] += double.IsFinite(run.Far[v]) ? Rounding * run.Far[v] : 0;
            bound = run.Far[v] > 0 && double.IsFinite(run.Far[v]) ? Math.Max(bound, run.Error[v] / run.Far[v]) : bound;
        }

        return new(from, run.Far, run.Error, bound, run.Count);
    }

    /// <summary>The shortest way from one point to another, exact but for rounding.</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The way; <see langword="null"/> = the two lie on different parts.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public SurfaceRoute? Route(int from, int to, CancellationToken stop = default)
    {
        Neighbourhood sides = _flat.Sides;
        Mesh mesh = sides.Mesh;
        if (from == to)
        {
            return new([mesh.At(from)], 0);
        }

        // the way along edges is a way: nothing longer is followed
        double along = AlongEdges(from, to);
        if (!double.IsFinite(along))
        {
            return null;
        }

        // loosely, back from the end: how far it is to there from everywhere near the way; then exactly, where a way as short can pass
        Vector3D start = mesh.At(from);
        BoundedSpread back = new(_flat, UsualError, v => (mesh.At(v) - start).Length, along);
        back.Go(to, stop);
        // what was not reached lies so far off that the way by it is longer than the way along edges
        BoundedSpread run = new(_flat, LeastError, v => double.IsFinite(back.Far[v]) ? back.Far[v] - back.Error[v] : along - (mesh.At(v) - start).Length, Math.Min(along, back.Far[from] + back.Error[from]));
        run.Go(from, stop);
        return RouteTrace.Of(_flat, run, from, to);
    }

    // The shortest way along edges, those first that lead straight to the end.
    private double AlongEdges(int from, int to)
    {
        Mesh mesh = _flat.Sides.Mesh;
        Vector3D end = mesh.At(to);
        double[] far = new double[mesh.PointCount];
        Array.Fill(far, double.PositiveInfinity);
        far[from] = 0;
        PriorityQueue<(int Point, double Far), double> queue = new([((from, 0), 0)]);
        while (queue.TryDequeue(out (int Point, double Far) at, out _) && at.Point != to)
        {
            for (int i = _flat.First[at.Point]; at.Far <= far[at.Point] && i < _flat.First[at.Point + 1]; i++)
            {
                int h = _flat.Leaving[i], back = Neighbourhood.Previous(h);
                Reach(_flat.Sides.To(h), at.Far + _flat.Length[h]);
                Reach(_flat.Sides.From(back), at.Far + _flat.Length[back]);
            }
        }

        return far[to];

        void Reach(int v, double d)
        {
            if (d < far[v])
            {
                far[v] = d;
                queue.Enqueue((v, d), d + (mesh.At(v) - end).Length);
            }
        }
    }
}
