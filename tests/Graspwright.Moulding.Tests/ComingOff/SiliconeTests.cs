using Graspwright.Moulding.ComingOff;

namespace Graspwright.Moulding.Tests.ComingOff;

public sealed class SiliconeTests
{
    // Gent's relation of 1958, its constants the same in ten public programs; values recomputed independently.
    [Theory]
    [InlineData(10, 0.4127)]
    [InlineData(20, 0.7319)]
    [InlineData(30, 1.1424)]
    [InlineData(40, 1.6896)]
    [InlineData(60, 3.6051)]
    [InlineData(80, 9.3514)]
    public void Turns_hardness_into_modulus_as_gent_does(double shore, double megapascals)
    {
        Assert.Equal(megapascals, Silicone.Modulus(shore) / 1e6, 5.1e-5);
        Assert.Equal(shore, Silicone.ShoreA(Silicone.Modulus(shore)), 1e-9);
    }

    [Fact]
    public void One_megapascal_is_shore_26_8() => Assert.Equal(26.827350232, Silicone.ShoreA(1e6), 1e-8);

    [Fact]
    public void Stored_energy_begins_as_hookes_does_and_is_the_work_of_the_stress()
    {
        Assert.Equal(0.5 * 1e6 * 1e-6, Silicone.Stored(1e6, 1e-3), 1e-3);
        // dW/dλ is the engineering stress of a neo-Hookean strip, E/3·(λ − 1/λ²) (Treloar).
        double slope = (Silicone.Stored(1e6, 1.0001) - Silicone.Stored(1e6, 0.9999)) / 2e-4;
        Assert.Equal(1e6 / 3 * (2 - 0.25), slope, 1e-3);
    }

    // Greensmith 1963 (abstract): the factor falls from about 3 at small extensions to somewhat below 2 at threefold length.
    [Fact]
    public void The_factor_of_a_cut_falls_as_greensmith_measured()
    {
        double At(double elongation) => Silicone.ShortCutEnergy(1e6, elongation, 0.01) / (2 * 0.01 * Silicone.Stored(1e6, elongation));
        Assert.Equal(3, At(1e-3), 0.01);
        Assert.InRange(At(2), 1.6, 2.0);
    }

    // The ring that goes slack: energy of a volume × girth × thickness for each length, over the new area thickness × length.
    [Fact]
    public void A_long_cut_sets_the_energy_of_a_whole_ring_free() =>
        Assert.Equal(Silicone.Stored(1e6, 0.2) * 0.18, Silicone.LongCutEnergy(1e6, 0.2, 0.18), 1e-9);

    [Fact]
    public void Resistance_is_twice_the_tear_strength_and_the_hole_shares_the_energy_out()
    {
        Assert.Equal(20_000, Silicone.TearResistance(10_000));
        Assert.Equal(0.005, Silicone.HoleDiameter(5000, 1e6), 1e-12);
    }
}
