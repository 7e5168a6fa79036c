using Graspwright.Form.Flattening;
using Graspwright.Form.Region;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Pattern;

/// <summary>Lays pieces flat and opens darts where the stretch is more than the sheet takes.</summary>
public static class Darts
{
    private const int Most = 6;
    private const double Worth = 0.95, Counts = 0.01;

    /// <summary>Lays a piece flat, with darts.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="limit">Stretch that the sheet takes, as a share.</param>
    /// <param name="dear">How many times dearer a cut past a point of the whole surface is.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The piece with its darts, flat, and how many darts were opened.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static (Piece Piece, Flat Flat, int Count) Of(Piece piece, double limit, Func<int, double>? dear = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(piece);
        stop.ThrowIfCancellationRequested();
        Flat flat = LayFlat.Of(piece.Sides);
        int darts = 0;
        for (; darts < Most && Worst(piece, flat, limit) is var worst and >= 0; darts++)
        {
            stop.ThrowIfCancellationRequested();
            int[] back = piece.OldPoints;
            EdgePaths paths = new(piece.Sides, dear is null ? null : v => dear(back[v]));
            HashSet<int> rim = [.. piece.Sides.Loops()[0].Select(piece.Sides.From)];
            if (rim.Contains(worst))
            {
                break;
            }

            int[] way = paths.Between([worst], rim.Contains);
            HashSet<(int, int)> edges = [.. Enumerable.Range(1, way.Length - 1).Select(i => Imprint.Pair(way[i - 1], way[i]))];
            (Mesh mesh, int[] points) = Cutting.Open(piece.Sides, edges);
            Piece next = new(Neighbourhood.Of(mesh), [.. points.Select(v => back[v])]);
            Flat open = LayFlat.Of(next.Sides);
            if (open.Distortion > Worth * flat.Distortion || open.Flips > flat.Flips || open.Crossings > flat.Crossings)
            {
                break;
            }

            (piece, flat) = (next, open);
        }

        return (piece, flat, darts);
    }

    /// <summary>Share of the area that is stretched or squeezed by more than a limit.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="flat">The piece laid flat.</param>
    /// <param name="limit">The limit, as a share.</param>
    public static double ShareBeyond(Piece piece, Flat flat, double limit)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(flat);
        double beyond = 0, whole = 0;
        for (int f = 0; f < flat.Most.Length; f++)
        {
            double area = piece.Sides.Mesh.Cross(f).Length;
            whole += area;
            beyond += Beyond(flat, f) > limit ? area : 0;
        }

        return beyond / whole;
    }

    /// <summary>How far a triangle is from its own size, the sheet's stretch when it is laid back on the form: the greater of both ways.</summary>
    /// <param name="flat">The piece laid flat.</param>
    /// <param name="f">The triangle.</param>
    public static double Beyond(Flat flat, int f)
    {
        ArgumentNullException.ThrowIfNull(flat);
        return Math.Max(flat.Most[f] - 1, flat.Least[f] > 0 ? 1 / flat.Least[f] - 1 : double.PositiveInfinity);
    }

    /// <summary>What the worst hundredth of the area reaches: a lone sliver of the scan does not speak for the sheet.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="of">A measure of each triangle.</param>
    /// <returns>The measure, and the triangle at which the hundredth is full.</returns>
    public static (double Value, int Face) Reached(Piece piece, Func<int, double> of)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(of);
        Mesh mesh = piece.Sides.Mesh;
        double whole = 0, sum = 0;
        double[] area = new double[mesh.FaceCount], value = new double[mesh.FaceCount];
        for (int f = 0; f < area.Length; f++)
        {
            (area[f], value[f]) = (mesh.Cross(f).Length, of(f));
            whole += area[f];
        }

        int[] order = [.. Enumerable.Range(0, area.Length).OrderByDescending(f => value[f])];
        int at = 0;
        for (; at + 1 < order.Length && (sum += area[order[at]]) < Counts * whole; at++)
        {
        }

        return (value[order[at]], order[at]);
    }

    // Where the curvature sits that the stretch comes from: the inner point of most stretch round it, weighted by area so that one sliver does not lead.
    private static int Worst(Piece piece, Flat flat, double limit)
    {
        if (ShareBeyond(piece, flat, limit) < Counts)
        {
            return -1;
        }

        Mesh mesh = piece.Sides.Mesh;
        double[] angle = new double[mesh.PointCount];
        Array.Fill(angle, 2 * Math.PI);
        for (int h = 0; h < mesh.Corners.Length; h++)
        {
            angle[mesh.Corners[h]] -= SurfaceSums.Angle(mesh, h);
        }

        // the middle of the curvature of the sign that there is more of
        double plus = 0, minus = 0;
        HashSet<int> rim = [.. piece.Sides.Loops()[0].Select(piece.Sides.From)];
        for (int v = 0; v < angle.Length; v++)
        {
            if (!rim.Contains(v))
            {
                plus += Math.Max(0, angle[v]);
                minus += Math.Max(0, -angle[v]);
            }
        }

        double sign = plus >= minus ? 1 : -1, weight = 0;
        Numerics.Vector3D middle = default;
        for (int v = 0; v < angle.Length; v++)
        {
            double w = rim.Contains(v) ? 0 : Math.Max(0, sign * angle[v]);
            middle += w * mesh.At(v);
            weight += w;
        }

        middle = 1 / Math.Max(weight, 1e-300) * middle;
        int best = -1;
        double least = double.PositiveInfinity;
        for (int v = 0; v < angle.Length; v++)
        {
            double d = (mesh.At(v) - middle).Length;
            (best, least) = !rim.Contains(v) && d < least ? (v, d) : (best, least);
        }

        return best;
    }
}
