using System.Buffers.Binary;
using System.Text;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Reading;

/// <summary>STL: 80 bytes of header, a count and 50 bytes a triangle; or text.</summary>
internal static class StlReading
{
    private const int Head = 84, Size = 50;

    public static RawSurface Read(ReadOnlySpan<byte> bytes)
    {
        bool solid = bytes.Length >= 5 && Encoding.ASCII.GetString(bytes[..5]).Equals("solid", StringComparison.OrdinalIgnoreCase);
        long count = bytes.Length >= Head ? BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]) : -1;
        // Some programs begin binary files with "solid" as well: the length decides.
        if (solid && Head + Size * count != bytes.Length && bytes[..Math.Min(bytes.Length, 2048)].IndexOf("facet"u8) >= 0)
        {
            return new(Text(bytes), "STL, text", Metres: false);
        }

        return new(Binary(bytes, count), "STL, binary", Metres: false);
    }

    private static Mesh Binary(ReadOnlySpan<byte> bytes, long count)
    {
        if (count < 0)
        {
            throw new FormFaultException($"byte {bytes.Length}", "the end of the file in the header", "84 bytes of header", "The file was cut off: copy or write it again.");
        }

        long whole = (bytes.Length - Head) / Size, rest = (bytes.Length - Head) % Size;
        if (count > whole)
        {
            throw new FormFaultException($"byte {bytes.Length}", $"the end of the file after {whole} triangles of {count} in the header", "all of the triangles that the header counts", "The file was cut off, or is no STL: copy or write it again.");
        }

        if (count < whole || rest != 0)
        {
            throw new FormFaultException("byte 80", $"a count of {count} triangles in a file long enough for {whole}{(rest != 0 ? $" and {rest} bytes" : "")}", "a count that fits the length", "The header is wrong: write the file again.");
        }

        if (count > SurfaceFile.MostFaces)
        {
            throw SurfaceFile.TooMany("byte 80");
        }

        int[] corners = new int[3 * count];
        PointTable points = new((int)(count / 2 + 16));
        for (int f = 0; f < count; f++)
        {
            ReadOnlySpan<byte> at = bytes.Slice(Head + Size * f + 12, 36);
            for (int k = 0; k < 3; k++)
            {
                corners[3 * f + k] = points.Index(Single(at, 12 * k), Single(at, 12 * k + 4), Single(at, 12 * k + 8));
            }
        }

        return new(points.Points(), corners);
    }

    // A coordinate that is no number would never equal itself in the table: it is refused here, with its place.
    private static double Single(ReadOnlySpan<byte> at, int offset)
    {
        float x = BinaryPrimitives.ReadSingleLittleEndian(at[offset..]);
        return float.IsFinite(x) ? x : throw new FormFaultException("a triangle", "a coordinate that is no number", "finite coordinates", "Repair the file in the scanner's program, or scan again.");
    }

    private static Mesh Text(ReadOnlySpan<byte> bytes)
    {
        Words words = new(bytes);
        PointTable points = new(1024);
        List<int> corners = [];
        bool open = false;
        while (words.Next() is { Length: > 0 } word)
        {
            if (Words.Is(word, "facet"u8))
            {
                open = true;
            }
            else if (Words.Is(word, "vertex"u8))
            {
                corners.Add(points.Index(words.Number("a corner"), words.Number("a corner"), words.Number("a corner")));
                if (corners.Count > 3 * SurfaceFile.MostFaces)
                {
                    throw SurfaceFile.TooMany($"line {words.Line}");
                }
            }
            else if (Words.Is(word, "endfacet"u8))
            {
                open = false;
                if (corners.Count % 3 != 0)
                {
                    throw new FormFaultException($"line {words.Line}", $"a facet whose corners make {corners.Count % 3} more than whole triangles", "three corners a facet", "The file is damaged: write it again.");
                }
            }
        }

        return open || corners.Count % 3 != 0
            ? throw new FormFaultException($"line {words.Line}", "the end of the file inside a facet", "endfacet", "The file was cut off: copy or write it again.")
            : new(points.Points(), [.. corners]);
    }
}
