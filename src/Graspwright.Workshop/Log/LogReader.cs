using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Log;

/// <summary>A log that was read: entries, or what is wrong with it.</summary>
/// <param name="Entries">Entries in the order of the file; empty where there are errors.</param>
/// <param name="Errors">Every error.</param>
public sealed record LogReading(IReadOnlyList<LogEntry> Entries, IReadOnlyList<InputError> Errors)
{
    /// <summary>Last day that the log speaks of.</summary>
    public DateOnly LastDay => Entries.Count > 0 ? Entries.Max(e => e.LastDay) : default;
}

/// <summary>Reads the log of parts: CSV with a header, dates as in ISO 8601. Everything wrong in it is told at once.</summary>
public static class LogReader
{
    /// <summary>The header.</summary>
    public const string Header = "part,position,material,revision,fitted,last_seen_whole,ended,how,cause";

    private const int MostRows = 100_000, MostErrors = 50;

    private static readonly string[] Columns = Header.Split(',');
    private static readonly Dictionary<string, Ending> Endings = new(StringComparer.Ordinal) { [""] = Ending.None, ["broke"] = Ending.Broke, ["found broken"] = Ending.FoundBroken, ["retired"] = Ending.Retired };

    /// <summary>Parts that every hand may have; those of [parts] and [springs] come to them.</summary>
    public static IReadOnlyList<string> Parts { get; } =
    [
        "finger", "hinge", "phalanx", "ear", "tongue", "pin", "bushing", "base", "spring", "cord", "link", "crank", "bar", "carriage", "rail", "pad", "screw", "shell", "liner", "cuff", "strap",
    ];

    /// <summary>Reads a log.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="hand">The hand it is of.</param>
    public static LogReading Read(string text, string file, HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(hand);
        string[] lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        List<InputError> errors = [];
        if (lines[0].TrimEnd() != Header)
        {
            string fix = lines[0].Contains(';', StringComparison.Ordinal) ? "Part the cells by commas, not semicolons." : "Write this line above the parts.";
            return new([], [new(file, 1, 1, "header", lines[0].Length == 0 ? "an empty file or line" : $"'{Short(lines[0])}'", Header, fix)]);
        }

        List<LogEntry> entries = [];
        LogRow.Known known = new(hand, Columns, Endings);
        for (int i = 1; i < lines.Length && errors.Count < MostErrors; i++)
        {
            if (lines[i].Trim().Length == 0)
            {
                continue;
            }

            if (entries.Count >= MostRows)
            {
                errors.Add(new(file, i + 1, 0, "file", $"more than {MostRows.ToString(CultureInfo.InvariantCulture)} parts", $"at most {MostRows.ToString(CultureInfo.InvariantCulture)}", "Is it the right file?"));
                break;
            }

            if (LogRow.Read(lines[i], file, i + 1, known, errors) is { } entry)
            {
                entries.Add(entry);
            }
        }

        if (errors.Count == 0 && entries.Count == 0)
        {
            errors.Add(new(file, 1, 0, "file", "a log without parts", "a line for each part that was fitted", "Begin with what is on the hand today: part, position, material, revision, the day it was fitted, and today as last_seen_whole."));
        }

        CheckTogether(entries, file, errors);
        return new(errors.Count == 0 ? entries : [], errors);
    }

    private static void CheckTogether(List<LogEntry> entries, string file, List<InputError> errors)
    {
        Dictionary<LogEntry, int> seen = [];
        foreach (LogEntry entry in entries)
        {
            LogEntry key = entry with { Line = 0 };
            if (!seen.TryAdd(key, entry.Line))
            {
                errors.Add(new(file, entry.Line, 1, "row", $"the same as line {Line(seen[key])}", "each part once", "Take one of the two lines out; where two alike were fitted on one day, give each its position."));
            }
        }

        foreach (IGrouping<(string Part, string Position), LogEntry> place in entries.Where(e => e.Position.Length > 0).GroupBy(e => (e.Part, e.Position)))
        {
            LogEntry? before = null;
            foreach (LogEntry entry in place.OrderBy(e => e.Fitted).ThenBy(e => e.Ended ?? DateOnly.MaxValue))
            {
                if (before is not null && seen[entry with { Line = 0 }] == entry.Line && (before.Ended is null || before.Ended > entry.Fitted))
                {
                    string until = before.Ended is { } end ? Day(end) : "today";
                    errors.Add(new(file, entry.Line, 1, "fitted", $"a second {entry.Part} at {entry.Position} while the one of line {Line(before.Line)} is there until {until}", "one part at a place at a time",
                        $"Give line {Line(before.Line)} the day on which it ended, or this one another position."));
                }

                before = before?.Ended is null && before is not null ? before : entry;
            }
        }

        errors.Sort((a, b) => a.Line != b.Line ? a.Line.CompareTo(b.Line) : a.Column.CompareTo(b.Column));
    }

    internal static string Short(string text) => text.Length > 60 ? text[..60] + "…" : text;

    /// <summary>A day as the log writes it.</summary>
    /// <param name="day">The day.</param>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Line(int line) => line.ToString(CultureInfo.InvariantCulture);
}
