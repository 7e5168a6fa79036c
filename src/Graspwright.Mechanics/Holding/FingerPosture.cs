using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>A finger at given flexions: its joints, and how its points move with its free motions.</summary>
/// <remarks>A coupled finger has one free motion, that of its MCP; an adaptive one has three.</remarks>
public sealed class FingerPosture
{
    private readonly Finger _finger;
    private readonly Vector2D[] _joint = new Vector2D[4];
    private readonly double[,] _rate;

    /// <summary>Puts a finger at flexions.</summary>
    /// <param name="finger">The finger.</param>
    /// <param name="flexions">q of MCP, PIP, DIP [rad].</param>
    public FingerPosture(Finger finger, IReadOnlyList<double> flexions)
    {
        ArgumentNullException.ThrowIfNull(finger);
        ArgumentNullException.ThrowIfNull(flexions);
        _finger = finger;
        double angle = 0;
        _joint[0] = finger.Mcp;
        for (int i = 0; i < 3; i++)
        {
            angle -= finger.OpenRadians[i] + flexions[i];
            _joint[i + 1] = _joint[i] + finger.Segments[i] * Vector2D.AtAngle(angle);
        }

        if (finger.Joints is not CoupledJoints coupled)
        {
            _rate = new double[3, 3] { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
            return;
        }

        new JointCoupling(coupled.PipFromMcp, finger.Segments.First).TryEvaluate(flexions[0], out _, out double pip, out _);
        double dip = 0;
        if (finger.RangeRadians.Third > 0)
        {
            new JointCoupling(coupled.DipFromPip, finger.Segments.Second).TryEvaluate(flexions[1], out _, out dip, out _);
        }

        _rate = new double[1, 3] { { 1, pip, pip * dip } };
    }

    /// <summary>Number of free motions: 1 or 3.</summary>
    public int Motions => _rate.GetLength(0);

    /// <summary>MCP, PIP, DIP and fingertip [m].</summary>
    public IReadOnlyList<Vector2D> Joints => _joint;

    /// <summary>Velocity of a point fixed to a segment [m/rad].</summary>
    /// <param name="segment">0 proximal, 1 middle, 2 distal.</param>
    /// <param name="motion">Which free motion has a rate of 1.</param>
    /// <param name="point">The point [m].</param>
    public Vector2D Velocity(int segment, int motion, Vector2D point)
    {
        Vector2D velocity = default;
        for (int j = 0; j <= segment; j++)
        {
            velocity -= _rate[motion, j] * (point - _joint[j]).Perpendicular;
        }

        return velocity;
    }

    /// <summary>Overlap of a segment with an object [m], negative is a gap, and the point of its centre line that is nearest.</summary>
    /// <param name="segment">0 proximal, 1 middle, 2 distal.</param>
    /// <param name="held">The object; on a face the distal end of the segment counts.</param>
    public (double Overlap, Vector2D Closest) Meets(int segment, HeldObject held)
    {
        Vector2D start = _joint[segment], end = _joint[segment + 1];
        double half = _finger.HalfThickness[segment], length = _finger.Segments[segment];
        switch (held)
        {
            case Cylinder cylinder:
                Vector2D along = 1 / length * (end - start), closest = start + Math.Clamp((cylinder.Centre - start).Dot(along), 0, length) * along;
                return (cylinder.Radius + half - (closest - cylinder.Centre).Length, closest);
            case Face face:
                return (half - Vector2D.AtAngle(face.NormalRadians).Dot(end - face.Point), end);
            default:
                return (double.NegativeInfinity, end);
        }
    }

    /// <summary>The flexions after the MCP has opened by an angle; a coupled finger's other joints follow, an adaptive one's stand.</summary>
    /// <param name="finger">The finger.</param>
    /// <param name="flexions">q of MCP, PIP, DIP before [rad].</param>
    /// <param name="opening">Angle by which the MCP opens [rad], 0 or more.</param>
    public static double[] Opened(Finger finger, IReadOnlyList<double> flexions, double opening)
    {
        ArgumentNullException.ThrowIfNull(finger);
        ArgumentNullException.ThrowIfNull(flexions);
        double mcp = Math.Max(0, flexions[0] - opening);
        if (finger.Joints is not CoupledJoints coupled)
        {
            return [mcp, flexions[1], flexions[2]];
        }

        new JointCoupling(coupled.PipFromMcp, finger.Segments.First).TryEvaluate(mcp, out double pip, out _, out _);
        double dip = 0;
        if (finger.RangeRadians.Third > 0)
        {
            new JointCoupling(coupled.DipFromPip, finger.Segments.Second).TryEvaluate(pip, out dip, out _, out _);
        }

        return [mcp, pip, dip];
    }
}
