using Graspwright.Signals.Contacts;

namespace Graspwright.Signals.Tests.Contacts;

public sealed class StudTests
{
    private static readonly Stud Usual = new()
    {
        DomeDiameter = 0.010,
        DomeHeight = 0.0015,
        FlangeDiameter = 0.012,
        HoleDiameter = 0.004,
        LinerThickness = 0.003,
        Squeeze = 0.15,
        ShoreHardness = 30,
        TearStrength = 15e3,
        StretchAtBreak = 4,
        ShellMovement = 0.004,
        WireDiameter = 0.0012,
        WireLength = 0.05,
    };

    /// <summary>A. N. Gent 1958, values as tabled.</summary>
    [Theory]
    [InlineData(20, 0.732)]
    [InlineData(30, 1.142)]
    [InlineData(40, 1.690)]
    [InlineData(60, 3.605)]
    public void Hardness_gives_the_modulus_of_Gent(double shore, double megapascals) => Assert.Equal(megapascals * 1e6, StudSums.Modulus(shore), 600.0);

    [Fact]
    public void Pressure_is_that_of_Hertz()
    {
        StudResult result = StudSums.Of(Usual);
        double r = (0.005 * 0.005 + 0.0015 * 0.0015) / 0.003, plane = StudSums.FleshModulus / (1 - 0.49 * 0.49);
        double force = 4.0 / 3 * plane * Math.Sqrt(r) * Math.Pow(0.0015, 1.5), area = Math.PI * r * 0.0015;
        Assert.Equal(force / area, result.SkinPressure, 1e-6 * force / area);
        Assert.True(StudSums.Of(Usual with { DomeHeight = 0.003 }).SkinPressure > result.SkinPressure);
        Assert.Equal(2, result.SlipStretch, 1e-12);
        Assert.Equal(2 * 15e3 * 0.003 * 0.85, result.TearOut, 1e-9);
        Assert.Equal(Math.PI * 0.012 + 0.004, result.WireNeeded, 1e-12);
    }

    [Fact]
    public void No_metal_with_nickel_is_let_onto_skin()
    {
        Assert.DoesNotContain(ContactMetal.All, m => m.OnSkin && (m.Name.Contains("nickel", StringComparison.Ordinal) || m.Name.Contains("stainless", StringComparison.Ordinal) || m.Name.Contains("brass", StringComparison.Ordinal)));
        Assert.Contains(ContactMetal.All, m => m is { OnSkin: true, Name: "titanium" });
    }
}
