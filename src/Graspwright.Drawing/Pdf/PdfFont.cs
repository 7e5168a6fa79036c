using System.Globalization;
using System.Text;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Drawing.Pdf;

/// <summary>Writes a cut font into a PDF file, so that any reader shows it and its text can be searched and read aloud.</summary>
/// <source key="pdf-1-7">Sections 9.7 (composite fonts), 9.8 (descriptors), 9.9 (embedded font programs) and 9.10.3 (ToUnicode).</source>
internal static class PdfFont
{
    /// <summary>Adds the font's objects and tells the number of the one that pages name.</summary>
    /// <param name="file">The file.</param>
    /// <param name="subset">The cut font.</param>
    public static int Add(PdfFile file, FontSubset subset)
    {
        TrueTypeFont font = subset.Font;
        string name = Tag(subset) + "+" + font.Name;
        int program = file.AddStream(subset.Bytes, string.Create(CultureInfo.InvariantCulture, $" /Length1 {subset.Bytes.Length}"));
        int descriptor = file.Add(string.Create(CultureInfo.InvariantCulture,
            $"<< /Type /FontDescriptor /FontName /{name} /Flags 32 /FontBBox [{Share(font.Box.Left)} {Share(font.Box.Bottom)} {Share(font.Box.Right)} {Share(font.Box.Top)}] /ItalicAngle 0 /Ascent {Share(font.Ascent)} /Descent {Share(font.Descent)} /CapHeight {Share(font.CapitalHeight)} /StemV 80 /FontFile2 {program} 0 R >>"));
        string widths = string.Join(' ', Enumerable.Range(0, subset.LetterGlyphs).Select(i => Share(subset.Advance(i))));
        int outlines = file.Add(string.Create(CultureInfo.InvariantCulture,
            $"<< /Type /Font /Subtype /CIDFontType2 /BaseFont /{name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor {descriptor} 0 R /CIDToGIDMap /Identity /DW 1000 /W [0 [{widths}]] >>"));
        int letters = file.AddStream(Encoding.Latin1.GetBytes(Letters(subset)));
        return file.Add(string.Create(CultureInfo.InvariantCulture,
            $"<< /Type /Font /Subtype /Type0 /BaseFont /{name} /Encoding /Identity-H /DescendantFonts [{outlines} 0 R] /ToUnicode {letters} 0 R >>"));

        string Share(int units) => (1000.0 * units / font.UnitsPerEm).ToString("0.###", CultureInfo.InvariantCulture);
    }

    // Six capitals that tell one cut of a font from another; from the letters in it, so that they are always the same.
    private static string Tag(FontSubset subset)
    {
        ulong sum = 14695981039346656037;
        foreach (Rune letter in subset.Letters)
        {
            sum = unchecked((sum ^ (uint)letter.Value) * 1099511628211);
        }

        return string.Create(6, sum, static (tag, value) =>
        {
            for (int i = 0; i < tag.Length; i++)
            {
                tag[i] = (char)('A' + value % 26);
                value /= 26;
            }
        });
    }

    private static string Letters(FontSubset subset)
    {
        var text = new StringBuilder();
        text.Append("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n")
            .Append("/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n");
        const int longestRun = 100; // allowed in one block
        foreach (Rune[] run in subset.Letters.Where(subset.Font.Has).Chunk(longestRun))
        {
            text.Append(CultureInfo.InvariantCulture, $"{run.Length} beginbfchar\n");
            foreach (Rune letter in run)
            {
                text.Append(CultureInfo.InvariantCulture, $"<{subset.Glyph(letter):X4}> <{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(letter.ToString()))}>\n");
            }

            text.Append("endbfchar\n");
        }

        return text.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend").ToString();
    }
}
