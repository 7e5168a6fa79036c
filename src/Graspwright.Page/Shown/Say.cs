using System.Globalization;
using System.Text.RegularExpressions;
using Graspwright.Hand;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Signals;
using Graspwright.Workshop.Strength;

namespace Graspwright.Page.Shown;

/// <summary>Numbers and working in words for a screen.</summary>
public static partial class Say
{
    private const double KilogramForce = 9.80665;

    private static IReadOnlyList<Source> Sources { get; } = [.. Source.All, .. MeasureSources.All, .. MouldingSources.All, .. StrengthSources.All, .. LifeSources.All, .. SignalSources.All];

    /// <summary>A number with the digits that its unit deserves.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">Its unit.</param>
    public static string Number(double value, string unit)
    {
        int decimals = unit switch
        {
            "deg" or "N" or "MPa" or "min" or "°C" => 1,
            "days" => Math.Abs(value) < 10 ? 1 : 0,
            "%" or "kPa" => 0,
            _ => Math.Abs(value) >= 1000 ? 0 : Math.Abs(value) is < 0.1 and > 0 ? 4 : 2,
        };
        string text = value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        text = decimals > 1 && text.Contains('.', StringComparison.Ordinal) && unit.Length == 0 ? text.TrimEnd('0').TrimEnd('.') : text;
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text.Replace('-', '\u2212');
    }

    /// <summary>A value with its unit; forces with kilograms-force beside them.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">Its unit.</param>
    public static string Value(double value, string unit) => unit switch
    {
        "" => Number(value, unit),
        "deg" => $"{Number(value, unit)}°",
        "N" => $"{Number(value, unit)} N ({(value / KilogramForce).ToString("0.0#", CultureInfo.InvariantCulture).Replace('-', '\u2212')} kgf)",
        _ => $"{Number(value, unit)} {unit}",
    };

    /// <summary>A cell of a table.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="unit">Unit of its column.</param>
    public static string Cell(Cell cell, string unit) => cell.Text ?? (cell.Number is { } number ? Number(number, unit) : "–");

    /// <summary>A formula with its numbers put in.</summary>
    /// <param name="working">The working.</param>
    public static string WithNumbers(Working working)
    {
        ArgumentNullException.ThrowIfNull(working);
        Dictionary<string, double> values = working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal);
        return Name().Replace(working.Formula, m => values.TryGetValue(m.Value, out double value) ? value.ToString("G6", CultureInfo.InvariantCulture).Replace('-', '\u2212') : m.Value);
    }

    /// <summary>A source in words.</summary>
    /// <param name="key">Its key.</param>
    public static string SourceWords(string key)
    {
        Source? source = Sources.FirstOrDefault(s => s.Key == key);
        return source is null ? key : $"{source.Title} ({source.Words})";
    }

    /// <summary>A name that may stand in an address or as an id.</summary>
    /// <param name="words">The words.</param>
    public static string Id(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return string.Concat(words.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-'));
    }

    [GeneratedRegex("[A-Za-z_][A-Za-z0-9_]*", RegexOptions.None, 1000)]
    private static partial Regex Name();
}
