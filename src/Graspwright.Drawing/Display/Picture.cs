namespace Graspwright.Drawing.Display;

/// <summary>A display list in millimetres, y up, on a sheet of given size. Later marks lie over earlier ones.</summary>
public sealed class Picture
{
    private readonly List<Mark> marks = [];
    private string layer = "drawing";

    /// <summary>An empty picture.</summary>
    /// <param name="widthMm">Width of the sheet [mm], above 0.</param>
    /// <param name="heightMm">Height of the sheet [mm], above 0.</param>
    /// <param name="title">What it shows, in a few words.</param>
    /// <param name="description">What one sees in it, for those who can't see it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not a positive finite number.</exception>
    public Picture(double widthMm, double heightMm, string title, string description)
    {
        WidthMm = Size(widthMm, nameof(widthMm));
        HeightMm = Size(heightMm, nameof(heightMm));
        Title = title;
        Description = description;
    }

    /// <summary>Width of a portrait A4 sheet [mm] (ISO 216).</summary>
    public const double A4WidthMm = 210;

    /// <summary>Height of a portrait A4 sheet [mm] (ISO 216).</summary>
    public const double A4HeightMm = 297;

    /// <summary>Width of the sheet [mm].</summary>
    public double WidthMm { get; }

    /// <summary>Height of the sheet [mm].</summary>
    public double HeightMm { get; }

    /// <summary>What it shows.</summary>
    public string Title { get; }

    /// <summary>What one sees in it.</summary>
    public string Description { get; }

    /// <summary>All marks, in drawing order.</summary>
    public IReadOnlyList<Mark> Marks => marks;

    /// <summary>Names of the layers in order of first use.</summary>
    public IReadOnlyList<string> Layers => [.. marks.Select(m => m.Layer).Distinct(StringComparer.Ordinal)];

    /// <summary>Draws on a layer from here on.</summary>
    /// <param name="name">Name of the layer, a word of the trade.</param>
    public Picture OnLayer(string name)
    {
        layer = name;
        return this;
    }

    /// <summary>A straight line.</summary>
    public void Line(Place from, Place to, Pen pen) => marks.Add(new LineMark(layer, from, to, pen));

    /// <summary>An open run of lines.</summary>
    public void Polyline(IReadOnlyList<Place> places, Pen pen) => marks.Add(new PolylineMark(layer, places, Closed: false, pen, Fill: null));

    /// <summary>A closed outline, drawn, filled or both.</summary>
    public void Outline(IReadOnlyList<Place> places, Pen? pen, Ink? fill = null) => marks.Add(new PolylineMark(layer, places, Closed: true, pen, fill));

    /// <summary>A circle, drawn, filled or both.</summary>
    public void Circle(Place centre, double radiusMm, Pen? pen, Ink? fill = null) => marks.Add(new CircleMark(layer, centre, radiusMm, pen, fill));

    /// <summary>An arc, anticlockwise from start to end [rad].</summary>
    public void Arc(Place centre, double radiusMm, double startRadians, double endRadians, Pen pen) =>
        marks.Add(new ArcMark(layer, centre, radiusMm, startRadians, endRadians, pen));

    /// <summary>A place without extent.</summary>
    public void Point(Place at) => marks.Add(new PointMark(layer, at));

    /// <summary>One line of text; height of the capitals [mm].</summary>
    public void Text(Place at, string text, double heightMm, Across across = Across.Left, Level level = Level.Baseline, Ink ink = Ink.Ink, bool strong = false, double angleRadians = 0) =>
        marks.Add(new TextMark(layer, at, text, heightMm, across, level, ink, strong, angleRadians));

