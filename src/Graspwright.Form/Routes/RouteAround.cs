using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>A way that keeps out of areas.</summary>
/// <param name="Route">The way; <see langword="null"/> = there is none.</param>
/// <param name="Stray">A station that lies in an area or off the surface; −1 = none.</param>
public sealed record GuardedRoute(SurfaceRoute? Route, int Stray);

/// <summary>Shortest ways over a surface round areas that are cut out of it: at the rim of what is left a way may turn.</summary>
public static class RouteAround
{
    /// <summary>How far a station may lie from what is left of the surface [m].</summary>
    public const double Near = 0.5e-3;

    /// <summary>The shortest way past some stations in turn.</summary>
    /// <param name="mesh">The surface.</param>
    /// <param name="stations">Two places or more on it [m].</param>
    /// <param name="areas">Of each area, a value at every point of a surface: below 0 where no way may go.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static GuardedRoute Of(Mesh mesh, IReadOnlyList<Vector3D> stations, IReadOnlyList<Func<Mesh, double[]>> areas, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(stations);
        ArgumentNullException.ThrowIfNull(areas);
        if (stations.Count < 2)
        {
            throw new ArgumentException("A way needs two stations.", nameof(stations));
        }

        foreach (Func<Mesh, double[]> area in areas)
        {
            mesh = Without(mesh, area(mesh));
        }

        int[] points = new int[stations.Count];
        for (int i = 0; i < points.Length; i++)
        {
            if (mesh.FaceCount == 0)
            {
                return new(null, i);
            }

            Foot foot = new Nearest(Neighbourhood.Of(mesh)).To(stations[i]);
            if (Math.Abs(foot.Distance) > Near)
            {
                return new(null, i);
            }

            (mesh, points[i]) = StationPoint.Put(mesh, foot.Face, foot.Place);
        }

        SurfaceDistances distances = new(Neighbourhood.Of(mesh));
        List<Vector3D> places = [mesh.At(points[0])];
        List<int> faces = [];
        double length = 0;
        for (int i = 1; i < points.Length; i++)
        {
            if (distances.Route(points[i - 1], points[i], stop) is not { } leg)
            {
                return new(null, -1);
            }

            places.AddRange(leg.Places.Skip(1));
            faces.AddRange(leg.Faces);
            length += leg.Length;
        }

        return new(new(places, length) { Faces = faces }, -1);
    }

    // What is left of a surface where values are above 0.
    private static Mesh Without(Mesh mesh, double[] values)
    {
        if (values.All(v => v > 0))
        {
            return mesh;
        }

        Mesh cut = Imprint.Zero(Neighbourhood.Of(mesh), values).Mesh;
        double Value(int h) => cut.Corners[h] < values.Length ? values[cut.Corners[h]] : 0; // the line's own points
        return cut.Keep(f => Value(3 * f) + Value(3 * f + 1) + Value(3 * f + 2) > 0).Part;
    }
}
