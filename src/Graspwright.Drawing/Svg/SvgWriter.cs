using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;

namespace Graspwright.Drawing.Svg;

/// <summary>Writes a picture as SVG 1.1, one user unit to the millimetre. The same picture gives the same bytes.</summary>
/// <remarks>
/// Inks are written as presentation attributes, so that the picture needs no style sheet to print. A style sheet
/// lightens them where a screen asks for a dark scheme; paper is left alone. Coordinates are rounded to 0.01 mm, so that the noise of another machine's floating point does not change a byte.
/// </remarks>
public static class SvgWriter
{
    private const string Dark =
        "@media screen and (prefers-color-scheme:dark){" +
        ".gs-ink{stroke:#ece8df}.gf-ink{fill:#ece8df}.gs-pale{stroke:#9a968c}.gf-pale{fill:#a8a498}" +
        ".gs-accent{stroke:#f0a070}.gf-accent{fill:#f0a070}.gs-wash{stroke:#34373b}.gf-wash{fill:#34373b}" +
        ".gs-paper{stroke:#16181b}.gf-paper{fill:#16181b}}";

    /// <summary>The picture as SVG text.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="id">Prefix of the ids inside, for several pictures on one page.</param>
    public static string Write(Picture picture, string id = "picture")
    {
        ArgumentNullException.ThrowIfNull(picture);
        var text = new StringBuilder(4096);
        string w = Number(picture.WidthMm), h = Number(picture.HeightMm), key = Escape(id);
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"").Append(w).Append("mm\" height=\"").Append(h)
            .Append("mm\" viewBox=\"0 0 ").Append(w).Append(' ').Append(h).Append("\" role=\"img\" aria-labelledby=\"")
            .Append(key).Append("-title ").Append(key).Append("-desc\">\n")
            .Append("<title id=\"").Append(key).Append("-title\">").Append(Escape(picture.Title)).Append("</title>\n")
            .Append("<desc id=\"").Append(key).Append("-desc\">").Append(Escape(picture.Description)).Append("</desc>\n")
            .Append("<style>").Append(Dark).Append("</style>\n")
            .Append("<rect width=\"").Append(w).Append("\" height=\"").Append(h).Append('"').Append(Paint(Ink.Paper, null, coloured: true)).Append("/>\n");
        string? layer = null;
        foreach (Mark mark in picture.Marks)
        {
            if (!string.Equals(layer, mark.Layer, StringComparison.Ordinal))
            {
                text.Append(layer is null ? "" : "</g>\n").Append("<g data-layer=\"").Append(Escape(mark.Layer))
                    .Append("\" fill=\"none\" stroke-linecap=\"butt\" stroke-linejoin=\"round\" font-family=\"Helvetica, Arial, sans-serif\">\n");
                layer = mark.Layer;
            }

            Append(text, mark, picture.HeightMm, coloured: true);
        }

