using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>Where the parts of a drive are in one recorded state, hand frame [m].</summary>
internal sealed class Posture
{
    private const int ArcPieces = 12; // straight pieces in which an arc is drawn

    /// <summary>The parts in a recorded state.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="layout">Layout of the row.</param>
    /// <param name="row">Recorded state.</param>
    public Posture(DriveModel drive, TraceLayout layout, double[] row)
    {
        double turn = DrivingSign(drive) * row[TraceLayout.Theta];
        double crank = CrankSign(drive) * row[TraceLayout.Phi];
        BellCrank c = drive.Crank;
        Anchor = drive.PullLink.Anchor.Rotated(turn);
        Input = c.Fulcrum + c.Input.Rotated(crank);
        Output = InSlot(row[TraceLayout.Shift]);
        int pieces = c.Slot is { TurnRadians: not 0 } ? ArcPieces : 1;
        Slot = [.. Enumerable.Range(0, pieces + 1).Select(i => InSlot((c.Slot?.Length ?? 0) * i / pieces))];
        RailDirection = Vector2D.AtAngle(drive.Rail.DirectionRadians);
        CarriagePin = drive.Rail.Rest + row[TraceLayout.Carriage] * RailDirection;
        Fingers = [.. drive.Fingers.Select((f, i) => Joints(f, layout, row, i))];

        Vector2D InSlot(double shift) => c.Fulcrum + (c.Output + (c.Slot?.At(shift) ?? default)).Rotated(crank);
    }

    /// <summary>Forearm anchor A.</summary>
    public Vector2D Anchor { get; }

    /// <summary>Input pin B of the crank.</summary>
    public Vector2D Input { get; }

    /// <summary>Output pin C of the crank, shifted in its slot.</summary>
    public Vector2D Output { get; }

    /// <summary>The slot from its near to its far end: two points, more along an arc; both the output pin for a fixed crank.</summary>
    public IReadOnlyList<Vector2D> Slot { get; }

    /// <summary>Near end of the slot.</summary>
    public Vector2D SlotNear => Slot[0];

    /// <summary>Far end of the slot; the near end for a fixed crank.</summary>
    public Vector2D SlotFar => Slot[^1];

    /// <summary>Unit vector along the rail, in the sense of closing.</summary>
    public Vector2D RailDirection { get; }

    /// <summary>Carriage pin.</summary>
    public Vector2D CarriagePin { get; }

    /// <summary>MCP, PIP, DIP and fingertip of each finger.</summary>
    public IReadOnlyList<Vector2D[]> Fingers { get; }

    /// <summary>+1 where the forearm turns anticlockwise as seen from the hand (flexion), −1 else.</summary>
    /// <param name="drive">The drive.</param>
    public static int DrivingSign(DriveModel drive) => drive.Wrist.Direction == DrivingDirection.Flexion ? 1 : -1;

    /// <summary>Sense in which the crank turns: the one that keeps the pull link's length as the wrist drives from rest.</summary>
    /// <param name="drive">The drive.</param>
    public static int CrankSign(DriveModel drive)
    {
        Vector2D anchor = drive.PullLink.Anchor, input = drive.Crank.Fulcrum + drive.Crank.Input;
        Vector2D along = input - anchor;
        double anchorSpeed = DrivingSign(drive) * along.Dot(anchor.Perpendicular);
        double inputSpeed = along.Dot(drive.Crank.Input.Perpendicular);
        return anchorSpeed * inputSpeed >= 0 ? 1 : -1;
    }

    private static Vector2D[] Joints(Finger finger, TraceLayout layout, double[] row, int index)
    {
        var places = new Vector2D[4];
        places[0] = finger.Mcp;
        double bend = 0;
        for (int j = 0; j < 3; j++)
        {
            bend += finger.OpenRadians[j] + row[layout.Joint(index, j)];
            places[j + 1] = places[j] + finger.Segments[j] * Vector2D.AtAngle(-bend);
        }

        return places;
    }
}
