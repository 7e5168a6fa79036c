using Graspwright.Form.Surface;
using Graspwright.Form.Thickness;
using Graspwright.Numerics;

namespace Graspwright.Form.Hollows;

/// <summary>A hollow that the sheet bridges.</summary>
/// <param name="Deepest">Point of the form where it is deepest.</param>
/// <param name="Depth">How deep it is there [m].</param>
/// <param name="Area">Area of the form in it [m²].</param>
/// <param name="Volume">Volume of air under the sheet [m³].</param>
/// <param name="Points">Points of the form in it.</param>
public sealed record Hollow(int Deepest, double Depth, double Area, double Volume, IReadOnlyList<int> Points);

/// <summary>Finds hollows: where the form, closed by a ball, lies higher than the form.</summary>
/// <remarks>Closing after Matheron and Serra: what no ball of the radius, kept outside, can reach.</remarks>
public static class HollowSearch
{
    private const double Tolerance = 0.05e-3, Finest = 0.2e-3; // of the places where the ball's middle may be [m]

    /// <summary>Depth at each point: how far away the nearest place is that the ball reaches [m].</summary>
    /// <param name="sides">The closed form.</param>
    /// <param name="tree">Its tree.</param>
    /// <param name="radius">Radius of the ball [m].</param>
    /// <param name="counts">Points that are asked for; the others get 0.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static double[] Depths(Neighbourhood sides, Nearest tree, double radius, Func<int, bool>? counts = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(tree);
        Mesh mesh = sides.Mesh;
        Vector3D[] normals = SurfaceSums.Normals(mesh);
        double[] depth = new double[mesh.PointCount];
        bool[] doubtful = new bool[mesh.PointCount];
        ParallelOptions stopped = new() { CancellationToken = stop };
        Parallel.For(0, mesh.PointCount, stopped, v =>
        {
            // A ball that touches here and nothing else: no hollow.
            doubtful[v] = (counts is null || counts(v)) && tree.To(mesh.At(v) + radius * normals[v]).Distance < radius * (1 - 1e-4);
        });
        if (!doubtful.Any(d => d))
        {
            return depth;
        }

        // The middles of all balls that have room lie beyond the offset by the radius.
        Mesh offset = Offset.Rough(new(tree, radius), Math.Clamp(radius / 2, 1.6e-3, 5e-3), Tolerance, Finest, stop);
        stop.ThrowIfCancellationRequested();
        Nearest centres = new(Neighbourhood.Of(offset));
        Parallel.For(0, mesh.PointCount, stopped, v =>
        {
            if (!doubtful[v])
            {
                return;
            }

            // the nearest place that any of the balls reaches
            depth[v] = Math.Max(0, Math.Abs(centres.To(mesh.At(v)).Distance) - radius);
        });
        return depth;
    }

    /// <summary>Gathers depths to hollows, the deepest first.</summary>
    /// <param name="sides">The form.</param>
    /// <param name="depth">Depth at each point [m].</param>
    /// <param name="least">Depth from which it counts [m].</param>
    public static IReadOnlyList<Hollow> Gather(Neighbourhood sides, double[] depth, double least)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(depth);
        Mesh mesh = sides.Mesh;
        double[] area = new double[mesh.PointCount];
        List<int>[] around = new List<int>[mesh.PointCount];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            double third = mesh.Cross(f).Length / 6;
            for (int k = 0; k < 3; k++)
            {
                int v = mesh.Corners[3 * f + k], w = mesh.Corners[3 * f + (k + 1) % 3];
                area[v] += third;
                if (depth[v] > least && depth[w] > least)
                {
                    (around[v] ??= []).Add(w);
                    (around[w] ??= []).Add(v);
                }
            }
        }

        bool[] seen = new bool[mesh.PointCount];
        List<Hollow> hollows = [];
        for (int s = 0; s < seen.Length; s++)
        {
            if (seen[s] || depth[s] <= least)
            {
                continue;
            }

            List<int> points = [];
            Stack<int> stack = new([s]);
            seen[s] = true;
            while (stack.Count > 0)
            {
                int v = stack.Pop();
                points.Add(v);
                foreach (int w in around[v] ?? [])
                {
                    if (!seen[w])
                    {
                        seen[w] = true;
                        stack.Push(w);
                    }
                }
            }

            int deepest = points.MaxBy(v => depth[v]);
            hollows.Add(new(deepest, depth[deepest], points.Sum(v => area[v]), points.Sum(v => area[v] * depth[v]), points));
        }

        return [.. hollows.OrderByDescending(h => h.Depth)];
    }
}