    /// <summary>An arrow with a filled head at its end.</summary>
    /// <param name="from">Tail.</param>
    /// <param name="to">Point of the head.</param>
    /// <param name="pen">Line.</param>
    /// <param name="headMm">Length of the head [mm], shortened on short arrows.</param>
    public void Arrow(Place from, Place to, Pen pen, double headMm = 2.2)
    {
        double length = from.DistanceTo(to);
        if (length <= 0)
        {
            return;
        }

        double head = Math.Min(headMm, 0.6 * length);
        double back = to.DirectionTo(from);
        Place neck = to.Toward(back, head);
        Line(from, neck, pen with { Dash = Dash.Solid });
        double half = 0.3 * head;
        Outline([to, neck.Toward(back + Math.PI / 2, half), neck.Toward(back - Math.PI / 2, half)], pen: null, pen.Ink);
    }

    /// <summary>A capsule: all places within a half thickness of a centre line.</summary>
    public void Capsule(Place from, Place to, double halfMm, Pen? pen, Ink? fill = null) => Band([from, to], halfMm, pen, fill);

    /// <summary>A band with round ends: all places within a half thickness of a line that bends little.</summary>
    /// <param name="line">Two places or more.</param>
    /// <param name="halfMm">Half thickness [mm].</param>
    /// <param name="pen">Outline; <see langword="null"/> = none.</param>
    /// <param name="fill">Fill; <see langword="null"/> = none.</param>
    public void Band(IReadOnlyList<Place> line, double halfMm, Pen? pen, Ink? fill = null)
    {
        ArgumentNullException.ThrowIfNull(line);
        const int steps = 16;
        double last = line[^2].DirectionTo(line[^1]), first = line[0].DirectionTo(line[1]);
        var places = new List<Place>(2 * steps + 2 * line.Count);
        for (int i = 1; i < line.Count - 1; i++)
        {
            places.Add(Beside(i, -Math.PI / 2));
        }

        for (int i = 0; i <= steps; i++)
        {
            places.Add(line[^1].Toward(last - Math.PI / 2 + Math.PI * i / steps, halfMm));
        }

        for (int i = line.Count - 2; i > 0; i--)
        {
            places.Add(Beside(i, Math.PI / 2));
        }

        for (int i = 0; i <= steps; i++)
        {
            places.Add(line[0].Toward(first + Math.PI / 2 + Math.PI * i / steps, halfMm));
        }

        Outline(places, pen, fill);

        Place Beside(int i, double side) => line[i].Toward(line[i - 1].DirectionTo(line[i + 1]) + side, halfMm);
    }

    /// <summary>Draws another picture into this one, moved, at the same size or at another; line weights stay as they are.</summary>
    /// <param name="other">The other picture.</param>
    /// <param name="dx">Where its lower left corner comes, to the right [mm].</param>
    /// <param name="dy">Where its lower left corner comes, up [mm].</param>
    /// <param name="scale">How many times as large, above 0.</param>
    public void Insert(Picture other, double dx, double dy, double scale = 1)
    {
        ArgumentNullException.ThrowIfNull(other);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scale);
        foreach (Mark mark in other.Marks)
        {
            marks.Add(mark switch
            {
                LineMark m => m with { From = Moved(m.From), To = Moved(m.To) },
                PolylineMark m => m with { Places = [.. m.Places.Select(Moved)] },
                CircleMark m => m with { Centre = Moved(m.Centre), RadiusMm = m.RadiusMm * scale },
                ArcMark m => m with { Centre = Moved(m.Centre), RadiusMm = m.RadiusMm * scale },
                TextMark m => m with { At = Moved(m.At), HeightMm = m.HeightMm * scale },
                PointMark m => m with { At = Moved(m.At) },
                _ => throw new InvalidOperationException($"A mark of type {mark.GetType().Name} can't be moved."),
            });
        }

        Place Moved(Place p) => new(p.X * scale + dx, p.Y * scale + dy);
    }

    private static double Size(double mm, string name) =>
        double.IsFinite(mm) && mm > 0 ? mm : throw new ArgumentOutOfRangeException(name, mm, "A sheet needs a positive size in mm.");
}
