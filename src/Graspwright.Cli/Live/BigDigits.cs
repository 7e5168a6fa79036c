using System.Globalization;
using System.Text;

namespace Graspwright.Cli.Live;

/// <summary>The time in figures five lines high, to be read from across the bench.</summary>
internal static class BigDigits
{
    // One string a line: ten figures and the colon, each three wide and a gap.
    private static readonly string[] Rows =
    [
        "███  █  ███ ███ █ █ ███ ███ ███ ███ ███     ",
        "█ █ ██    █   █ █ █ █   █     █ █ █ █ █  █  ",
        "█ █  █  ███ ███ ███ ███ ███  █  ███ ███     ",
        "█ █  █  █     █   █   █ █ █  █  █ █   █  █  ",
        "███ ███ ███ ███   █ ███ ███  █  ███ ███     ",
    ];

    private const int Width = 4;

    /// <summary>A time as minutes and seconds, in five lines.</summary>
    /// <param name="seconds">Time [s]; below 0 = still to go, shown without a sign.</param>
    public static string Write(double seconds)
    {
        int whole = (int)Math.Floor(Math.Abs(seconds));
        string figures = string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
        StringBuilder text = new();
        foreach (string row in Rows)
        {
            StringBuilder line = new("   ");
            foreach (char c in figures)
            {
                int at = c == ':' ? 10 : c - '0';
                line.Append(row.AsSpan(at * Width, Width)).Append(' ');
            }

            text.Append(line.ToString().TrimEnd()).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Words in wide letters.</summary>
    /// <param name="words">The words.</param>
    public static string Spaced(string words) => "   " + string.Join(' ', words.Select(c => c == ' ' ? " " : c.ToString()));
}
