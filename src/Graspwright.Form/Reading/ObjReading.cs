using System.Buffers.Text;
using System.Text;

namespace Graspwright.Form.Reading;

/// <summary>Wavefront OBJ: the lines v and f; faces of more corners are fanned out.</summary>
internal static class ObjReading
{
    public static RawSurface Read(ReadOnlySpan<byte> bytes)
    {
        Words words = new(bytes);
        List<double> points = [];
        List<int> corners = [], face = [];
        while (words.Next() is { Length: > 0 } word)
        {
            if (Words.Is(word, "v"u8))
            {
                for (int d = 0; d < 3; d++)
                {
                    points.Add(words.Parse(words.NextInLine(), "a point"));
                }
            }
            else if (Words.Is(word, "f"u8))
            {
                face.Clear();
                while (words.NextInLine() is { Length: > 0 } corner)
                {
                    face.Add(Index(corner, points.Count / 3, words.Line));
                }

                if (face.Count < 3)
                {
                    throw new FormFaultException($"line {words.Line}", $"a face of {face.Count} corners", "three corners or more", "The file is damaged: write it again.");
                }

                for (int k = 2; k < face.Count; k++)
                {
                    corners.AddRange([face[0], face[k - 1], face[k]]);
                }

                if (corners.Count > 3 * SurfaceFile.MostFaces)
                {
                    throw SurfaceFile.TooMany($"line {words.Line}");
                }
            }

            words.SkipLine();
        }

        int count = points.Count / 3;
        int bad = corners.FindIndex(c => c >= count);
        return bad >= 0
            ? throw new FormFaultException($"triangle {bad / 3 + 1}", $"point {corners[bad] + 1} of {count}", "a point that is in the file", "The file was cut off: copy or write it again.")
            : new(new([.. points], [.. corners]), "OBJ", Metres: false);
    }

    // 7, 7/2, 7//3 or 7/2/3; negative numbers count back from the last point so far.
    private static int Index(ReadOnlySpan<byte> corner, int count, int line)
    {
        int slash = corner.IndexOf((byte)'/');
        ReadOnlySpan<byte> number = slash < 0 ? corner : corner[..slash];
        if (Utf8Parser.TryParse(number, out int index, out int used) && used == number.Length && index != 0 && index > -count - 1)
        {
            return index > 0 ? index - 1 : count + index;
        }

        throw new FormFaultException($"line {line}", $"'{Encoding.UTF8.GetString(corner[..Math.Min(20, corner.Length)])}' for a corner", "the number of a point, counted from 1", "Repair the line, or write the file again.");
    }
}
