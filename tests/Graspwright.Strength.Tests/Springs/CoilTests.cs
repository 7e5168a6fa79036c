using Graspwright.Strength.Springs;

namespace Graspwright.Strength.Tests.Springs;

public sealed class CoilTests
{
    private const double Inch = 0.0254, Pound = 4.4482216152605;

    // Shigley's Mechanical Engineering Design, 9th edition, example 10-1 (from memory): music wire of 0.037 in, outside 7/16 in,
    // 12.5 coils in all; S_ut 324 kpsi, K_B 1.124, 6.46 lbf at yield in torsion, rate 4.13 lbf/in with the mean diameter rounded to 0.400 in. There the ends are squared
    // and not ground, so that the solid length is one wire more than ours, and G is 11.85 Mpsi.
    [Fact]
    public void Agrees_with_shigleys_spring()
    {
        double wire = 0.037 * Inch, mean = 0.4375 * Inch - wire;
        Coil coil = new(wire, mean, 10.5, SpringWire.Music with { ShearModulus = 11.85e6 * Pound / (Inch * Inch) });
        Assert.Equal(1.124, coil.Bergstrasser, 6e-4);
        Assert.InRange(coil.Strength / (1000 * Pound / (Inch * Inch)), 323.3, 324.7);
        Assert.Equal(6.46, coil.SetLoad / Pound, 0.03);
        Assert.Equal(4.13, coil.Rate / (Pound / Inch), 0.02);
        Assert.Equal(0.4625, coil.Solid / Inch, 1e-9);
    }

    [Fact]
    public void Wahls_and_bergstrassers_factors_lie_close_together()
    {
        foreach (double index in (double[])[4, 6, 8, 12])
        {
            Coil coil = new(0.001, index * 0.001, 8, SpringWire.Music);
            Assert.InRange(coil.Wahl / coil.Bergstrasser, 0.99, 1.015);
        }
    }

    [Fact]
    public void Stress_of_the_set_load_is_the_share_of_the_strength()
    {
        Coil coil = new(0.0008, 0.0062, 8, SpringWire.Stainless);
        Assert.Equal(0.35, coil.Stress(coil.SetLoad) / coil.Strength, 1e-12);
    }

    // Zimmerli's data by Goodman's line: at 241 MPa about 379 MPa the factor is 1.
    [Fact]
    public void Fatigue_is_just_stood_at_zimmerlis_stresses()
    {
        Coil coil = new(0.001, 0.008, 8, SpringWire.Music);
        double perNewton = coil.Stress(1);
        Assert.Equal(1, coil.FatigueFactor((379e6 - 241e6) / perNewton, (379e6 + 241e6) / perNewton), 1e-9);
    }

    [Fact]
    public void A_stouter_stock_spring_keeps_the_rate_and_does_not_set()
    {
        Coil weak = new(0.0005, 0.0065, 12, SpringWire.Music);
        double load = 1.5 * weak.SetLoad;
        Coil stout = weak.Stouter(load)!;
        Assert.Equal(weak.Rate, stout.Rate, 1e-9 * weak.Rate);
        Assert.True(stout.SetLoad >= load);
        Assert.Equal(weak.Mean + weak.Wire, stout.Mean + stout.Wire, 1e-15);
        Assert.Equal(0.0005, weak.NearestStock);
        Assert.Null(weak.Stouter(1e9));
    }
}
