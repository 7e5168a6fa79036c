using System.Globalization;
using System.Text;

namespace Graspwright.Workshop.Results;

/// <summary>Writes an answer as plain text: sentence, findings, tables, cautions.</summary>
public static class TextAnswer
{
    private const int Width = 100;

    /// <summary>The answer as text, ending in a line end.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="chart">A picture in characters to stand behind the findings; empty = none.</param>
    public static string Write(Answer answer, string chart = "")
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(chart);
        StringBuilder text = new();
        Wrap(text, answer.Sentence, "");
        if (answer.Findings.Count > 0)
        {
            text.Append('\n').Append("Findings").Append(answer.Situation is { } situation ? $" ({situation})" : "").Append('\n');
            foreach (Finding finding in answer.Findings.Where(f => f.Verdict != Verdict.Good))
            {
                AddFinding(text, finding);
            }

            AddGood(text, answer.Findings);
        }

        AddElsewhere(text, answer);
        if (chart.Length > 0)
        {
            text.Append('\n').Append(chart.TrimEnd('\n')).Append('\n');
        }

        foreach (Table table in answer.Tables.Where(t => t.Rows.Count > 0))
        {
            text.Append('\n');
            AddTable(text, table);
        }

        if (answer.Cautions.Count > 0)
        {
            text.Append("\nCautions\n");
            foreach (string caution in answer.Cautions)
            {
                Wrap(text, caution, "  ");
            }
        }

        return text.ToString();
    }

    private static void AddFinding(StringBuilder text, Finding finding)
    {
        Wrap(text, $"{finding.Verdict.Mark()} {finding.Verdict.Word()}: {finding.Reason}", "  ");
        Wrap(text, $"Try: {finding.Change}", "      ");
    }

    private static void AddGood(StringBuilder text, IReadOnlyList<Finding> findings)
    {
        foreach (Finding finding in findings.Where(f => f.Verdict == Verdict.Good))
        {
            Wrap(text, $"{Verdict.Good.Mark()} good: {finding.Reason}", "  ");
        }
    }

    /// <summary>Says where other situations fail, once for each thing that fails; those nearest the headline's stand for the rest.</summary>
    private static void AddElsewhere(StringBuilder text, Answer answer)
    {
        List<Failing> failing = [];
        Dictionary<string, Failing> byThing = new(StringComparer.Ordinal);
        foreach (Situation situation in answer.Situations.OrderByDescending(s => Likeness(s, answer)))
        {
            foreach (Finding finding in situation.Findings)
            {
                if (finding.Verdict != Verdict.Fails || answer.Findings.Contains(finding))
                {
                    continue;
                }

                string thing = $"{finding.Key}\n{finding.Subject}";
                if (byThing.TryGetValue(thing, out Failing? same))
                {
                    same.More++;
                    continue;
                }

                failing.Add(byThing[thing] = new(situation, finding));
            }
        }

        if (failing.Count == 0)
        {
            return;
        }

        text.Append("\nElsewhere\n");
        foreach (Failing one in failing)
        {
            string others = one.More > 0 ? $" (and in {one.More} more)" : "";
            Wrap(text, $"{one.Finding.Verdict.Mark()} {one.Situation.Label}, {one.Situation.Effort}{others}: {one.Finding.Reason}", "  ");
        }
    }

    private static int Likeness(Situation situation, Answer answer)
    {
        Situation? headline = answer.Situations.FirstOrDefault(s => s.Figures == answer.Figures);
        return headline is null ? 0 : (situation.Locks == headline.Locks ? 2 : 0) + (situation.Effort == headline.Effort ? 1 : 0);
    }

    private static void AddTable(StringBuilder text, Table table)
    {
        int count = table.Columns.Count;
        string[][] cells = new string[table.Rows.Count][];
        string[] heads = new string[count], units = new string[count];
        int[] width = new int[count];
        bool[] number = new bool[count];
        for (int c = 0; c < count; c++)
        {
            (heads[c], units[c], number[c]) = (table.Columns[c].Name, table.Columns[c].Unit, true);
            width[c] = Math.Max(heads[c].Length, units[c].Length);
        }

        for (int r = 0; r < cells.Length; r++)
        {
            cells[r] = new string[count];
            for (int c = 0; c < count; c++)
            {
                Cell cell = table.Rows[r][c];
                cells[r][c] = Words(cell, units[c]);
                width[c] = Math.Max(width[c], cells[r][c].Length);
                number[c] &= cell.Text is null;
            }
        }

        bool whole = width.Sum() + 2 * (count - 1) <= Width;
        int[] fit = whole ? width : WrappedColumns.Fit(width, number, Width);
        foreach (string[] line in whole ? [heads] : WrappedColumns.Lines(heads, fit))
        {
            AddLine(text, line, fit, number);
        }

        if (units.Any(u => u.Length > 0))
        {
            AddLine(text, units, fit, number);
        }

        foreach (string[] line in whole ? cells : cells.SelectMany(row => WrappedColumns.Lines(row, fit)))
        {
            AddLine(text, line, fit, number);
        }
    }

    private static void AddLine(StringBuilder text, string[] cells, int[] width, bool[] number)
    {
        StringBuilder line = new();
        for (int c = 0; c < cells.Length; c++)
        {
            line.Append(c > 0 ? "  " : "").Append(number[c] ? cells[c].PadLeft(width[c]) : cells[c].PadRight(width[c]));
        }

        text.Append(line.ToString().TrimEnd()).Append('\n');
    }

    private static string Words(Cell cell, string unit)
    {
        if (cell.Text is not null)
        {
            return cell.Text;
        }

        if (cell.Number is not { } number)
        {
            return "–";
        }

        int decimals = unit switch { "deg" or "N" or "MPa" => 1, "days" => number < 10 ? 1 : 0, "" or "%" => 0, _ => 2 };
        return number.ToString($"F{decimals}", CultureInfo.InvariantCulture);
    }

    private static void Wrap(StringBuilder text, string words, string indent)
    {
        StringBuilder line = new(indent);
        foreach (string word in words.Split(' '))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > Width)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(indent).Append("  ");
                line.Append(word);
                continue;
            }

            line.Append(line.Length > indent.Length ? " " : "").Append(word);
        }

        text.Append(line).Append('\n');
    }

    /// <summary>Something that fails, where it fails first, and in how many situations more.</summary>
    private sealed class Failing(Situation situation, Finding finding)
    {
        public Situation Situation { get; } = situation;

        public Finding Finding { get; } = finding;

        public int More { get; set; }
    }
}
