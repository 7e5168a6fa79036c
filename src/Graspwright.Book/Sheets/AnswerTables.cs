using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Workshop.Results;

namespace Graspwright.Book.Sheets;

/// <summary>Tables of answers on paper.</summary>
public static class AnswerTables
{
    /// <summary>Sets a table of an answer; nothing where it has no rows.</summary>
    /// <param name="flow">Pages.</param>
    /// <param name="table">The table.</param>
    public static void Set(PageFlow flow, Table table)
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(table);
        if (table.Rows.Count == 0)
        {
            return;
        }

        flow.Table(
            [.. table.Columns.Select((c, i) => new TableColumn(c.Unit.Length == 0 ? c.Name : $"{c.Name}, {c.Unit}", Right: table.Rows.Any(r => r[i].Number is not null)))],
            [.. table.Rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Word)])]);
    }

    /// <summary>A cell in letters: numbers to three digits or whole, a dash for nothing.</summary>
    /// <param name="cell">The cell.</param>
    public static string Word(Cell cell) => cell.Text ?? (cell.Number is { } n ? Number(n) : "–");

    /// <summary>A number to three digits, whole ones in full, with a true minus.</summary>
    /// <param name="value">The number.</param>
    public static string Number(double value)
    {
        double size = Math.Abs(value);
        string text = size >= 100 || value == Math.Round(value) ? value.ToString("0", CultureInfo.InvariantCulture)
            : size >= 10 ? value.ToString("0.0", CultureInfo.InvariantCulture) : size >= 1 ? value.ToString("0.00", CultureInfo.InvariantCulture) : value.ToString("0.###", CultureInfo.InvariantCulture);
        return text.Replace('-', '−');
    }
}
