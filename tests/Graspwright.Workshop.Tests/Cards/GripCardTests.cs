using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Cards;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Cards;

public sealed class GripCardTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();
    private static readonly (Answer? Answer, IReadOnlyList<CardGrip> Grips, IReadOnlyList<InputError> Errors) Made = GripCard.Make(Boatyard, "hand.toml");

    [Fact]
    public void The_demo_chooses_objects_and_locks_for_every_grip() => Assert.Equal(
        [(GripKind.Pinch, "plate", "hold ring and little"), (GripKind.Point, "rail", "point"), (GripKind.Hook, "rail", null), (GripKind.Cylinder, "tin", null)],
        GripChoice.All(Boatyard).Select(c => (c.Kind, c.Thing!.Name, c.Pattern?.Name)));

    [Fact]
    public void Seconds_are_the_joint_s_travel_in_the_run_by_the_wearer_s_speed()
    {
        (Answer? answer, IReadOnlyList<CardGrip> grips, IReadOnlyList<InputError> errors) = Made;
        Assert.Empty(errors);
        Assert.Equal(4, grips.Count);
        foreach (CardGrip grip in grips)
        {
            double travel = grip.Case!.Reading.End[TraceLayout.JointTravel];
            Assert.Equal(travel / Boatyard.Wrist.SpeedRadiansPerSecond, grip.GripSeconds, 1e-12);
            Assert.Equal(grip.Choice.Pattern is null ? 0 : GripCard.SignalSeconds, grip.WholeSeconds - grip.GripSeconds, 1e-12);
            Assert.InRange(grip.TouchSeconds, 0, grip.GripSeconds);
        }

        Assert.All(answer!.Figures, f => Assert.Equal(f.Value!.Value, FormulaText.Evaluate(f.Working!.Formula, f.Working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal)), 1e-9));
    }

    [Fact]
    public void The_signal_comes_first_where_a_finger_must_stay_straight_and_the_card_says_what_happens_if_not()
    {
        CardGrip point = Made.Grips.Single(g => g.Choice.Kind == GripKind.Point);
        Assert.StartsWith("Wrist at rest", point.Steps[0], StringComparison.Ordinal);
        Assert.Contains("index locks", point.Steps[0], StringComparison.Ordinal);
        Assert.Contains("does not point", point.OutOfOrder[0], StringComparison.Ordinal);
        Assert.Matches(@"index bent by 1\d\d°", point.OutOfOrder[0]);
    }

    [Fact]
    public void A_hand_without_locks_says_what_it_lacks()
    {
        (Answer? answer, IReadOnlyList<CardGrip> grips, _) = GripCard.Make(Boatyard with { Locks = [], Objects = [.. Boatyard.Objects.OfType<CylinderObject>()], Jobs = [] }, "hand.toml");
        Assert.Equal([GripKind.Pinch, GripKind.Point], grips.Where(g => g.Case is null).Select(g => g.Choice.Kind));
        Assert.Contains("pinch: the hand file names no plate to pinch; point: no lock pattern holds the index straight", answer!.Sentence, StringComparison.Ordinal);
    }
}
