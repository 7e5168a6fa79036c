using Graspwright.Form.Flattening;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Region;

/// <summary>A closed line drawn on the limb: places along it and angles round it.</summary>
public static class DrawnLoop
{
    /// <summary>Where a drawn line crosses itself: indices of the two pieces; empty = nowhere.</summary>
    /// <param name="corners">Place [m] and angle [rad] of each corner in turn.</param>
    public static IReadOnlyList<(int A, int B)> Crossings(IReadOnlyList<(double Place, double Angle)> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        return RimCrossings.Find([.. Unrolled(corners, corners[0].Angle, 0.03).Select(c => (c.X, c.Y))]);
    }

    /// <summary>Distance of each point of a surface from the line, below 0 inside: 0 is where to cut.</summary>
    /// <param name="mesh">The surface.</param>
    /// <param name="frame">Its frame.</param>
    /// <param name="corners">Place [m] and angle [rad] of each corner in turn.</param>
    public static double[] Values(Mesh mesh, LimbFrame frame, IReadOnlyList<(double Place, double Angle)> corners)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(corners);
        double middle = 0, place = 0;
        foreach ((double p, _) in corners)
        {
            place += p / corners.Count;
        }

        double first = corners[0].Angle;
        foreach ((_, double a) in corners)
        {
            middle += (first + Math.IEEERemainder(a - first, 2 * Math.PI)) / corners.Count;
        }

        double radius = frame.Radius(place);
        (double X, double Y)[] line = Unrolled(corners, middle, radius);
        double[] values = new double[mesh.PointCount];
        for (int v = 0; v < values.Length; v++)
        {
            (double at, double angle) = frame.Of(mesh.At(v));
            values[v] = Signed(line, at, radius * Math.IEEERemainder(angle - middle, 2 * Math.PI));
        }

        return values;
    }

    private static (double X, double Y)[] Unrolled(IReadOnlyList<(double Place, double Angle)> corners, double middle, double radius) =>
        [.. corners.Select(c => (c.Place, radius * Math.IEEERemainder(c.Angle - middle, 2 * Math.PI)))];

    private static double Signed((double X, double Y)[] line, double x, double y)
    {
        double least = double.PositiveInfinity;
        bool inside = false;
        for (int i = 0, j = line.Length - 1; i < line.Length; j = i++)
        {
            (double ax, double ay) = line[j];
            (double bx, double by) = line[i];
            double dx = bx - ax, dy = by - ay, t = Math.Clamp(((x - ax) * dx + (y - ay) * dy) / Math.Max(dx * dx + dy * dy, 1e-30), 0, 1);
            least = Math.Min(least, double.Hypot(x - ax - t * dx, y - ay - t * dy));
            inside ^= by > y != ay > y && x < (ax - bx) * (y - by) / (ay - by) + bx;
        }

        return inside ? -least : least;
    }
}
