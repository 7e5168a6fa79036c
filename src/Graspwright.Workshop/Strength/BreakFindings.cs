using Graspwright.Hand;
using Graspwright.Strength.Ears;
using Graspwright.Strength.Knocks;
using Graspwright.Strength.Order;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>What is good, tight or failing about the order in which things break.</summary>
public static class BreakFindings
{
    private const double Sure = 0.95;

    /// <summary>Whether what breaks first is cheap and quickly changed; fingers that go the same way are told together, the weakest first.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="orders">Orders with the pins that would go first.</param>
    public static IEnumerable<Finding> OfOrders(HandModel hand, IEnumerable<(FailureOrder Order, IReadOnlyList<CheapPin> Pins)> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        var judged = orders.Select(o => (o.Order, Finding: OfOrder(hand, o.Order, o.Pins))).ToList();
        foreach (var same in judged.GroupBy(j => (j.Finding.Key, j.Finding.Verdict, j.Order.First.Name)))
        {
            var sorted = same.OrderBy(j => j.Order.First.Newtons).ToList();
            string others = string.Join(", ", sorted.Skip(1).Select(j => $"{j.Order.Build.Finger.Name} {Say.Number(j.Order.First.Newtons)} N"));
            Finding first = sorted[0].Finding;
            yield return others.Length == 0 ? first : first with { Reason = $"{first.Reason} The same goes for {others}." };
        }
    }

    /// <summary>Whether what breaks first is cheap and quickly changed.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="order">Order of a finger.</param>
    /// <param name="pins">Pins that would go first.</param>
    public static Finding OfOrder(HandModel hand, FailureOrder order, IReadOnlyList<CheapPin> pins)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(pins);
        string finger = order.Build.Finger.Name;
        FailureLink first = order.First, next = order.Links.Count > 1 ? order.Links[1] : order.First;
        double chance = WeakLink.ChanceFirst(first.Newtons, first.Spread, next.Newtons, next.Spread);
        string offer = pins.Count > 0
            ? $"A knuckle pin of {pins[0].Material}, {Say.Number(pins[0].Diameter * 1000)} mm, goes at {Say.Number(pins[0].Newtons)} N, before the rest in {Say.Number(100 * pins[0].Chance)} of 100 cases, and carries {Say.Number(pins[0].GripFactor)} times the squeeze."
            : NoPin(order);
        if (first.IsWearer)
        {
            return new("wearer_first", finger, Verdict.Fails, $"Pushed sideways at its tip, the {finger} finger hands the blow to your skin from {Say.Number(first.Newtons)} N before anything breaks; the {next.Name} would stand {Say.Number(next.Newtons)} N.", $"{offer} A longer shell along the palm spares the skin too.")
            {
                Figure = next.Newtons,
                Limit = first.Newtons,
                Unit = "N",
                Margin = (first.Newtons - next.Newtons) / next.Newtons,
            };
        }

        bool quick = first.RepairSeconds <= hand.Structure.Repair.Quick;
        double margin = quick ? next.Newtons / first.Newtons - 1 : hand.Structure.Repair.Quick / first.RepairSeconds - 1;
        string reason = quick
            ? $"Pushed sideways, the {finger} finger loses its {first.Name} at {Say.Number(first.Newtons)} N ({Say.Repair(first.RepairSeconds)} to change), before the {next.Name} at {Say.Number(next.Newtons)} N in {Say.Number(100 * chance)} of 100 cases."
            : $"Pushed sideways, the {finger} finger breaks at the {first.Name} ({first.Where}) at {Say.Number(first.Newtons)} N: {Say.Repair(first.RepairSeconds)} of repair.";
        Verdict verdict = quick ? (chance >= Sure ? Verdict.Good : Verdict.Tight) : Verdict.Fails;
        return quick
            ? new("pin_first", finger, verdict, reason, offer) { Figure = first.Newtons, Limit = next.Newtons, Unit = "N", Margin = margin }
            : new("dear_first", finger, verdict, reason, offer) { Figure = first.RepairSeconds / 60, Limit = hand.Structure.Repair.Quick / 60, Unit = "min", Margin = margin };
    }

    private static string NoPin(FailureOrder order)
    {
        SideLoad side = order.Build.Chain.Hinges[0].Side(order.Build.Chain.Along[0], order.Build.Chain.Off[0]);
        double share = side.EarPull * order.Build.Chain.Hinges[0].Pin.Spacing / order.Build.Chain.Along[0];
        string help = order.FirstDear.IsWearer ? "Spread the blow on a longer shell with soft felt" : $"Make the {order.FirstDear.Name} stronger";
        return $"No knuckle pin of the usual materials both goes first and carries the squeeze: the present one takes {Say.Number(100 * share)} % of the sideways bending, the ears the rest. {help}; with thinner, longer ears a pin takes more of it and can go first.";
    }

    /// <summary>Whether each finger stands the hardest knock that comes once a month.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="orders">Order of each finger.</param>
    public static IEnumerable<Finding> OfKnocks(HandModel hand, IReadOnlyList<FailureOrder> orders)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(orders);
        if (StrengthFigures.MonthlyKnock(hand.Structure.Use) is not { } knock)
        {
            yield break;
        }

        FailureOrder weakest = orders.MinBy(o => o.First.Newtons / Push(hand, o, knock))!;
        double push = Push(hand, weakest, knock), margin = weakest.First.Newtons / push - 1;
        yield return new("knock_margin", weakest.Build.Finger.Name, Verdicts.Of(margin),
            $"The hardest knock that you take once a month ({knock.Name}, {Say.Number(knock.Joules)} J) pushes the tip of the {weakest.Build.Finger.Name} finger with {Say.Number(push)} N; {(weakest.First.IsWearer ? "your skin takes harm from" : $"its {weakest.First.Name} gives way at")} {Say.Number(weakest.First.Newtons)} N.",
            "Let the finger give: a softer pad at its side or a base that springs takes the peak off; then thicker ears and a wider tongue.")
        {
            Figure = weakest.First.Newtons,
            Limit = push,
            Unit = "N",
            Margin = margin,
        };
    }

    /// <summary>Whether the wearer can break the drive by strength alone.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="parts">Hinges and parts, weakest first.</param>
    public static Finding OfSqueeze(HandModel hand, IReadOnlyList<PartStrength> parts)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(parts);
        if (parts.FirstOrDefault(p => p.Factor is not null) is not { } weakest)
        {
            return new("squeeze_strength", "drive", Verdict.NotKnown, "No grip could be run, so the loads of hinges and drive are not known.", "Add an object that the hand can close on.");
        }

        // The wearer's whole strength is so many times the squeeze; in first order the forces grow with it.
        double whole = 1 / hand.Wrist.SqueezeShare, margin = weakest.Factor!.Value / whole - 1;
        return new("squeeze_strength", weakest.Name, Verdicts.Of(margin),
            $"Drawn harder and harder, the first to break is {weakest.Name} ({weakest.Mode}), at {Say.Number(weakest.Factor.Value)} times its {Say.Number(weakest.Newtons!.Value)} N of the squeeze; your whole strength is about {Say.Number(whole)} times the squeeze.",
            "Give this part a thicker section or a stronger material.")
        {
            Figure = weakest.Factor,
            Limit = whole,
            Unit = "×",
            Margin = margin,
        };
    }

    private static double Push(HandModel hand, FailureOrder order, Knock knock) => Impact.SideForce(knock.Joules * hand.Structure.Use.ReachingShare, order.Compliance);
}
