using Graspwright.Strength.Ears;
using Graspwright.Strength.Pins;

namespace Graspwright.Strength.Tests.Ears;

public sealed class EyeTests
{
    [Fact]
    public void Agrees_with_first_principles_worked_apart()
    {
        // Width 24, hole 8.2, pin 8, thickness 4, edge 12 mm, 1000 N; width and edge are chosen so that both planes are equal.
        Eye eye = new(24, 4, 8.2, 8, 12);
        Assert.Equal(31.25, 1000 * eye.BearingPerNewton, 1e-9);
        Assert.Equal(15.822784810, 1000 * eye.NetPerNewton, 1e-8);
        Assert.Equal(15.822784810, 1000 * eye.ShearOutPerNewton, 1e-8);
    }

    // Gere, Mechanics of Materials, example 1-7 (page 42): published 11 000, 13 000 and 10 210 lb (gross section 12 000); the bolt's shear governs.
    [Fact]
    public void Finds_the_governing_way_of_a_textbooks_hanger()
    {
        Eye bar = new(3, 0.5, 1, 1, 100);
        ClevisPin bolt = new(1, 1, 1, 0);
        Dictionary<string, double> loads = new(StringComparer.Ordinal)
        {
            ["net section"] = 11_000 / bar.NetPerNewton,
            ["bearing"] = 26_000 / bar.BearingPerNewton,
            ["bolt sheared"] = 6500 / bolt.ShearPerNewton,
            ["gross section"] = 16_000 * 1.5 * 0.5,
        };
        Assert.Equal(11_000, loads["net section"], 1e-9);
        Assert.Equal(13_000, loads["bearing"], 1e-9);
        Assert.Equal(10_210.176124, loads["bolt sheared"], 1e-6);
        Assert.Equal("bolt sheared", loads.MinBy(l => l.Value).Key);
    }

    // Chart fit on the net section: 3 at no hole, 2 where the hole takes all; the Budynas solutions manual (problem 6-10) reads 2.5 at 0.2.
    [Theory]
    [InlineData(0.0, 3.0)]
    [InlineData(0.1, 2.72207)]
    [InlineData(0.2, 2.50816)]
    [InlineData(0.5, 2.15875)]
    [InlineData(1.0, 2.0)]
    public void Plain_hole_follows_the_chart(double ratio, double factor) => Assert.Equal(factor, Eye.PlainHoleFactor(ratio), 1e-12);

    // Values of the chart's polynomial (coefficients from memory).
    [Theory]
    [InlineData(0.15, 6.820169)]
    [InlineData(0.3, 3.751371)]
    [InlineData(0.5, 2.507125)]
    [InlineData(0.75, 2.040609)]
    [InlineData(0.9, 2.040609)]
    public void Pin_loaded_hole_follows_the_chart(double ratio, double factor) => Assert.Equal(factor, new Eye(10, 1, 10 * ratio, 10 * ratio, 10).PinLoadedFactor, 1e-6);
}
