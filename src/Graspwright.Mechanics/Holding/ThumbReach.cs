using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Room;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>How near a fingertip comes to the thumb's pad.</summary>
/// <param name="Finger">Index of the finger.</param>
/// <param name="Gap">Smallest distance from the middle of the pad to the surface of the distal segment [m]; negative = it passes through the pad's place.</param>
/// <param name="Theta">Wrist angle of it [rad].</param>
/// <param name="OffRadians">Angle between the fingertip's palmar side and the pad, 0 = face to face [rad].</param>
/// <param name="Place">Nearest point of the segment's axis [m].</param>
public sealed record FingertipOnThumb(int Finger, double Gap, double Theta, double OffRadians, Vector3D Place);

/// <summary>Which fingertips the thumb's pad meets while the hand closes on nothing.</summary>
public static class ThumbReach
{
    /// <summary>The nearest of every fingertip.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="layout">Layout of the states.</param>
    /// <param name="states">Recorded states of closing.</param>
    /// <param name="pad">Middle of the pad [m].</param>
    /// <param name="looks">Direction in which the pad looks.</param>
    public static IReadOnlyList<FingertipOnThumb> Nearest(DriveModel drive, TraceLayout layout, IReadOnlyList<double[]> states, Vector3D pad, Vector3D looks)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(states);
        FingertipOnThumb[] found = new FingertipOnThumb[drive.Fingers.Count];
        for (int f = 0; f < found.Length; f++)
        {
            found[f] = Nearest(drive, layout, states, f, new(pad, pad, 0), looks.Unit);
        }

        return found;
    }

    /// <summary>The nearest recorded state, then golden sections between its neighbours; between them joints go straight.</summary>
    private static FingertipOnThumb Nearest(DriveModel drive, TraceLayout layout, IReadOnlyList<double[]> states, int f, Capsule pad, Vector3D looks)
    {
        int best = 0;
        double least = double.PositiveInfinity;
        for (int r = 0; r < states.Count; r++)
        {
            double gap = Distal(drive, layout, states, f, r).GapTo(pad);
            (best, least) = gap < least ? (r, gap) : (best, least);
        }

        const double golden = 0.6180339887498949;
        double low = Math.Max(0, best - 1), high = Math.Min(states.Count - 1, best + 1);
        while (high - low > 1e-7)
        {
            double a = high - golden * (high - low), b = low + golden * (high - low);
            if (Distal(drive, layout, states, f, a).GapTo(pad) <= Distal(drive, layout, states, f, b).GapTo(pad))
            {
                high = b;
            }
            else
            {
                low = a;
            }
        }

        double at = 0.5 * (low + high);
        Capsule segment = Distal(drive, layout, states, f, at);
        (double theta, double angle) = Angles(drive, layout, states, f, at);
        double splay = drive.Fingers[f].SplayRadians;
        Vector3D palmar = new(Math.Sin(angle) * Math.Cos(splay), -Math.Cos(angle), Math.Sin(angle) * Math.Sin(splay));
        return new(f, segment.GapTo(pad), theta, Math.Acos(Math.Clamp(-palmar.Dot(looks), -1, 1)), segment.MeetingPlace(pad));
    }

    private static Capsule Distal(DriveModel drive, TraceLayout layout, IReadOnlyList<double[]> states, int f, double at)
    {
        Span<Capsule> segments = stackalloc Capsule[3];
        Span<double> q = [Joint(layout, states, f, 0, at), Joint(layout, states, f, 1, at), Joint(layout, states, f, 2, at)];
        MovingBodies.Segments(drive.Fingers[f], q, segments);
        return segments[2];
    }

    private static (double Theta, double Angle) Angles(DriveModel drive, TraceLayout layout, IReadOnlyList<double[]> states, int f, double at)
    {
        double angle = 0;
        for (int j = 0; j < 3; j++)
        {
            angle -= drive.Fingers[f].OpenRadians[j] + Joint(layout, states, f, j, at);
        }

        return (Between(states, TraceLayout.Theta, at), angle);
    }

    private static double Joint(TraceLayout layout, IReadOnlyList<double[]> states, int f, int joint, double at) => Between(states, layout.Joint(f, joint), at);

    private static double Between(IReadOnlyList<double[]> states, int column, double at)
    {
        int row = Math.Min((int)at, states.Count - 1), next = Math.Min(row + 1, states.Count - 1);
        return states[row][column] + (at - row) * (states[next][column] - states[row][column]);
    }
}
