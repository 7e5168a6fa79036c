using System.Globalization;
using Graspwright.Strength.Lives;

namespace Graspwright.Workshop.Lives;

/// <summary>Numbers and bounds of lives as they are said.</summary>
internal static class LifeWords
{
    /// <summary>Days: whole from 10 on.</summary>
    public static string Number(double days) => days switch
    {
        < 0.95 => days.ToString("0.0#", CultureInfo.InvariantCulture),
        < 9.95 => days.ToString("0.0", CultureInfo.InvariantCulture),
        < 9999.5 => days.ToString("0", CultureInfo.InvariantCulture),
        _ => "more than 9999",
    };

    /// <summary>Days with the word.</summary>
    public static string Days(double days) => Number(days) == "1.0" ? "1 day" : $"{Number(days)} days";

    /// <summary>Days that were chosen, not reckoned: no digits that nobody wrote.</summary>
    public static string Chosen(double days) => $"{days.ToString("0.##", CultureInfo.InvariantCulture)} {(days.Equals(1.0) ? "day" : "days")}";

    /// <summary>A value with its bounds.</summary>
    public static string With(Bounded b) => $"{Days(b.Value)} ({Number(b.Low)} to {Number(b.High)})";

    /// <summary>A count of things.</summary>
    public static string Count(int count, string one, string many = "") =>
        count == 1 ? $"1 {one}" : $"{count.ToString(CultureInfo.InvariantCulture)} {(many.Length > 0 ? many : Plural(one))}";

    /// <summary>More than one of a thing.</summary>
    public static string Plural(string one) => one.EndsWith('s') ? one : one.EndsWith("sh", StringComparison.Ordinal) ? one + "es" : one.EndsWith('y') ? one[..^1] + "ies" : one + "s";

    /// <summary>A share in per cent.</summary>
    public static string Share(double share) => (100 * share).ToString(share is > 0 and < 0.0995 ? "0.#" : "0", CultureInfo.InvariantCulture) + " %";

    /// <summary>Two digits behind the point.</summary>
    public static string Two(double value) => value < 999 ? value.ToString("0.00", CultureInfo.InvariantCulture) : "no bound";

    /// <summary>The form of a law in a word.</summary>
    public static string Word(this LifeForm form) => form switch { LifeForm.Weibull => "Weibull", LifeForm.Lognormal => "lognormal", _ => "exponential" };

    /// <summary>A whole number.</summary>
    public static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Names in a row: a, b and c.</summary>
    public static string List(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}",
    };
}
