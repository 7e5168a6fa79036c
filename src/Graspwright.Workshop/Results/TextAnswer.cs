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
        List<(Situation Situation, Finding Finding)> failing =
        [
            .. answer.Situations.OrderByDescending(s => Likeness(s, answer)).SelectMany(s => s.Findings.Where(f => f.Verdict == Verdict.Fails && !answer.Findings.Contains(f)).Select(f => (s, f))),
        ];
        if (failing.Count == 0)
        {
            return;
        }

        text.Append("\nElsewhere\n");
        foreach (IGrouping<(string Key, string Subject), (Situation Situation, Finding Finding)> group in failing.GroupBy(f => (f.Finding.Key, f.Finding.Subject)))
        {
            (Situation first, Finding finding) = group.First();
            int more = group.Count() - 1;
            string others = more > 0 ? $" (and in {more} more)" : "";
            Wrap(text, $"{finding.Verdict.Mark()} {first.Label}, {first.Effort}{others}: {finding.Reason}", "  ");
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
        string[][] cells = [.. table.Rows.Select(r => r.Select((cell, c) => Words(cell, table.Columns[c].Unit)).ToArray())];
        bool[] number = [.. Enumerable.Range(0, count).Select(c => table.Rows.All(r => r[c].Text is null))];
        string[] heads = [.. table.Columns.Select(c => c.Name)], units = [.. table.Columns.Select(c => c.Unit)];
        int[] width = [.. Enumerable.Range(0, count).Select(c => Math.Max(Math.Max(heads[c].Length, units[c].Length), cells.Max(r => r[c].Length)))];
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
}
