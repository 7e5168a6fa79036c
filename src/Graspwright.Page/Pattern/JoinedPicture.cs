using Graspwright.Drawing.Display;
using Graspwright.Numerics;

namespace Graspwright.Page.Pattern;

/// <summary>A picture for the page whose many short lines are joined, so that it comes over the wire quickly and looks the same.</summary>
public static class JoinedPicture
{
    private const double SameMm = 0.002, OffMm = 0.06;

    /// <summary>Joins lines of one layer and one pen that meet.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="without">Layer that is left out; empty = none.</param>
    public static Picture Of(Picture picture, string without = "")
    {
        ArgumentNullException.ThrowIfNull(picture);
        Picture joined = new(picture.WidthMm, picture.HeightMm, picture.Title, picture.Description);
        Mark[] marks = [.. picture.Marks.Where(m => m.Layer != without)];
        for (int i = 0; i < marks.Length;)
        {
            joined.OnLayer(marks[i].Layer);
            if (marks[i] is not LineMark first)
            {
                Put(joined, marks[i++]);
                continue;
            }

            List<(Vector3D, Vector3D)> pieces = [];
            for (; i < marks.Length && marks[i] is LineMark line && line.Layer == first.Layer && line.Pen == first.Pen; i++)
            {
                pieces.Add((new(line.From.X, line.From.Y, 0), new(line.To.X, line.To.Y, 0)));
            }

            foreach (IReadOnlyList<Vector3D> line in LineJoining.Join(pieces, SameMm, first.Pen.Dash == Dash.Solid ? OffMm : 0))
            {
                joined.Polyline([.. line.Select(p => new Place(p.X, p.Y))], first.Pen);
            }
        }

        return joined;
    }

    private static void Put(Picture picture, Mark mark)
    {
        Picture one = new(picture.WidthMm, picture.HeightMm, "", "");
        one.OnLayer(mark.Layer);
        switch (mark)
        {
            case PolylineMark { Closed: true } m:
                one.Outline(m.Places, m.Pen, m.Fill);
                break;
            case PolylineMark { Pen: { } pen } m:
                one.Polyline(m.Places, pen);
                break;
            case CircleMark m:
                one.Circle(m.Centre, m.RadiusMm, m.Pen, m.Fill);
                break;
            case ArcMark m:
                one.Arc(m.Centre, m.RadiusMm, m.StartRadians, m.EndRadians, m.Pen);
                break;
            case TextMark m:
                one.Text(m.At, m.Text, m.HeightMm, m.Across, m.Level, m.Ink, m.Strong, m.AngleRadians);
                break;
            case PointMark m:
                one.Point(m.At);
                break;
            default:
                throw new ArgumentException($"A picture for the page holds no {mark.GetType().Name}.", nameof(mark));
        }

        picture.Insert(one, 0, 0);
    }
}
