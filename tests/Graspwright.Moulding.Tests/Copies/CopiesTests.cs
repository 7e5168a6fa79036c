using Graspwright.Moulding.Copies;

namespace Graspwright.Moulding.Tests.Copies;

public sealed class CopiesTests
{
    // BBC News, 23 March 2007, quoting a school science advisory service: "In bulk, the temperature can reach 60C or so."
    [Fact]
    public void A_bucket_of_plaster_gets_as_hot_as_was_reported() => Assert.InRange(20 + PlasterMix.Of(0.005, 0.7).GreatestRise, 55, 65);

    // By the weights of the reaction, 100 g of hemihydrate bind 18.6 g of water (1.5 × 18.015 ÷ 145.15).
    [Fact]
    public void Powder_and_water_fill_the_volume()
    {
        PlasterMix mix = PlasterMix.Of(1e-3, 0.6);
        Assert.Equal(1e-3, mix.Powder / 2640 + mix.Water / 1000, 1e-12);
        Assert.Equal(0.6, mix.Water / mix.Powder, 1e-12);
        Assert.True(PlasterMix.Of(1e-3, 0.45).GreatestRise > mix.GreatestRise);
    }

    [Fact]
    public void A_coat_of_a_millimetre_adds_its_turn_and_growth_multiplies()
    {
        IReadOnlyList<CopyGirth> chain = CopyChain.Follow(0.2, [new("film", 0.001, 0.0005, 0, 0), new("plaster", 0, 0, 0.002, 0.001)]);
        Assert.Equal(0.2 + 2 * Math.PI * 0.001, chain[0].Girth, 1e-15);
        Assert.Equal(chain[0].Girth * 1.002, chain[1].Girth, 1e-15);
        Assert.Equal(double.Hypot(2 * Math.PI * 0.0005, chain[0].Girth * 0.001), chain[1].Spread, 1e-12);
        double off = CopyChain.TakeOff(chain[1].Girth, 0.19);
        Assert.Equal(0.19, chain[1].Girth - 2 * Math.PI * off, 1e-15);
    }
}
