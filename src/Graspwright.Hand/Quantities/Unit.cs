using System.Globalization;

namespace Graspwright.Hand;

/// <summary>A unit of measure with its exact factor to SI.</summary>
/// <remarks>
/// Factors of inch, pound and standard gravity are exact by definition (international yard and pound agreement 1959;
/// 9.806 65 m/s²: third General Conference on Weights and Measures, 1901). Both are from memory.
/// </remarks>
public sealed class Unit
{
    private const decimal Inch = 0.0254m, Pound = 0.45359237m, Gravity = 9.80665m;
    private static readonly Unit[] Known = Build();
    private static readonly Dictionary<string, Unit> BySpelling = Spelled();

    private readonly string[] _spellings;
    private readonly decimal _factor;
    private readonly decimal _zero;
    private readonly int _degreePower;

    private Unit(string symbol, Dimension dimension, decimal factor, string[] spellings, int degreePower = 0, decimal zero = 0)
    {
        Symbol = symbol;
        Dimension = dimension;
        _factor = factor;
        _spellings = spellings;
        _degreePower = degreePower;
        _zero = zero;
    }

    /// <summary>Every unit.</summary>
    public static IReadOnlyList<Unit> All => Known;

    /// <summary>Spelling used when we write.</summary>
    public string Symbol { get; }

    /// <summary>All spellings, ours first.</summary>
    public IEnumerable<string> Spellings => _spellings.Prepend(Symbol);

    /// <summary>What it measures.</summary>
    public Dimension Dimension { get; }

    /// <summary>Finds a unit by any of its spellings.</summary>
    /// <param name="text">The spelling.</param>
    /// <returns><see langword="null"/> if no unit is spelled so.</returns>
    public static Unit? Find(string text) => BySpelling.GetValueOrDefault(Normal(text));

    /// <summary>The units of a dimension, in the order we offer them.</summary>
    /// <param name="dimension">The dimension.</param>
    public static IEnumerable<Unit> Of(Dimension dimension) => Known.Where(u => u.Dimension == dimension);

    /// <summary>The unit's symbols for a sentence: <c>mm, cm, m, in</c>.</summary>
    /// <param name="dimension">The dimension.</param>
    public static string Symbols(Dimension dimension) => string.Join(", ", Of(dimension).Select(u => u.Symbol));

    /// <summary>The SI unit of a dimension.</summary>
    /// <param name="dimension">The dimension.</param>
    public static Unit SiOf(Dimension dimension) => Of(dimension).First(u => u is { _factor: 1, _degreePower: 0, _zero: 0 });

    /// <summary>Value in SI of a number in this unit, correctly rounded where the factor is a finite decimal.</summary>
    /// <param name="number">The number as written, invariant culture.</param>
    internal double ToSi(string number)
    {
        const NumberStyles style = NumberStyles.Float;
        double value = double.Parse(number, style, CultureInfo.InvariantCulture);
        double turned = _degreePower switch
        {
            1 => value * (double)_factor * Math.PI / 180,
            -1 => value * (double)_factor * 180 / Math.PI,
            _ => double.NaN,
        };
        if (_degreePower != 0)
        {
            return turned;
        }

        bool exact = Math.Abs(value) is 0 or (> 1e-6 and < 1e12) && decimal.TryParse(number, style, CultureInfo.InvariantCulture, out _);
        if (!exact || number.Length > 20)
        {
            return value * (double)_factor + (double)_zero;
        }

        decimal si = decimal.Parse(number, style, CultureInfo.InvariantCulture) * _factor + _zero;
        return double.Parse(si.ToString(CultureInfo.InvariantCulture), style, CultureInfo.InvariantCulture);
    }

    /// <summary>Number in this unit of a value in SI, rounded by double arithmetic.</summary>
    /// <param name="si">Value in SI.</param>
    internal double FromSi(double si) => _degreePower switch
    {
        1 => si * 180 / Math.PI / (double)_factor,
        -1 => si * Math.PI / 180 / (double)_factor,
        _ => (si - (double)_zero) / (double)_factor,
    };

    /// <summary>One spelling for all ways to write the same unit: both mu signs, any dot or space as product.</summary>
    private static string Normal(string text) => text.Trim()
        .Replace('\u00B5', '\u03BC').Replace('\u22C5', '·').Replace('*', '·').Replace('\u00A0', ' ')
        .Replace(" / ", "/", StringComparison.Ordinal).Replace(" · ", "·", StringComparison.Ordinal).Replace(' ', '·');

    private static Dictionary<string, Unit> Spelled()
    {
        Dictionary<string, Unit> spelled = new(StringComparer.Ordinal);
        foreach (Unit unit in Known)
        {
            foreach (string spelling in unit.Spellings)
            {
                spelled[Normal(spelling)] = unit;
            }
        }

        return spelled;
    }

