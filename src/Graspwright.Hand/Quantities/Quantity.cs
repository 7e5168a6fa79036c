using System.Globalization;
using System.Text.RegularExpressions;

namespace Graspwright.Hand;

/// <summary>Why a text is not the quantity that was wanted.</summary>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">The likely fix.</param>
public sealed record QuantityFault(string Allowed, string Fix);

/// <summary>A number with its unit, as written and in SI.</summary>
public sealed partial class Quantity
{
    private const int GreatestLength = 100; // no quantity is longer; keeps the pattern's cost small on garbage

    private readonly string _gap;

    private Quantity(string text, string gap, Unit unit, double si)
    {
        Text = text;
        _gap = gap;
        Unit = unit;
        Si = si;
    }

    /// <summary>The text as written.</summary>
    public string Text { get; }

    /// <summary>The unit as written; the unit 1 for a pure number.</summary>
    public Unit Unit { get; }

    /// <summary>The value in the SI unit of its dimension; always finite.</summary>
    public double Si { get; }

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">Number, optional space, unit; decimal point.</param>
    /// <param name="wanted">The dimension that is wanted.</param>
    /// <param name="quantity">The quantity; <see langword="null"/> on a fault.</param>
    /// <param name="fault">What is wrong; <see langword="null"/> if nothing.</param>
    /// <returns>Whether the text is such a quantity.</returns>
    public static bool TryParse(
        string text,
        Dimension wanted,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Quantity? quantity,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out QuantityFault? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        quantity = null;
        fault = null;
        string allowed = Allowed(wanted);
        string clean = (text.Length > GreatestLength ? "" : text).Trim().Replace('\u2212', '-').Replace('\u00A0', ' ');
        if (CommaNumber().Match(clean) is { Success: true } comma)
        {
            fault = new(allowed, $"a comma is not a decimal point: write {Quoted(comma.Value.Replace(',', '.') + clean[comma.Length..])}");
            return false;
        }

        Match match = NumberAndUnit().Match(clean);
        if (!match.Success)
        {
            string fix = NotFinite().IsMatch(clean) ? "write a finite number" : $"write a number and its unit, such as {Quoted(Example(wanted))}";
            fault = new(allowed, fix);
            return false;
        }

        string number = match.Groups["number"].Value, spelling = match.Groups["unit"].Value;
        Unit? unit = spelling.Length > 0 ? Unit.Find(spelling) : wanted == Dimension.Number ? Unit.SiOf(Dimension.Number) : null;
        if (unit is null)
        {
            fault = new(allowed, spelling.Length == 0
                ? $"add the unit: write {Quoted($"{number} {Unit.Of(wanted).First().Symbol}")}"
                : UnknownUnit(spelling, number, wanted));
            return false;
        }

        if (unit.Dimension != wanted)
        {
            fault = new(allowed, $"{unit.Symbol} is {unit.Dimension.Words()}, {wanted.Words()} is wanted here");
            return false;
        }

        double si = unit.ToSi(number);
        if (!double.IsFinite(si))
        {
            fault = new(allowed, "write a finite number");
            return false;
        }

        quantity = new(text, match.Groups["gap"].Value, unit, si);
        return true;
    }

    /// <summary>What is allowed where a dimension is wanted.</summary>
    /// <param name="dimension">The dimension.</param>
    public static string Allowed(Dimension dimension) => dimension == Dimension.Number
        ? "a plain number or a share in %"
        : $"{dimension.Words()} as text with a unit ({Unit.Symbols(dimension)})";

    /// <summary>Writes a value exactly: reading it again gives the same bits.</summary>
    /// <param name="si">Value in SI, finite.</param>
    /// <param name="dimension">Its dimension.</param>
    /// <returns>In the handiest unit if that is exact, else in the SI unit.</returns>
    public static string Write(double si, Dimension dimension) =>
        si == 0 ? Shortest(0, Unit.Of(dimension).First(), " ")! : Shortest(si, Unit.Of(dimension).First(), " ") ?? Shortest(si, Unit.SiOf(dimension), " ")
        ?? $"{si.ToString("R", CultureInfo.InvariantCulture)} {Unit.SiOf(dimension).Symbol}";

    /// <summary>The same unit and spacing with another value.</summary>
    /// <param name="si">Value in SI, finite.</param>
    /// <returns>The text; to 12 digits where no text in this unit gives exactly the same bits.</returns>
    public string With(double si)
    {
        string symbol = Text.Trim()[(NumberAndUnit().Match(Text.Trim().Replace('\u2212', '-').Replace('\u00A0', ' ')).Groups["unit"].Index)..];
        string number = Exact(si, Unit) ?? Digits(Unit.FromSi(si), 12);
        return symbol.Length == 0 || Unit.Symbol == "1" ? number : $"{number}{_gap}{symbol}";
    }

    /// <inheritdoc/>
    public override string ToString() => Text;

    private static string? Shortest(double si, Unit unit, string gap) =>
        Exact(si, unit) is not { } number ? null : unit.Symbol == "1" ? number : $"{number}{gap}{unit.Symbol}";

    private static string? Exact(double si, Unit unit)
    {
        double near = unit.FromSi(si);
        foreach (int digits in (ReadOnlySpan<int>)[9, 12, 15, 16, 17])
        {
            string number = Digits(near, digits);
            if (BitConverter.DoubleToInt64Bits(unit.ToSi(number)) == BitConverter.DoubleToInt64Bits(si))
            {
                return number;
            }
        }

        return null;
    }

    private static string Digits(double value, int digits) => value.ToString($"G{digits}", CultureInfo.InvariantCulture);

    private static string UnknownUnit(string spelling, string number, Dimension wanted)
    {
        string? near = Nearest.To(spelling, Unit.Of(wanted).Select(u => u.Symbol));
        return $"{Quoted(spelling)} is no unit we know: write {Quoted($"{number} {near ?? Unit.Of(wanted).First().Symbol}")}";
    }

    private static string Example(Dimension wanted) => wanted == Dimension.Number ? "0.5" : $"12 {Unit.Of(wanted).First().Symbol}";

    private static string Quoted(string text) => $"\"{text}\"";

    [GeneratedRegex(@"^(?<number>[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)(?<gap>\s*)(?<unit>[^0-9\s.,+-].*)?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NumberAndUnit();

    [GeneratedRegex(@"^[+-]?[0-9]*,[0-9]+", RegexOptions.None, 1000)]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^[+-]?(nan|inf)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NotFinite();
}
