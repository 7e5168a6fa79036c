using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Dxf;

/// <summary>Writes a picture as DXF of release 12 (AC1009), in millimetres. The same picture gives the same bytes.</summary>
/// <remarks>
/// After the DXF reference of release 12 (group codes from memory; read back in tests by an independent reader).
/// Release 12 has no filled outlines and no units: outlines are written without their fill, fills of paper are left
/// out, and a comment states the unit. Layer names are cut to the letters that the release allows. Texts are ASCII:
/// signs are written as the release has them, other letters as \U+ and four hexadecimal digits, which most drawing
/// programs turn back and some show as they stand.
/// </remarks>
public static class DxfWriter
{
    /// <summary>The picture as DXF text.</summary>
    /// <param name="picture">The picture.</param>
    public static string Write(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var text = new StringBuilder(8192);
        Pair(text, 999, "Units: millimetres");
        Header(text, picture);
        Tables(text, picture);
        Pair(text, 0, "SECTION");
        Pair(text, 2, "ENTITIES");
        foreach (Mark mark in picture.Marks)
        {
            Entity(text, mark);
        }

        Pair(text, 0, "ENDSEC");
        Pair(text, 0, "EOF");
        return text.ToString();
    }

    private static void Header(StringBuilder text, Picture picture)
    {
        Pair(text, 0, "SECTION");
        Pair(text, 2, "HEADER");
        Pair(text, 9, "$ACADVER");
        Pair(text, 1, "AC1009");
        Pair(text, 9, "$EXTMIN");
        Place(text, 10, new(0, 0));
        Pair(text, 9, "$EXTMAX");
        Place(text, 10, new(picture.WidthMm, picture.HeightMm));
        Pair(text, 9, "$LTSCALE");
        Pair(text, 40, "1.0");
        Pair(text, 0, "ENDSEC");
    }

    private static void Tables(StringBuilder text, Picture picture)
    {
        Pair(text, 0, "SECTION");
        Pair(text, 2, "TABLES");
        Dash[] dashes = Enum.GetValues<Dash>();
        Pair(text, 0, "TABLE");
        Pair(text, 2, "LTYPE");
        Whole(text, 70, dashes.Length);
        foreach (Dash dash in dashes)
        {
            IReadOnlyList<double> pattern = Pen.PatternMm(dash);
            Pair(text, 0, "LTYPE");
            Pair(text, 2, LineType(dash));
            Whole(text, 70, 0);
            Pair(text, 3, "");
            Whole(text, 72, 65);
            Whole(text, 73, pattern.Count);
            Number(text, 40, pattern.Sum());
            for (int i = 0; i < pattern.Count; i++)
            {
                Number(text, 49, i % 2 == 0 ? pattern[i] : -pattern[i]);
            }
        }

        Pair(text, 0, "ENDTAB");
        var layers = picture.Layers.Select(LayerName).Prepend("0").Distinct(StringComparer.Ordinal).ToList();
        Pair(text, 0, "TABLE");
        Pair(text, 2, "LAYER");
        Whole(text, 70, layers.Count);
        foreach (string layer in layers)
        {
            Pair(text, 0, "LAYER");
            Pair(text, 2, layer);
            Whole(text, 70, 0);
            Whole(text, 62, 7);
            Pair(text, 6, "CONTINUOUS");
        }

        Pair(text, 0, "ENDTAB");
        Pair(text, 0, "ENDSEC");
    }

