using Graspwright.Strength.Knocks;

namespace Graspwright.Strength.Tests.Knocks;

public sealed class ImpactTests
{
    // Published and recomputed: Gere example 2-16 (page 133), 1.79 mm and 188.13 MPa; Pytel & Kiusalaas (2011) example 12.5
    // (page 434), factor 5.485 and 143.5 MPa; Ugural & Fenster, 2nd edition, example 4.7 (page 115), 78.51 and 174.85 MPa;
    // Popov (SI) example 10.13 (page 533), factor 71.7.
    [Fact]
    public void Falling_weight_agrees_with_gere()
    {
        double area = Math.PI * 0.015 * 0.015 / 4, weight = 20 * 9.81, give = weight * 2 / (210e9 * area);
        double factor = Impact.FallingFactor(0.15, give);
        Assert.Equal(169.441704951, factor, 1e-7);
        Assert.Equal(1.791668331e-3, factor * give, 1e-11);
        Assert.Equal(188.125174724e6, factor * weight / area, 1);
    }

    [Theory]
    [InlineData(80 * 9.81, 0.010, 1.2, 0.06, 0.03, 5.484768650, 143.481547893)] // laid flat: 60 wide, 30 deep
    [InlineData(15.3 * 9.81, 0.075, 1.0, 0.05, 0.05, 71.695840902, double.NaN)]
    public void Falling_weight_on_a_beam_agrees_with_the_textbooks(double weight, double height, double span, double width, double depth, double factor, double stress)
    {
        double inertia = width * depth * depth * depth / 12, give = weight * span * span * span / (48 * 200e9 * inertia), found = Impact.FallingFactor(height, give);
        Assert.Equal(factor, found, 1e-7);
        if (!double.IsNaN(stress))
        {
            Assert.Equal(stress, found * weight * span / 4 * (depth / 2) / inertia / 1e6, 1e-6);
        }
    }

    [Fact]
    public void Falling_weight_on_springs_agrees_with_ugural()
    {
        double inertia = 0.025 * Math.Pow(0.075, 3) / 12, beam = 180 * Math.Pow(1.16, 3) / (48 * 200e9 * inertia), springs = 180.0 / (2 * 180_000);
        Assert.Equal(78.505907449, Impact.FallingFactor(0.1, beam), 1e-7);
        Assert.Equal(20.391339859, Impact.FallingFactor(0.1, beam + springs), 1e-8);
    }

    [Fact]
    public void A_side_knock_stores_all_its_energy()
    {
        double force = Impact.SideForce(0.5, 2e-5);
        Assert.Equal(0.5, Impact.Energy(force, 2e-5), 1e-12);
        Assert.Equal(0, Impact.SideForce(0, 2e-5));
    }

    // Facts about robots beside people, by plain energy: 1 kg at 2 m/s on 20 N/mm presses with v·√(m·k) = 283 N.
    [Fact]
    public void A_side_knock_presses_as_mass_speed_and_stiffness_say() => Assert.Equal(2 * Math.Sqrt(1 * 20_000.0), Impact.SideForce(0.5 * 1 * 4, 1 / 20_000.0), 1e-9);
}
