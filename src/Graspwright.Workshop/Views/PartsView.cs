using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>The hand at rest with its frame, its signs and the names of its parts.</summary>
public static class PartsView
{
    private const double Width = 180, Height = 106, Letters = 2.1;

    /// <summary>The picture.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="run">A run of it; its first recorded state is drawn.</param>
    /// <param name="palm">Palm line.</param>
    public static Picture Draw(DriveModel drive, RunResult run, PalmLine palm)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(palm);
        double[] row = run.Closing[0];
        var posture = new Posture(drive, run.Layout, row);
        var picture = new Picture(Width, Height, "Frame, signs and parts", "The hand at rest from the thumb's side, with the hand frame at the wrist's axis, the senses of the angles and the names of the parts from the forearm's anchor to the fingertip.");
        var frame = new ViewFrame(Extent.Of(drive, new NoObject(), [posture]), Width - 16, 56, new(8, 36));
        ObjectMarks.Palm(picture, frame, palm, drive.Fingers.Max(f => f.Mcp.X) - palm.Point.X, name: false);
        FingerMarks.Draw(picture, frame, drive, run.Layout, posture, row, names: false);
        MechanismMarks.Draw(picture, frame, drive, posture, row, names: false);
        Frame(picture.OnLayer("frame"), frame, drive);
        Names(picture.OnLayer("names"), frame, drive, posture, palm);
        Words(picture.OnLayer("caption"));
        return picture;
    }

    private static void Frame(Picture picture, ViewFrame frame, DriveModel drive)
    {
        Place wrist = frame.At(default);
        picture.Arrow(wrist, wrist.Moved(30, 0), new Pen(0.35, Ink.Accent), 2.6);
        picture.Arrow(wrist, wrist.Moved(0, 15), new Pen(0.35, Ink.Accent), 2.6);
        picture.Text(wrist.Moved(31, 0), "x distal", Letters, level: Level.Middle, ink: Ink.Accent);
        picture.Text(wrist.Moved(-1.5, 12), "y dorsal", Letters, Across.Right, ink: Ink.Accent);

        // θ: the way the forearm turns as seen from the hand.
        double sense = Posture.DrivingSign(drive), from = Math.Atan2(drive.PullLink.Anchor.Y, drive.PullLink.Anchor.X), to = from + sense * 0.6;
        double radius = 1.12 * wrist.DistanceTo(frame.At(drive.PullLink.Anchor));
        Turn(picture, wrist, radius, from, to);
        picture.Text(wrist.Toward(from + sense * 0.32, radius + 2), "θ", 2.9, Across.Right, Level.Middle, Ink.Accent, strong: true);

        // q: flexion of the first finger turns clockwise.
        Finger finger = drive.Fingers[0];
        Place knuckle = frame.At(finger.Mcp);
        double open = -finger.OpenRadians[0] - 0.25;
        Turn(picture, knuckle, 0.55 * frame.Mm(finger.Segments[0]), open, open - 0.75);
        picture.Text(knuckle.Toward(open - 0.5, 0.55 * frame.Mm(finger.Segments[0]) + 3), "q", 2.9, Across.Left, Level.Middle, Ink.Accent, strong: true);
    }

    private static void Turn(Picture picture, Place centre, double radius, double from, double to)
    {
        picture.Arc(centre, radius, Math.Min(from, to), Math.Max(from, to), new Pen(0.35, Ink.Accent));
        double sense = Math.Sign(to - from);
        Place end = centre.Toward(to, radius);
        Place neck = centre.Toward(to - sense * 0.06, radius);
        picture.Arrow(neck, end.Toward(neck.DirectionTo(end), 1.4), new Pen(0.35, Ink.Accent), 2.4);
    }

    private static void Names(Picture picture, ViewFrame frame, DriveModel drive, Posture posture, PalmLine palm)
    {
        Place At(Vector2D p) => frame.At(p);
        Place Between(Vector2D a, Vector2D b) => frame.At(0.5 * (a + b));
        double top = new[] { posture.Input, posture.Output, posture.CarriagePin, drive.Rail.Rest }.Max(p => At(p).Y) + 6;
        (string Name, Place Part)[] above =
        [
            ("forearm anchor A", At(posture.Anchor)), ("pull link", Between(posture.Anchor, posture.Input)), ("input pin B", At(posture.Input)),
            ("output pin C, in its slot", At(posture.Output)), ("transfer link", Between(posture.Output, posture.CarriagePin)), ("carriage on its rail", At(posture.CarriagePin)),
        ];
        Array.Sort(above, (a, b) => a.Part.X.CompareTo(b.Part.X));
        for (int i = 0; i < above.Length; i++)
        {
            // The rows step down from the middle names, so that no leader crosses a name to its right.
            Place label = new(above[i].Part.X + 2, top + 3.9 * (above.Length - 1 - i));
            picture.Line(above[i].Part.Moved(0, 1), new(above[i].Part.X, label.Y + 0.9), Pen.Hair);
            bool left = i + 1 < above.Length && above[i + 1].Part.X - above[i].Part.X < 2;
            picture.Text(label.Moved(left ? -2.8 : -0.6, 0), above[i].Name, Letters, left ? Across.Right : Across.Left);
        }

        Vector2D[] first = posture.Fingers[0];
        (string Name, Place Part)[] joints = [("knuckle, MCP", At(first[0])), ("PIP", At(first[1])), ("DIP", At(first[2]))];
        double up = joints.Max(j => j.Part.Y) + 8;
        foreach ((string name, Place part) in joints)
        {
            picture.Line(part.Moved(0, 0.8), new(part.X, up), Pen.Hair);
            picture.Text(new(part.X, up + 1), name, Letters, Across.Middle);
        }

        picture.Text(At(first[3]).Moved(frame.Mm(drive.Fingers[0].HalfThickness.Third) + 2.5, -2), "fingertip", Letters, level: Level.Middle);
        Place fulcrum = At(drive.Crank.Fulcrum), on = At(palm.Point).Moved(3, 0);
        picture.Line(fulcrum.Moved(1, -0.8), fulcrum.Moved(7, -4), Pen.Hair);
        picture.Text(fulcrum.Moved(7.6, -4), "fulcrum P of the crank", Letters, level: Level.Middle);
        picture.Text(At(default).Moved(-4.5, -2.5), "wrist axis", Letters, Across.Right, Level.Top);
        picture.Text(on.Moved(0, -1.4), "palm line: objects rest below it", Letters, level: Level.Top);
    }

    private static void Words(Picture picture)
    {
        string[] lines =
        [
            "Seen from the thumb's side. The hand frame has its origin on the wrist's axis; z only orders the fingers across the hand.",
            "θ is wrist travel from the start posture: the forearm turns so as seen from the hand. q is flexion of a joint from its open angle.",
            "The carriage pulls the root of the balance bars, the bars share the pull among the fingers. Bars and finger pulls are not drawn.",
        ];
        double y = 28;
        foreach (string line in lines.SelectMany(l => Lettering.Wrap(l, 0.85 * (Width - 16), Letters)))
        {
            picture.Text(new(8, y), line, Letters);
            y -= 4.4;
        }
    }
}
