using System.Buffers.Binary;
using System.Text;

namespace Graspwright.Drawing.Fonts;

/// <summary>A font cut down to the letters that are used, numbered anew.</summary>
/// <remarks>Outlines made of other outlines bring those with them. The same letters give the same bytes, whatever their order of use.</remarks>
/// <source key="opentype">Chapters glyf, loca, head, hhea, hmtx, maxp, and the table directory with its check sums.</source>
internal sealed class FontSubset
{
    private readonly List<int> glyphs = [0];
    private readonly Dictionary<int, int> numbers = new() { [0] = 0 };

    /// <summary>Cuts a font down.</summary>
    /// <param name="font">The font.</param>
    /// <param name="letters">Letters used.</param>
    public FontSubset(TrueTypeFont font, IEnumerable<Rune> letters)
    {
        Font = font;
        Letters = [.. letters.Distinct().Order()];
        foreach (Rune letter in Letters)
        {
            Number(font.Glyph(letter));
        }

        LetterGlyphs = glyphs.Count;
        Bytes = Build();
    }

    /// <summary>The whole font.</summary>
    public TrueTypeFont Font { get; }

    /// <summary>Letters in it, in order.</summary>
    public IReadOnlyList<Rune> Letters { get; }

    /// <summary>How many outlines stand for letters (number 0, the empty box, among them); those they are made of follow.</summary>
    public int LetterGlyphs { get; }

    /// <summary>The cut font as a TrueType file.</summary>
    public byte[] Bytes { get; }

    /// <summary>New number of the outline of a letter.</summary>
    /// <param name="letter">A letter in it.</param>
    public int Glyph(Rune letter) => numbers[Font.Glyph(letter)];

    /// <summary>Width of an outline [font units].</summary>
    /// <param name="number">New number.</param>
    public int Advance(int number) => Font.Advance(glyphs[number]);

    private int Number(int glyph)
    {
        if (!numbers.TryGetValue(glyph, out int number))
        {
            number = glyphs.Count;
            numbers[glyph] = number;
            glyphs.Add(glyph);
        }

        return number;
    }

    private byte[] Build()
    {
        var outlines = new List<byte[]>();
        for (int i = 0; i < glyphs.Count; i++) // grows as outlines made of others are met
        {
            byte[] outline = Font.Outline(glyphs[i]).ToArray();
            RenumberParts(outline);
            outlines.Add(outline);
        }

        byte[] places = new byte[4 * (outlines.Count + 1)], widths = new byte[4 * outlines.Count];
        var shapes = new MemoryStream();
        for (int i = 0; i < outlines.Count; i++)
        {
            BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * i), (int)shapes.Length);
            shapes.Write(outlines[i]);
            Pad(shapes);
            BinaryPrimitives.WriteUInt16BigEndian(widths.AsSpan(4 * i), (ushort)Font.Advance(glyphs[i]));
            BinaryPrimitives.WriteInt16BigEndian(widths.AsSpan(4 * i + 2), (short)Font.Bearing(glyphs[i]));
        }

        BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * outlines.Count), (int)shapes.Length);
        byte[] head = Font.Copy("head"), hhea = Font.Copy("hhea"), maxp = Font.Copy("maxp");
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(8), 0);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);
        BinaryPrimitives.WriteUInt16BigEndian(hhea.AsSpan(34), (ushort)outlines.Count);
        BinaryPrimitives.WriteUInt16BigEndian(maxp.AsSpan(4), (ushort)outlines.Count);
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["glyf"] = shapes.ToArray(), ["head"] = head, ["hhea"] = hhea, ["hmtx"] = widths, ["loca"] = places, ["maxp"] = maxp,
        };
        foreach (string tag in (string[])["cvt ", "fpgm", "prep"])
        {
            byte[] table = Font.Copy(tag);
            if (table.Length > 0)
            {
                tables[tag] = table;
            }
        }

        return Assemble(tables);
    }

    // An outline with a negative number of contours is a list of other outlines: flags, number, then places and scales.
    private void RenumberParts(byte[] outline)
    {
        const int wordPlaces = 0x1, oneScale = 0x8, more = 0x20, twoScales = 0x40, matrix = 0x80;
        if (outline.Length < 10 || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
        {
            return;
        }

        int at = 10, flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at));
            int part = BinaryPrimitives.ReadUInt16BigEndian(outline.AsSpan(at + 2));
            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at + 2), (ushort)Number(part));
            at += 4 + ((flags & wordPlaces) != 0 ? 4 : 2);
            at += (flags & oneScale) != 0 ? 2 : (flags & twoScales) != 0 ? 4 : (flags & matrix) != 0 ? 8 : 0;
        }
        while ((flags & more) != 0);
    }

    private static byte[] Assemble(SortedDictionary<string, byte[]> tables)
    {
        int count = tables.Count, power = 1, log = 0;
        while (2 * power <= count)
        {
            power *= 2;
            log++;
        }

        var file = new MemoryStream();
        byte[] start = new byte[12 + 16 * count];
        BinaryPrimitives.WriteInt32BigEndian(start, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(start.AsSpan(4), (ushort)count);
        BinaryPrimitives.WriteUInt16BigEndian(start.AsSpan(6), (ushort)(16 * power));
        BinaryPrimitives.WriteUInt16BigEndian(start.AsSpan(8), (ushort)log);
        BinaryPrimitives.WriteUInt16BigEndian(start.AsSpan(10), (ushort)(16 * (count - power)));
        file.Write(start);
        int entry = 12, head = 0;
        foreach ((string tag, byte[] table) in tables)
        {
            Encoding.ASCII.GetBytes(tag, start.AsSpan(entry));
            BinaryPrimitives.WriteUInt32BigEndian(start.AsSpan(entry + 4), Sum(table));
            BinaryPrimitives.WriteInt32BigEndian(start.AsSpan(entry + 8), (int)file.Length);
            BinaryPrimitives.WriteInt32BigEndian(start.AsSpan(entry + 12), table.Length);
            head = tag == "head" ? (int)file.Length : head;
            file.Write(table);
            Pad(file);
            entry += 16;
        }

        byte[] all = file.ToArray();
        start.CopyTo(all, 0);
        BinaryPrimitives.WriteUInt32BigEndian(all.AsSpan(head + 8), unchecked(0xB1B0AFBA - Sum(all)));
        return all;
    }

    private static uint Sum(byte[] table)
    {
        uint sum = 0;
        for (int i = 0; i < table.Length; i++)
        {
            sum = unchecked(sum + ((uint)table[i] << (8 * (3 - (i & 3)))));
        }

        return sum;
    }

    private static void Pad(MemoryStream stream)
    {
        while (stream.Length % 4 != 0)
        {
            stream.WriteByte(0);
        }
    }
}
