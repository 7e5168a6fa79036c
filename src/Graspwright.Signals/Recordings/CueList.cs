using System.Globalization;

namespace Graspwright.Signals.Recordings;

/// <summary>A list of cues: when which gesture was asked for. CSV with the header <c>start_s,end_s,gesture</c>.</summary>
public static class CueList
{
    private const string Header = "start_s,end_s,gesture";

    /// <summary>Reads a list.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="RecordingException">It cannot be used.</exception>
    public static IReadOnlyList<Mark> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<Mark> marks = [];
        string[] lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        if (!string.Equals(lines[0].Replace(" ", "", StringComparison.Ordinal), Header, StringComparison.OrdinalIgnoreCase))
        {
            throw new RecordingException(1, 1, "header", $"'{lines[0]}'", Header, $"write {Header} as the first line");
        }

        for (int i = 1; i < lines.Length; i++)
        {
            if (lines[i].Trim().Length == 0)
            {
                continue;
            }

            string[] parts = lines[i].Split(',', 3);
            if (parts.Length < 3 || !Number(parts[0], out double start) || !Number(parts[1], out double end) || end <= start || parts[2].Trim().Length == 0)
            {
                throw new RecordingException(i + 1, 1, "cue", $"'{lines[i]}'", "start, a later end, and a gesture", "write such as 3.5,5.0,fist");
            }

            marks.Add(new(start, end, parts[2].Trim().Trim('"')));
        }

        return [.. marks.OrderBy(m => m.StartSeconds)];
    }

    /// <summary>Lets each mark without an end last until the next one begins.</summary>
    /// <param name="marks">Marks by start.</param>
    /// <param name="endSeconds">End of the recording [s].</param>
    public static IReadOnlyList<Mark> Ended(IReadOnlyList<Mark> marks, double endSeconds)
    {
        ArgumentNullException.ThrowIfNull(marks);
        Mark[] ended = [.. marks];
        for (int i = 0; i < ended.Length; i++)
        {
            if (ended[i].EndSeconds <= ended[i].StartSeconds)
            {
                ended[i] = ended[i] with { EndSeconds = i + 1 < ended.Length ? ended[i + 1].StartSeconds : endSeconds };
            }
        }

        return ended;
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
