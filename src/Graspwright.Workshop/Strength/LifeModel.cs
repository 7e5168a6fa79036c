using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Fatigue;
using Graspwright.Strength.Knocks;
using Graspwright.Strength.Life;

namespace Graspwright.Workshop.Strength;

/// <summary>A part of a hinge whose life is computed.</summary>
/// <param name="Position">Hinge, as <c>index mcp</c>.</param>
/// <param name="Part">Which part.</param>
/// <param name="Material">Its material.</param>
/// <param name="Mode">How it goes first with every spread in its middle.</param>
/// <param name="Life">The part as sampled.</param>
/// <param name="Damage">The day's damage, block by block, at the place that goes first.</param>
public sealed record HingeLife(string Position, HingePart Part, string Material, string Mode, LivingPart Life, IReadOnlyList<DamageTerm> Damage);

/// <summary>Damage of one kind of load.</summary>
/// <param name="Name">Kind of grip or class of knock.</param>
/// <param name="PerDay">Number on a day.</param>
/// <param name="Cycles">Cycles of it that break the part.</param>
/// <param name="Stress">Highest stress at the notch [Pa].</param>
public readonly record struct DamageTerm(string Name, double PerDay, double Cycles, double Stress);

/// <summary>Puts the hinges of a hand and the loads of a day together.</summary>
public static class LifeModel
{
    /// <summary>A place whose daily damage is so many times less than that of the first of its hinge is not sampled, unless a load comes near to breaking it at once.</summary>
    private const double NeverFirst = 1000, NearBreaking = 0.5;

    /// <summary>Why a day of wear gives no life; <see langword="null"/> where it does.</summary>
    /// <param name="use">The day.</param>
    /// <param name="loads">Its grips.</param>
    public static string? NoUse(Use use, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(use);
        ArgumentNullException.ThrowIfNull(loads);
        return loads.Grips.Count > 0 || use.Knocks.Any(k => k.PerDay > 0) ? null : "the day of wear holds no grip and no knock, so nothing wears it";
    }

    /// <summary>The part that goes first in the hinge with the shortest middle life.</summary>
    /// <param name="band">Sampled lives of a hand.</param>
    public static HingeLife Weakest(HandBand band)
    {
        ArgumentNullException.ThrowIfNull(band);
        return band.Hinges.MinBy(h => SampledLives.Quantile(h.Days, 0.5))!.Weakest;
    }

    /// <summary>The parts of every hinge that may go first.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    public static IReadOnlyList<HingeLife> Of(HandModel hand, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        Materials materials = new(hand);
        IReadOnlyList<FingerBuild> fingers = FingerBuild.All(hand);
        List<HingeLife>[] lives = new List<HingeLife>[fingers.Count];
        Parallel.For(0, fingers.Count, f =>
        {
            double give = fingers[f].Chain.Compliance();
            double[] knocks = [.. hand.Structure.Use.Knocks.Select(k => Impact.SideForce(k.Joules * hand.Structure.Use.ReachingShare, give))];
            lives[f] = [.. Enumerable.Range(0, fingers[f].Joints.Count).SelectMany(h => OfHinge(hand.Structure.Use, loads, materials, fingers[f], h, knocks, hand.Structure.Use.Exposure[f]))];
        });
        return [.. lives.SelectMany(l => l)];
    }

    private static IEnumerable<HingeLife> OfHinge(Use use, GripLoads loads, Materials materials, FingerBuild finger, int hinge, double[] knocks, double exposure)
    {
        List<Place> places = [];
        foreach (((HingePart part, string mode), (StressCheck? grip, StressCheck? side)) in Places(finger, hinge))
        {
            Material material = materials.Of(finger.MaterialOf(hinge, part));
            Solid solid = materials.Solid(material.Name);
            StressBlock[] grips = [.. loads.Grips.Select(g => Block(grip, solid, g.Peaks.GetValueOrDefault(finger.Position(hinge)), g.LowShare, g.PerDay))];
            StressBlock[] blows = [.. use.Knocks.Select((k, i) => Block(side, solid, knocks[i], 0, k.PerDay * exposure))];
            FatigueLine line = Materials.Line(material);
            double strength = Sudden(grip ?? side!.Value, solid);
            StressBlock[] all = [.. grips, .. blows];
            places.Add(new(part, mode, material, grips, blows, line, strength, DamageSum.OfDay(all, line, strength, 1), all.Select(b => b.PerDay > 0 ? b.Highest : 0).DefaultIfEmpty(0).Max() / strength));
        }

        double worst = places.Max(p => p.Damage);
        foreach (IGrouping<HingePart, Place> part in places.Where(p => p.Damage >= worst / NeverFirst || p.Nearness >= NearBreaking).GroupBy(p => p.Part))
        {
            var built = part.Select(p => (Place: p, Life: new PartLife(p.Grips, p.Blows, p.Line, p.Strength, Materials.Ageing(p.Material, use)))).ToList();
            (Place first, _) = built.MinBy(b => b.Life.Days(LifeDraw.Middle));
            yield return new(finger.Position(hinge), part.Key, first.Material.Name, first.Mode,
                new([.. built.Select(b => b.Life)], first.Material.StrengthSpread, first.Material.LifeSpread), Terms(loads, use, first.Grips, first.Blows, first.Line, first.Strength));
        }
    }

    private static Dictionary<(HingePart, string), (StressCheck? Grip, StressCheck? Side)> Places(FingerBuild finger, int hinge)
    {
        Dictionary<(HingePart, string), (StressCheck? Grip, StressCheck? Side)> places = [];
        foreach (StressCheck check in finger.Chain.Hinges[hinge].UnderGrip())
        {
            places[(check.Part, check.Mode)] = (check, null);
        }

        foreach (StressCheck check in finger.Chain.Checks(hinge))
        {
            places[(check.Part, check.Mode)] = places.TryGetValue((check.Part, check.Mode), out (StressCheck? Grip, StressCheck? Side) both) ? (both.Grip, check) : (null, check);
        }

        return places;
    }

    /// <summary>Stress at the notch; shear is counted as the pull that uses up the same share of strength.</summary>
    private static StressBlock Block(StressCheck? check, Solid solid, double newtons, double low, double perDay)
    {
        if (check is not { } c)
        {
            return default;
        }

        double stress = c.StressPerNewton * newtons * solid.Notch(c.Notch) / (c.Shear ? solid.ShearShare : 1);
        return new(stress, low * stress, perDay);
    }

    /// <summary>Stress at the notch at which the part breaks at once: a brittle one there, one that bends first over its whole section.</summary>
    private static double Sudden(StressCheck check, Solid solid) => solid.Strength * (solid.Brittle ? 1 : check.Plastic * solid.Notch(check.Notch));

    private static List<DamageTerm> Terms(GripLoads loads, Use use, StressBlock[] grips, StressBlock[] blows, FatigueLine line, double strength)
    {
        IEnumerable<string> names = loads.Grips.Select(g => g.Name).Concat(use.Knocks.Select(k => k.Name));
        return [.. names.Zip(grips.Concat(blows), (name, b) => new DamageTerm(name, b.PerDay, b.Highest >= strength ? 1 : line.Cycles(MeanStress.Goodman(b.Amplitude, b.Mean, strength)), b.Highest)).Where(t => t.PerDay > 0 && t.Stress > 0)];
    }

    private sealed record Place(HingePart Part, string Mode, Material Material, StressBlock[] Grips, StressBlock[] Blows, FatigueLine Line, double Strength, double Damage, double Nearness);
}
