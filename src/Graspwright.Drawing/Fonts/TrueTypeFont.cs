using System.Buffers.Binary;
using System.Text;

namespace Graspwright.Drawing.Fonts;

/// <summary>A font of outlines, read from a TrueType file: sizes, widths and the outline of each letter.</summary>
/// <remarks>Reads what pages need of the tables head, hhea, maxp, hmtx, loca, glyf, OS/2 and cmap (format 12). It is meant for the shipped fonts, whose bytes are known; it doesn't defend itself against damaged files.</remarks>
/// <source key="opentype">Chapters on the tables named.</source>
public sealed class TrueTypeFont
{
    private readonly byte[] data;
    private readonly Dictionary<string, (int Offset, int Length)> tables = new(StringComparer.Ordinal);
    private readonly Dictionary<int, int> glyphs = [];
    private readonly int wideMetrics;
    private readonly bool longPlaces;

    /// <summary>Reads a font.</summary>
    /// <param name="name">Name that pages give it: letters and hyphens.</param>
    /// <param name="data">Bytes of the file.</param>
    /// <exception cref="InvalidDataException">A table that pages need is missing.</exception>
    public TrueTypeFont(string name, byte[] data)
    {
        ArgumentNullException.ThrowIfNull(data);
        Name = name;
        this.data = data;
        for (int i = 0; i < Word(4); i++)
        {
            int at = 12 + 16 * i;
            tables[Encoding.ASCII.GetString(data, at, 4)] = (Long(at + 8), Long(at + 12));
        }

        int head = Table("head");
        UnitsPerEm = Word(head + 18);
        Box = (Short(head + 36), Short(head + 38), Short(head + 40), Short(head + 42));
        longPlaces = Short(head + 50) == 1;
        Ascent = Short(Table("hhea") + 4);
        Descent = Short(Table("hhea") + 6);
        wideMetrics = Word(Table("hhea") + 34);
        CapitalHeight = Short(Table("OS/2") + 88);
        ReadLetters(Table("cmap"));
    }

    /// <summary>Name that pages give it.</summary>
    public string Name { get; }

    /// <summary>Units of the outlines to one font size.</summary>
    public int UnitsPerEm { get; }

    /// <summary>Height of the capitals [font units].</summary>
    public int CapitalHeight { get; }

    /// <summary>Height above the foot of the letters that lines of text leave room for [font units].</summary>
    public int Ascent { get; }

    /// <summary>Depth below the foot of the letters, negative [font units].</summary>
    public int Descent { get; }

    /// <summary>Box around all outlines [font units].</summary>
    public (int Left, int Bottom, int Right, int Top) Box { get; }

    /// <summary>Whether the font has a letter.</summary>
    /// <param name="letter">The letter.</param>
    public bool Has(Rune letter) => glyphs.ContainsKey(letter.Value);

    /// <summary>Number of the outline of a letter; 0, an empty box, where the font has none.</summary>
    /// <param name="letter">The letter.</param>
    public int Glyph(Rune letter) => glyphs.GetValueOrDefault(letter.Value);

    /// <summary>Width of an outline, with the space around it [font units].</summary>
    /// <param name="glyph">Number of the outline.</param>
    public int Advance(int glyph) => Word(Table("hmtx") + 4 * Math.Min(glyph, wideMetrics - 1));

    /// <summary>Width of a line of text [mm].</summary>
    /// <param name="text">One line.</param>
    /// <param name="heightMm">Height of the capitals [mm].</param>
    public double WidthMm(string text, double heightMm)
    {
        ArgumentNullException.ThrowIfNull(text);
        long units = 0;
        foreach (Rune letter in text.EnumerateRunes())
        {
            units += Advance(Glyph(letter));
        }

        return units * heightMm / CapitalHeight;
    }

    /// <summary>Space left of an outline [font units].</summary>
    internal int Bearing(int glyph) => glyph < wideMetrics
        ? Short(Table("hmtx") + 4 * glyph + 2)
        : Short(Table("hmtx") + 4 * wideMetrics + 2 * (glyph - wideMetrics));

    /// <summary>Bytes of an outline; none for a space.</summary>
    internal ReadOnlySpan<byte> Outline(int glyph)
    {
        int from = Place(glyph), to = Place(glyph + 1);
        return data.AsSpan(Table("glyf") + from, to - from);
    }

    /// <summary>A copy of a table; empty where the font lacks it.</summary>
    internal byte[] Copy(string tag) => tables.TryGetValue(tag, out var t) ? data.AsSpan(t.Offset, t.Length).ToArray() : [];

    private int Place(int glyph) => longPlaces ? Long(Table("loca") + 4 * glyph) : 2 * Word(Table("loca") + 2 * glyph);

    private int Table(string tag) => tables.TryGetValue(tag, out var t) ? t.Offset : throw new InvalidDataException($"The font {Name} lacks the table '{tag}'.");

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(at));

    private int Short(int at) => BinaryPrimitives.ReadInt16BigEndian(data.AsSpan(at));

    private int Long(int at) => BinaryPrimitives.ReadInt32BigEndian(data.AsSpan(at));

    private void ReadLetters(int cmap)
    {
        int table = 0;
        for (int i = 0; i < Word(cmap + 2); i++)
        {
            int at = cmap + Long(cmap + 8 + 8 * i);
            table = Word(at) == 12 ? at : table;
        }

        if (table == 0)
        {
            throw new InvalidDataException($"The font {Name} lacks a table of letters of format 12.");
        }

        for (int group = 0; group < Long(table + 12); group++)
        {
            int at = table + 16 + 12 * group, first = Long(at), last = Long(at + 4), glyph = Long(at + 8);
            for (int letter = first; letter <= last; letter++)
            {
                glyphs[letter] = glyph + letter - first;
            }
        }
    }
}
