using System.Globalization;

namespace Graspwright.Benchmarks;

/// <summary>One measured figure.</summary>
/// <param name="What">What was measured.</param>
/// <param name="Figure">The figure with its unit.</param>
/// <param name="Target">What it should be; empty = no target.</param>
/// <param name="Met">Whether it is.</param>
internal sealed record Row(string What, string Figure, string Target = "", bool? Met = null)
{
    /// <summary>A figure that must not be greater than its target.</summary>
    public static Row AtMost(string what, double value, double target, double scale, string unit) =>
        new(what, $"{Number(value * scale)} {unit}", $"≤ {Number(target * scale)} {unit}", value <= target);

    /// <summary>A figure that must not be smaller than its target.</summary>
    public static Row AtLeast(string what, double value, double target, string unit) =>
        new(what, $"{Number(value)} {unit}", $"≥ {Number(target)} {unit}", value >= target);

    /// <summary>Three digits.</summary>
    public static string Number(double value) => value == 0 ? "0" : Math.Abs(value) is >= 1000 and < 1e9
        ? value.ToString("0", CultureInfo.InvariantCulture)
        : value.ToString("G3", CultureInfo.InvariantCulture);

    /// <summary>Rows as a table.</summary>
    /// <param name="rows">The rows.</param>
    public static IEnumerable<string> Table(IEnumerable<Row> rows)
    {
        yield return "| Measured | Figure | Target | Met |";
        yield return "|---|---|---|---|";
        foreach (Row r in rows)
        {
            yield return $"| {r.What} | {r.Figure} | {r.Target} | {r.Met switch { true => "yes", false => "**no**", null => "" }} |";
        }
    }
}

/// <summary>Figures that belong together.</summary>
/// <param name="Title">Heading.</param>
/// <param name="Words">What was done.</param>
/// <param name="Rows">The figures.</param>
internal sealed record Section(string Title, string Words, IReadOnlyList<Row> Rows);
