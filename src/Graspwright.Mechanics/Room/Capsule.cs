using Graspwright.Numerics;

namespace Graspwright.Mechanics.Room;

/// <summary>All points within a radius of a straight piece. Space: x distal, y dorsal, z toward the thumb.</summary>
/// <param name="From">One end of the piece [m].</param>
/// <param name="To">The other end [m].</param>
/// <param name="Radius">Radius [m], 0 or more.</param>
public readonly record struct Capsule(Vector3D From, Vector3D To, double Radius)
{
    /// <summary>Gap to another capsule [m]; negative where they overlap, by how far the surfaces pass each other.</summary>
    /// <param name="other">The other capsule.</param>
    /// <remarks>Nearest points of two straight pieces, ends clamped (C. Ericson, Real-Time Collision Detection, section 5.1.9, from memory).</remarks>
    public double GapTo(in Capsule other) => Between(From, To, other.From, other.To) - Radius - other.Radius;

    /// <summary>Middle between the surfaces of two capsules where they are nearest [m].</summary>
    /// <param name="other">The other capsule.</param>
    public Vector3D MeetingPlace(in Capsule other)
    {
        (double s, double t) = Nearest(From, To, other.From, other.To);
        Vector3D here = From + s * (To - From), there = other.From + t * (other.To - other.From), way = (there - here).Unit;
        return 0.5 * (here + Radius * way + there - other.Radius * way);
    }

    private static double Between(Vector3D p, Vector3D p2, Vector3D q, Vector3D q2)
    {
        (double s, double t) = Nearest(p, p2, q, q2);
        return (p + s * (p2 - p) - q - t * (q2 - q)).Length;
    }

    private static (double S, double T) Nearest(Vector3D p, Vector3D p2, Vector3D q, Vector3D q2)
    {
        const double tiny = 1e-24;
        Vector3D d1 = p2 - p, d2 = q2 - q, r = p - q;
        double a = d1.Dot(d1), e = d2.Dot(d2), f = d2.Dot(r);
        if (a <= tiny && e <= tiny)
        {
            return (0, 0);
        }

        if (a <= tiny)
        {
            return (0, Math.Clamp(f / e, 0, 1));
        }

        double c = d1.Dot(r);
        if (e <= tiny)
        {
            return (Math.Clamp(-c / a, 0, 1), 0);
        }

        double b = d1.Dot(d2), parallel = a * e - b * b;
        if (parallel <= 1e-12 * a * e)
        {
            return NearestEnd(d1, d2, r, a, b, c, e, f);
        }

        double s = Math.Clamp((b * f - c * e) / parallel, 0, 1), t = (b * s + f) / e;
        if (t < 0)
        {
            return (Math.Clamp(-c / a, 0, 1), 0);
        }

        return t > 1 ? (Math.Clamp((b - c) / a, 0, 1), 1) : (s, t);
    }

    /// <summary>Two pieces that are parallel, or as good as: an end of one of them is nearest to the other.</summary>
    private static (double S, double T) NearestEnd(Vector3D d1, Vector3D d2, Vector3D r, double a, double b, double c, double e, double f)
    {
        ReadOnlySpan<(double S, double T)> ends = [(0, Math.Clamp(f / e, 0, 1)), (1, Math.Clamp((b + f) / e, 0, 1)), (Math.Clamp(-c / a, 0, 1), 0), (Math.Clamp((b - c) / a, 0, 1), 1)];
        (double S, double T) nearest = ends[0];
        double least = double.PositiveInfinity;
        foreach ((double s, double t) in ends)
        {
            double distance = (r + s * d1 - t * d2).Length;
            if (distance < least)
            {
                (least, nearest) = (distance, (s, t));
            }
        }

        return nearest;
    }
}