        return text.Append(layer is null ? "" : "</g>\n").Append("</svg>\n").ToString();
    }

    /// <summary>The picture as a part of an HTML page: no size of its own and no style sheet; the page's gives each ink its colour by the classes <c>gs-</c> and <c>gf-</c>.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="id">Prefix of the ids inside, unlike that of any other picture on the page.</param>
    /// <param name="without">Layer at the top of the picture that is left out, with the room it takes; empty = none.</param>
    public static string Inline(Picture picture, string id, string without = "")
    {
        ArgumentNullException.ThrowIfNull(picture);
        string key = Escape(id);
        double cut = picture.Marks.OfType<TextMark>().Where(m => m.Layer == without).Select(m => picture.HeightMm - m.At.Y + 1).DefaultIfEmpty(0).Max();
        return new StringBuilder(8192).Append("<svg class=\"drawing\" viewBox=\"0 ").Append(Number(cut)).Append(' ').Append(Number(picture.WidthMm)).Append(' ').Append(Number(picture.HeightMm - cut))
            .Append("\" role=\"img\" aria-labelledby=\"").Append(key).Append("-title ").Append(key).Append("-desc\">")
            .Append("<title id=\"").Append(key).Append("-title\">").Append(Escape(picture.Title)).Append("</title><desc id=\"").Append(key).Append("-desc\">")
            .Append(Escape(picture.Description)).Append("</desc>").Append(Marks(picture, without)).Append("</svg>").ToString();
    }

    /// <summary>The marks alone, as they stand inside <see cref="Inline"/>, to be put into a drawing that is on the page already.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="without">Layer that is left out; empty = none.</param>
    public static string Marks(Picture picture, string without = "")
    {
        ArgumentNullException.ThrowIfNull(picture);
        StringBuilder text = new(8192);
        string? layer = null;
        foreach (Mark mark in picture.Marks.Where(m => m.Layer != without))
        {
            if (!string.Equals(layer, mark.Layer, StringComparison.Ordinal))
            {
                text.Append(layer is null ? "" : "</g>").Append("<g data-layer=\"").Append(Escape(mark.Layer)).Append("\" fill=\"none\">");
                layer = mark.Layer;
            }

            Append(text, mark, picture.HeightMm, coloured: false);
        }

        return text.Append(layer is null ? "" : "</g>").ToString();
    }

    private static void Append(StringBuilder text, Mark mark, double height, bool coloured)
    {
        switch (mark)
        {
            case LineMark m:
                text.Append("<path d=\"M").Append(At(m.From, height)).Append('L').Append(At(m.To, height)).Append('"').Append(Paint(null, m.Pen, coloured)).Append("/>\n");
                break;
            case PolylineMark { Places.Count: > 0 } m:
                text.Append("<path d=\"M").AppendJoin('L', m.Places.Select(p => At(p, height))).Append(m.Closed ? "Z\"" : "\"")
                    .Append(Paint(m.Fill, m.Pen, coloured)).Append("/>\n");
                break;
            case CircleMark m:
                text.Append("<circle cx=\"").Append(Number(m.Centre.X)).Append("\" cy=\"").Append(Number(height - m.Centre.Y)).Append("\" r=\"")
                    .Append(Number(m.RadiusMm)).Append('"').Append(Paint(m.Fill, m.Pen, coloured)).Append("/>\n");
                break;
            case ArcMark m:
                AppendArc(text, m, height, coloured);
                break;
            case TextMark m:
                AppendText(text, m, height, coloured);
                break;
            case PointMark m:
                text.Append("<circle cx=\"").Append(Number(m.At.X)).Append("\" cy=\"").Append(Number(height - m.At.Y)).Append("\" r=\"0.4\"").Append(Paint(Ink.Ink, null, coloured)).Append("/>\n");
                break;
        }
    }

    private static void AppendArc(StringBuilder text, ArcMark m, double height, bool coloured)
    {
        double span = m.EndRadians - m.StartRadians;
        span -= Math.Tau * Math.Floor(span / Math.Tau);
        Place from = m.Centre.Toward(m.StartRadians, m.RadiusMm), to = m.Centre.Toward(m.EndRadians, m.RadiusMm);
        string r = Number(m.RadiusMm);
        text.Append("<path d=\"M").Append(At(from, height)).Append('A').Append(r).Append(' ').Append(r).Append(" 0 ")
            .Append(span > Math.PI ? '1' : '0').Append(" 0 ").Append(At(to, height)).Append('"').Append(Paint(null, m.Pen, coloured)).Append("/>\n");
    }

    private static void AppendText(StringBuilder text, TextMark m, double height, bool coloured)
    {
        double drop = m.Level switch { Level.Middle => 0.5 * m.HeightMm, Level.Top => m.HeightMm, _ => 0 };
        Place at = m.At.Toward(m.AngleRadians - Math.PI / 2, drop);
        string x = Number(at.X), y = Number(height - at.Y);
        text.Append("<text x=\"").Append(x).Append("\" y=\"").Append(y).Append("\" font-size=\"").Append(Number(m.HeightMm / Lettering.CapitalShare)).Append('"')
            .Append(m.Across switch { Across.Middle => " text-anchor=\"middle\"", Across.Right => " text-anchor=\"end\"", _ => "" })
            .Append(m.Strong ? " font-weight=\"bold\"" : "").Append(Paint(m.Ink, null, coloured));
        if (m.AngleRadians != 0)
        {
            text.Append(" transform=\"rotate(").Append(Number(-double.RadiansToDegrees(m.AngleRadians))).Append(' ').Append(x).Append(' ').Append(y).Append(")\"");
        }

        text.Append('>').Append(Escape(m.Text)).Append("</text>\n");
    }

    private static string Paint(Ink? fill, Pen? pen, bool coloured)
    {
        string classes = string.Join(' ', new[] { fill is { } f ? "gf-" + Name(f) : "", pen is { } q ? "gs-" + Name(q.Ink) : "" }.Where(c => c.Length > 0));
        string paint = classes.Length == 0 ? "" : $" class=\"{classes}\"";
        if (coloured && fill is { } inside)
        {
            paint += $" fill=\"{Colour(inside)}\"";
        }

        if (pen is { } p)
        {
            IReadOnlyList<double> pattern = Pen.PatternMm(p.Dash);
            string dash = pattern.Count == 0 ? "" : " stroke-dasharray=\"" + string.Join(' ', pattern.Select(Number)) + "\"";
            paint += $"{(coloured ? $" stroke=\"{Colour(p.Ink)}\"" : "")} stroke-width=\"{Number(p.WidthMm)}\"{dash}";
        }

        return paint;
    }

    private static string Name(Ink ink) => ink switch { Ink.Pale => "pale", Ink.Accent => "accent", Ink.Wash => "wash", Ink.Paper => "paper", _ => "ink" };

    private static string Colour(Ink ink) => ink switch { Ink.Pale => "#77736b", Ink.Accent => "#9c3a12", Ink.Wash => "#e9e6df", Ink.Paper => "#ffffff", _ => "#1b1a18" };

    private static string At(Place p, double height) => Number(p.X) + " " + Number(height - p.Y);

    private static string Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new InvalidOperationException("A picture holds a coordinate that is not a finite number.");
        }

        double rounded = Math.Round(value, 2);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }

    private static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            _ = c switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                _ when char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]) => safe.Append(c).Append(text[++i]),
                _ when c < ' ' || char.IsSurrogate(c) || c is '\uFFFE' or '\uFFFF' => safe.Append(' '),
                _ => safe.Append(c),
            };
        }

        return safe.ToString();
    }
}
