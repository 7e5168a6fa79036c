using Graspwright.Moulding.Cure;

namespace Graspwright.Moulding.Tests.Cure;

public sealed class CureRateTests
{
    private const double Zero = 273.15;

    // Accelerated ageing by the ten-degree rule of ASTM F1980, factor 2: 55 °C for 25 °C is 8 times; 55 °C for 22 °C is 9.849155307 times.
    [Theory]
    [InlineData(25, 55, 8.0)]
    [InlineData(22, 55, 9.849155307)]
    public void Follows_the_ten_degree_rule_of_accelerated_ageing(double label, double at, double factor) =>
        Assert.Equal(factor, new CureRate(CureRule.TenDegrees, 2, label + Zero).At(at + Zero), 1e-9 * factor);

    // Documentation of a reliability library: 60 to 100 °C at 1.2 eV is 88.29574588463338 with its own constant; 88.295745891 with k = 8.617333262e-5 eV/K.
    [Fact]
    public void Accelerates_by_arrhenius_as_a_reliability_library_does() =>
        Assert.Equal(88.295745891, CureRate.Acceleration(1.2, 60 + Zero, 100 + Zero), 1e-8);

    // Doubling from 20 to 30 °C needs 0.530818220 eV (recomputed independently).
    [Fact]
    public void Finds_the_energy_of_doubling_in_ten_degrees() =>
        Assert.Equal(0.530818220, CureRate.ActivationEnergy(2, 20 + Zero, 30 + Zero), 1e-9);

    [Fact]
    public void Both_rules_agree_at_the_label_and_ten_degrees_above()
    {
        CureRate ten = new(CureRule.TenDegrees, 2.2, 296.15), law = ten with { Rule = CureRule.Arrhenius };
        Assert.Equal(1, law.At(296.15), 1e-12);
        Assert.Equal(2.2, law.At(306.15), 1e-12);
        Assert.Equal(ten.At(306.15), law.At(306.15), 1e-12);
        Assert.True(law.At(276.15) < ten.At(276.15), "below the label's temperature Arrhenius' law is the slower");
    }
}
