using System.Globalization;
using Graspwright.Deciding.Search;
using Graspwright.Hand;

namespace Graspwright.Workshop.Variants;

/// <summary>A free value as the search sees it: numbers in the unit of the file, or numbers of choices.</summary>
/// <remarks>A value without a step of the stock gets a fine one, so that what is judged is what can be written in the file.</remarks>
internal sealed class FreeScale
{
    private const double Finest = 2000; // fine steps in a range, at least: chosen by us

    private readonly string _unit;
    private readonly int _decimals;

    private FreeScale(FreeValue free, FreeParameter parameter, string unit, int decimals)
    {
        Free = free;
        Parameter = parameter;
        _unit = unit;
        _decimals = decimals;
    }

    /// <summary>What the file says.</summary>
    public FreeValue Free { get; }

    /// <summary>What the search sees.</summary>
    public FreeParameter Parameter { get; }

    /// <summary>Whether it is a number, or else a choice of words.</summary>
    public bool IsNumber => Free.Dimension is not null;

    /// <summary>Unit of the numbers; empty for plain numbers and choices.</summary>
    public string Unit => Free.OneOf.Count == 0 ? _unit : "";

    /// <summary>The scale of a free value.</summary>
    /// <param name="free">What the file says.</param>
    /// <param name="present">The value in the file.</param>
    public static FreeScale Of(FreeValue free, HandValue present)
    {
        if (free.OneOf.Count > 0)
        {
            return new(free, free.Dimension is null ? FreeParameter.Of(free.OneOf.Count) : new(0, free.OneOf.Count - 1, 1), "", 0);
        }

        Dimension dimension = free.Dimension ?? throw new ArgumentException("A range is one of quantities.", nameof(free));
        string unit = Quantity.TryParse(present.Text, dimension, out Quantity? quantity, out _) ? quantity.Unit.Symbol : Hand.Unit.Of(dimension).First().Symbol;
        unit = unit == "1" ? "" : unit;
        double zero = Parse("0", unit, dimension), one = Parse("1", unit, dimension) - zero;
        double low = (free.From!.Value - zero) / one, high = (free.To!.Value - zero) / one;
        double step = free.Step is { } given ? given / one : Math.Pow(10, Math.Floor(Math.Log10((high - low) / Finest)));
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) + 1e-9) + (free.Step is null ? 0 : 3), 0, 12);
        return new(free, new(Math.Round(low, 12), Math.Round(high, 12), Math.Round(step, 12)), unit, decimals);
    }

    /// <summary>A value as the file writes it.</summary>
    /// <param name="value">Value as the search sees it.</param>
    public string Text(double value)
    {
        if (Free.OneOf.Count > 0)
        {
            return Free.OneOf[(int)value];
        }

        string number = Math.Round((decimal)value, _decimals).ToString("0.############", CultureInfo.InvariantCulture);
        return _unit.Length > 0 ? $"{number} {_unit}" : number;
    }

    /// <summary>A value in SI; NaN for words.</summary>
    /// <param name="value">Value as the search sees it.</param>
    public double Si(double value) => Free.Dimension is { } dimension && Quantity.TryParse(Text(value), dimension, out Quantity? quantity, out _) ? quantity.Si : double.NaN;

    /// <summary>The value of the file as the search sees it; the nearest where it is none of them.</summary>
    /// <param name="present">The value in the file.</param>
    public double Nearest(HandValue present)
    {
        if (!IsNumber)
        {
            int at = Free.OneOf.ToList().IndexOf(present.Text);
            return Math.Max(at, 0);
        }

        double si = present.Si ?? double.NaN;
        if (Free.OneOf.Count > 0)
        {
            return Enumerable.Range(0, Free.OneOf.Count).MinBy(i => Math.Abs(Si(i) - si));
        }

        double low = Si(Parameter.Low), high = Si(Parameter.High);
        return Parameter.Nearest(Parameter.Low + (si - low) / (high - low) * (Parameter.High - Parameter.Low));
    }

    private static double Parse(string number, string unit, Dimension dimension) =>
        Quantity.TryParse($"{number} {unit}", dimension, out Quantity? quantity, out _) ? quantity.Si : throw new ArgumentException($"{unit} is no unit.", nameof(unit));
}