    private static void Entity(StringBuilder text, Mark mark)
    {
        switch (mark)
        {
            case LineMark m:
                Start(text, "LINE", m, m.Pen);
                Place(text, 10, m.From);
                Place(text, 11, m.To);
                break;
            case PolylineMark m when m.Places.Count > 1 && (m.Pen is not null || m.Fill is not (null or Ink.Paper)):
                Start(text, "POLYLINE", m, m.Pen);
                Whole(text, 66, 1);
                Place(text, 10, new(0, 0));
                Whole(text, 70, m.Closed ? 1 : 0);
                foreach (Place p in m.Places)
                {
                    Start(text, "VERTEX", m, pen: null);
                    Place(text, 10, p);
                }

                Start(text, "SEQEND", m, pen: null);
                break;
            case CircleMark m when m.RadiusMm > 0 && (m.Pen is not null || m.Fill is not (null or Ink.Paper)):
                Start(text, "CIRCLE", m, m.Pen);
                Place(text, 10, m.Centre);
                Number(text, 40, m.RadiusMm);
                break;
            case ArcMark m:
                Start(text, "ARC", m, m.Pen);
                Place(text, 10, m.Centre);
                Number(text, 40, m.RadiusMm);
                Number(text, 50, double.RadiansToDegrees(m.StartRadians));
                Number(text, 51, double.RadiansToDegrees(m.EndRadians));
                break;
            case TextMark m:
                Text(text, m);
                break;
            case PointMark m:
                Start(text, "POINT", m, pen: null);
                Place(text, 10, m.At);
                break;
        }
    }

    private static void Text(StringBuilder text, TextMark m)
    {
        Start(text, "TEXT", m, pen: null);
        Place(text, 10, m.At);
        Number(text, 40, m.HeightMm);
        Pair(text, 1, Encoded(m.Text));
        if (m.AngleRadians != 0)
        {
            Number(text, 50, double.RadiansToDegrees(m.AngleRadians));
        }

        int across = (int)m.Across, level = m.Level switch { Level.Middle => 2, Level.Top => 3, _ => 0 };
        if (across != 0 || level != 0)
        {
            Whole(text, 72, across);
            Place(text, 11, m.At);
            Whole(text, 73, level);
        }
    }

    private static void Start(StringBuilder text, string type, Mark mark, Pen? pen)
    {
        Pair(text, 0, type);
        Pair(text, 8, LayerName(mark.Layer));
        if (pen is { Dash: not Dash.Solid } p)
        {
            Pair(text, 6, LineType(p.Dash));
        }
    }

    private static void Place(StringBuilder text, int code, Place p)
    {
        Number(text, code, p.X);
        Number(text, code + 10, p.Y);
        Number(text, code + 20, 0);
    }

    private static void Number(StringBuilder text, int code, double value)
    {
        if (!double.IsFinite(value))
        {
            throw new InvalidOperationException("A picture holds a number that is not finite.");
        }

        double rounded = Math.Round(value, 6);
        Pair(text, code, (rounded == 0 ? 0 : rounded).ToString("0.0#####", CultureInfo.InvariantCulture));
    }

    private static void Whole(StringBuilder text, int code, int value) => Pair(text, code, value.ToString(CultureInfo.InvariantCulture));

    private static void Pair(StringBuilder text, int code, string value) =>
        text.Append(code.ToString(CultureInfo.InvariantCulture).PadLeft(3)).Append("\r\n").Append(value).Append("\r\n");

    private static string LineType(Dash dash) => dash switch
    {
        Dash.Dashed => "DASHED",
        Dash.Dotted => "DOT",
        Dash.DashDot => "DASHDOT",
        Dash.LongDash => "LONGDASH",
        _ => "CONTINUOUS",
    };

    private static string LayerName(string name)
    {
        string kept = string.Concat(name.ToUpperInvariant().Take(31).Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '$' ? c : '_'));
        return kept.Length == 0 ? "0" : kept;
    }

    private static string Encoded(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            _ = c switch
            {
                '°' => safe.Append("%%d"),
                '±' => safe.Append("%%p"),
                '⌀' => safe.Append("%%c"),
                '\u2212' => safe.Append('-'),
                '·' => safe.Append('.'),
                '…' => safe.Append("..."),
                _ when char.IsControl(c) => safe.Append(' '),
                > '~' => safe.Append("\\U+").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture)),
                _ => safe.Append(c),
            };
        }

        return safe.ToString();
    }
}
