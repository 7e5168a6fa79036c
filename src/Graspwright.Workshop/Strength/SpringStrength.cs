using Graspwright.Hand;
using Graspwright.Strength.Springs;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>Checks the coil springs of a hand.</summary>
public static class SpringStrength
{
    private const double RateTolerance = 0.15; // a spring's rate is rarely held closer over the counter

    /// <summary>A spring as the engine takes it.</summary>
    /// <param name="spring">The spring.</param>
    public static Coil Coil(CoilSpring spring)
    {
        ArgumentNullException.ThrowIfNull(spring);
        return new(spring.Wire, spring.Outside - spring.Wire, spring.Coils, spring.Material == "stainless wire" ? SpringWire.Stainless : SpringWire.Music);
    }

    /// <summary>Findings about every spring.</summary>
    /// <param name="hand">The hand.</param>
    public static IEnumerable<Finding> Findings(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return hand.Structure.Springs.SelectMany(s => Of(s, hand.Crank.Slot));
    }

    /// <summary>The springs as a table.</summary>
    /// <param name="hand">The hand.</param>
    public static Table Table(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new("springs",
            [new("spring", ""), new("rate", "N/mm"), new("fitted", "N"), new("full stroke", "N"), new("sets at", "N"), new("solid length", "mm"), new("index", "×"), new("fatigue factor", "×"), new("stock wire", "mm")],
            [
                .. hand.Structure.Springs.Select(s =>
                {
                    Coil coil = Coil(s);
                    return (IReadOnlyList<Cell>)[s.Name, coil.Rate / 1000, Fitted(s, coil), Full(s, coil), coil.SetLoad, coil.Solid * 1000, coil.Index, coil.FatigueFactor(Fitted(s, coil), Full(s, coil)), coil.NearestStock * 1000];
                }),
            ]);
    }

    private static double Fitted(CoilSpring s, Coil coil) => coil.Rate * (s.FreeLength - s.FittedLength);

    private static double Full(CoilSpring s, Coil coil) => coil.Rate * (s.FreeLength - s.FittedLength + s.Stroke);

    private static IEnumerable<Finding> Of(CoilSpring s, Slot? slot)
    {
        Coil coil = Coil(s);
        double fitted = Fitted(s, coil), full = Full(s, coil), room = s.FittedLength - s.Stroke - coil.Solid, wanted = 0.1 * s.Stroke;
        yield return Judge("spring_solid", s.Name, 1000 * room, 1000 * wanted, "mm", (room - wanted) / Math.Max(s.Stroke, 1e-9),
            room < 0
                ? $"The {s.Name} spring has its coils on each other {Say.Number(-1000 * room)} mm before the stroke ends: it stops the motion."
                : $"The {s.Name} spring has {Say.Number(1000 * room)} mm left before its coils meet; a tenth of the stroke is wanted.",
            "Fewer coils, thinner wire or a longer pocket.");
        double set = coil.SetLoad / full - 1;
        Coil? stout = coil.Stouter(full);
        yield return Judge("spring_set", s.Name, full, coil.SetLoad, "N", set,
            $"At full stroke the {s.Name} spring carries {Say.Number(full)} N; it stays shorter from {Say.Number(coil.SetLoad)} N.",
            stout is null || set >= 0 ? "A larger outside diameter with thicker wire." : $"The nearest stock wire that stands it at the same rate is {Say.Number(stout.Wire * 1000)} mm with {Say.Number(stout.Active)} working coils ({Say.Number(stout.Solid * 1000)} mm solid).");
        double fatigue = coil.FatigueFactor(fitted, full);
        yield return Judge("spring_fatigue", s.Name, fatigue, 1, "×", fatigue - 1,
            $"The coming and going stress of the {s.Name} spring could grow {Say.Number(fatigue)} times before the wire tires.",
            "A longer spring with more coils, so that the stroke bends it less.");
        if (coil.Bows(s.FreeLength))
        {
            yield return new("spring_bows", s.Name, Verdict.Tight, $"The {s.Name} spring is {Say.Number(s.FreeLength / coil.Mean)} times as long as wide and can bow out sideways.", "Guide it on a rod or in a tube.");
        }

        if (s.Duty == SpringDuty.Slot && slot is not null)
        {
            double wish = slot.Preload, end = slot.Preload + slot.Rate * slot.Length;
            double off = Math.Max(Math.Abs(fitted - wish) / Math.Max(wish, 1e-9), Math.Abs(fitted + coil.Rate * slot.Length - end) / Math.Max(end, 1e-9));
            yield return Judge("spring_preload", s.Name, fitted, wish, "N", 0.1 + RateTolerance - off,
                $"The slot asks for {Say.Number(wish)} N and {Say.Number(slot.Rate / 1000)} N/mm; the {s.Name} spring as fitted gives {Say.Number(fitted)} N and {Say.Number(coil.Rate / 1000)} N/mm.",
                "Shim it, or change the preload and the rate of the slot to what the spring gives and run grip again.");
        }
    }

    private static Finding Judge(string key, string subject, double figure, double limit, string unit, double margin, string reason, string change) =>
        new(key, subject, Verdicts.Of(margin), reason, change) { Figure = figure, Limit = limit, Unit = unit, Margin = margin };
}
