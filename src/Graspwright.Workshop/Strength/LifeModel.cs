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
    /// <summary>A place that outlives the first of its part so many times in the middle of all spreads is not sampled.</summary>
    private const double NeverFirst = 100;

    /// <summary>Every part of every hinge.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    public static IReadOnlyList<HingeLife> Of(HandModel hand, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        Use use = hand.Structure.Use;
        Materials materials = new(hand);
        List<HingeLife> lives = [];
        IReadOnlyList<FingerBuild> fingers = FingerBuild.All(hand);
        for (int f = 0; f < fingers.Count; f++)
        {
            FingerBuild finger = fingers[f];
            double give = finger.Chain.Compliance();
            double[] knocks = [.. use.Knocks.Select(k => Impact.SideForce(k.Joules * use.ReachingShare, give))];
            for (int h = 0; h < finger.Joints.Count; h++)
            {
                Dictionary<(HingePart, string), (StressCheck? Grip, StressCheck? Side)> places = Places(finger, h);
                foreach (IGrouping<HingePart, KeyValuePair<(HingePart Part, string Mode), (StressCheck? Grip, StressCheck? Side)>> part in places.GroupBy(p => p.Key.Item1))
                {
                    Material material = materials.Of(finger.MaterialOf(h, part.Key));
                    Solid solid = materials.Solid(material.Name);
                    List<(string Mode, PartLife Life, List<DamageTerm> Terms, double Middle)> built = [];
                    foreach (((HingePart _, string mode), (StressCheck? grip, StressCheck? side)) in part)
                    {
                        StressBlock[] grips = [.. loads.Grips.Select(g => Block(grip, solid, g.Peaks.GetValueOrDefault(finger.Position(h)), g.LowShare, g.PerDay))];
                        StressBlock[] blows = [.. use.Knocks.Select((k, i) => Block(side, solid, knocks[i], 0, k.PerDay * use.Exposure[f]))];
                        FatigueLine line = Materials.Line(material);
                        double strength = Sudden(grip ?? side!.Value, solid);
                        PartLife life = new(grips, blows, line, strength, Materials.Ageing(material, use));
                        built.Add((mode, life, Terms(loads, use, grips, blows, line, strength), life.Days(LifeDraw.Middle)));
                    }

                    double first = built.Min(b => b.Middle);
                    (string Mode, PartLife Life, List<DamageTerm> Terms, double Middle) governing = built.First(b => b.Middle.Equals(first));
                    PartLife[] sampled = [.. built.Where(b => b.Middle <= NeverFirst * first).Select(b => b.Life)];
                    lives.Add(new(finger.Position(h), part.Key, material.Name, governing.Mode, new(sampled, material.StrengthSpread, material.LifeSpread), governing.Terms));
                }
            }
        }

        return lives;
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
}
