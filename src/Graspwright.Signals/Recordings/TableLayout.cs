using System.Text;

namespace Graspwright.Signals.Recordings;

/// <summary>What the reader of a table is told beforehand.</summary>
public sealed record TableHints
{
    /// <summary>Samples a second where the table has no times [1/s]; NaN = the table must say.</summary>
    public double RateHertz { get; init; } = double.NaN;

    /// <summary>Names of the columns where the table has no header.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];
}

/// <summary>What a column of a table is.</summary>
internal enum ColumnUse
{
    Signal,
    Time,
    Label,
    Number,
}

/// <summary>How a table is written: separator, decimal mark, header, columns.</summary>
internal sealed record TableLayout(byte Separator, byte Mark, bool HasHeader, IReadOnlyList<ColumnUse> Uses, IReadOnlyList<string> Names, IReadOnlyList<string> Units)
{
    private static readonly string[] TimeNames = ["time_s", "time", "t", "time_ms", "time_us", "timestamp", "seconds", "millis", "micros"];
    private static readonly string[] LabelNames = ["gesture", "label", "cue", "annotation", "movement", "class"];
    private static readonly string[] NumberNames = ["sample", "index", "n", "counter", "sequence"];

    /// <summary>Reads the layout off the first lines.</summary>
    public static TableLayout Of(IReadOnlyList<byte[]> lines, TableHints hints)
    {
        byte separator = Separators(lines);
        byte mark = separator == (byte)',' || !lines.Any(l => l.Contains((byte)',')) ? (byte)'.' : (byte)',';
        string[] first = Fields(lines[0], separator);
        bool header = first.Any(f => f.Length > 0 && !NumberText.TryRead(Encoding.UTF8.GetBytes(f), mark, out _)) && !LooksLikeData(lines, separator, mark);
        string[] titles = header ? first : [.. hints.Names];
        if (!header && titles.Length == 0)
        {
            titles = [.. first.Select((_, i) => FormattableString.Invariant($"channel {i + 1}"))];
        }

        if (!header && titles.Length != first.Length)
        {
            throw new RecordingException(1, 0, "columns", $"{first.Length} columns", $"{titles.Length}, as many as were named", "name each column, or write a header line");
        }

        List<ColumnUse> uses = [];
        List<string> names = [], units = [];
        foreach (string title in titles)
        {
            (string name, string unit) = Split(title);
            string plain = name.ToLowerInvariant();
            uses.Add(TimeNames.Contains(plain, StringComparer.Ordinal) ? ColumnUse.Time
                : LabelNames.Contains(plain, StringComparer.Ordinal) ? ColumnUse.Label
                : NumberNames.Contains(plain, StringComparer.Ordinal) ? ColumnUse.Number : ColumnUse.Signal);
            names.Add(name);
            units.Add(unit.Length == 0 && uses[^1] == ColumnUse.Time ? TimeUnit(plain) : unit);
        }

        return new(separator, mark, header, uses, names, units);
    }

    public int Find(ColumnUse use)
    {
        for (int i = 0; i < Uses.Count; i++)
        {
            if (Uses[i] == use)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>A first line without a header may still hold a word: the gesture. Then the next lines hold one in the same column.</summary>
    private static bool LooksLikeData(IReadOnlyList<byte[]> lines, byte separator, byte mark)
    {
        string[] first = Fields(lines[0], separator);
        int numbers = first.Count(f => f.Length > 0 && NumberText.TryRead(Encoding.UTF8.GetBytes(f), mark, out _));
        return numbers > first.Length / 2;
    }

    private static string TimeUnit(string name) => name switch { "time_ms" or "millis" => "ms", "time_us" or "micros" => "us", _ => "s" };

    private static (string Name, string Unit) Split(string title)
    {
        string plain = title.Trim().Trim('"');
        int open = plain.LastIndexOfAny(['[', '(']);
        return open > 0 && plain[^1] is ']' or ')' ? (plain[..open].Trim(), plain[(open + 1)..^1].Trim()) : (plain, "");
    }

    private static byte Separators(IReadOnlyList<byte[]> lines)
    {
        byte best = (byte)',';
        int most = 0;
        foreach (byte candidate in ";\t, "u8)
        {
            int[] counts = [.. lines.Select(l => l.AsSpan().Count(candidate))];
            bool steady = counts.All(c => c == counts[^1]);
            if (counts[^1] > 0 && steady && (most == 0 || candidate != (byte)' ' && candidate != (byte)','))
            {
                best = candidate;
                most = counts[^1];
            }
        }

        return best;
    }

    private static string[] Fields(byte[] line, byte separator) => Encoding.UTF8.GetString(line).TrimEnd('\r').Split((char)separator);
}
