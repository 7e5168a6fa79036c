using System.Globalization;
using System.Text;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Log;

/// <summary>Reads one line of the log.</summary>
internal static class LogRow
{
    private static readonly string[] Joints = ["mcp", "pip", "dip"];

    /// <summary>What the words of a line may be.</summary>
    internal sealed class Known(HandModel hand, string[] columns, Dictionary<string, Ending> endings)
    {
        public string[] Columns { get; } = columns;

        public Dictionary<string, Ending> Endings { get; } = endings;

        public IReadOnlyList<string> Parts { get; } = [.. LogReader.Parts.Concat(hand.Structure.Parts.Select(p => p.Name)).Concat(hand.Structure.Springs.Select(s => s.Name)).Distinct(StringComparer.Ordinal)];

        public IReadOnlyList<string> Positions { get; } = [.. hand.Fingers.SelectMany(f => Joints.Select(j => $"{f.Name} {j}").Prepend(f.Name))];

        public IReadOnlyList<string> Fingers { get; } = [.. hand.Fingers.Select(f => f.Name)];

        public IReadOnlyList<string> Materials { get; } = [.. hand.Structure.Materials.Select(m => m.Name).Concat(MaterialTable.All.Select(m => m.Name)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Reads it.</summary>
    /// <returns><see langword="null"/> where something in it is wrong; it is told in the errors.</returns>
    public static LogEntry? Read(string row, string file, int line, Known known, List<InputError> errors)
    {
        int before = errors.Count;
        if (Cells(row) is not { } cells)
        {
            errors.Add(new(file, line, 1, "row", "a quotation mark that is not closed", "quotation marks in pairs", "Close it, or take it out: only a cell with a comma needs any."));
            return null;
        }

        if (cells.Count != known.Columns.Length)
        {
            errors.Add(new(file, line, 1, "row", $"{Text(cells.Count)} cells", $"{Text(known.Columns.Length)} cells: {LogReader.Header}", "Leave what is not known empty, commas and all; put a cell that has a comma in quotation marks."));
            return null;
        }

        string part = Word(0, known.Parts, "a part of the hand", needed: true), position = Word(1, known.Positions, "a finger, alone or with mcp, pip or dip", needed: false), material = Word(2, known.Materials, "a material of the table or of [materials]", needed: false);
        DateOnly? fitted = Date(4, needed: true), seen = Date(5, needed: false), ended = Date(6, needed: false);
        if (!known.Endings.TryGetValue(cells[7].Text, out Ending how))
        {
            Fault(7, $"'{LogReader.Short(cells[7].Text)}'", "broke, found broken or retired; empty while it is fitted", Nearest.To(cells[7].Text, known.Endings.Keys.Where(k => k.Length > 0)) is { } near ? $"Did you mean {near}?" : "Write broke where the day is known, found broken where it was found so, retired where it came off whole.");
        }
        else if (ended is null && how != Ending.None && cells[6].Text.Length == 0)
        {
            Fault(6, "nothing", $"the day on which it {(how == Ending.Retired ? "was retired" : how == Ending.Broke ? "broke" : "was found broken")}", $"Write the day, or leave how empty while it is fitted.");
        }
        else if (ended is not null && how == Ending.None)
        {
            Fault(7, "nothing, beside a day on which it ended", "broke, found broken or retired", "Say how it ended.");
        }
        else if (how == Ending.None && seen is null && cells[5].Text.Length == 0 && cells[6].Text.Length == 0)
        {
            Fault(5, "nothing, for a part that is still fitted", "the day on which it was last seen whole", "Look at it and write today's day.");
        }

        if (fitted is { } start)
        {
            if (ended < start)
            {
                Fault(6, $"{LogReader.Day(ended.Value)}, before it was fitted on {LogReader.Day(start)}", "a day on or after the day of fitting", "Check the years and which of the two days was mistyped.");
            }

            if (seen < start)
            {
                Fault(5, $"{LogReader.Day(seen.Value)}, before it was fitted on {LogReader.Day(start)}", "a day on or after the day of fitting", "Check the years and which of the two days was mistyped.");
            }
        }

        if (ended is { } end && seen > end)
        {
            Fault(5, $"{LogReader.Day(seen.Value)}, after it ended on {LogReader.Day(end)}", "a day on or before the day on which it ended", "Check which of the two days was mistyped.");
        }

        return errors.Count > before ? null : new(line, part, position, material, cells[3].Text, fitted!.Value, seen, ended, how, cells[8].Text);

        string Word(int c, IReadOnlyList<string> words, string what, bool needed)
        {
            string text = cells[c].Text;
            if (text.Length == 0 ? needed : !words.Contains(text, StringComparer.Ordinal))
            {
                string near = Nearest.To(text, words) is { } nearest ? $"Did you mean {nearest}? " : "";
                string allowed = c == 1 ? $"{what}: {string.Join(", ", known.Fingers)}" : $"{what}: {string.Join(", ", words)}";
                Fault(c, text.Length == 0 ? "nothing" : $"'{LogReader.Short(text)}'", allowed, near + (c == 0 ? "A part of your own is named under [parts] or [springs] of the hand file." : c == 2 ? "A material of your own is named under [materials] of the hand file." : "Leave it empty where the part itself says where it is."));
            }

            return text;
        }

        DateOnly? Date(int c, bool needed)
        {
            string text = cells[c].Text;
            if (text.Length == 0 && !needed)
            {
                return null;
            }

            if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) && day.Year is >= 1950 and <= 2150)
            {
                return day;
            }

            Fault(c, text.Length == 0 ? "nothing" : $"'{LogReader.Short(text)}', which is no day", "a day of the calendar as year-month-day, such as 2026-03-09", "Write the year first, with four digits, and month and day with two.");
            return null;
        }

        void Fault(int c, string found, string allowed, string fix) => errors.Add(new(file, line, cells[c].Column, known.Columns[c], found, allowed, fix));
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Cells of a row with the columns at which they begin; <see langword="null"/> where a quotation mark is left open.</summary>
    private static List<(string Text, int Column)>? Cells(string row)
    {
        List<(string, int)> cells = [];
        StringBuilder cell = new();
        int start = 1;
        bool quoted = false;
        for (int i = 0; i < row.Length; i++)
        {
            char c = row[i];
            if (c == '"' && quoted && i + 1 < row.Length && row[i + 1] == '"')
            {
                cell.Append(c);
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add((cell.ToString().Trim(), start));
                cell.Clear();
                start = i + 2;
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add((cell.ToString().Trim(), start));
        return quoted ? null : cells;
    }
}
