using Graspwright.Hand;
using Graspwright.Strength.Knocks;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>What breaks first?</summary>
/// <param name="Hand">The hand.</param>
public sealed record BreakQuestion(HandModel Hand)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>A drop on to a fingertip: mass [kg] and height [m]; <see langword="null"/> = none.</summary>
    public (double Mass, double Height)? Drop { get; init; }
}

/// <summary>The answer with what was worked out for it.</summary>
/// <param name="Answer">The answer; <see langword="null"/> with the errors.</param>
/// <param name="Orders">Order of failure of each finger.</param>
/// <param name="Loads">The grips.</param>
/// <param name="Errors">Bad input.</param>
public sealed record BreakResult(Answer? Answer, IReadOnlyList<FailureOrder> Orders, GripLoads? Loads, IReadOnlyList<InputError> Errors);

/// <summary>Says what breaks first when the hand is knocked from the side or overloaded.</summary>
public static class Breaking
{
    private const double Gravity = 9.80665;

    /// <summary>Answers the question.</summary>
    /// <param name="question">The question.</param>
    public static BreakResult Answer(BreakQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        HandModel hand = question.Hand;
        GripLoads loads;
        try
        {
            loads = GripLoads.Of(hand);
        }
        catch (Mechanics.Run.DriveException fault)
        {
            return new(null, [], null, [Faults.OfHand(question.File, fault)]);
        }

        InputError[] errors = [.. PartFaults(question, loads)];
        if (errors.Length > 0)
        {
            return new(null, [], loads, errors);
        }

        IReadOnlyList<FailureOrder> orders = FailureOrder.All(hand);
        IReadOnlyList<PartStrength> parts = DriveStrength.All(hand, loads);
        List<(FailureOrder Order, IReadOnlyList<CheapPin> Pins)> pins = [.. orders.Select(o => (o, CheapPin.For(hand, o, loads)))];
        List<Finding> findings = [.. BreakFindings.OfOrders(hand, pins), .. BreakFindings.OfKnocks(hand, orders), BreakFindings.OfSqueeze(hand, parts), .. DriveStrength.Bearings(hand, loads), .. SpringStrength.Findings(hand)];
        findings.AddRange(loads.Lost.Select(l => new Finding("grip_not_run", l, Verdict.NotKnown, $"The grip on the {l} could not be run, so its loads are missing here.", "See grip for what stops it.")));
        return new(new()
        {
            Verb = "breaks",
            Hand = hand.Name,
            Sentence = Sentence(hand, orders, question.Drop),
            Figures =
            [
                StrengthFigures.BreakingPush(orders), StrengthFigures.KnockMargin(hand, orders), StrengthFigures.SqueezeFactor(parts),
                StrengthFigures.MovingMass(hand), StrengthFigures.PartsCount(hand),
            ],
            Findings = findings,
            Tables = [Order(orders), Pins(pins), Parts(hand, parts), SpringStrength.Table(hand), Guesses(hand)],
            Cautions = Cautions.All,
        }, orders, loads, []);
    }

    /// <summary>The guesses behind strength and life.</summary>
    /// <param name="hand">The hand.</param>
    public static Table Guesses(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new("guesses", [new("path", ""), new("value", ""), new("standing", ""), new("source", "")],
            [.. hand.Structure.Guesses.Select(g => (IReadOnlyList<Cell>)[g.Path, g.ValueText, "guessed, measure it", g.SourceKey])]);
    }

    private static string Sentence(HandModel hand, IReadOnlyList<FailureOrder> orders, (double Mass, double Height)? drop)
    {
        FailureOrder weakest = orders.MinBy(o => o.First.Newtons)!;
        FailureLink first = weakest.First;
        string what = first.IsWearer ? "your skin takes harm before anything breaks" : $"the {first.Name} gives way first ({first.Where})";
        string sentence = $"Pushed sideways at its tip, the {weakest.Build.Finger.Name} finger is the weakest: {what}, from {Say.Number(first.Newtons)} N, which is a knock of {Say.Number(weakest.Joules / hand.Structure.Use.ReachingShare)} J; repair: {Say.Repair(first.RepairSeconds)}.";
        if (drop is { } d)
        {
            double weight = d.Mass * Gravity, factor = Impact.FallingFactor(d.Height, weight * weakest.Compliance), push = factor * weight;
            FailureLink[] broken = [.. weakest.Links.Where(l => l.Newtons <= push)];
            sentence += $" Dropped {Say.Number(d.Height * 1000)} mm on to that fingertip, {Say.Number(d.Mass * 1000)} g press with {Say.Number(push)} N, {Say.Number(factor)} times their weight: "
                + (broken.Length == 0 ? "nothing gives way." : $"past what {string.Join(", ", broken.Select(b => b.Name))} can stand{(broken.Length > 1 ? "; the first of them gives way and spares the rest" : "")}.");
        }

        return sentence;
    }

    private static IEnumerable<InputError> PartFaults(BreakQuestion question, GripLoads loads) =>
        from part in question.Hand.Structure.Parts
        where loads.Greatest.Count > 0 && !loads.Greatest.ContainsKey(part.Carries)
        select Unknown(question.File, part, loads.Greatest.Keys);

    private static InputError Unknown(string file, StructuralPart part, IEnumerable<string> known)
    {
        string[] names = [.. known.Order(StringComparer.Ordinal)];
        return new(file, 0, 0, $"parts.{part.Name}.carries", $"'{part.Carries}', which is no force of the closing run", string.Join(", ", names), Nearest.To(part.Carries, names) is { } near ? $"Did you mean '{near}'?" : "Use one of these names.");
    }

    private static Table Order(IReadOnlyList<FailureOrder> orders) => new("order of failure under a sideways push at the fingertip",
        [new("finger", ""), new("order", ""), new("what", ""), new("where", ""), new("push", "N"), new("knock", "J"), new("repair", "")],
        [
            .. orders.SelectMany(o => o.Links.Select((l, i) => (IReadOnlyList<Cell>)[o.Build.Finger.Name, (double)(i + 1), l.Name, l.Where, l.Newtons, Impact.Energy(l.Newtons, o.Compliance), Say.Repair(l.RepairSeconds)])),
        ]);

    private static Table Pins(List<(FailureOrder Order, IReadOnlyList<CheapPin> Pins)> pins) => new("knuckle pins that would go first and still carry the grip",
        [new("finger", ""), new("material", ""), new("diameter", "mm"), new("goes at", "N"), new("goes first", "%"), new("grip factor", "×")],
        [.. pins.SelectMany(p => p.Pins).Select(c => (IReadOnlyList<Cell>)[c.Finger, c.Material, c.Diameter * 1000, c.Newtons, 100 * c.Chance, c.GripFactor])]);

    private static Table Parts(HandModel hand, IReadOnlyList<PartStrength> parts) => new("parts under the squeeze, weakest first",
        [new("part", ""), new("material", ""), new("breaks", ""), new("load", "N"), new("stays bent at", "N"), new("breaks at", "N"), new("factor", "×")],
        [
            .. parts.Take(12).Concat(parts.Skip(12).Where(p => hand.Structure.Parts.Any(s => s.Name == p.Name)))
                .Select(p => (IReadOnlyList<Cell>)[p.Name, p.Material, p.Mode, p.Newtons, p.Bends, p.Breaks, p.Factor]),
        ]);
}
