using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Tests.Strength;

public sealed class SpringAndHistoryTests
{
    private static readonly CoilSpring Sound = new("slot", SpringDuty.Slot, 0.0007, 0.007, 14, 0.03, 0.012, 0.0005, "music wire");

    [Fact]
    public void A_spring_that_runs_solid_or_sets_fails()
    {
        Finding[] found = Findings(Sound with { FittedLength = 0.0115, Stroke = 0.0025 });
        Assert.Equal(Verdict.Fails, found.Single(f => f.Key == "spring_solid").Verdict);
        Finding set = Findings(Sound with { FreeLength = 0.1, Wire = 0.001, Outside = 0.005 }).Single(f => f.Key == "spring_set");
        Assert.Equal(Verdict.Fails, set.Verdict);
    }

    [Fact]
    public void A_spring_of_the_slot_is_held_to_what_the_slot_asks()
    {
        HandModel hand = MadeHand.Boatyard();
        double rate = SpringStrength.Coil(Sound).Rate, preload = rate * (Sound.FreeLength - Sound.FittedLength);
        HandModel asks = hand with { Crank = hand.Crank with { Slot = hand.Crank.Slot! with { Preload = preload } }, Structure = hand.Structure with { Springs = [Sound] } };
        Assert.Equal(Verdict.Good, SpringStrength.Findings(asks).Single(f => f.Key == "spring_preload").Verdict);
        HandModel more = asks with { Crank = asks.Crank with { Slot = asks.Crank.Slot! with { Preload = 3 * preload } } };
        Assert.Equal(Verdict.Fails, SpringStrength.Findings(more).Single(f => f.Key == "spring_preload").Verdict);
        Assert.Equal(rate / 1000, SpringStrength.Table(asks).Rows[0][1].Number!.Value, 1e-12);
    }

    [Fact]
    public void Reads_the_column_of_moments()
    {
        (IReadOnlyList<double> moments, IReadOnlyList<InputError> errors) = MomentHistory.Read("time [s],moment [N·m]\r\n0,0\r\n1,2.5\r\n\r\n", "day.csv");
        Assert.Empty(errors);
        Assert.Equal([0, 2.5], moments);
    }

    [Theory]
    [InlineData("time,torque\n0,1\n", 1, 1)]
    [InlineData("time [s],moment [N·m]\n0,1\n1,two\n", 3, 3)]
    [InlineData("moment [N·m]\n1\nNaN\n", 3, 1)]
    [InlineData("moment [N·m]\n1\n", 0, 0)]
    [InlineData("", 1, 1)]
    public void Says_where_a_history_is_wrong(string text, int line, int column)
    {
        InputError error = Assert.Single(MomentHistory.Read(text, "day.csv").Errors);
        Assert.Equal((line, column), (error.Line, error.Column));
    }

    private static Finding[] Findings(CoilSpring spring)
    {
        HandModel hand = MadeHand.Boatyard();
        return [.. SpringStrength.Findings(hand with { Structure = hand.Structure with { Springs = [spring] } })];
    }
}
