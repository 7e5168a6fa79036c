using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Region;

/// <summary>Place along a limb and angle round it: z toward the fingertips, angles from the back (y) toward the thumb (x), about the middle of each section.</summary>
public sealed class LimbFrame
{
    private const int Bins = 24;

    private readonly double _low, _step;
    private readonly (double X, double Y)[] _middle = new (double, double)[Bins];
    private readonly double[] _radius = new double[Bins];

    /// <summary>Finds the middles of the sections of a form.</summary>
    /// <param name="mesh">The form, z along the limb [m].</param>
    /// <param name="counts">Whether a triangle counts: a thumb does not.</param>
    public LimbFrame(Mesh mesh, Func<int, bool>? counts = null)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        (Vector3D low, Vector3D high) = mesh.Box();
        (_low, _step) = (low.Z, Math.Max(1e-9, (high.Z - low.Z) / Bins));
        (double LowX, double HighX, double LowY, double HighY)[] box = new (double, double, double, double)[Bins];
        Array.Fill(box, (double.PositiveInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity));
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            if (counts is not null && !counts(f))
            {
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                // where the edge passes through the middles of the bins
                Vector3D p = mesh.Corner(f, k), q = mesh.Corner(f, (k + 1) % 3);
                (p, q) = p.Z <= q.Z ? (p, q) : (q, p);
                int from = Math.Max(0, (int)Math.Ceiling((p.Z - _low) / _step - 0.5)), to = Math.Min(Bins - 1, (int)Math.Floor((q.Z - _low) / _step - 0.5));
                for (int b = from; b <= to; b++)
                {
                    double t = q.Z > p.Z ? (_low + (b + 0.5) * _step - p.Z) / (q.Z - p.Z) : 0, x = p.X + t * (q.X - p.X), y = p.Y + t * (q.Y - p.Y);
                    box[b] = (Math.Min(box[b].LowX, x), Math.Max(box[b].HighX, x), Math.Min(box[b].LowY, y), Math.Max(box[b].HighY, y));
                }
            }
        }

        (double X, double Y) last = (0, 0);
        double radius = 0.03;
        for (int b = 0; b < Bins; b++)
        {
            if (double.IsFinite(box[b].LowX))
            {
                last = ((box[b].LowX + box[b].HighX) / 2, (box[b].LowY + box[b].HighY) / 2);
                radius = Math.Max(1e-4, (box[b].HighX - box[b].LowX + box[b].HighY - box[b].LowY) / 4);
            }

            (_middle[b], _radius[b]) = (last, radius);
        }
    }

    /// <summary>Place along the limb [m] and angle round it [rad], −π to π.</summary>
    /// <param name="p">A point [m].</param>
    public (double Place, double Angle) Of(Vector3D p)
    {
        (double x, double y) = Middle(p.Z);
        return (p.Z, Math.Atan2(p.X - x, p.Y - y));
    }

    /// <summary>Middle of the section at a place [m].</summary>
    /// <param name="place">Place along the limb [m].</param>
    public (double X, double Y) Middle(double place)
    {
        double at = Math.Clamp((place - _low) / _step - 0.5, 0, Bins - 1.0);
        int i = Math.Min((int)at, Bins - 2);
        double t = at - i;
        return (_middle[i].X + t * (_middle[i + 1].X - _middle[i].X), _middle[i].Y + t * (_middle[i + 1].Y - _middle[i].Y));
    }

    /// <summary>Mean radius of the section at a place [m].</summary>
    /// <param name="place">Place along the limb [m].</param>
    public double Radius(double place) => _radius[Math.Clamp((int)((place - _low) / _step), 0, Bins - 1)];

    /// <summary>An angle brought to 0 … 2π.</summary>
    /// <param name="angle">The angle [rad].</param>
    public static double Turn(double angle)
    {
        double turned = Math.IEEERemainder(angle, 2 * Math.PI);
        return turned < 0 ? turned + 2 * Math.PI : turned;
    }
}
