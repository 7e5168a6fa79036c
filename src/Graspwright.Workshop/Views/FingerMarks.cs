using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Draws fingers: the nearest as capsules, the others as thin centre lines.</summary>
internal static class FingerMarks
{
    /// <summary>Draws all fingers of one state; the nearest is the first, on the thumb's side.</summary>
    public static void Draw(Picture picture, ViewFrame frame, DriveModel drive, TraceLayout layout, Posture posture, double[] row, bool names)
    {
        picture.OnLayer("fingers behind");
        for (int f = drive.Fingers.Count - 1; f > 0; f--)
        {
            Place[] joints = [.. posture.Fingers[f].Select(frame.At)];
            picture.Polyline(joints, new Pen(0.3, Ink.Ink, DashOf(f)));
            for (int j = 0; j < 3; j++)
            {
                picture.Circle(joints[j], 0.5, Pen.Hair, Ink.Paper);
            }
        }

        picture.OnLayer("nearest finger");
        Place[] near = [.. posture.Fingers[0].Select(frame.At)];
        for (int j = 0; j < 3; j++)
        {
            picture.Capsule(near[j], near[j + 1], frame.Mm(drive.Fingers[0].HalfThickness[j]), new Pen(0.35));
        }

        picture.Polyline(near, new Pen(0.13, Ink.Pale));
        for (int j = 0; j < 3; j++)
        {
            picture.Circle(near[j], 0.8, Pen.Thin, Ink.Paper);
        }

        if (names)
        {
            Names(picture.OnLayer("names"), layout, posture, frame, row);
        }
    }

    /// <summary>Dash by which a finger is told apart, the same in side view and curves.</summary>
    /// <param name="finger">Index of the finger.</param>
    public static Dash DashOf(int finger) => (finger % 5) switch { 1 => Dash.Dashed, 2 => Dash.DashDot, 3 => Dash.Dotted, 4 => Dash.LongDash, _ => Dash.Solid };

    // Names stand in a column right of the knuckles' side of the fingers, dorsal of them, with leaders to the first segment.
    private static void Names(Picture picture, TraceLayout layout, Posture posture, ViewFrame frame, double[] row)
    {
        var order = Enumerable.Range(0, posture.Fingers.Count)
            .Select(f => (Finger: f, At: frame.At(0.5 * (posture.Fingers[f][1] + posture.Fingers[f][2]))))
            .OrderBy(o => o.At.Y).ToList();
        double x = posture.Fingers.SelectMany(f => f).Max(p => frame.At(p).X) + 9;
        double top = order.Max(o => o.At.Y) + 4;
        double[] at = Lettering.Spread([.. order.Select(o => o.At.Y)], 3.6, double.NegativeInfinity, top + 3.6 * order.Count);
        for (int i = 0; i < order.Count; i++)
        {
            int f = order[i].Finger;
            string locked = row[layout.Locked(f)] > 0.5 ? " (locked)" : "";
            picture.Line(order[i].At, new(x, at[i]), Pen.Pale);
            picture.Line(new(x, at[i]), new(x + 8, at[i]), new Pen(0.3, Ink.Ink, DashOf(f)));
            picture.Text(new(x + 9, at[i]), layout.FingerNames[f] + locked, 1.9, level: Level.Middle);
        }
    }
}
