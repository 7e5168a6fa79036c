namespace Graspwright.Drawing.Display;

/// <summary>Sizes of text before it is set. The viewer's font decides in the end; these are widths of a plain sans-serif, on the wide side.</summary>
public static class Lettering
{
    /// <summary>Height of the capitals ÷ font size of common sans-serif fonts (0.716 to 0.729; from memory).</summary>
    public const double CapitalShare = 0.72;

    /// <summary>Likely width of a text [mm].</summary>
    /// <param name="text">One line.</param>
    /// <param name="heightMm">Height of the capitals [mm].</param>
    /// <param name="strong">Bold.</param>
    public static double WidthMm(string text, double heightMm, bool strong = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        double em = 0;
        foreach (char c in text)
        {
            em += c switch
            {
                ' ' or '.' or ',' or ':' or ';' or '\'' or '|' or 'i' or 'j' or 'l' or 'I' or '·' or '!' => 0.32,
                'f' or 't' or 'r' or '(' or ')' or '[' or ']' or '-' or '/' => 0.40,
                'm' or 'w' or 'M' or 'W' or '%' or '—' => 0.95,
                >= '0' and <= '9' => 0.636,
                >= 'A' and <= 'Z' => 0.70,
                _ => 0.61,
            };
        }

        return em * (strong ? 1.1 : 1) * heightMm / CapitalShare;
    }

    /// <summary>Breaks a text into lines no wider than a width; a single longer word stays whole.</summary>
    /// <param name="text">The text.</param>
    /// <param name="widthMm">Greatest width [mm].</param>
    /// <param name="heightMm">Height of the capitals [mm].</param>
    /// <param name="strong">Bold.</param>
    public static IReadOnlyList<string> Wrap(string text, double widthMm, double heightMm, bool strong = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && WidthMm(longer, heightMm, strong) > widthMm)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>Moves places along a line just far enough apart, keeping their order and staying near where they were.</summary>
    /// <param name="wanted">Wanted places, rising.</param>
    /// <param name="gap">Least distance between neighbours.</param>
    /// <param name="low">Lowest place allowed.</param>
    /// <param name="high">Highest place allowed.</param>
    public static double[] Spread(IReadOnlyList<double> wanted, double gap, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        double[] at = [.. wanted];
        for (int i = 0; i < at.Length; i++)
        {
            at[i] = Math.Max(at[i], i == 0 ? low : at[i - 1] + gap);
        }

        for (int i = at.Length - 1; i >= 0; i--)
        {
            at[i] = Math.Min(at[i], i == at.Length - 1 ? high : at[i + 1] - gap);
        }

        // Each block of touching neighbours is moved back to the mean of where its members wanted to be.
        for (int i = 0; i < at.Length;)
        {
            int end = i + 1;
            while (end < at.Length && at[end] - at[end - 1] <= gap * 1.0001)
            {
                end++;
            }

            double shift = 0;
            for (int k = i; k < end; k++)
            {
                shift += (wanted[k] - at[k]) / (end - i);
            }

            double least = (i == 0 ? low : at[i - 1] + gap) - at[i];
            double most = (end == at.Length ? high : at[end] - gap) - at[end - 1];
            shift = least <= most ? Math.Clamp(shift, least, most) : 0;
            for (int k = i; k < end; k++)
            {
                at[k] += shift;
            }

            i = end;
        }

        return at;
    }
}
