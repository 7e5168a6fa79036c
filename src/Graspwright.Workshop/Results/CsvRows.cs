using System.Text;

namespace Graspwright.Workshop.Results;

/// <summary>A line of a CSV file.</summary>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Cells">Its cells, without quotes and outer spaces.</param>
/// <param name="Columns">Column at which each cell begins, from 1.</param>
public sealed record CsvRow(int Line, IReadOnlyList<string> Cells, IReadOnlyList<int> Columns);

/// <summary>Takes the text of a CSV file apart: commas, quotes where needed, one record a line. Empty lines and lines of commas alone are left out.</summary>
public static class CsvRows
{
    /// <summary>The lines.</summary>
    /// <param name="text">Text of the file.</param>
    public static IReadOnlyList<CsvRow> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var rows = new List<CsvRow>();
        string[] lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            CsvRow row = Cells(lines[i], i + 1);
            if (row.Cells.Any(c => c.Length > 0))
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    private static CsvRow Cells(string line, int number)
    {
        var cells = new List<string>();
        var columns = new List<int>();
        var cell = new StringBuilder();
        bool quoted = false;
        int begun = 1;
        for (int i = 0; i <= line.Length; i++)
        {
            char c = i < line.Length ? line[i] : ',';
            if (quoted && c == '"' && i < line.Length)
            {
                bool twice = i + 1 < line.Length && line[i + 1] == '"';
                cell.Append(twice ? "\"" : "");
                i += twice ? 1 : 0;
                quoted = twice;
            }
            else if (c == '"' && cell.ToString().Trim().Length == 0)
            {
                cell.Clear();
                quoted = true;
            }
            else if (c == ',' && (!quoted || i == line.Length))
            {
                cells.Add(cell.ToString().Trim());
                columns.Add(begun);
                cell.Clear();
                begun = i + 2;
            }
            else
            {
                cell.Append(c);
            }
        }

        return new(number, cells, columns);
    }
}
