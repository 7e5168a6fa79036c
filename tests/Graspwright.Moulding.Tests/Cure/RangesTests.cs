using Graspwright.Moulding.Cure;

namespace Graspwright.Moulding.Tests.Cure;

public sealed class RangesTests
{
    private static readonly StatedRange[] Inputs = [new(10, 9, 11), new(5, 3, 9), new(2, 2, 2)];

    private static double[] Model(double[] x) => [x[0] + 2 * x[1], x[0] * x[2]];

    [Fact]
    public void Adds_independent_changes_by_their_squares_up_and_down_apart()
    {
        IReadOnlyList<SpreadOutput> spread = Ranges.Spread(Model, Inputs);
        Assert.Equal(20, spread[0].Value);
        Assert.Equal(20 - Math.Sqrt(1 + 16), spread[0].Low, 1e-12);
        Assert.Equal(20 + Math.Sqrt(1 + 64), spread[0].High, 1e-12);
        Assert.Equal([18, 20], [spread[1].Low, spread[1].Value]);
    }

    [Fact]
    public void Finds_the_value_of_one_input_that_meets_a_wanted_output()
    {
        IReadOnlyList<SpreadOutput> spread = Ranges.Spread(Model, Inputs);
        Assert.Equal(7.5, Ranges.Meeting(Model, Inputs, 1, 0, 25, spread[0], 1e-9)!.Value, 1e-6);
        Assert.Null(Ranges.Meeting(Model, Inputs, 0, 0, 25, spread[0], 1e-9));
    }
}
