using System.Globalization;

namespace Graspwright.Workshop.Strength;

/// <summary>Numbers and names as sentences carry them.</summary>
internal static class Say
{
    /// <summary>A number to three digits, without an exponent.</summary>
    public static string Number(double value)
    {
        if (double.IsPositiveInfinity(value))
        {
            return "no end of";
        }

        double size = Math.Abs(value);
        int decimals = size >= 99.95 || size == 0 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
        string text = value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    /// <summary>Days as people say them: days below two months, then months, then years.</summary>
    public static string Days(double days) => days switch
    {
        double.PositiveInfinity => "longer than can be said",
        < 0.5 => "a few hours",
        < 60 => $"{Number(Math.Round(days))} day{(Math.Round(days) == 1 ? "" : "s")}",
        < 700 => $"{Number(Math.Round(days / 30.44))} months",
        < 365 * 50 => $"{Number(Math.Round(days / 365.25))} years",
        _ => "more than fifty years",
    };

    /// <summary>A hinge in words: <c>index MCP</c>.</summary>
    public static string Position(string position)
    {
        int at = position.LastIndexOf(' ');
        return at < 0 ? position : position[..at] + position[at..].ToUpperInvariant();
    }

    /// <summary>A time of repair.</summary>
    public static string Repair(double seconds) => double.IsPositiveInfinity(seconds) ? "none: it is you" : seconds < 5400 ? $"{Number(seconds / 60)} min" : $"{Number(seconds / 3600)} h";
}
