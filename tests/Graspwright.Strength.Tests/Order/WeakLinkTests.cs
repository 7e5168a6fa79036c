using Graspwright.Strength.Order;

namespace Graspwright.Strength.Tests.Order;

public sealed class WeakLinkTests
{
    [Fact]
    public void Finds_the_size_that_meets_the_target()
    {
        Assert.Equal(Math.Cbrt(8), WeakLink.Size(d => d * d * d, 8, 0.1, 10)!.Value, 1e-9);
        Assert.Null(WeakLink.Size(d => d, 20, 0.1, 10));
    }

    // Standard normal table: 97.5 % at 1.959964.
    [Fact]
    public void Chance_follows_the_normal_table()
    {
        double spread = Math.Sqrt(Math.Exp(0.01) - 1); // deviation of the logarithm 0.1
        Assert.Equal(0.5, WeakLink.ChanceFirst(10, spread, 10, spread), 1e-12);
        Assert.Equal(0.975, WeakLink.ChanceFirst(10, spread, 10 * Math.Exp(1.959963984540054 * 0.1 * Math.Sqrt(2)), spread), 1e-9);
        Assert.Equal(1, WeakLink.ChanceFirst(10, 0, 11, 0));
    }
}
