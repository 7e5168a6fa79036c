using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>Draws forearm, links, crank, rail and carriage.</summary>
internal static class MechanismMarks
{
    private const double Small = 1.9;

    /// <summary>Draws the mechanism of one state.</summary>
    public static void Draw(Picture picture, ViewFrame frame, DriveModel drive, Posture posture, double[] row, bool names)
    {
        Place wrist = frame.At(default), anchor = frame.At(posture.Anchor), fulcrum = frame.At(drive.Crank.Fulcrum);
        Place input = frame.At(posture.Input), output = frame.At(posture.Output), pin = frame.At(posture.CarriagePin);
        Forearm(picture.OnLayer("forearm"), frame, drive, posture, row[TraceLayout.Theta], wrist, anchor);
        Rail(picture.OnLayer("rail"), frame, drive, posture, pin);

        picture.OnLayer("links");
        Link(picture, anchor, input, drive.PullLink.Kind);
        Link(picture, output, pin, drive.TransferLink.Kind);

        picture.OnLayer("crank");
        Place foot = fulcrum.Moved(0, -3.4);
        picture.Outline([fulcrum, foot.Moved(-2, 0), foot.Moved(2, 0)], Pen.Thin, Ink.Paper);
        picture.Line(foot.Moved(-3, 0), foot.Moved(3, 0), Pen.Thin);
        picture.Line(fulcrum, input, new Pen(0.9));
        if (drive.Crank.Slot is null)
        {
            picture.Line(fulcrum, output, new Pen(0.9));
        }
        else
        {
            Place near = frame.At(posture.SlotNear), far = frame.At(posture.SlotFar);
            picture.Line(fulcrum, fulcrum.DistanceTo(near) < fulcrum.DistanceTo(far) ? near : far, new Pen(0.9));
            picture.Band([.. posture.Slot.Select(frame.At)], 1.2, Pen.Thin, Ink.Paper);
        }

        foreach (Place p in (ReadOnlySpan<Place>)[anchor, input, output, pin])
        {
            picture.Circle(p, 0.75, Pen.Thin, Ink.Paper);
        }

        picture.Circle(fulcrum, 1.1, Pen.Thin, Ink.Ink);
        Wrist(picture.OnLayer("wrist"), wrist);
        if (names)
        {
            Names(picture.OnLayer("names"), wrist, anchor, fulcrum, pin, posture.RailDirection);
        }
    }

    private static void Forearm(Picture picture, ViewFrame frame, DriveModel drive, Posture posture, double theta, Place wrist, Place anchor)
    {
        Place rest = frame.At(drive.PullLink.Anchor);
        picture.Line(wrist, rest, new Pen(0.18, Ink.Pale, Dash.Dashed));
        picture.Circle(rest, 0.75, Pen.Pale);
        picture.Line(wrist, anchor, new Pen(0.35, Ink.Ink, Dash.LongDash));
        double from = Math.Atan2(drive.PullLink.Anchor.Y, drive.PullLink.Anchor.X), to = Math.Atan2(posture.Anchor.Y, posture.Anchor.X);
        double radius = 0.62 * wrist.DistanceTo(rest);
        if (theta > 1e-3 && radius > 0)
        {
            bool flexion = drive.Wrist.Direction == DrivingDirection.Flexion;
            picture.Arc(wrist, radius, flexion ? from : to, flexion ? to : from, new Pen(0.18));
        }
    }

    private static void Rail(Picture picture, ViewFrame frame, DriveModel drive, Posture posture, Place pin)
    {
        Vector2D across = posture.RailDirection.Perpendicular;
        double along = Math.Atan2(posture.RailDirection.Y, posture.RailDirection.X), side = along + Math.PI / 2;
        Place start = frame.At(drive.Rail.Rest), end = frame.At(drive.Rail.Rest + drive.Rail.Travel * posture.RailDirection);
        picture.Line(start, end, new Pen(0.25));
        foreach (Place stop in (ReadOnlySpan<Place>)[start, end])
        {
            picture.Line(stop.Toward(side, 1.8), stop.Toward(side, -1.8), new Pen(0.5));
        }

        // The carriage is drawn as a block round its pin; its true size is not part of the model.
        double l = 3.2, h = across.Length * 1.9;
        picture.Outline([pin.Toward(along, l).Toward(side, h), pin.Toward(along, -l).Toward(side, h), pin.Toward(along, -l).Toward(side, -h), pin.Toward(along, l).Toward(side, -h)], Pen.Thin, Ink.Wash);
    }

    private static void Link(Picture picture, Place from, Place to, LinkKind kind) =>
        picture.Line(from, to, kind == LinkKind.Cord ? new Pen(0.4, Ink.Ink, Dash.Dashed) : new Pen(0.5));

    private static void Wrist(Picture picture, Place wrist)
    {
        picture.Circle(wrist, 2.2, Pen.Thin, Ink.Paper);
        picture.Line(wrist.Moved(-3.4, 0), wrist.Moved(3.4, 0), Pen.Hair);
        picture.Line(wrist.Moved(0, -3.4), wrist.Moved(0, 3.4), Pen.Hair);
    }

    private static void Names(Picture picture, Place wrist, Place anchor, Place fulcrum, Place pin, Vector2D rail)
    {
        picture.Text(wrist.Moved(4.2, 0), "wrist axis", Small, level: Level.Middle);
        picture.Text(anchor.Moved(-2, 0.6), "forearm", Small, Across.Right);
        picture.Text(anchor.Moved(-2, -0.6), "anchor", Small, Across.Right, Level.Top);
        picture.Text(fulcrum.Moved(3.6, -3.4), "fulcrum", Small, level: Level.Middle);
        picture.Text(pin.Moved(0, 2.8 + Math.Abs(rail.Y)), "carriage", Small, Across.Middle);
    }
}
