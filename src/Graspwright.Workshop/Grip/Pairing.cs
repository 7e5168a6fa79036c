namespace Graspwright.Workshop.Grip;

/// <summary>One way to pair four fingers on two bars under a root bar.</summary>
/// <param name="Words">The pairs, in words.</param>
/// <param name="Tree">The balance tree with it.</param>
/// <param name="Stacked">Why flat bars with equal arms cannot be built; <see langword="null"/> = they can.</param>
public sealed record Pairing(string Words, Hand.BalanceBar Tree, string? Stacked)
{
    /// <summary>Arm below which a bar has none [m].</summary>
    private const double NoArm = 1e-4;

    private static readonly (int A, int B, int C, int D)[] Ways = [(0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2)];

    /// <summary>The three pairings of a hand with four fingers.</summary>
    /// <remarks>
    /// A pair's pivot lies midway between its fingers across the hand, the root's midway between the pivots, so the
    /// arms of a bar are equal. Where that leaves a bar without arms, or two bars share the same stretch across the
    /// hand, the arms of the file's own bars are taken instead.
    /// </remarks>
    /// <param name="hand">The hand.</param>
    /// <returns>None where the hand does not have four fingers.</returns>
    public static IReadOnlyList<Pairing> All(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return hand.Fingers.Count == 4 && hand.Balance is Hand.BalanceBar root ? [.. Ways.Select(w => Make(hand, root, w))] : [];
    }

    private static Pairing Make(Hand.HandModel hand, Hand.BalanceBar root, (int A, int B, int C, int D) way)
    {
        Hand.Finger a = hand.Fingers[way.A], b = hand.Fingers[way.B], c = hand.Fingers[way.C], d = hand.Fingers[way.D];
        List<Hand.BalanceBar> bars = [];
        Gather(root, bars);
        double firstPivot = (a.Across + b.Across) / 2, secondPivot = (c.Across + d.Across) / 2;
        double first = Math.Abs(a.Across - b.Across) / 2, second = Math.Abs(c.Across - d.Across) / 2, whole = Math.Abs(firstPivot - secondPivot) / 2;
        string? stacked = Why(a, b, c, d, Math.Min(first, second), whole);
        Hand.BalanceBar left = bars[1] with { First = new Hand.FingerLeaf(a.Name), Second = new Hand.FingerLeaf(b.Name) };
        Hand.BalanceBar right = bars[2] with { First = new Hand.FingerLeaf(c.Name), Second = new Hand.FingerLeaf(d.Name) };
        Hand.BalanceBar top = root;
        if (stacked is null)
        {
            left = left with { FirstArm = first, SecondArm = first };
            right = right with { FirstArm = second, SecondArm = second };
            top = root with { FirstArm = whole, SecondArm = whole };
        }

        return new($"{a.Name} + {b.Name}, {c.Name} + {d.Name}", top with { First = left, Second = right }, stacked);
    }

    private static string? Why(Hand.Finger a, Hand.Finger b, Hand.Finger c, Hand.Finger d, double smallest, double whole)
    {
        if (smallest < NoArm)
        {
            return "a pair's fingers lie at the same place across the hand, so its bar has no arms";
        }

        if (whole < NoArm)
        {
            return "both pivots lie at the same place across the hand, so the root has no arms and the bars lie on each other";
        }

        double overlap = Math.Min(Math.Max(a.Across, b.Across), Math.Max(c.Across, d.Across)) - Math.Max(Math.Min(a.Across, b.Across), Math.Min(c.Across, d.Across));
        return overlap > NoArm ? "the two bars cross each other" : null;
    }

    private static void Gather(Hand.BalanceNode node, List<Hand.BalanceBar> bars)
    {
        if (node is Hand.BalanceBar bar)
        {
            bars.Add(bar);
            Gather(bar.First, bars);
            Gather(bar.Second, bars);
        }
    }
}
