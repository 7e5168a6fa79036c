using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>A line of the palm on which objects rest.</summary>
/// <param name="Point">A point of it, hand frame [m].</param>
/// <param name="DirectionRadians">Its direction from +x [rad].</param>
public sealed record PalmLine(Vector2D Point, double DirectionRadians);

/// <summary>Draws what is held, the palm line and the contact forces.</summary>
internal static class ObjectMarks
{
    private const double Letters = 1.8;

    /// <summary>Draws the object.</summary>
    public static void Object(Picture picture, ViewFrame frame, HeldObject held)
    {
        picture.OnLayer("object");
        if (held is Cylinder c)
        {
            Place centre = frame.At(c.Centre);
            picture.Circle(centre, frame.Mm(c.Radius), new Pen(0.35), Ink.Wash);
            picture.Line(centre.Moved(-1.5, 0), centre.Moved(1.5, 0), Pen.Hair);
            picture.Line(centre.Moved(0, -1.5), centre.Moved(0, 1.5), Pen.Hair);
        }
        else if (held is Face f)
        {
            Place point = frame.At(f.Point);
            double along = f.NormalRadians + Math.PI / 2;
            Place from = point.Toward(along, -22), to = point.Toward(along, 22);
            picture.Line(from, to, new Pen(0.5));
            for (int i = 0; i < 15; i++)
            {
                Place at = from.Toward(along, 1.5 + 3 * i);
                picture.Line(at, at.Toward(f.NormalRadians + 0.8 * Math.PI, 2.2), Pen.Hair);
            }
        }
    }

    /// <summary>Draws the palm line from the wrist's side to the knuckles' side.</summary>
    public static void Palm(Picture picture, ViewFrame frame, PalmLine palm, double reachMetres, bool name)
    {
        picture.OnLayer("palm");
        Place from = frame.At(palm.Point), to = frame.At(palm.Point + reachMetres * Vector2D.AtAngle(palm.DirectionRadians));
        picture.Line(from, to, new Pen(0.25, Ink.Pale, Dash.DashDot));
        if (name)
        {
            picture.Text(from.Toward(from.DirectionTo(to), 1).Moved(0, -1.2), "palm line", 1.9, level: Level.Top, ink: Ink.Pale);
        }
    }

    /// <summary>Draws the contact forces on the object, as arrows with their size.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="frame">Scale.</param>
    /// <param name="held">The object.</param>
    /// <param name="layout">Layout of the row.</param>
    /// <param name="row">Recorded state.</param>
    /// <param name="newtonsPerMm">Scale of the arrows.</param>
    /// <param name="fingersLeftMm">How far left the fingers reach on the paper [mm].</param>
    public static void Forces(Picture picture, ViewFrame frame, HeldObject held, TraceLayout layout, double[] row, double newtonsPerMm, double fingersLeftMm)
    {
        picture.OnLayer("forces");
        var forces = Contacts(held, layout, row).Select(c => (c.Finger, c.Newtons, Tail: frame.At(c.At), Head: frame.At(c.At).Toward(c.Direction, c.Newtons / newtonsPerMm)))
            .OrderBy(c => c.Head.Y).ToList();
        if (forces.Count == 0)
        {
            return;
        }

        // The sizes stand in a column beside the object, away from the fingers, with leaders to the arrows' heads.
        double column = Math.Min(forces.Min(f => f.Head.X) - 6, fingersLeftMm - 3), high = double.PositiveInfinity;
        if (held is Cylinder c)
        {
            column = Math.Min(column, frame.At(c.Centre).X - frame.Mm(c.Radius) - 3);
            high = frame.At(c.Centre).Y + frame.Mm(c.Radius) - 2;
        }

        double[] at = Lettering.Spread([.. forces.Select(f => f.Head.Y)], Letters + 1.5, double.NegativeInfinity, high);
        for (int i = 0; i < forces.Count; i++)
        {
            (int finger, double newtons, Place tail, Place head) = forces[i];
            string label = string.Create(CultureInfo.InvariantCulture, $"{layout.FingerNames[finger]} {newtons:0.0}");
            picture.Line(head, new(column, at[i]), Pen.Pale);
            picture.Arrow(tail, head, new Pen(finger == 0 ? 0.5 : 0.3, Ink.Accent));
            picture.Text(new(column - 1, at[i]), label, Letters, Across.Right, Level.Middle, Ink.Accent);
        }
    }

    /// <summary>Greatest contact force of a state [N].</summary>
    public static double Greatest(TraceLayout layout, double[] row) =>
        Enumerable.Range(0, layout.FingerNames.Count).SelectMany(f => Enumerable.Range(0, 3).Select(s => row[layout.Contact(f, s)])).DefaultIfEmpty(0).Max();

    /// <summary>Greatest length of an arrow [mm]: inside a cylinder no longer than its radius, where that leaves enough to see.</summary>
    public static double LongestMm(HeldObject held, ViewFrame frame, double otherwise) =>
        held is Cylinder c ? Math.Min(otherwise, Math.Max(5, 0.95 * frame.Mm(c.Radius))) : otherwise;

    /// <summary>A round scale of arrows [N per mm] that keeps the greatest within a length.</summary>
    public static double ArrowScale(double newtons, double longestMm)
    {
        for (double power = 0.01; power < 1e9; power *= 10)
        {
            foreach (double m in (ReadOnlySpan<double>)[1, 2, 5])
            {
                if (newtons <= m * power * longestMm)
                {
                    return m * power;
                }
            }
        }

        throw new ArgumentOutOfRangeException(nameof(newtons), newtons, "A contact force of this size can't be drawn.");
    }

    private static IEnumerable<(int Finger, double Newtons, Vector2D At, double Direction)> Contacts(HeldObject held, TraceLayout layout, double[] row)
    {
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int s = 0; s < 3; s++)
            {
                double newtons = row[layout.Contact(f, s)];
                int column = layout.ContactPointX(f, s);
                var inside = new Vector2D(row[column], row[column + 1]);
                if (newtons < 0.05 || !double.IsFinite(inside.X + inside.Y))
                {
                    continue;
                }

                if (held is Cylinder c)
                {
                    Vector2D toCentre = c.Centre - inside;
                    double direction = Math.Atan2(toCentre.Y, toCentre.X);
                    yield return (f, newtons, c.Centre - c.Radius * Vector2D.AtAngle(direction), direction);
                }
                else if (held is Face face)
                {
                    Vector2D n = Vector2D.AtAngle(face.NormalRadians);
                    yield return (f, newtons, inside - (inside - face.Point).Dot(n) * n, face.NormalRadians + Math.PI);
                }
            }
        }
    }
}
