using System.Text;

namespace Graspwright.Drawing.Charts;

/// <summary>Which characters a terminal chart is made of.</summary>
public enum TerminalCharacters
{
    /// <summary>Braille patterns (Unicode 2800–28FF), eight dots a character, for one curve; letters for two.</summary>
    Braille,

    /// <summary>ASCII only.</summary>
    Plain,
}

/// <summary>A chart of one or two curves in 72 columns of text, without colour.</summary>
public static class TerminalChart
{
    /// <summary>Width of every line at most [characters].</summary>
    public const int Width = 72;

    private const int MostEvents = 26;

    /// <summary>The chart as lines of text.</summary>
    /// <param name="chart">One or two curves; events are marked below the axis by letters and named under it.</param>
    /// <param name="characters">Characters to use.</param>
    /// <param name="rows">Height of the plot in lines, 4 or more.</param>
    /// <exception cref="ArgumentException">Not one or two curves, or none with a finite place.</exception>
    public static string Write(LineChart chart, TerminalCharacters characters = TerminalCharacters.Braille, int rows = 12)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 4);
        Extent found = Extent.Of(chart.Series);
        if (chart.Series.Count is not (1 or 2) || !(found.Left <= found.Right))
        {
            throw new ArgumentException("A terminal chart shows one or two curves with at least one finite place.", nameof(chart));
        }

        Ticks y = Ticks.Enclosing(Math.Min(0, found.Low), Math.Max(0, found.High), Math.Max(2, rows / 3));
        (double low, double high) = chart.XExtent ?? (found.Left, found.Right);
        Ticks x = Ticks.Enclosing(low, high, 8);
        int gutter = 2;
        foreach (double value in y.Values)
        {
            gutter = Math.Max(gutter, y.Label(value).Length + 2);
        }

        int columns = Width - gutter - 1;
        char[][] plot = chart.Series.Count == 1 && characters == TerminalCharacters.Braille
            ? Dots(chart.Series[0], x, y, columns, rows)
            : Letters(chart.Series, x, y, columns, rows, characters);

        var text = new StringBuilder();
        foreach (string line in Wrapped(chart.Sentence))
        {
            text.Append(line).Append('\n');
        }

        text.Append(Short(chart.YTitle + Legend(chart, characters))).Append('\n');
        AppendPlot(text, plot, y, gutter, characters);
        AppendFoot(text, chart, x, gutter, columns, characters);
        return text.ToString();
    }

    private static char[][] Dots(Series series, Ticks x, Ticks y, int columns, int rows)
    {
        int[,] bits = new int[rows, columns];
        // Dot bits of a braille cell by row and column (Unicode Standard, chapter 21, braille patterns).
        ReadOnlySpan<int> left = [0x01, 0x02, 0x04, 0x40], right = [0x08, 0x10, 0x20, 0x80];
        foreach ((int px, int py) in Trace(series, x, y, 2 * columns, 4 * rows))
        {
            bits[py / 4, px / 2] |= px % 2 == 0 ? left[py % 4] : right[py % 4];
        }

        char[][] plot = Blank(rows, columns);
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                plot[r][c] = bits[r, c] == 0 ? ' ' : (char)(0x2800 + bits[r, c]);
            }
        }

        return plot;
    }

    private static char[][] Letters(IReadOnlyList<Series> series, Ticks x, Ticks y, int columns, int rows, TerminalCharacters characters)
    {
        char[][] plot = Blank(rows, columns);
        for (int i = 0; i < series.Count; i++)
        {
            foreach ((int px, int py) in Trace(series[i], x, y, columns, rows))
            {
                char old = plot[py][px], mark = Glyph(i, characters);
                plot[py][px] = old == ' ' || old == mark ? mark : Glyph(2, characters);
            }
        }

        return plot;
    }

    private static char[][] Blank(int rows, int columns)
    {
        char[][] plot = new char[rows][];
        for (int r = 0; r < rows; r++)
        {
            plot[r] = new string(' ', columns).ToCharArray();
        }

        return plot;
    }

    private static char Glyph(int which, TerminalCharacters characters) => characters == TerminalCharacters.Plain ? "*o#"[which] : "●○◉"[which];

    // Cells the curve passes through, each line walked in steps no longer than half a cell.
    private static IEnumerable<(int X, int Y)> Trace(Series series, Ticks x, Ticks y, int across, int down)
    {
        for (int i = 0; i < series.X.Count; i++)
        {
            (double X, double Y) to = (Fraction(series.X[i], x) * (across - 1), (1 - Fraction(series.Y[i], y)) * (down - 1));
            int before = i == 0 ? 0 : i - 1;
            (double X, double Y) from = (Fraction(series.X[before], x) * (across - 1), (1 - Fraction(series.Y[before], y)) * (down - 1));
            from = double.IsFinite(from.X + from.Y) ? from : to;
            if (!double.IsFinite(to.X + to.Y))
            {
                continue;
            }

            int steps = 1 + (int)(2 * Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)));
            for (int k = 0; k <= steps; k++)
            {
                double t = (double)k / steps;
                int px = (int)Math.Round(from.X + t * (to.X - from.X)), py = (int)Math.Round(from.Y + t * (to.Y - from.Y));
                if (px >= 0 && px < across && py >= 0 && py < down)
                {
                    yield return (px, py);
                }
            }
        }
    }

    private static double Fraction(double value, Ticks ticks) => (value - ticks.Low) / (ticks.High - ticks.Low);

    private static void AppendPlot(StringBuilder text, char[][] plot, Ticks y, int gutter, TerminalCharacters characters)
    {
        bool plain = characters == TerminalCharacters.Plain;
        string[] labels = new string[plot.Length];
        for (int i = y.Values.Count - 1; i >= 0; i--)
        {
            labels[(int)Math.Round((1 - Fraction(y.Values[i], y)) * (plot.Length - 1))] = y.Label(y.Values[i]);
        }

        for (int r = 0; r < plot.Length; r++)
        {
            string label = labels[r] ?? "";
            char edge = (label.Length > 0, plain) switch { (true, false) => '┤', (false, false) => '│', (true, true) => '+', _ => '|' };
            text.Append(Ascii(label, plain).PadLeft(gutter - 1)).Append(' ').Append(edge).Append(new string(plot[r]).TrimEnd()).Append('\n');
        }
    }

    private static void AppendFoot(StringBuilder text, LineChart chart, Ticks x, int gutter, int columns, TerminalCharacters characters)
    {
        bool plain = characters == TerminalCharacters.Plain;
        int Column(double v) => (int)Math.Round(Fraction(v, x) * (columns - 1));
        char[] rule = new string(plain ? '-' : '─', columns).ToCharArray(), numbers = new string(' ', columns).ToCharArray(), marks = new string(' ', columns).ToCharArray();
        int free = 0;
        foreach (double v in x.Values)
        {
            string label = Ascii(x.Label(v), plain);
            int at = Math.Clamp(Column(v) - label.Length / 2, 0, columns - label.Length);
            rule[Column(v)] = plain ? '+' : '┬';
            if (at >= free)
            {
                label.CopyTo(0, numbers, at, label.Length);
                free = at + label.Length + 1;
            }
        }

        List<EventLine> shown = [];
        foreach (EventLine line in chart.Events)
        {
            if (line.At >= x.Low && line.At <= x.High)
            {
                int before = shown.FindIndex(e => e.At > line.At);
                shown.Insert(before < 0 ? shown.Count : before, line);
            }
        }

        if (shown.Count > MostEvents)
        {
            shown.RemoveRange(MostEvents, shown.Count - MostEvents);
        }

        int next = 0;
        for (int i = 0; i < shown.Count && next < columns; i++)
        {
            next = Math.Max(next, Column(shown[i].At));
            marks[Math.Min(next++, columns - 1)] = (char)('a' + i);
        }

        string pad = new(' ', gutter + 1);
        text.Append(' ', gutter).Append(plain ? '+' : '└').Append(rule).Append('\n');
        text.Append(pad).Append(new string(numbers).TrimEnd()).Append('\n');
        text.Append(Short(chart.XTitle).PadLeft(Width)).Append('\n');
        if (shown.Count > 0)
        {
            text.Append(pad).Append(new string(marks).TrimEnd()).Append('\n');
            foreach (string line in Wrapped(string.Join(", ", shown.Select((e, i) => $"{(char)('a' + i)} {e.Label}"))))
            {
                text.Append(line).Append('\n');
            }
        }
    }

    private static string Legend(LineChart chart, TerminalCharacters characters) => chart.Series.Count == 1 ? "" :
        "   " + string.Join("   ", chart.Series.Select((s, i) => $"{Glyph(i, characters)} {s.Label}")) + $"   {Glyph(2, characters)} both";

    private static string Ascii(string label, bool plain) => plain ? label.Replace('\u2212', '-') : label;

    private static string Short(string line) => line.Length <= Width ? line : line[..(Width - 1)] + "…";

    private static IEnumerable<string> Wrapped(string text)
    {
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                line = "";
            }

            line += (line.Length == 0 ? "" : " ") + Short(word);
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }

    /// <summary>Least and greatest of the finite places; the wrong way round where there is none.</summary>
    private sealed class Extent
    {
        public double Left { get; private set; } = double.PositiveInfinity;

        public double Right { get; private set; } = double.NegativeInfinity;

        public double Low { get; private set; } = double.PositiveInfinity;

        public double High { get; private set; } = double.NegativeInfinity;

        public static Extent Of(IReadOnlyList<Series> series)
        {
            Extent found = new();
            foreach (Series one in series)
            {
                for (int i = 0; i < Math.Min(one.X.Count, one.Y.Count); i++)
                {
                    (double x, double y) = (one.X[i], one.Y[i]);
                    if (double.IsFinite(x) && double.IsFinite(y))
                    {
                        (found.Left, found.Right) = (Math.Min(found.Left, x), Math.Max(found.Right, x));
                        (found.Low, found.High) = (Math.Min(found.Low, y), Math.Max(found.High, y));
                    }
                }
            }

            return found;
        }
    }
}
