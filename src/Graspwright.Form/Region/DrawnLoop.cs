using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Region;

/// <summary>A closed line drawn on the limb: an outline that comes back to its first corner, or an edge that goes once round.</summary>
/// <remarks>Its pieces are straight on the limb rolled out at its mean radius along the line, which is the way a tape lies there to within a few per cent.</remarks>
public sealed class DrawnLoop
{
    private const int Copies = 2; // turns on either side that are looked at

    private readonly LimbFrame _frame;
    private readonly double _radius, _middle;
    private readonly (double X, double Y)[] _line; // place, and radius times angle; the last corner closes it

    /// <summary>Rolls a line out.</summary>
    /// <param name="frame">Frame of the limb.</param>
    /// <param name="corners">Place [m] and angle [rad] of each corner in turn, joined the shorter way round.</param>
    public DrawnLoop(LimbFrame frame, IReadOnlyList<(double Place, double Angle)> corners)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(corners);
        _frame = frame;
        _radius = frame.Radius(corners.Average(c => c.Place));
        _line = new (double, double)[corners.Count + 1];
        double angle = corners[0].Angle, least = angle, most = angle;
        _line[0] = (corners[0].Place, _radius * angle);
        for (int i = 1; i < _line.Length; i++)
        {
            (double place, double next) = corners[i % corners.Count];
            angle += Math.IEEERemainder(next - corners[i - 1].Angle, 2 * Math.PI);
            (least, most) = (Math.Min(least, angle), Math.Max(most, angle));
            _line[i] = (place, _radius * angle);
        }

        _middle = (least + most) / 2;
        GoesRound = Math.Abs(angle - corners[0].Angle) > Math.PI;
    }

    /// <summary>Whether it goes round the limb, as an edge does.</summary>
    public bool GoesRound { get; }

    /// <summary>Distance from the line: below 0 inside an outline, or before an edge; 0 is where to cut [m].</summary>
    /// <param name="place">Place along the limb [m].</param>
    /// <param name="angle">Angle round it [rad].</param>
    public double At(double place, double angle)
    {
        double least = double.PositiveInfinity, first = _radius * (_middle + Math.IEEERemainder(angle - _middle, 2 * Math.PI));
        bool within = false;
        for (int copy = -Copies; copy <= Copies; copy++)
        {
            double y = first + copy * 2 * Math.PI * _radius;
            for (int i = 1; i < _line.Length; i++)
            {
                ((double ax, double ay), (double bx, double by)) = (_line[i - 1], _line[i]);
                double dx = bx - ax, dy = by - ay, t = Math.Clamp(((place - ax) * dx + (y - ay) * dy) / Math.Max(dx * dx + dy * dy, 1e-30), 0, 1);
                least = Math.Min(least, double.Hypot(place - ax - t * dx, y - ay - t * dy));
                within ^= by > y != ay > y && place < (ax - bx) * (y - by) / (ay - by) + bx;
            }
        }

        return within ? -least : least;
    }

    /// <summary>Distance of a point of the surface, as <see cref="At(double, double)"/> [m].</summary>
    /// <param name="p">The point [m].</param>
    public double At(Vector3D p)
    {
        (double place, double angle) = _frame.Of(p);
        return At(place, angle);
    }

    /// <summary>Distances of all points of a surface, as <see cref="At(double, double)"/> [m].</summary>
    /// <param name="mesh">The surface.</param>
    public double[] Values(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        double[] values = new double[mesh.PointCount];
        Parallel.For(0, values.Length, v => values[v] = At(mesh.At(v)));
        return values;
    }
}
