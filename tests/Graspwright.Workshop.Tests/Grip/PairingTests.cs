using Graspwright.Hand;
using Graspwright.Workshop.Grip;

namespace Graspwright.Workshop.Tests.Grip;

public sealed class PairingTests
{
    [Fact]
    public void Arms_follow_the_fingers_places_across_the_hand()
    {
        IReadOnlyList<Pairing> pairings = Pairing.All(MadeHand.Boatyard());
        Assert.Equal(["index + middle, ring + little", "index + ring, middle + little", "index + little, middle + ring"], pairings.Select(p => p.Words));

        // Fingers at 31.5, 10.5, −10.5, −31.5 mm: neighbours' bars have arms of 10.5 mm, pivots at ±21 mm.
        BalanceBar tree = pairings[0].Tree;
        Assert.Equal((0.021, 0.021), (tree.FirstArm, tree.SecondArm));
        BalanceBar first = Assert.IsType<BalanceBar>(tree.First);
        Assert.Equal(0.0105, first.FirstArm, 1e-12);
        Assert.Equal(0.0105, first.SecondArm, 1e-12);
        Assert.Null(pairings[0].Stacked);
    }

    [Fact]
    public void Crossing_bars_and_roots_without_arms_need_stacking_and_take_the_files_arms()
    {
        HandModel hand = MadeHand.Boatyard();
        IReadOnlyList<Pairing> pairings = Pairing.All(hand);
        Assert.Contains("cross", pairings[1].Stacked, StringComparison.Ordinal);
        Assert.Contains("root has no arms", pairings[2].Stacked, StringComparison.Ordinal);
        Assert.All(pairings.Skip(1), p => Assert.Equal(((BalanceBar)hand.Balance).FirstArm, p.Tree.FirstArm));
    }

    [Fact]
    public void Says_nothing_of_hands_without_four_fingers()
    {
        HandModel hand = MadeHand.Boatyard();
        Assert.Empty(Pairing.All(hand with { Fingers = [.. hand.Fingers.Take(3)] }));
    }

    // A free tree with equal arms shares pulls equally whatever the pairing (virtual work): grip and moment are the same.
    [Fact]
    public void Pairings_without_friction_do_not_differ()
    {
        HandModel hand = MadeHand.Boatyard() with { Friction = new(), Locks = [] };
        GripQuestion question = new(hand) { Objects = ["mug"], Locks = ["all free"], Efforts = [Effort.AllDay] };
        GripResult result = PairingAnswer.Add(question, Gripping.Answer(question));
        Assert.Contains("The three pairings do not differ", result.Answer!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Pairings_that_differ_by_the_rubbing_of_their_bars_only_are_said_to_come_close()
    {
        HandModel hand = MadeHand.Boatyard() with { Locks = [] };
        GripQuestion question = new(hand) { Objects = ["mug"], Locks = ["all free"], Efforts = [Effort.AllDay] };
        GripResult result = PairingAnswer.Add(question, Gripping.Answer(question));
        Assert.Contains("% of each other's grip", result.Answer!.Sentence, StringComparison.Ordinal);
        Assert.Contains("the bars' pins rub", result.Answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_on_its_stop_makes_pairings_differ_and_is_named_as_the_cause()
    {
        HandModel hand = MadeHand.Boatyard() with { Friction = new() };
        BalanceBar root = (BalanceBar)hand.Balance;
        BalanceBar Tight(BalanceNode bar) => (BalanceBar)bar with { TiltStopRadians = MadeRun.Radians(2) };
        hand = hand with { Balance = root with { First = Tight(root.First), Second = Tight(root.Second) } };
        GripQuestion question = new(hand) { Objects = ["mug"], Locks = ["all free"], Efforts = [Effort.AllDay] };
        GripResult result = PairingAnswer.Add(question, Gripping.Answer(question));
        Assert.Contains("The pairings differ", result.Answer!.Sentence, StringComparison.Ordinal);
        Assert.Contains("bars stand on their tilt stops", result.Answer.Sentence, StringComparison.Ordinal);
    }
}