    private static Unit[] Build() =>
    [
        new("1", Dimension.Number, 1, []), new("%", Dimension.Number, 0.01m, ["percent"]),
        new("mm", Dimension.Length, 0.001m, []), new("cm", Dimension.Length, 0.01m, []), new("m", Dimension.Length, 1, []),
        new("in", Dimension.Length, Inch, ["inch", "inches", "\"", "″"]), new("μm", Dimension.Length, 0.000001m, ["um"]),
        new("deg", Dimension.Angle, 1, ["°", "degree", "degrees"], degreePower: 1), new("rad", Dimension.Angle, 1, []),
        new("mrad", Dimension.Angle, 0.001m, []),
        new("N", Dimension.Force, 1, []), new("kN", Dimension.Force, 1000, []), new("kgf", Dimension.Force, Gravity, ["kp"]),
        new("lbf", Dimension.Force, Pound * Gravity, []),
        new("N·m", Dimension.Moment, 1, ["Nm"]), new("N·mm", Dimension.Moment, 0.001m, ["Nmm"]), new("N·cm", Dimension.Moment, 0.01m, ["Ncm"]),
        new("kgf·cm", Dimension.Moment, Gravity * 0.01m, ["kgfcm"]), new("kgf·mm", Dimension.Moment, Gravity * 0.001m, ["kgfmm"]),
        new("kgf·m", Dimension.Moment, Gravity, ["kgfm"]), new("lbf·in", Dimension.Moment, Pound * Gravity * Inch, ["in·lbf", "lbfin"]),
        new("lbf·ft", Dimension.Moment, Pound * Gravity * Inch * 12, ["ft·lbf", "lbfft"]),
        new("N/mm", Dimension.Stiffness, 1000, []), new("N/m", Dimension.Stiffness, 1, []), new("kN/m", Dimension.Stiffness, 1000, []),
        new("kgf/mm", Dimension.Stiffness, Gravity * 1000, []), new("lbf/in", Dimension.Stiffness, Pound * Gravity / Inch, []),
        new("N·m/deg", Dimension.AngularStiffness, 1, ["Nm/deg", "N·m/°", "Nm/°"], degreePower: -1),
        new("N·m/rad", Dimension.AngularStiffness, 1, ["Nm/rad"]),
        new("N·mm/deg", Dimension.AngularStiffness, 0.001m, ["Nmm/deg", "N·mm/°", "Nmm/°"], degreePower: -1),
        new("N·mm/rad", Dimension.AngularStiffness, 0.001m, ["Nmm/rad"]),
        new("lbf·in/deg", Dimension.AngularStiffness, Pound * Gravity * Inch, ["lbf·in/°"], degreePower: -1),
        new("g", Dimension.Mass, 0.001m, []), new("kg", Dimension.Mass, 1, []), new("lb", Dimension.Mass, Pound, []),
        new("oz", Dimension.Mass, Pound / 16, []), new("mg", Dimension.Mass, 0.000001m, []),
        new("MPa", Dimension.Pressure, 1_000_000, ["N/mm²", "N/mm2"]), new("kPa", Dimension.Pressure, 1000, []),
        new("Pa", Dimension.Pressure, 1, []), new("GPa", Dimension.Pressure, 1_000_000_000, []),
        new("min", Dimension.Time, 60, []), new("s", Dimension.Time, 1, ["sec"]), new("ms", Dimension.Time, 0.001m, []),
        new("h", Dimension.Time, 3600, ["hour", "hours"]), new("day", Dimension.Time, 86400, ["days", "d"]),
        new("°C", Dimension.Temperature, 1, ["degC", "℃"], zero: 273.15m), new("K", Dimension.Temperature, 1, []),
        new("deg/s", Dimension.AngularSpeed, 1, ["°/s"], degreePower: 1), new("rad/s", Dimension.AngularSpeed, 1, []),
        new("J", Dimension.Energy, 1, []), new("mJ", Dimension.Energy, 0.001m, []), new("Wh", Dimension.Energy, 3600, ["W·h"]),
        new("ml", Dimension.Volume, 0.000001m, ["mL", "cm³", "cm3"]), new("l", Dimension.Volume, 0.001m, ["L"]), new("m³", Dimension.Volume, 1, ["m3"]),
        new("cm²", Dimension.Area, 0.0001m, ["cm2"]), new("mm²", Dimension.Area, 0.000001m, ["mm2"]), new("m²", Dimension.Area, 1, ["m2"]), new("in²", Dimension.Area, Inch * Inch, ["in2"]),
        new("g/cm³", Dimension.Density, 1000, ["g/cm3", "g/ml", "g/mL"]), new("kg/m³", Dimension.Density, 1, ["kg/m3"]),
        new("W/(m·K)", Dimension.Conductivity, 1, ["W/m·K", "W/mK", "W/(mK)"]),
        new("J/(kg·K)", Dimension.SpecificHeat, 1, ["J/kg·K", "J/kgK", "J/(kgK)"]),
        new("W/(m²·K)", Dimension.HeatTransfer, 1, ["W/m²·K", "W/m²K", "W/m2K", "W/(m2K)", "W/(m²K)"]),
        new("Hz", Dimension.Frequency, 1, ["hz"]), new("kHz", Dimension.Frequency, 1000, []),
    ];
}
