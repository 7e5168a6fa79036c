namespace Graspwright.Drawing.Display;

/// <summary>A place on the paper [mm]: x to the right, y up, origin at the lower left corner.</summary>
/// <param name="X">To the right [mm].</param>
/// <param name="Y">Up [mm].</param>
public readonly record struct Place(double X, double Y)
{
    /// <summary>The place moved by an offset.</summary>
    /// <param name="dx">To the right [mm].</param>
    /// <param name="dy">Up [mm].</param>
    public Place Moved(double dx, double dy) => new(X + dx, Y + dy);

    /// <summary>The place reached by going a distance in a direction.</summary>
    /// <param name="radians">Direction, anticlockwise from +x [rad].</param>
    /// <param name="distanceMm">Distance [mm].</param>
    public Place Toward(double radians, double distanceMm)
    {
        (double sin, double cos) = Math.SinCos(radians);
        return new(X + distanceMm * cos, Y + distanceMm * sin);
    }

    /// <summary>Distance to another place [mm].</summary>
    /// <param name="other">The other place.</param>
    public double DistanceTo(Place other) => double.Hypot(other.X - X, other.Y - Y);

    /// <summary>Direction to another place, anticlockwise from +x [rad].</summary>
    /// <param name="other">The other place.</param>
    public double DirectionTo(Place other) => Math.Atan2(other.Y - Y, other.X - X);
}

/// <summary>The inks of the workshop: few, and told apart in black and white by weight and dash, not by colour.</summary>
public enum Ink
{
    /// <summary>Full ink.</summary>
    Ink,

    /// <summary>Pale ink for helping lines and small print.</summary>
    Pale,

    /// <summary>The one accent; dark enough to print as dark grey.</summary>
    Accent,

    /// <summary>A wash: a light tint for areas.</summary>
    Wash,

    /// <summary>Bare paper, to keep what lies below from showing through.</summary>
    Paper,
}

/// <summary>Dash patterns.</summary>
public enum Dash
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dashed,

    /// <summary>Dots.</summary>
    Dotted,

    /// <summary>Dash and dot.</summary>
    DashDot,

    /// <summary>Long dashes.</summary>
    LongDash,
}

/// <summary>How a line is drawn.</summary>
/// <param name="WidthMm">Line weight [mm].</param>
/// <param name="Ink">Ink.</param>
/// <param name="Dash">Dash pattern.</param>
public readonly record struct Pen(double WidthMm, Ink Ink = Ink.Ink, Dash Dash = Dash.Solid)
{
    /// <summary>Hairline, 0.13 mm: axes and helping lines (a line weight of ISO 128-2).</summary>
    public static Pen Hair { get; } = new(0.13);

    /// <summary>Thin line, 0.25 mm.</summary>
    public static Pen Thin { get; } = new(0.25);

    /// <summary>Main line, 0.5 mm.</summary>
    public static Pen Main { get; } = new(0.5);

    /// <summary>Pale hairline.</summary>
    public static Pen Pale { get; } = new(0.13, Ink.Pale);

    /// <summary>Lengths of dashes and gaps in turn [mm]; empty for an unbroken line.</summary>
    /// <param name="dash">Dash pattern.</param>
    public static IReadOnlyList<double> PatternMm(Dash dash) => dash switch
    {
        Dash.Dashed => [2.4, 1.2],
        Dash.Dotted => [0.5, 0.9],
        Dash.DashDot => [3.2, 1, 0.5, 1],
        Dash.LongDash => [5, 1.4],
        _ => [],
    };
}

/// <summary>Which point of a text lies at its place, across.</summary>
public enum Across
{
    /// <summary>Left end.</summary>
    Left,

    /// <summary>Middle.</summary>
    Middle,

    /// <summary>Right end.</summary>
    Right,
}

/// <summary>Which height of a text lies at its place.</summary>
public enum Level
{
    /// <summary>Foot of the capitals.</summary>
    Baseline,

    /// <summary>Half height of the capitals.</summary>
    Middle,

    /// <summary>Top of the capitals.</summary>
    Top,
}

/// <summary>Something drawn.</summary>
/// <param name="Layer">Name of its layer.</param>
public abstract record Mark(string Layer);

/// <summary>A straight line.</summary>
public sealed record LineMark(string Layer, Place From, Place To, Pen Pen) : Mark(Layer);

/// <summary>A run of straight lines, an outline where closed.</summary>
public sealed record PolylineMark(string Layer, IReadOnlyList<Place> Places, bool Closed, Pen? Pen, Ink? Fill) : Mark(Layer);

/// <summary>A circle.</summary>
public sealed record CircleMark(string Layer, Place Centre, double RadiusMm, Pen? Pen, Ink? Fill) : Mark(Layer);

/// <summary>An arc, anticlockwise from start to end [rad from +x].</summary>
public sealed record ArcMark(string Layer, Place Centre, double RadiusMm, double StartRadians, double EndRadians, Pen Pen) : Mark(Layer);

/// <summary>One line of text. The height is that of the capitals [mm], as in lettering for drawings (ISO 3098).</summary>
public sealed record TextMark(string Layer, Place At, string Text, double HeightMm, Across Across, Level Level, Ink Ink, bool Strong, double AngleRadians) : Mark(Layer);

/// <summary>A place without extent, for reading by drawing programs.</summary>
public sealed record PointMark(string Layer, Place At) : Mark(Layer);
