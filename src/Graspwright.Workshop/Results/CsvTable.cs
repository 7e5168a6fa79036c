using System.Globalization;
using System.Text;

namespace Graspwright.Workshop.Results;

/// <summary>Writes a table as CSV: header with units in brackets, comma, decimal point, UTF-8 text, line feeds.</summary>
public static class CsvTable
{
    /// <summary>The table as text.</summary>
    /// <param name="table">The table.</param>
    public static string Write(Table table)
    {
        ArgumentNullException.ThrowIfNull(table);
        StringBuilder text = new();
        for (int c = 0; c < table.Columns.Count; c++)
        {
            Column column = table.Columns[c];
            text.Append(c > 0 ? "," : "").Append(Quoted(column.Unit.Length > 0 ? $"{column.Name} [{column.Unit}]" : column.Name));
        }

        text.Append('\n');
        foreach (IReadOnlyList<Cell> row in table.Rows)
        {
            for (int c = 0; c < row.Count; c++)
            {
                text.Append(c > 0 ? "," : "").Append(Field(row[c]));
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Field(Cell cell) =>
        cell.Text is { } words ? Quoted(words) : cell.Number is { } number ? number.ToString("G10", CultureInfo.InvariantCulture) : "";

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
