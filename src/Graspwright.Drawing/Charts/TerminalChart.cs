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

    /// <summary>The chart as lines of text.</summary>
    /// <param name="chart">One or two curves; events are marked below the axis by letters and named under it.</param>
    /// <param name="characters">Characters to use.</param>
    /// <param name="rows">Height of the plot in lines, 4 or more.</param>
    /// <exception cref="ArgumentException">Not one or two curves, or none with a finite place.</exception>
    public static string Write(LineChart chart, TerminalCharacters characters = TerminalCharacters.Braille, int rows = 12)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 4);
        var finite = chart.Series.SelectMany(s => s.X.Zip(s.Y)).Where(p => double.IsFinite(p.First) && double.IsFinite(p.Second)).ToList();
        if (chart.Series.Count is not (1 or 2) || finite.Count == 0)
        {
            throw new ArgumentException("A terminal chart shows one or two curves with at least one finite place.", nameof(chart));
        }

        Ticks y = Ticks.Enclosing(Math.Min(0, finite.Min(p => p.Second)), Math.Max(0, finite.Max(p => p.Second)), Math.Max(2, rows / 3));
        (double low, double high) = chart.XExtent ?? (finite.Min(p => p.First), finite.Max(p => p.First));
        Ticks x = Ticks.Enclosing(low, high, 8);
        int gutter = y.Values.Max(v => y.Label(v).Length) + 2, columns = Width - gutter - 1;
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

        return [.. Enumerable.Range(0, rows).Select(r => Enumerable.Range(0, columns).Select(c => bits[r, c] == 0 ? ' ' : (char)(0x2800 + bits[r, c])).ToArray())];
    }

    private static char[][] Letters(IReadOnlyList<Series> series, Ticks x, Ticks y, int columns, int rows, TerminalCharacters characters)
    {
        char[][] plot = [.. Enumerable.Range(0, rows).Select(_ => Enumerable.Repeat(' ', columns).ToArray())];
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
        var labels = y.Values.ToLookup(v => (int)Math.Round((1 - Fraction(v, y)) * (plot.Length - 1)));
        for (int r = 0; r < plot.Length; r++)
        {
            string label = labels[r].Select(y.Label).FirstOrDefault("");
            char edge = (label.Length > 0, plain) switch { (true, false) => '┤', (false, false) => '│', (true, true) => '+', _ => '|' };
            text.Append(Ascii(label, plain).PadLeft(gutter - 1)).Append(' ').Append(edge).Append(new string(plot[r]).TrimEnd()).Append('\n');
        }
    }

    private static void AppendFoot(StringBuilder text, LineChart chart, Ticks x, int gutter, int columns, TerminalCharacters characters)
    {
        bool plain = characters == TerminalCharacters.Plain;
        int Column(double v) => (int)Math.Round(Fraction(v, x) * (columns - 1));
        char[] rule = Enumerable.Repeat(plain ? '-' : '─', columns).ToArray();
        char[] numbers = Enumerable.Repeat(' ', columns).ToArray(), marks = Enumerable.Repeat(' ', columns).ToArray();
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

        var shown = chart.Events.Where(e => e.At >= x.Low && e.At <= x.High).OrderBy(e => e.At).Take(26).ToList();
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
}
