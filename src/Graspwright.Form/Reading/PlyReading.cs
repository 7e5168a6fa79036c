using System.Buffers.Binary;
using System.Text;

namespace Graspwright.Form.Reading;

/// <summary>PLY: a header that names what follows; text, or binary of either order of bytes.</summary>
internal static class PlyReading
{
    private sealed record Property(string Name, string Type, string? CountType);

    private sealed record Element(string Name, long Count, List<Property> Properties);

    public static RawSurface Read(ReadOnlySpan<byte> bytes)
    {
        (List<Element> elements, string format, int body, int line) = Header(bytes);
        Source source = new(bytes, format, body, line);
        double[] points = [];
        List<int> corners = [];
        foreach (Element element in elements)
        {
            if (element.Count > Math.Min(4L * SurfaceFile.MostFaces, bytes.Length))
            {
                throw new FormFaultException("the header", $"{element.Count} of {element.Name} in a file of {bytes.Length} bytes", "a count that fits the length", "The header is wrong or the file was cut off: write it again.");
            }

            if (element.Name == "vertex")
            {
                points = new double[3 * element.Count];
            }

            for (int i = 0; i < element.Count; i++)
            {
                Entry(ref source, element, i, points, corners);
            }

            if (corners.Count > 3 * SurfaceFile.MostFaces)
            {
                throw SurfaceFile.TooMany("the header");
            }
        }

        int bad = corners.FindIndex(c => c < 0 || c >= points.Length / 3);
        return bad >= 0
            ? throw new FormFaultException($"triangle {bad / 3 + 1}", $"point {corners[bad]} of {points.Length / 3}", "a point that is in the file, counted from 0", "The file is damaged: write it again.")
            : new(new(points, [.. corners]), format == "ascii" ? "PLY, text" : "PLY, binary", Metres: false);
    }

    private static void Entry(ref Source source, Element element, int i, double[] points, List<int> corners)
    {
        foreach (Property property in element.Properties)
        {
            if (property.CountType is null)
            {
                double value = source.Value(property.Type);
                int axis = element.Name == "vertex" ? property.Name switch { "x" => 0, "y" => 1, "z" => 2, _ => -1 } : -1;
                if (axis >= 0)
                {
                    points[3 * i + axis] = value;
                }

                continue;
            }

            int count = (int)Math.Clamp(source.Value(property.CountType), -1, 100_000);
            bool face = element.Name == "face" && property.Name is "vertex_indices" or "vertex_index";
            if (face && count < 3)
            {
                throw new FormFaultException($"face {i + 1}", $"{count} corners", "three corners or more", "The file is damaged: write it again.");
            }

            int first = 0, before = 0;
            for (int k = 0; k < count; k++)
            {
                int at = (int)Math.Clamp(source.Value(property.Type), -1, int.MaxValue);
                if (face && k >= 2)
                {
                    corners.AddRange([first, before, at]);
                }

                first = k == 0 ? at : first;
                before = at;
            }
        }
    }

    private static (List<Element> Elements, string Format, int Body, int Line) Header(ReadOnlySpan<byte> bytes)
    {
        List<Element> elements = [];
        string format = "";
        int at = 0;
        for (int line = 1; line < 1000; line++)
        {
            int end = bytes[at..].IndexOf((byte)'\n');
            if (end < 0 || end > 4096)
            {
                throw new FormFaultException($"line {line}", "no end of the header", "end_header", "The file was cut off, or is no PLY: write it again.");
            }

            string[] words = Encoding.ASCII.GetString(bytes.Slice(at, end)).Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            at += end + 1;
            if (line == 1 && words is not ["ply"])
            {
                throw new FormFaultException("line 1", "no 'ply'", "a file that begins with 'ply'", "It is no PLY: check the ending of its name.");
            }

            switch (words)
            {
                case ["end_header"]:
                    return format.Length == 0 ? throw new FormFaultException($"line {line}", "a header without a format", "format ascii 1.0 or binary", "Write the file again.") : (elements, format, at, line + 1);
                case ["format", "ascii" or "binary_little_endian" or "binary_big_endian", ..]:
                    format = words[1];
                    break;
                case ["element", var name, var count] when long.TryParse(count, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out long number):
                    elements.Add(new(name, number, []));
                    break;
                case ["property", "list", var countType, var type, var name] when elements.Count > 0 && Size(countType) > 0 && Size(type) > 0:
                    elements[^1].Properties.Add(new(name, type, countType));
                    break;
                case ["property", var type, var name] when elements.Count > 0 && Size(type) > 0:
                    elements[^1].Properties.Add(new(name, type, null));
                    break;
                case ["ply"] or ["comment", ..] or ["obj_info", ..] or []:
                    break;
                default:
                    throw new FormFaultException($"line {line}", $"'{string.Join(' ', words)[..Math.Min(60, string.Join(' ', words).Length)]}'", "format, element, property, comment or end_header", "Write the file again as PLY 1.0.");
            }
        }

        throw new FormFaultException("line 1000", "a header that does not end", "end_header", "It is no PLY: check the ending of its name.");
    }

    private static int Size(string type) => type switch
    {
        "char" or "uchar" or "int8" or "uint8" => 1,
        "short" or "ushort" or "int16" or "uint16" => 2,
        "int" or "uint" or "float" or "int32" or "uint32" or "float32" => 4,
        "double" or "float64" => 8,
        _ => 0,
    };

    private ref struct Source(ReadOnlySpan<byte> bytes, string format, int body, int line)
    {
        private readonly ReadOnlySpan<byte> _bytes = bytes;
        private readonly bool _text = format == "ascii", _big = format == "binary_big_endian";
        private readonly int _line = line;
        private int _at = body;
        private Words _words = new(bytes[body..]);

        public double Value(string type)
        {
            if (_text)
            {
                ReadOnlySpan<byte> word = _words.Next();
                return word.Length > 0 ? _words.Parse(word, "a value")
                    : throw new FormFaultException($"line {_line + _words.Line - 1}", "the end of the file", "all that the header counts", "The file was cut off: copy or write it again.");
            }

            int size = Size(type);
            if (_at + size > _bytes.Length)
            {
                throw new FormFaultException($"byte {_bytes.Length}", "the end of the file", "all that the header counts", "The file was cut off: copy or write it again.");
            }

            ReadOnlySpan<byte> b = _bytes.Slice(_at, size);
            _at += size;
            return type switch
            {
                "char" or "int8" => (sbyte)b[0],
                "uchar" or "uint8" => b[0],
                "short" or "int16" => _big ? BinaryPrimitives.ReadInt16BigEndian(b) : BinaryPrimitives.ReadInt16LittleEndian(b),
                "ushort" or "uint16" => _big ? BinaryPrimitives.ReadUInt16BigEndian(b) : BinaryPrimitives.ReadUInt16LittleEndian(b),
                "int" or "int32" => _big ? BinaryPrimitives.ReadInt32BigEndian(b) : BinaryPrimitives.ReadInt32LittleEndian(b),
                "uint" or "uint32" => _big ? BinaryPrimitives.ReadUInt32BigEndian(b) : BinaryPrimitives.ReadUInt32LittleEndian(b),
                "float" or "float32" => _big ? BinaryPrimitives.ReadSingleBigEndian(b) : BinaryPrimitives.ReadSingleLittleEndian(b),
                _ => _big ? BinaryPrimitives.ReadDoubleBigEndian(b) : BinaryPrimitives.ReadDoubleLittleEndian(b),
            };
        }
    }
}
