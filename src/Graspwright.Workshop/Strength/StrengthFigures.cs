using Graspwright.Hand;
using Graspwright.Strength.Knocks;
using Graspwright.Strength.Life;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Strength;

/// <summary>Measures of strength and life: their one definition, for answers, changes and search.</summary>
public static class StrengthFigures
{
    private const double MonthDays = 30;

    /// <summary>The class of knocks that knock_margin is judged by: the hardest that comes at least once in a month of wear.</summary>
    /// <param name="use">The day of wear.</param>
    /// <returns><see langword="null"/> if none comes so often.</returns>
    public static Knock? MonthlyKnock(Use use)
    {
        ArgumentNullException.ThrowIfNull(use);
        return use.Knocks.Where(k => k.PerDay * MonthDays >= 1).MaxBy(k => k.Joules);
    }

    /// <summary>Margin of the weakest finger against that knock: breaking push ÷ push of the knock − 1.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="orders">Order of failure of each finger.</param>
    public static Figure KnockMargin(HandModel hand, IReadOnlyList<FailureOrder> orders)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(orders);
        Figure figure = HandMeasureTable.KnockMargin.Blank;
        if (MonthlyKnock(hand.Structure.Use) is not { } knock)
        {
            return figure with { Why = "no class of knocks comes as often as once a month" };
        }

        double reaching = hand.Structure.Use.ReachingShare;
        FailureOrder weakest = orders.MinBy(o => Margin(o, knock, reaching))!;
        Terms terms = new();
        string push = terms.Input("breaking_push", weakest.First.Newtons, "N"), energy = terms.Input("knock_energy", knock.Joules, "J"),
            share = terms.Input("reaching", reaching, ""), give = terms.Input("give_at_tip", weakest.Compliance * 1e6, "mm/kN");
        return figure with
        {
            Value = Margin(weakest, knock, reaching),
            Working = terms.Working($"{push}/sqrt(2·{energy}·{share}/({give}/1000000)) - 1", "side-hinge"),
        };
    }

    /// <summary>Push at the fingertip that breaks the weakest finger.</summary>
    /// <param name="orders">Order of failure of each finger.</param>
    public static Figure BreakingPush(IReadOnlyList<FailureOrder> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        Terms terms = new();
        foreach (FailureOrder order in orders)
        {
            foreach (FailureLink link in order.Links)
            {
                terms.Add(terms.Input($"{order.Build.Finger.Name}_{link.Name}", link.Newtons, "N"));
            }
        }

        return HandMeasureTable.SidePushToBreak.Blank with
        {
            Value = orders.Min(o => o.First.Newtons),
            Working = terms.Working(terms.Sum.Length == 0 ? "0" : $"min({terms.Sum.Replace(" + ", ", ", StringComparison.Ordinal)})", "side-hinge"),
        };
    }

    /// <summary>Least factor between what breaks a part and the greatest force of the squeeze.</summary>
    /// <param name="parts">Hinges and parts, weakest first.</param>
    public static Figure SqueezeFactor(IReadOnlyList<PartStrength> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        Figure figure = HandMeasureTable.SqueezeFactor.Blank;
        if (parts.FirstOrDefault(p => p.Factor is not null) is not { } weakest)
        {
            return figure with { Why = "no object could be gripped" };
        }

        Terms terms = new();
        string breaks = terms.Input("breaks_at", weakest.Breaks, "N"), load = terms.Input("load", weakest.Newtons!.Value, "N");
        return figure with { Value = weakest.Factor, Working = terms.Working($"{breaks}/{load}", "drive-model") };
    }

    /// <summary>Mass of the fingers.</summary>
    /// <param name="hand">The hand.</param>
    public static Figure MovingMass(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Materials materials = new(hand);
        Terms terms = new();
        double sum = 0;
        foreach (FingerBuild finger in FingerBuild.All(hand))
        {
            double mass = finger.MovingMass(materials) * 1000;
            sum += mass;
            terms.Add(terms.Input(finger.Finger.Name, mass, "g"));
        }

        return HandMeasureTable.MovingMass.Blank with { Value = sum, Working = terms.Working(terms.Sum, "workshop-choice") };
    }

    /// <summary>Number of loose parts of hinges and of the parts named.</summary>
    /// <param name="hand">The hand.</param>
    public static Figure PartsCount(HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        IReadOnlyList<FingerBuild> fingers = FingerBuild.All(hand);
        int hinges = fingers.Sum(f => f.Joints.Count), bushings = 2 * fingers.Where(WearCourse.HasBushing).Sum(f => f.Joints.Count);
        Terms terms = new();
        terms.Add(terms.Input("phalanges", hinges, ""));
        terms.Add(terms.Input("hinge_pins", hinges, ""));
        terms.Add(terms.Input("bushings", bushings, ""));
        terms.Add(terms.Input("parts_named", hand.Structure.Parts.Count, ""));
        terms.Add(terms.Input("springs", hand.Structure.Springs.Count, ""));
        return HandMeasureTable.PartsCount.Blank with { Value = 2 * hinges + bushings + hand.Structure.Parts.Count + hand.Structure.Springs.Count, Working = terms.Working(terms.Sum, "workshop-choice") };
    }

    /// <summary>Days of wear to the first break of any hinge: the middle of the samples.</summary>
    /// <param name="first">Days to the first break by sample, sorted.</param>
    /// <param name="why">Why there is none, where that is so.</param>
    public static Figure FirstFailure(double[] first, string? why)
    {
        ArgumentNullException.ThrowIfNull(first);
        Figure figure = HandMeasureTable.FirstFailureDays.Blank;
        int below = (first.Length - 1) / 2, above = first.Length / 2;
        if (why is not null || first.Length == 0 || !double.IsFinite(first[above]))
        {
            return figure with { Why = why ?? "more than half of the samples never break" };
        }

        Terms terms = new();
        string low = terms.Input("sample_below_the_middle", first[below], "days"), high = terms.Input("sample_above_the_middle", first[above], "days");
        double upper = SampledLives.Quantile(first, 0.975);
        return figure with
        {
            Value = (first[below] + first[above]) / 2,
            Low = SampledLives.Quantile(first, 0.025),
            High = double.IsFinite(upper) ? upper : null,
            Working = terms.Working($"({low} + {high})/2", "miner-1945"),
        };
    }

    /// <summary>Damage of a day at the place that goes first, with every spread in its middle.</summary>
    /// <param name="band">The hand's lives.</param>
    /// <param name="why">Why there is none, where that is so.</param>
    public static Figure DailyDamage(HandBand band, string? why)
    {
        ArgumentNullException.ThrowIfNull(band);
        Figure figure = HandMeasureTable.DailyDamage.Blank;
        if (why is not null)
        {
            return figure with { Why = why };
        }

        HingeLife life = LifeModel.Weakest(band);
        Terms terms = new();
        double sum = 0;
        foreach (DamageTerm term in life.Damage)
        {
            string count = terms.Input($"{term.Name}_a_day", term.PerDay, ""), cycles = terms.Input($"{term.Name}_breaks_after", term.Cycles, "");
            terms.Add($"{count}/{cycles}");
            sum += term.PerDay / term.Cycles;
        }

        return figure with { Words = $"share of its life that the {life.Part.ToString().ToLowerInvariant()} of the {Say.Position(life.Position)} loses on a day, before ageing", Value = sum, Working = terms.Working(terms.Sum, "miner-1945") };
    }

    private static double Margin(FailureOrder order, Knock knock, double reaching) => order.First.Newtons / Impact.SideForce(knock.Joules * reaching, order.Compliance) - 1;
}
