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
            picture.Text(from.Toward(from.DirectionTo(to), 14).Moved(0, -1.2), "palm line", 1.9, level: Level.Top, ink: Ink.Pale);
        }
    }

    /// <summary>Draws the contact forces on the object, as arrows with their size.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="frame">Scale.</param>
    /// <param name="held">The object.</param>
    /// <param name="layout">Layout of the row.</param>
    /// <param name="row">Recorded state.</param>
    /// <param name="newtonsPerMm">Scale of the arrows.</param>
    public static void Forces(Picture picture, ViewFrame frame, HeldObject held, TraceLayout layout, double[] row, double newtonsPerMm)
    {
        picture.OnLayer("forces");
        var taken = new List<(Place Centre, double Half)>();
        var forces = Contacts(held, layout, row).OrderByDescending(c => c.Newtons).ToList();
        foreach ((int finger, double newtons, Vector2D at, double direction) in forces)
        {
            Place tail = frame.At(at), head = tail.Toward(direction, newtons / newtonsPerMm);
            picture.Arrow(tail, head, new Pen(finger == 0 ? 0.5 : 0.3, Ink.Accent));
        }

        foreach ((int finger, double newtons, Vector2D at, double direction) in forces)
        {
            Place tail = frame.At(at), head = tail.Toward(direction, newtons / newtonsPerMm);
            string label = string.Create(CultureInfo.InvariantCulture, $"{layout.FingerNames[finger]} {newtons:0.0}");
            double half = Lettering.WidthMm(label, Letters) / 2;
            Place spot = Free(head, direction, half, taken);
            taken.Add((spot, half));
            if (spot.DistanceTo(head) > half + 3)
            {
                picture.Line(head, spot.Moved(spot.X < head.X ? half : -half, 0), Pen.Pale);
            }

            picture.Text(spot, label, Letters, Across.Middle, Level.Middle, Ink.Accent);
        }
    }

    /// <summary>Greatest contact force of a state [N].</summary>
    public static double Greatest(TraceLayout layout, double[] row) =>
        Enumerable.Range(0, layout.FingerNames.Count).SelectMany(f => Enumerable.Range(0, 3).Select(s => row[layout.Contact(f, s)])).DefaultIfEmpty(0).Max();

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

    // Ahead of the arrow where free, else on a widening ring about its head.
    private static Place Free(Place head, double direction, double half, List<(Place Centre, double Half)> taken)
    {
        for (int ring = 0; ring < 12; ring++)
        {
            foreach (int side in (ReadOnlySpan<int>)[0, 1, -1, 2, -2, 3, -3])
            {
                double angle = direction + side * Math.PI / 6;
                Place at = head.Toward(angle, 2 + 1.2 * ring + half * Math.Abs(Math.Cos(angle)));
                if (!taken.Exists(t => Math.Abs(t.Centre.Y - at.Y) < Letters + 1 && Math.Abs(t.Centre.X - at.X) < t.Half + half + 0.8))
                {
                    return at;
                }
            }
        }

        return head.Toward(direction, 2 + half);
    }
}
