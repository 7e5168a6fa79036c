using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>Where the parts of a drive are in one recorded state, hand frame [m].</summary>
internal sealed class Posture
{
    /// <summary>The parts in a recorded state.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="layout">Layout of the row.</param>
    /// <param name="row">Recorded state.</param>
    public Posture(DriveModel drive, TraceLayout layout, double[] row)
    {
        double turn = DrivingSign(drive) * row[TraceLayout.Theta];
        double crank = CrankSign(drive) * row[TraceLayout.Phi];
        BellCrank c = drive.Crank;
        Vector2D slot = c.Slot is { } s ? Vector2D.AtAngle(s.DirectionRadians) : default;
        Anchor = drive.PullLink.Anchor.Rotated(turn);
        Input = c.Fulcrum + c.Input.Rotated(crank);
        Output = c.Fulcrum + (c.Output + row[TraceLayout.Shift] * slot).Rotated(crank);
        SlotNear = c.Fulcrum + c.Output.Rotated(crank);
        SlotFar = c.Fulcrum + (c.Output + (c.Slot?.Length ?? 0) * slot).Rotated(crank);
        RailDirection = Vector2D.AtAngle(drive.Rail.DirectionRadians);
        CarriagePin = drive.Rail.Rest + row[TraceLayout.Carriage] * RailDirection;
        Fingers = [.. drive.Fingers.Select((f, i) => Joints(f, layout, row, i))];
    }

    /// <summary>Forearm anchor A.</summary>
    public Vector2D Anchor { get; }

    /// <summary>Input pin B of the crank.</summary>
    public Vector2D Input { get; }

    /// <summary>Output pin C of the crank, shifted in its slot.</summary>
    public Vector2D Output { get; }

    /// <summary>Near end of the slot.</summary>
    public Vector2D SlotNear { get; }

    /// <summary>Far end of the slot; the near end for a fixed crank.</summary>
    public Vector2D SlotFar { get; }

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
