using System.Globalization;

namespace Graspwright.Workshop.Mould;

/// <summary>Numbers as they stand in the sentences of moulding.</summary>
internal static class MouldWords
{
    public const double Zero = 273.15;

    /// <summary>A number with its decimals.</summary>
    public static string Number(double value, int decimals = 1) =>
        (Math.Round(value, decimals) + 0).ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>A time in minutes and seconds: <c>4 min 20 s</c>.</summary>
    public static string Clock(double seconds)
    {
        int whole = (int)Math.Round(Math.Max(0, seconds)), minutes = whole / 60, rest = whole % 60;
        return minutes == 0 ? $"{rest} s" : rest == 0 ? $"{minutes} min" : minutes >= 60 ? $"{minutes} min" : $"{minutes} min {rest} s";
    }

    /// <summary>A number without needless digits.</summary>
    public static string Short(double value, int decimals = 1) => (Math.Round(value, decimals) + 0).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);

    /// <summary>A time in minutes to a tenth.</summary>
    public static string Minutes(double seconds) => seconds >= 6000 ? $"{Short(seconds / 3600)} h" : $"{Short(seconds / 60)} min";

    /// <summary>A time in minutes with its spread: <c>5.2 min (3.5 to 6.7)</c>.</summary>
    public static string Minutes(double seconds, double low, double high) => $"{Short(seconds / 60)} min ({Short(low / 60)} to {Short(high / 60)})";

    /// <summary>A weight in grams, to the step of the scale.</summary>
    public static string Grams(double kilograms, double step)
    {
        int decimals = step >= 9.99e-4 ? 0 : step >= 9.99e-5 ? 1 : 2;
        return $"{Number(1000 * OnScale(kilograms, step), decimals)} g";
    }

    /// <summary>A weight as it is read on the scale [kg].</summary>
    public static double OnScale(double kilograms, double step) => Math.Round(kilograms / step) * step;

    /// <summary>A temperature in degrees Celsius.</summary>
    public static string Celsius(double kelvin) => $"{Number(kelvin - Zero, 0)} °C";

    /// <summary>Words in a row: <c>a, b and c</c>.</summary>
    public static string Row(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        _ => $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}",
    };
}
