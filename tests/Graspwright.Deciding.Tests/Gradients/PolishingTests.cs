using Graspwright.Deciding.Gradients;
using Graspwright.Deciding.Search;

namespace Graspwright.Deciding.Tests.Gradients;

public sealed class PolishingTests
{
    [Fact]
    public void Central_differences_give_the_derivatives_of_a_polynomial_and_of_sines()
    {
        double[][] slopes = Differences.Central(x => [x[0] * x[0] * x[1], Math.Sin(x[0]) * Math.Cos(x[1])], [1.5, -0.7], [1e-5, 1e-5]);
        Assert.Equal(2 * 1.5 * -0.7, slopes[0][0], 1e-8);
        Assert.Equal(1.5 * 1.5, slopes[0][1], 1e-8);
        Assert.Equal(Math.Cos(1.5) * Math.Cos(-0.7), slopes[1][0], 1e-8);
        Assert.Equal(-Math.Sin(1.5) * Math.Sin(-0.7), slopes[1][1], 1e-8);
    }

    [Fact]
    public void A_design_is_polished_to_the_corner_that_a_limit_allows()
    {
        // Least x² + y² with x + y at least 1: x = y = 1/2, value 1/2.
        Outcome Judged(double[] x) => new([x[0] * x[0] + x[1] * x[1]], [1 - x[0] - x[1]]);
        Slopes Sloped(double[] x) => new(Judged(x), [[2 * x[0], 2 * x[1]]], [[-1, -1]]);
        DesignSpace space = new([new(0, 2), new(0, 2)]);
        double[] from = [1.7, 0.4];
        Design polished = Polishing.Polish(space, Sloped, Judged, new(0, from, Judged(from)), 0, [true, true]);
        Assert.Equal(0.5, polished.Outcome.Aims[0], 5e-3);
        Assert.True(polished.Outcome.Violation == 0);
    }

    [Fact]
    public void No_other_aim_gets_worse_and_what_is_not_free_stays()
    {
        Outcome Judged(double[] x) => new([-(x[0] + 2 * x[1] + x[2]), x[0] - x[1]], []);
        Slopes Sloped(double[] x) => new(Judged(x), [[-1, -2, -1], [1, -1, 0]], []);
        DesignSpace space = new([new(0, 1), new(0, 1), new(0, 1)]);
        double[] from = [0.5, 0.5, 0.25];
        Design polished = Polishing.Polish(space, Sloped, Judged, new(0, from, Judged(from)), 0, [true, true, false]);
        Assert.True(polished.Outcome.Aims[1] <= 0);
        Assert.True(polished.Outcome.Aims[0] < -3.2);
        Assert.Equal(0.25, polished.Values[2]);
    }
}
