using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Flattening;

/// <summary>A first flat map in two linear solves: directions carried over the surface as evenly as they go, then the map that follows them best.</summary>
/// <remarks>After Crane, Desbrun and Schröder, "Trivial connections on discrete surfaces" (2010): transport along edges, what does not close spread by a Poisson equation.</remarks>
internal static class Frames
{
    /// <summary>Turn of each triangle from its own flat frame: cosine and sine.</summary>
    public static (double[] Cos, double[] Sin) Turns(DiscGraph disc, SparseCholesky factor)
    {
        Mesh mesh = disc.Mesh;
        Neighbourhood sides = disc.Sides;
        int n = mesh.PointCount;
        double[] leaving = Directions(disc), theta = Walk(disc, leaving), right = new double[n], none = new double[n];
        for (int h = 0; h < leaving.Length; h++)
        {
            int other = sides.Across[h];
            if (other > h || other < 0)
            {
                int i = sides.From(h), j = sides.To(h);
                double w = -disc.Weights[disc.Entry[h]] / 1;
                double miss = w * Wrap(theta[i] + Leave(disc, leaving, h) - theta[j] - Arrive(disc, leaving, h) - Math.PI);
                right[i] -= miss;
                right[j] += miss;
            }
        }

        factor.Solve(right, none);
        for (int v = 0; v < n; v++)
        {
            theta[v] += right[v] - right[0];
        }

        double[] cos = new double[mesh.FaceCount], sin = new double[mesh.FaceCount];
        for (int f = 0; f < cos.Length; f++)
        {
            double l = disc.Local[3 * f], x = disc.Local[3 * f + 1], y = disc.Local[3 * f + 2], c = 0, s = 0;
            for (int k = 0; k < 3; k++)
            {
                int h = 3 * f + k;
                double own = k == 0 ? 0 : k == 1 ? Math.Atan2(y, x - l) : Math.Atan2(-y, -x);
                double a = theta[sides.From(h)] + Leave(disc, leaving, h) - own, b = theta[sides.To(h)] + Arrive(disc, leaving, h) + Math.PI - own;
                (double sa, double ca) = Math.SinCos(a);
                (double sb, double cb) = Math.SinCos(b);
                c += ca + cb;
                s += sa + sb;
            }

            double length = double.Hypot(c, s);
            (cos[f], sin[f]) = length > 1e-9 ? (c / length, s / length) : (1, 0);
        }

        return (cos, sin);
    }

    // Direction of each side in the tangent plane of its start, counted from the first corner there.
    // Corners that begin a fan at the rim start at 0; inner points share 2π.
    private static double[] Directions(DiscGraph disc)
    {
        Mesh mesh = disc.Mesh;
        Neighbourhood sides = disc.Sides;
        double[] leaving = new double[mesh.Corners.Length];
        for (int v = 0; v < mesh.PointCount; v++)
        {
            int from = disc.PointStart[v], to = disc.PointStart[v + 1];
            if (from == to)
            {
                continue;
            }

            int first = disc.AtPoint[from];
            for (int i = from; i < to; i++)
            {
                first = sides.Across[disc.AtPoint[i]] < 0 ? disc.AtPoint[i] : first;
            }

            bool rim = sides.Across[first] < 0;
            double sum = 0;
            int at = first;
            do
            {
                leaving[at] = sum;
                sum += CornerAngle(disc, at);
                at = sides.Across[Neighbourhood.Previous(at)];
            }
            while (at >= 0 && at != first);
            if (!rim)
            {
                double scale = 2 * Math.PI / sum;
                for (int i = from; i < to; i++)
                {
                    leaving[disc.AtPoint[i]] *= scale;
                }
            }
        }

        return leaving;
    }

    private static double CornerAngle(DiscGraph disc, int corner)
    {
        double cot = disc.Cotangents[Neighbourhood.Next(corner)];
        return Math.Atan2(1, cot);
    }

    private static double Leave(DiscGraph disc, double[] leaving, int h) => leaving[h];

    // Direction of the way back, in the tangent plane of the end.
    private static double Arrive(DiscGraph disc, double[] leaving, int h)
    {
        int other = disc.Sides.Across[h];
        if (other >= 0)
        {
            return leaving[other];
        }

        int last = Neighbourhood.Next(h); // the corner at the end, whose fan the rim's side closes
        return leaving[last] + CornerAngle(disc, last);
    }

    private static double[] Walk(DiscGraph disc, double[] leaving)
    {
        Neighbourhood sides = disc.Sides;
        int n = disc.Mesh.PointCount;
        double[] theta = new double[n];
        bool[] seen = new bool[n];
        Queue<int> queue = new();
        queue.Enqueue(Middle(disc));
        seen[queue.Peek()] = true;
        while (queue.Count > 0)
        {
            int v = queue.Dequeue();
            for (int i = disc.PointStart[v]; i < disc.PointStart[v + 1]; i++)
            {
                int h = disc.AtPoint[i], w = sides.To(h), back = Neighbourhood.Previous(h), u = sides.From(back);
                if (!seen[w])
                {
                    seen[w] = true;
                    theta[w] = theta[v] + Leave(disc, leaving, h) - Arrive(disc, leaving, h) - Math.PI;
                    queue.Enqueue(w);
                }

                if (!seen[u] && sides.Across[back] < 0)
                {
                    seen[u] = true;
                    theta[u] = theta[v] + Arrive(disc, leaving, back) + Math.PI - Leave(disc, leaving, back);
                    queue.Enqueue(u);
                }
            }
        }

        return theta;
    }

    private static int Middle(DiscGraph disc)
    {
        Mesh mesh = disc.Mesh;
        Vector3D middle = default;
        for (int v = 0; v < mesh.PointCount; v++)
        {
            middle += 1.0 / mesh.PointCount * mesh.At(v);
        }

        int best = 0;
        double least = double.PositiveInfinity;
        for (int v = 0; v < mesh.PointCount; v++)
        {
            double d = (mesh.At(v) - middle).Length;
            (best, least) = d < least ? (v, d) : (best, least);
        }

        return best;
    }

    private static double Wrap(double angle) => Math.IEEERemainder(angle, 2 * Math.PI);
}
