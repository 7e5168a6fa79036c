namespace Graspwright.Workshop.Results;

/// <summary>Narrows the columns of words of a wide table and breaks their cells into lines.</summary>
internal static class WrappedColumns
{
    private const int Narrowest = 14, Gap = 2;

    /// <summary>Widths that fit where the columns of words allow it.</summary>
    /// <param name="wanted">Width that each column would take.</param>
    /// <param name="fixedWidth">Columns that cannot be broken.</param>
    /// <param name="most">Greatest width of a line.</param>
    public static int[] Fit(int[] wanted, bool[] fixedWidth, int most)
    {
        int[] width = [.. wanted];
        while (width.Sum() + Gap * (width.Length - 1) > most)
        {
            int widest = -1;
            for (int c = 0; c < width.Length; c++)
            {
                widest = !fixedWidth[c] && width[c] > (widest < 0 ? Narrowest : width[widest]) ? c : widest;
            }

            if (widest < 0)
            {
                break;
            }

            width[widest]--;
        }

        return width;
    }

    /// <summary>One row as lines of cells.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="width">Width of each column.</param>
    public static IEnumerable<string[]> Lines(string[] cells, int[] width)
    {
        List<string>[] parts = [.. cells.Select((cell, c) => Break(cell, width[c]))];
        for (int line = 0; line < parts.Max(p => p.Count); line++)
        {
            yield return [.. parts.Select(p => line < p.Count ? p[line] : "")];
        }
    }

    private static List<string> Break(string text, int width)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line);
                line = word;
                continue;
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        lines.Add(line);
        return lines;
    }
}
