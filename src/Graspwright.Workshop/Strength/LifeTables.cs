using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>Tables of an answer about life.</summary>
internal static class LifeTables
{
    private static readonly double[] WearDays = [0, 30, 90, 180, 365];

    private const double LongestDays = 36_525, GreatestFactor = 1000;

    private static Cell Days(double[] sorted, double share) => SampledLives.Quantile(sorted, share) is var days && days <= LongestDays ? days : "> 100 years";

    private static Cell Factor(double factor) => factor <= GreatestFactor ? factor : "> 1000";

    /// <summary>Hinge by hinge: who goes first, when, and by what.</summary>
    public static Table Hinges(HandBand band) => new("life of the hinges in days of wear",
        [new("hinge", ""), new("weakest part", ""), new("material", ""), new("one in ten by", "days"), new("half by", "days"), new("nine in ten by", "days"), new("breaks first", "%")],
        [
            .. band.Hinges.OrderBy(h => SampledLives.Quantile(h.Days, 0.5)).Select(h => (IReadOnlyList<Cell>)[
                Say.Position(h.Position), $"{Part(h.Weakest.Part)}, {h.Weakest.Mode}", h.Weakest.Material,
                Days(h.Days, 0.1), Days(h.Days, 0.5), Days(h.Days, 0.9), 100 * h.First]),
        ]);

    /// <summary>Materials side by side.</summary>
    public static Table Side(HandModel hand, IReadOnlyList<HandBand> bands) => new("materials side by side: first broken hinge of the hand",
        [new("fingers of", ""), new("one in ten by", "days"), new("half by", "days"), new("nine in ten by", "days"), new("whole after 21 days", "%"), new("whole after 120 days", "%"), new("fingers weigh", "g")],
        [
            .. bands.Select((b, i) => (IReadOnlyList<Cell>)[
                i == 0 ? $"{b.Material} (the file)" : $"{b.Material}, base too", Days(b.FirstBreak, 0.1), Days(b.FirstBreak, 0.5), Days(b.FirstBreak, 0.9),
                100.0 * b.FirstBreak.Count(d => d > 21) / b.FirstBreak.Length, 100.0 * b.FirstBreak.Count(d => d > 120) / b.FirstBreak.Length,
                StrengthFigures.MovingMass(i == 0 ? hand : Lasting.InMaterial(hand, b.Material)).Value]),
        ]);

    /// <summary>The day's damage at the place that goes first, load by load.</summary>
    public static Table Damage(HingeLife life) => new($"what wears the {Part(life.Part)} of the {Say.Position(life.Position)}",
        [new("load", ""), new("a day", "1/day"), new("stress at the notch", "MPa"), new("breaks after", ""), new("share of the damage", "%")],
        [
            .. life.Damage.OrderByDescending(d => d.PerDay / d.Cycles).Select(d => (IReadOnlyList<Cell>)[
                d.Name, d.PerDay, d.Stress / 1e6, d.Cycles <= 1e9 ? d.Cycles : "> 10⁹", 100 * (d.PerDay / d.Cycles) / life.Damage.Sum(x => x.PerDay / x.Cycles)]),
        ]);

    /// <summary>What each dimension buys.</summary>
    public static Table Dimensions(IReadOnlyList<(string Name, double Elasticity)> found) => new("what buys life: all fingers and joints, one dimension ten per cent greater",
        [new("dimension", ""), new("life", "×"), new("per cent of life for one per cent of size", "%/%")],
        [.. found.Select(f => (IReadOnlyList<Cell>)[f.Name, Factor(Math.Pow(1.1, f.Elasticity)), f.Elasticity])]);

    /// <summary>What each assumption moves.</summary>
    public static Table Assumptions(IReadOnlyList<(string Name, double Factor)> found) => new("what an assumption moves when it is doubled",
        [new("assumption, doubled", ""), new("life", "×")],
        [.. found.Select(f => (IReadOnlyList<Cell>)[f.Name, Factor(f.Factor)])]);

    /// <summary>Play against days.</summary>
    public static Table Wear(HandModel hand, GripLoads loads)
    {
        double[][] perDay = WearCourse.PerDay(hand, loads);
        List<IReadOnlyList<Cell>> rows = [];
        foreach (double days in WearDays)
        {
            HandModel worn = WearCourse.After(hand, perDay, days);
            double[] tips = WearCourse.TipPlay(worn);
            double greatest = worn.Fingers.Max(f => Math.Max(f.WornPlay.First, Math.Max(f.WornPlay.Second, f.WornPlay.Third)));
            rows.Add([days, 1000 * greatest, 1000 * tips.Max(), worn.Fingers[Array.IndexOf(tips, tips.Max())].Name, loads.Reference is { } run ? WearCourse.DeadTravelOf(worn, run) : double.NaN]);
        }

        return new("wear of the finger hinges", [new("after", "days"), new("greatest play of a pin", "mm"), new("sideways at the tip", "mm"), new("of finger", ""), new("lost at a reversal", "deg")], rows);
    }

    /// <summary>What is not computed, and how to look for it.</summary>
    public static Table Looking { get; } = new("not computed: look for it",
        [new("what", ""), new("how often", ""), new("look for", ""), new("then", "")],
        [
            ["liner", "weekly", "tears at the edge, thin places held against a lamp", "patch or pour a new one before it reaches the skin"],
            ["pads", "weekly", "edges that lift, glaze, cuts", "roughen and bond again; a new pad"],
            ["screws and nuts", "weekly, daily at first", "a paint line across head and part that no longer meets", "tighten; thread lock or a new nut"],
            ["cords", "weekly", "broken strands at guides and knots", "replace at the first strand"],
            ["corrosion", "after salt water, else monthly", "white bloom on aluminium, rust at pins, stiff joints", "rinse with fresh water, dry, oil; salt and two metals in touch eat aluminium"],
            ["shell", "monthly", "white lines or cracks round fixings", "stop wearing it; lay up anew"],
            ["skin", "every evening", "red that stays half an hour, sores", "stop wearing it and show it to somebody licensed"],
        ]);

    /// <summary>Words of a hinge's weakest part.</summary>
    public static string Part(HingePart part) => part.ToString().ToLowerInvariant();
}
