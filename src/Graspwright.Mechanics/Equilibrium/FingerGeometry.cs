using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Joints, directions and object overlaps of one planar finger, with first and second derivatives by the flexions.</summary>
/// <remarks>
/// Segment i points along ψ_i = −Σ(o + q); raising q_j turns everything beyond joint j clockwise:
/// ∂p/∂q_j = −(p − P_j)⊥ and ∂²p/∂q_j∂q_k = −(p − P_max(j,k)). Overlap of a capsule with a cylinder is
/// R + h − distance from its centre to the segment; with the closest point inside the segment the distance is that to
/// the line, else that to an end.
/// </remarks>
internal sealed class FingerGeometry
{
    private readonly Vector2D _mcp;
    private readonly double[] _length = new double[3], _half = new double[3], _open = new double[3];
    private readonly Vector2D[] _joint = new Vector2D[4], _along = new Vector2D[3], _normal = new Vector2D[3], _closest = new Vector2D[3];
    private readonly Vector2D[] _normalSlope = new Vector2D[9];
    private readonly double[] _slope = new double[9], _curvature = new double[27];

    /// <summary>Takes the fixed lengths of a finger.</summary>
    public FingerGeometry(Finger finger)
    {
        _mcp = finger.Mcp;
        for (int i = 0; i < 3; i++)
        {
            _length[i] = finger.Segments[i];
            _half[i] = finger.HalfThickness[i];
            _open[i] = finger.OpenRadians[i];
        }
    }

    /// <summary>Joint axes MCP, PIP, DIP and fingertip [m].</summary>
    public ReadOnlySpan<Vector2D> Joints => _joint;

    /// <summary>Unit direction of a segment.</summary>
    public Vector2D Along(int segment) => _along[segment];

    /// <summary>Point of a segment's centre line that is nearest the object [m].</summary>
    public Vector2D Closest(int segment) => _closest[segment];

    /// <summary>Unit direction of the object's push on a segment.</summary>
    public Vector2D Normal(int segment) => _normal[segment];

    /// <summary>Derivative of that direction by q of a joint.</summary>
    public Vector2D NormalSlope(int segment, int joint) => _normalSlope[segment * 3 + joint];

    /// <summary>∂overlap/∂q of a joint [m/rad].</summary>
    public double Slope(int segment, int joint) => _slope[segment * 3 + joint];

    /// <summary>Second derivative of the overlap [m/rad²].</summary>
    public double Curvature(int segment, int a, int b) => _curvature[(segment * 3 + a) * 3 + b];

    /// <summary>Puts the finger at flexions q [rad].</summary>
    public void Place(double q1, double q2, double q3)
    {
        double angle = 0;
        Vector2D at = _mcp;
        _joint[0] = at;
        for (int i = 0; i < 3; i++)
        {
            angle -= _open[i] + (i == 0 ? q1 : i == 1 ? q2 : q3);
            _along[i] = Vector2D.AtAngle(angle);
            at += _length[i] * _along[i];
            _joint[i + 1] = at;
        }
    }

    /// <summary>Overlap of a segment with a flat face: h − n·(end − p) at its distal end.</summary>
    public double MeetFace(int i, Vector2D point, Vector2D normal)
    {
        Vector2D end = _joint[i + 1];
        _closest[i] = end;
        _normal[i] = normal;
        for (int a = 0; a < 3; a++)
        {
            _normalSlope[i * 3 + a] = default;
            _slope[i * 3 + a] = a <= i ? normal.Dot((end - _joint[a]).Perpendicular) : 0;
            for (int b = 0; b < 3; b++)
            {
                int last = Math.Max(a, b);
                _curvature[(i * 3 + a) * 3 + b] = last <= i ? normal.Dot(end - _joint[last]) : 0;
            }
        }

        return _half[i] - normal.Dot(end - point);
    }

    /// <summary>Overlap of a segment with a cylinder.</summary>
    public double MeetCylinder(int i, Vector2D centre, double radius)
    {
        Vector2D start = _joint[i], along = _along[i];
        double station = (centre - start).Dot(along);
        double distance = station > 0 && station < _length[i]
            ? MeetLine(i, centre, station)
            : MeetPoint(i, centre, station <= 0 ? start : _joint[i + 1], station <= 0 ? i - 1 : i);
        return radius + _half[i] - distance;
    }

    /// <summary>Closest point at a joint: D_ab = (p_a·p_b − D_a D_b)/D + n·p_ab. Joints up to <paramref name="lastMover"/> move the point.</summary>
    private double MeetPoint(int i, Vector2D centre, Vector2D p, int lastMover)
    {
        Vector2D m = p - centre;
        double distance = m.Length, inverse = 1 / distance;
        Vector2D n = inverse * m;
        _closest[i] = p;
        _normal[i] = n;
        for (int a = 0; a < 3; a++)
        {
            Vector2D pa = a <= lastMover ? -(p - _joint[a]).Perpendicular : default;
            double da = n.Dot(pa);
            _slope[i * 3 + a] = -da;
            _normalSlope[i * 3 + a] = inverse * (pa - da * n);
            for (int b = 0; b <= a; b++)
            {
                double dab = 0;
                if (a <= lastMover)
                {
                    Vector2D pb = -(p - _joint[b]).Perpendicular;
                    dab = (pa.Dot(pb) - da * n.Dot(pb)) * inverse - n.Dot(p - _joint[a]);
                }

                _curvature[(i * 3 + a) * 3 + b] = -dab;
                _curvature[(i * 3 + b) * 3 + a] = -dab;
            }
        }

        return distance;
    }

    /// <summary>Closest point inside the segment: signed distance δ = ν·(c − P_i) to its line, ν the palmar normal.</summary>
    private double MeetLine(int i, Vector2D centre, double station)
    {
        Vector2D start = _joint[i], e = _along[i];
        Vector2D nu = new(e.Y, -e.X), gap = centre - start;
        double signed = nu.Dot(gap), side = signed >= 0 ? 1 : -1;
        _closest[i] = start + station * e;
        _normal[i] = -side * nu;
        for (int a = 0; a < 3; a++)
        {
            if (a > i)
            {
                Zero(i, a);
                continue;
            }

            // dν/dq = −e; the start moves with joints before it only.
            Vector2D startA = -(start - _joint[a]).Perpendicular;
            _slope[i * 3 + a] = -side * (-e.Dot(gap) - nu.Dot(startA));
            _normalSlope[i * 3 + a] = side * e;
            for (int b = 0; b <= a; b++)
            {
                Vector2D startB = -(start - _joint[b]).Perpendicular;
                double second = -signed + e.Dot(startA + startB) + nu.Dot(start - _joint[a]);
                _curvature[(i * 3 + a) * 3 + b] = -side * second;
                _curvature[(i * 3 + b) * 3 + a] = -side * second;
            }
        }

        return Math.Abs(signed);
    }

    private void Zero(int i, int a)
    {
        _slope[i * 3 + a] = 0;
        _normalSlope[i * 3 + a] = default;
        for (int b = 0; b < 3; b++)
        {
            _curvature[(i * 3 + a) * 3 + b] = 0;
            _curvature[(i * 3 + b) * 3 + a] = 0;
        }
    }
}
