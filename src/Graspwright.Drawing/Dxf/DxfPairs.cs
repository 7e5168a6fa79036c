using System.Globalization;

namespace Graspwright.Drawing.Dxf;

/// <summary>One pair of a DXF file: a group code and its value.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Value">Value, spaces at its ends kept.</param>
/// <param name="Line">Line of the value, from 1.</param>
internal readonly record struct DxfPair(int Code, string Value, int Line)
{
    public bool Is(int code, string value) => Code == code && string.Equals(Value.Trim(), value, StringComparison.OrdinalIgnoreCase);
}

/// <summary>Cuts the text of a DXF file into pairs.</summary>
internal static class DxfPairs
{
    private const int MostCharacters = 64 * 1024 * 1024;
    private const int MostPairs = 4_000_000;

    /// <summary>All pairs up to the end mark.</summary>
    /// <exception cref="DrawingFileException">The text is not DXF, is too large, or ends amid a pair.</exception>
    public static List<DxfPair> Cut(string text, string file)
    {
        if (text.Length > MostCharacters)
        {
            throw Fault(file, 0, "file", $"{text.Length} characters", $"at most {MostCharacters}", "Write only the points and their labels to a drawing of their own.");
        }

        if (text.StartsWith("AutoCAD Binary DXF", StringComparison.Ordinal))
        {
            throw Fault(file, 1, "file", "a binary DXF file", "a DXF file of text", "Write it again as text (ASCII).");
        }

        var pairs = new List<DxfPair>();
        using var lines = new StringReader(text.TrimStart('\uFEFF'));
        int line = 0;
        while (lines.ReadLine() is { } code)
        {
            line++;
            if (!int.TryParse(code.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number) || number is < -5 or > 1071)
            {
                // Empty lines after the last pair do no harm.
                if (code.Trim().Length == 0 && lines.ReadToEnd().Trim().Length == 0 && pairs.Count > 0)
                {
                    break;
                }

                throw Fault(file, line, "group code", DrawingFileException.Shown(code), "a whole number from -5 to 1071", "The file is not DXF, or a line is missing or too many before this one.");
            }

            line++;
            string value = lines.ReadLine() ?? throw Fault(file, line, "value", "the end of the file", $"a value for group code {number}", "The file is cut off: write it again.");
            pairs.Add(new(number, value, line));
            if (pairs.Count > MostPairs)
            {
                throw Fault(file, line, "file", $"more than {MostPairs} pairs", $"at most {MostPairs}", "Write only the points and their labels to a drawing of their own.");
            }

            if (pairs[^1].Is(0, "EOF"))
            {
                break;
            }
        }

        return pairs;
    }

    internal static DrawingFileException Fault(string file, int line, string key, string found, string allowed, string fix) =>
        new(new FileFault(file, line, 0, key, found, allowed, fix));
}
