using System.Globalization;
using CsCheck;

namespace Graspwright.Hand.Tests;

public sealed class QuantityTests
{
    // Exact by definition: inch 25.4 mm and pound 0.453 592 37 kg (international yard and pound agreement, 1959),
    // standard gravity 9.806 65 m/s² (third General Conference on Weights and Measures, 1901). From memory.
    [Theory]
    [InlineData("12 mm", Dimension.Length, 0.012)]
    [InlineData("12mm", Dimension.Length, 0.012)]
    [InlineData(" 1.2 cm ", Dimension.Length, 0.012)]
    [InlineData("0.5 in", Dimension.Length, 0.0127)]
    [InlineData("-3e1 mm", Dimension.Length, -0.03)]
    [InlineData("−3 mm", Dimension.Length, -0.003)]
    [InlineData(".5 mm", Dimension.Length, 0.0005)]
    [InlineData("5 µm", Dimension.Length, 5e-6)]
    [InlineData("5 μm", Dimension.Length, 5e-6)]
    [InlineData("180 deg", Dimension.Angle, Math.PI)]
    [InlineData("180°", Dimension.Angle, Math.PI)]
    [InlineData("1 rad", Dimension.Angle, 1)]
    [InlineData("1 kgf", Dimension.Force, 9.80665)]
    [InlineData("1 lbf", Dimension.Force, 4.4482216152605)]
    [InlineData("2 N·m", Dimension.Moment, 2)]
    [InlineData("2 N m", Dimension.Moment, 2)]
    [InlineData("2 Nm", Dimension.Moment, 2)]
    [InlineData("2Nm", Dimension.Moment, 2)]
    [InlineData("2 N*m", Dimension.Moment, 2)]
    [InlineData("2 N⋅m", Dimension.Moment, 2)]
    [InlineData("25 N·mm", Dimension.Moment, 0.025)]
    [InlineData("25 Nmm", Dimension.Moment, 0.025)]
    [InlineData("1.8 kgf·cm", Dimension.Moment, 0.1765197)]
    [InlineData("1 lbf·in", Dimension.Moment, 0.1129848290276167)]
    [InlineData("3 N/mm", Dimension.Stiffness, 3000)]
    [InlineData("3 N/m", Dimension.Stiffness, 3)]
    [InlineData("1 kgf/mm", Dimension.Stiffness, 9806.65)]
    [InlineData("1 N·m/rad", Dimension.AngularStiffness, 1)]
    [InlineData("1 N·m/deg", Dimension.AngularStiffness, 180 / Math.PI)]
    [InlineData("1 N·mm/rad", Dimension.AngularStiffness, 0.001)]
    [InlineData("250 g", Dimension.Mass, 0.25)]
    [InlineData("1 lb", Dimension.Mass, 0.45359237)]
    [InlineData("16 oz", Dimension.Mass, 0.45359237)]
    [InlineData("2 MPa", Dimension.Pressure, 2e6)]
    [InlineData("2 N/mm²", Dimension.Pressure, 2e6)]
    [InlineData("90 min", Dimension.Time, 5400)]
    [InlineData("2 day", Dimension.Time, 172800)]
    [InlineData("20 °C", Dimension.Temperature, 293.15)]
    [InlineData("180 deg/s", Dimension.AngularSpeed, Math.PI)]
    [InlineData("18 %", Dimension.Number, 0.18)]
    [InlineData("0.18", Dimension.Number, 0.18)]
    [InlineData("3 mJ", Dimension.Energy, 0.003)]
    [InlineData("20 ml", Dimension.Volume, 2e-5)]
    public void Converts_to_the_last_bit(string text, Dimension dimension, double si)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Quantity? quantity, out _));
        Assert.Equal(si, quantity.Si);
    }

    // lbf/in has no finite decimal factor: 4.448 221 615 260 5 ÷ 0.0254 N/m.
    [Fact]
    public void Converts_pounds_per_inch()
    {
        Assert.True(Quantity.TryParse("10 lbf/in", Dimension.Stiffness, out Quantity? quantity, out _));
        Assert.Equal(1751.2683524647638, quantity.Si, 1e-12 * 1751);
    }

    [Theory]
    [InlineData("12", Dimension.Length, "add the unit: write \"12 mm\"")]
    [InlineData("12,5 mm", Dimension.Length, "a comma is not a decimal point: write \"12.5 mm\"")]
    [InlineData("1,000 mm", Dimension.Length, "a comma is not a decimal point: write \"1.000 mm\"")]
    [InlineData("12 N", Dimension.Length, "N is a force, a length is wanted here")]
    [InlineData("12 N·m", Dimension.Stiffness, "N·m is a moment, a stiffness along a line is wanted here")]
    [InlineData("12 mn", Dimension.Length, "\"mn\" is no unit we know: write \"12 mm\"")]
    [InlineData("nan mm", Dimension.Length, "write a finite number")]
    [InlineData("inf", Dimension.Length, "write a finite number")]
    [InlineData("1e400 mm", Dimension.Length, "write a finite number")]
    [InlineData("", Dimension.Length, "write a number and its unit, such as \"12 mm\"")]
    [InlineData("about 3 mm", Dimension.Length, "write a number and its unit, such as \"12 mm\"")]
    [InlineData("1.2.3 mm", Dimension.Length, "write a number and its unit, such as \"12 mm\"")]
    [InlineData("1 2 mm", Dimension.Length, "write a number and its unit, such as \"12 mm\"")]
    public void Refuses_with_the_fix(string text, Dimension dimension, string fix)
    {
        Assert.False(Quantity.TryParse(text, dimension, out _, out QuantityFault? fault));
        Assert.Equal(fix, fault.Fix);
    }

    [Fact]
    public void Names_every_allowed_unit() => Assert.Equal("a length as text with a unit (mm, cm, m, in, μm)", Quantity.Allowed(Dimension.Length));

    [Fact]
    public void Keeps_unit_and_spacing_when_the_value_changes()
    {
        Assert.True(Quantity.TryParse("0.5in", Dimension.Length, out Quantity? inch, out _));
        Assert.Equal("1in", inch.With(0.0254));
        Assert.True(Quantity.TryParse("2 N m", Dimension.Moment, out Quantity? moment, out _));
        Assert.Equal("2.5 N m", moment.With(2.5));
    }

    [Fact]
    public void Writes_every_value_so_that_it_reads_back_to_the_bit() =>
        Gen.Select(Gen.Double[-1e7, 1e7], Gen.Int[-12, 0], Gen.Enum<Dimension>()).Sample((mantissa, power, dimension) =>
        {
            double si = mantissa * Math.Pow(10, power);
            return Quantity.TryParse(Quantity.Write(si, dimension), dimension, out Quantity? quantity, out _) && quantity.Si.Equals(si);
        });

    [Fact]
    public void Never_turns_a_comma_into_a_factor() =>
        Gen.Select(Gen.Int[0, 99999], Gen.Int[0, 99999], Gen.Int[0, Unit.All.Count - 1]).Sample((whole, part, unit) =>
            !Quantity.TryParse(FormattableString.Invariant($"{whole},{part} {Unit.All[unit].Symbol}"), Unit.All[unit].Dimension, out _, out _));

    [Fact]
    public void Reads_the_same_under_a_culture_with_decimal_comma()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.True(Quantity.TryParse("12.5 mm", Dimension.Length, out Quantity? quantity, out _));
            Assert.Equal(0.0125, quantity.Si);
            Assert.Equal("12.5 mm", Quantity.Write(0.0125, Dimension.Length));
            HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
            Assert.DoesNotContain(",5", string.Concat(HandWriter.Write(hand).Where(c => c != ' ')), StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Spells_no_unit_twice() =>
        Assert.All(Unit.All, u => Assert.All(u.Spellings, s => Assert.Same(u, Unit.Find(s))));
}
