using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>A lock at the pull of each finger, seen when the wrist lets go.</summary>
/// <param name="Pitch">Distance between two places in which it can catch, along the pull [m]; 0 = it holds anywhere.</param>
/// <param name="Backlash">Play before it carries, along the pull [m].</param>
/// <param name="Stiffness">Stiffness along the pull [N/m]; infinite = rigid.</param>
/// <param name="MayCarry">Greatest force it may carry along the pull [N]; <see langword="null"/> = not given.</param>
public sealed record PullLock(double Pitch, double Backlash, double Stiffness, double? MayCarry);

/// <summary>What is left of the grip when the fingers are locked and the wrist relaxes.</summary>
/// <param name="State">The closing run's state with joints, contact forces and overlaps as they then are.</param>
/// <param name="GripBefore">Grip force before [N].</param>
/// <param name="GripAfter">Grip force after, at the worst place of the lock's pitch [N].</param>
/// <param name="OpeningRadians">How far each finger's MCP opens [rad].</param>
public sealed record RelaxedGrip(double[] State, double GripBefore, double GripAfter, IReadOnlyList<double> OpeningRadians);

/// <summary>Relaxes the wrist behind locked fingers.</summary>
/// <remarks>
/// The lock catches up to one pitch and its backlash late (the worst case), and gives by its load ÷ stiffness. Each
/// finger opens by the δ at which the contacts' moment about its MCP's motion, M(δ), equals what the lock's spring
/// carries: M(δ) = k·r²·(δ − δ₀), δ₀ = (pitch + backlash) ÷ r, r the take-up arm at the MCP. M falls and the right side
/// rises with δ, so there is one root; it is bisected. Adaptive fingers open at the MCP alone: their locks hold the joints.
/// </remarks>
public static class RelaxedLock
{
    /// <summary>Relaxes the wrist.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="held">The object.</param>
    /// <param name="layout">Layout of the state.</param>
    /// <param name="state">State in which the locks act.</param>
    /// <param name="pull">The locks.</param>
    public static RelaxedGrip Relax(DriveModel drive, HeldObject held, TraceLayout layout, double[] state, PullLock pull)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(pull);
        double[] after = (double[])state.Clone();
        double[] opening = new double[drive.Fingers.Count];
        double grip = 0;
        for (int f = 0; f < drive.Fingers.Count; f++)
        {
            Finger finger = drive.Fingers[f];
            double[] flexions = [state[layout.Joint(f, 0)], state[layout.Joint(f, 1)], state[layout.Joint(f, 2)]];
            double arm = Arm(drive, finger, flexions[0]), late = (pull.Pitch + pull.Backlash) / arm;
            opening[f] = Opening(finger, held, flexions, arm, late, pull.Stiffness);
            double[] opened = FingerPosture.Opened(finger, flexions, opening[f]);
            FingerPosture posture = new(finger, opened);
            for (int s = 0; s < 3; s++)
            {
                (double overlap, Vector2D closest) = posture.Meets(s, held);
                double force = finger.PadStiffness * Math.Max(0, overlap);
                after[layout.Joint(f, s)] = opened[s];
                after[layout.Overlap(f, s)] = overlap;
                after[layout.Contact(f, s)] = force;
                after[layout.ContactPointX(f, s)] = closest.X;
                after[layout.ContactPointX(f, s) + 1] = closest.Y;
                grip += Math.Cos(finger.SplayRadians) * force;
            }
        }

        after[TraceLayout.Grip] = grip;
        return new(after, state[TraceLayout.Grip], grip, opening);
    }

    /// <summary>Take-up of the pull for a small turn of the MCP [m/rad], by its size.</summary>
    /// <param name="drive">The drive, whose rail gives the pull's direction.</param>
    /// <param name="finger">The finger.</param>
    /// <param name="mcp">Flexion of the MCP [rad].</param>
    public static double Arm(DriveModel drive, Finger finger, double mcp)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(finger);
        if (finger.DrivePin is not { } pin)
        {
            return Math.Max(finger.Arms.First, 1e-4);
        }

        Vector2D at = pin.Radius * Vector2D.AtAngle(pin.RestRadians - mcp);
        return Math.Max(Math.Abs(at.Perpendicular.Dot(Vector2D.AtAngle(pin.LineRadians))), 1e-4);
    }

    private static double Opening(Finger finger, HeldObject held, double[] flexions, double arm, double late, double stiffness)
    {
        if (Moment(finger, held, flexions, late) <= 0)
        {
            return Math.Min(late, flexions[0]); // nothing touches any more
        }

        if (double.IsInfinity(stiffness))
        {
            return Math.Min(late, flexions[0]);
        }

        double low = late, high = late + 0.5;
        for (int i = 0; i < 60; i++)
        {
            double middle = 0.5 * (low + high);
            if (Moment(finger, held, flexions, middle) > stiffness * arm * arm * (middle - late))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return Math.Min(high, flexions[0]);
    }

    private static double Moment(Finger finger, HeldObject held, double[] flexions, double opening)
    {
        double[] q = FingerPosture.Opened(finger, flexions, opening);
        FingerPosture posture = new(finger, q);
        double moment = 0;
        for (int s = 0; s < 3; s++)
        {
            (double overlap, Vector2D closest) = posture.Meets(s, held);
            if (overlap > 0)
            {
                Vector2D toObject = held is Cylinder c ? c.Centre - closest : -Vector2D.AtAngle(((Face)held).NormalRadians);
                moment += finger.PadStiffness * overlap * (1 / toObject.Length * toObject).Dot(posture.Velocity(s, 0, closest));
            }
        }

        return moment;
    }
}
