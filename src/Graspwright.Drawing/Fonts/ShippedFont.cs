using System.Text;

namespace Graspwright.Drawing.Fonts;

/// <summary>The font that comes with the program, so that pages look alike on every machine.</summary>
public static class ShippedFont
{
    private static readonly Lazy<TrueTypeFont> RegularFont = new(() => Load("Inter-Regular"));
    private static readonly Lazy<TrueTypeFont> BoldFont = new(() => Load("Inter-Bold"));

    /// <summary>The upright weight for text.</summary>
    public static TrueTypeFont Regular => RegularFont.Value;

    /// <summary>The bold weight for headings.</summary>
    public static TrueTypeFont Bold => BoldFont.Value;

    /// <summary>Its licence, with the names of its authors.</summary>
    public static string Licence => Encoding.UTF8.GetString(Bytes("Font-licence.txt"));

    /// <summary>The weight for a text.</summary>
    /// <param name="strong">Bold.</param>
    public static TrueTypeFont Of(bool strong) => strong ? Bold : Regular;

    /// <summary>Width of a line of text [mm].</summary>
    /// <param name="text">One line.</param>
    /// <param name="heightMm">Height of the capitals [mm].</param>
    /// <param name="strong">Bold.</param>
    public static double WidthMm(string text, double heightMm, bool strong = false) => Of(strong).WidthMm(text, heightMm);

    /// <summary>Breaks a text into lines no wider than a width. Line breaks in the text are kept; a longer word is cut.</summary>
    /// <param name="text">The text.</param>
    /// <param name="widthMm">Greatest width [mm], above 0.</param>
    /// <param name="heightMm">Height of the capitals [mm].</param>
    /// <param name="strong">Bold.</param>
    public static IReadOnlyList<string> Wrap(string text, double widthMm, double heightMm, bool strong = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(widthMm);
        TrueTypeFont font = Of(strong);
        var lines = new List<string>();
        foreach (string part in text.Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n'))
        {
            string line = "";
            foreach (string word in part.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(font, w, widthMm, heightMm)))
            {
                string longer = line.Length == 0 ? word : line + " " + word;
                if (line.Length > 0 && font.WidthMm(longer, heightMm) > widthMm)
                {
                    lines.Add(line);
                    line = word;
                }
                else
                {
                    line = longer;
                }
            }

            lines.Add(line);
        }

        return lines;
    }

    private static IEnumerable<string> Pieces(TrueTypeFont font, string word, double widthMm, double heightMm)
    {
        var piece = new StringBuilder();
        double width = 0;
        foreach (Rune letter in word.EnumerateRunes())
        {
            double own = font.Advance(font.Glyph(letter)) * heightMm / font.CapitalHeight;
            if (piece.Length > 0 && width + own > widthMm)
            {
                yield return piece.ToString();
                piece.Clear();
                width = 0;
            }

            piece.Append(letter.ToString());
            width += own;
        }

        yield return piece.ToString();
    }

    private static TrueTypeFont Load(string name) => new(name, Bytes(name + ".ttf"));

    private static byte[] Bytes(string resource)
    {
        using Stream stream = typeof(ShippedFont).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The program was built without {resource}.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
