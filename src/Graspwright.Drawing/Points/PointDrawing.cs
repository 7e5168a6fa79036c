using Graspwright.Drawing.Display;
using Graspwright.Drawing.Dxf;

namespace Graspwright.Drawing.Points;

/// <summary>Named points read from a drawing.</summary>
/// <param name="Points">Points with a name, in the order of the file.</param>
/// <param name="Unlabelled">Places of points and circles with no label near them [mm].</param>
/// <param name="UnusedTexts">Texts with no point near them.</param>
/// <param name="Unit">Unit of the drawing, in words.</param>
public sealed record PointReading(IReadOnlyList<NamedPoint> Points, IReadOnlyList<Place> Unlabelled, IReadOnlyList<string> UnusedTexts, string Unit);

/// <summary>Named points as a DXF drawing: points or circles, each with a text label near it.</summary>
public static class PointDrawing
{
    /// <summary>Distance within which a label is looked for, unless stated [mm].</summary>
    public const double LabelDistanceMm = 8;

    private const double SamePlaceMm = 1e-3;
    private const double ClearShare = 1.25;
    private const int MostPlaces = 10_000;

    /// <summary>The points as DXF text, each with its label beside it. Coordinates are rounded to 1 nm.</summary>
    /// <param name="points">The points, names unlike each other.</param>
    public static string Write(IReadOnlyList<NamedPoint> points)
    {
        NamedPoint.Check(points);
        var picture = new Picture(210, 297, "Named points", "Points with their names.");
        Place[] places = [.. points.Select(p => new Place(p.XMm, p.YMm))];
        for (int i = 0; i < places.Length; i++)
        {
            // Half way to the nearest neighbour at most, so that the label is read back as this point's own.
            double near = places.Where(p => Key(p) != Key(places[i])).Select(p => p.DistanceTo(places[i])).DefaultIfEmpty(8).Min();
            double off = Math.Min(1.5, 0.2 * near);
            picture.OnLayer("points").Point(places[i]);
            picture.OnLayer("labels").Text(places[i].Moved(off, off), points[i].Name, 2.5);
        }

        return DxfWriter.Write(picture);
    }

    /// <summary>The points of a drawing. Each label names the nearest point or circle centre within a distance of its own point of hold.</summary>
    /// <remarks>Points within a thousandth of a millimetre of each other are one place.</remarks>
    /// <param name="text">Text of the DXF file.</param>
    /// <param name="file">Name for messages.</param>
    /// <param name="labelDistanceMm">Distance within which a label belongs to a point [mm].</param>
    /// <exception cref="DrawingFileException">The file can't be read, or it isn't clear which label belongs to which point.</exception>
    public static PointReading Read(string text, string file, double labelDistanceMm = LabelDistanceMm)
    {
        DxfDrawing drawing = DxfReader.Read(text, file);
        List<Spot> places = Spots(drawing);
        if (places.Count > MostPlaces || drawing.Entities.OfType<DxfText>().Skip(MostPlaces).Any())
        {
            throw new DrawingFileException(new FileFault(file, 0, 0, "file", "more points or texts than a hand has", $"at most {MostPlaces} of each", "Write only the points and their labels to a drawing of their own."));
        }

        var faults = new List<FileFault>();
        var labels = new List<DxfText>?[places.Count];
        var unused = new List<string>();
        foreach (DxfText label in drawing.Entities.OfType<DxfText>())
        {
            (int nearest, double distance, int second, double other) = Nearest(places, label.At);
            if (distance > labelDistanceMm)
            {
                unused.Add(label.Text);
            }
            else if (other <= labelDistanceMm && other < ClearShare * distance)
            {
                faults.Add(new(file, label.Line, 0, "label", FormattableString.Invariant($"{DrawingFileException.Shown(label.Text)} as near to the point of line {places[second].Line} as to that of line {places[nearest].Line}"),
                    "a label clearly nearest to one point", "Move it nearer to its own point."));
            }
            else if (!NamedPoint.IsName(label.Text))
            {
                faults.Add(new(file, label.Line, 0, "label", DrawingFileException.Shown(label.Text), NamedPoint.NameRule, "Rename it, or move the text away from the point."));
            }
            else
            {
                (labels[nearest] ??= []).Add(label);
            }
        }

        return Named(drawing, file, places, labels, unused, faults);
    }

    private static PointReading Named(DxfDrawing drawing, string file, List<Spot> places, List<DxfText>?[] labels, List<string> unused, List<FileFault> faults)
    {
        var points = new List<NamedPoint>();
        var unlabelled = new List<Place>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < places.Count; i++)
        {
            (Place at, int line, int count) = places[i];
            List<DxfText> here = labels[i] ?? [];
            if (here.Count == 0)
            {
                unlabelled.Add(at);
            }
            else if (here.Count > count)
            {
                faults.Add(new(file, line, 0, "label", string.Join(" and ", here.Select(l => $"{DrawingFileException.Shown(l.Text)} on line {l.Line}")), "one label for each point", "Move the labels so that each is nearest to its own point."));
            }
            else if (Math.Abs(at.X) > NamedPoint.FarthestMm || Math.Abs(at.Y) > NamedPoint.FarthestMm)
            {
                faults.Add(new(file, line, 0, here[0].Text, FormattableString.Invariant($"{at.X}, {at.Y} mm"), $"within {NamedPoint.FarthestMm} mm of the origin", "Is the drawing's unit right?"));
            }

            foreach (DxfText label in here)
            {
                if (!lines.TryAdd(label.Text, label.Line))
                {
                    faults.Add(new(file, label.Line, 0, "label", DrawingFileException.Shown(label.Text), "each name once", $"It stands on line {lines[label.Text]} already."));
                }

                points.Add(new(label.Text, at.X, at.Y));
            }
        }

        return faults.Count == 0 ? new(points, unlabelled, unused, drawing.Unit) : throw new DrawingFileException(faults);
    }

    // Points and circle centres. Those of one place are one spot, which may bear as many names as it has points:
    // knuckles of two fingers can lie behind one another.
    private static List<Spot> Spots(DxfDrawing drawing)
    {
        var spots = new List<Spot>();
        var seen = new Dictionary<(long, long), int>();
        foreach (DxfEntity entity in drawing.Entities)
        {
            if ((entity switch { DxfPoint p => p.At, DxfCircle c => c.Centre, _ => (Place?)null }) is not { } at)
            {
                continue;
            }

            if (seen.TryAdd(Key(at), spots.Count))
            {
                spots.Add(new(at, entity.Line, 1));
            }
            else
            {
                int index = seen[Key(at)];
                spots[index] = spots[index] with { Count = spots[index].Count + 1 };
            }
        }

        return spots;
    }

    private static (long X, long Y) Key(Place p) => ((long)Math.Round(p.X / SamePlaceMm), (long)Math.Round(p.Y / SamePlaceMm));

    private static (int Nearest, double Distance, int Second, double Other) Nearest(List<Spot> places, Place from)
    {
        (int nearest, double distance, int second, double other) = (-1, double.PositiveInfinity, -1, double.PositiveInfinity);
        for (int i = 0; i < places.Count; i++)
        {
            double d = places[i].At.DistanceTo(from);
            if (d < distance)
            {
                (second, other, nearest, distance) = (nearest, distance, i, d);
            }
            else if (d < other)
            {
                (second, other) = (i, d);
            }
        }

        return (nearest, distance, second, other);
    }

    private readonly record struct Spot(Place At, int Line, int Count);
}
