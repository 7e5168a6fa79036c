using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Drawing.Pdf;

/// <summary>Writes the marks of one picture as the drawing orders of a PDF page, in millimetres.</summary>
/// <source key="pdf-1-7">Sections 8.4 (graphics state), 8.5 (paths) and 9.4 (text).</source>
internal sealed class PdfPage
{
    /// <summary>Points of PDF to a millimetre: 72 to the inch.</summary>
    public const double PointsPerMm = 72 / 25.4;

    private readonly StringBuilder text = new(8192);
    private readonly FontSubset regular;
    private readonly FontSubset bold;
    private Pen? pen;
    private Ink? fill;

    private PdfPage(FontSubset regular, FontSubset bold) => (this.regular, this.bold) = (regular, bold);

    /// <summary>The drawing orders of a picture.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="regular">Upright letters, called F1.</param>
    /// <param name="bold">Bold letters, called F2.</param>
    public static byte[] Write(Picture picture, FontSubset regular, FontSubset bold)
    {
        var page = new PdfPage(regular, bold);
        page.text.Append("q\n").Append(PointsPerMm.ToString("0.#########", CultureInfo.InvariantCulture)).Append(" 0 0 ")
            .Append(PointsPerMm.ToString("0.#########", CultureInfo.InvariantCulture)).Append(" 0 0 cm\n1 j\n");
        foreach (Mark mark in picture.Marks)
        {
            page.Append(mark);
        }

        return Encoding.Latin1.GetBytes(page.text.Append("Q\n").ToString());
    }

    private void Append(Mark mark)
    {
        switch (mark)
        {
            case LineMark m:
                Use(m.Pen, null);
                Move(m.From);
                Line(m.To);
                text.Append("S\n");
                break;
            case PolylineMark { Places.Count: > 0 } m:
                Use(m.Pen, m.Fill);
                Move(m.Places[0]);
                foreach (Place place in m.Places.Skip(1))
                {
                    Line(place);
                }

                Paint(m.Pen, m.Fill, m.Closed);
                break;
            case CircleMark m:
                Use(m.Pen, m.Fill);
                Arc(m.Centre, m.RadiusMm, 0, Math.Tau);
                Paint(m.Pen, m.Fill, closed: true);
                break;
            case ArcMark m:
                Use(m.Pen, null);
                double span = m.EndRadians - m.StartRadians;
                Arc(m.Centre, m.RadiusMm, m.StartRadians, span - Math.Tau * Math.Floor(span / Math.Tau));
                text.Append("S\n");
                break;
            case TextMark m:
                Text(m);
                break;
            case PointMark m:
                Use(null, Ink.Ink);
                Arc(m.At, 0.4, 0, Math.Tau);
                Paint(null, Ink.Ink, closed: true);
                break;
        }
    }

    private void Text(TextMark m)
    {
        FontSubset subset = m.Strong ? bold : regular;
        double width = subset.Font.WidthMm(m.Text, m.HeightMm);
        double back = m.Across switch { Across.Middle => 0.5 * width, Across.Right => width, _ => 0 };
        double drop = m.Level switch { Level.Middle => 0.5 * m.HeightMm, Level.Top => m.HeightMm, _ => 0 };
        Place at = m.At.Toward(m.AngleRadians - Math.PI / 2, drop).Toward(m.AngleRadians, -back);
        (double sin, double cos) = Math.SinCos(m.AngleRadians);
        Use(null, m.Ink);
        double size = m.HeightMm * subset.Font.UnitsPerEm / subset.Font.CapitalHeight;
        text.Append("BT /").Append(m.Strong ? "F2 " : "F1 ").Append(Number(size)).Append(" Tf ")
            .Append(Number(cos, 6)).Append(' ').Append(Number(sin, 6)).Append(' ').Append(Number(-sin, 6)).Append(' ').Append(Number(cos, 6)).Append(' ')
            .Append(At(at)).Append(" Tm <");
        foreach (Rune letter in m.Text.EnumerateRunes())
        {
            text.Append(subset.Glyph(letter).ToString("X4", CultureInfo.InvariantCulture));
        }

        text.Append("> Tj ET\n");
    }

    // A part of a circle as curves of at most an eighth of a turn each: off the circle by less than 5 millionths of its radius.
    private void Arc(Place centre, double radius, double start, double span)
    {
        int parts = Math.Max(1, (int)Math.Ceiling(span / (Math.PI / 4) - 1e-9));
        double step = span / parts, reach = radius * 4 / 3 * Math.Tan(step / 4);
        Move(centre.Toward(start, radius));
        for (int i = 0; i < parts; i++)
        {
            double from = start + i * step, to = from + step;
            Place begin = centre.Toward(from, radius), end = centre.Toward(to, radius);
            text.Append(At(begin.Toward(from + Math.PI / 2, reach))).Append(' ').Append(At(end.Toward(to - Math.PI / 2, reach))).Append(' ').Append(At(end)).Append(" c\n");
        }
    }

    private void Paint(Pen? line, Ink? inside, bool closed)
    {
        text.Append(closed ? "h " : "").Append((line is not null, inside is not null) switch { (true, true) => "B\n", (false, true) => "f\n", (true, false) => "S\n", _ => "n\n" });
    }

    private void Use(Pen? wantedPen, Ink? wantedFill)
    {
        if (wantedPen is { } p && p != pen)
        {
            text.Append(Colour(p.Ink)).Append(" RG ").Append(Number(p.WidthMm)).Append(" w [").AppendJoin(' ', Pen.PatternMm(p.Dash).Select(d => Number(d))).Append("] 0 d\n");
            pen = p;
        }

        if (wantedFill is { } ink && ink != fill)
        {
            text.Append(Colour(ink)).Append(" rg\n");
            fill = ink;
        }
    }

    private void Move(Place place) => text.Append(At(place)).Append(" m\n");

    private void Line(Place place) => text.Append(At(place)).Append(" l\n");

    // The inks of the SVG writer, each of red, green and blue as a share of 1.
    private static string Colour(Ink ink) => ink switch
    {
        Ink.Pale => "0.467 0.451 0.42",
        Ink.Accent => "0.612 0.227 0.071",
        Ink.Wash => "0.914 0.902 0.875",
        Ink.Paper => "1 1 1",
        _ => "0.106 0.102 0.094",
    };

    private static string At(Place p) => Number(p.X) + " " + Number(p.Y);

    // Thousandths of a millimetre: the noise of another machine's floating point does not change a byte.
    private static string Number(double value, int digits = 3)
    {
        if (!double.IsFinite(value))
        {
            throw new InvalidOperationException("A picture holds a coordinate that is not a finite number.");
        }

        double rounded = Math.Round(value, digits);
        return (rounded == 0 ? 0 : rounded).ToString("0.######", CultureInfo.InvariantCulture);
    }
}
