using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Book.Pages;

public sealed partial class PageFlow
{
    private const double CellMm = 1.6;

    /// <summary>A table. It breaks between rows, never before the last alone, and repeats its head on the next page.</summary>
    /// <param name="columns">The columns.</param>
    /// <param name="rows">Cells row by row; an empty cell is left free.</param>
    /// <param name="pen">Whether cells are to be filled in by pen: the table gets a grid, the full width and rows high enough to write in.</param>
    /// <exception cref="ArgumentException">There is no column, a row has another number of cells, or the columns are too wide together.</exception>
    public void Table(IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows, bool pen = false)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        if (columns.Count == 0 || rows.Any(r => r.Count != columns.Count))
        {
            throw new ArgumentException("A table needs a column, and every row as many cells as there are columns.", nameof(rows));
        }

        const double penRow = 7.5;
        double[] widths = Widths(columns, rows, pen);
        IReadOnlyList<string> head = [.. columns.Select(c => c.Head)];
        double headHeight = Height(head, widths, strong: true);
        double[] heights = [.. rows.Select(r => Math.Max(pen ? penRow : 0, Height(r, widths, strong: false)))];
        Need(headHeight + heights.FirstOrDefault());
        Head();
        for (int r = 0; r < rows.Count; r++)
        {
            // The last row never stands alone on a page of its own: the one before goes with it.
            double together = r > 0 && r == rows.Count - 2 ? heights[r] + heights[r + 1] : heights[r];
            if (heights[r] > LeftMm || (together > LeftMm && together + headHeight <= HeightMm))
            {
                NewPage();
                Head();
            }

            Row(columns, rows[r], widths, heights[r], strong: false);
            Rule(Pen.Pale);
            if (pen)
            {
                Uprights(widths, heights[r]);
            }
        }

        Rule(Pen.Thin);
        Space(3);

        void Head()
        {
            Row(columns, head, widths, headHeight, strong: true);
            Rule(Pen.Thin);
            if (pen)
            {
                Uprights(widths, headHeight);
            }
        }

        void Rule(Pen line) => page.Line(new(SideMm, y), new(SideMm + widths.Sum(), y), line);
    }

    private static double Height(IReadOnlyList<string> cells, double[] widths, bool strong) =>
        cells.Select((c, i) => Type.Room(ShippedFont.Wrap(c, widths[i] - 2 * CellMm, Type.Small, strong).Count, Type.Small)).Max() + 1.6;

    private void Row(IReadOnlyList<TableColumn> columns, IReadOnlyList<string> cells, double[] widths, double height, bool strong)
    {
        double left = SideMm;
        for (int i = 0; i < cells.Count; i++)
        {
            IReadOnlyList<string> lines = ShippedFont.Wrap(cells[i], widths[i] - 2 * CellMm, Type.Small, strong);
            for (int k = 0; k < lines.Count; k++)
            {
                double foot = y - 0.4 - Type.Room(k + 1, Type.Small);
                Place at = columns[i].Right ? new(left + widths[i] - CellMm, foot) : new(left + CellMm, foot);
                page.Text(at, lines[k], Type.Small, columns[i].Right ? Across.Right : Across.Left, strong: strong);
            }

            left += widths[i];
        }

        y -= height;
    }

    private void Uprights(double[] widths, double height)
    {
        double x = SideMm;
        for (int i = 0; i <= widths.Length; i++)
        {
            page.Line(new(x, y), new(x, y + height), Pen.Pale);
            x += i < widths.Length ? widths[i] : 0;
        }
    }

    // Given widths stay. The others get what their text needs; where that is too much, longest words stay whole and the rest is shared.
    private double[] Widths(IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<string>> rows, bool fill)
    {
        double[] wanted = new double[columns.Count], least = new double[columns.Count];
        for (int i = 0; i < columns.Count; i++)
        {
            int column = i;
            string[] cells = [.. rows.Select(r => r[column])];
            wanted[i] = least[i] = columns[i].WidthMm;
            if (columns[i].WidthMm <= 0)
            {
                wanted[i] = Math.Max(Widest([columns[i].Head], strong: true), Widest(cells, strong: false));
                least[i] = Math.Max(Widest(columns[i].Head.Split(' '), strong: true), Widest(cells.SelectMany(c => c.Split(' ', '\n')), strong: false));
            }
        }

        double room = WidthMm, sum = wanted.Sum(), need = least.Sum();
        bool[] free = [.. columns.Select(c => c.WidthMm <= 0)];
        if (need > room + 1e-9)
        {
            double given = columns.Sum(c => Math.Max(0, c.WidthMm)), rest = room - given, asked = need - given;
            return rest > 0 && asked > 0
                ? [.. least.Select((w, i) => free[i] ? w * rest / asked : w)]
                : throw new ArgumentException("The columns of the table are wider together than the page.", nameof(columns));
        }

        if (sum > room)
        {
            double share = (room - need) / (sum - need);
            return [.. least.Select((w, i) => w + share * (wanted[i] - w))];
        }

        int freeOnes = free.Count(f => f);
        return fill && freeOnes > 0 ? [.. wanted.Select((w, i) => free[i] ? w + (room - sum) / freeOnes : w)] : wanted;

        static double Widest(IEnumerable<string> texts, bool strong) =>
            texts.SelectMany(t => t.Split('\n')).Select(t => ShippedFont.WidthMm(t, Type.Small, strong)).DefaultIfEmpty(0).Max() + 2 * CellMm + 0.2;
    }
}
