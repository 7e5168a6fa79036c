using Graspwright.Hand;
using Graspwright.Strength.Life;

namespace Graspwright.Workshop.Strength;

/// <summary>What moves life: dimensions a little greater, assumptions doubled. Common samples, so that ratios are steady.</summary>
public static class LifeSensitivity
{
    /// <summary>How much greater a dimension is made to see what it buys.</summary>
    public const double Step = 0.05;

    private const int Samples = 400;

    private static readonly (string Name, Func<Hinges, double, Hinges> Change)[] Dimensions =
    [
        ("ear_thickness", (h, k) => h with { EarThickness = Times(h.EarThickness, k) }),
        ("ear_height", (h, k) => h with { EarHeight = Times(h.EarHeight, k) }),
        ("ear_length", (h, k) => h with { EarLength = Times(h.EarLength, k) }),
        ("edge", (h, k) => h with { Edge = Times(h.Edge, k) }),
        ("root_radius", (h, k) => h with { RootRadius = Times(h.RootRadius, k) }),
        ("tongue", (h, k) => h with { Tongue = Times(h.Tongue, k) }),
        ("pin_diameter", (h, k) => h with { PinDiameter = Times(h.PinDiameter, k) }),
        ("width", (h, k) => h with { Width = Times(h.Width, k) }),
        ("height", (h, k) => h with { Height = Times(h.Height, k) }),
        ("wall", (h, k) => h with { Wall = Times(h.Wall, k) }),
    ];

    private static readonly (string Name, Func<Use, Use> Change)[] Assumptions =
    [
        ("grips a day", u => u with { GripsPerDay = 2 * u.GripsPerDay, Jobs = [.. u.Jobs.Select(j => j with { PerDay = 2 * j.PerDay })] }),
        ("knocks a day", u => u with { Knocks = [.. u.Knocks.Select(k => k with { PerDay = 2 * k.PerDay })] }),
        ("energy of the knocks", u => u with { Knocks = [.. u.Knocks.Select(k => k with { Joules = 2 * k.Joules })] }),
        ("hours out of doors", u => u with { OutdoorSeconds = 2 * u.OutdoorSeconds }),
        ("spread of the counts", u => u with { CountSpread = 2 * u.CountSpread }),
        ("spread of the energies", u => u with { EnergySpread = 2 * u.EnergySpread }),
        ("spread of the loads", u => u with { LoadSpread = 2 * u.LoadSpread }),
    ];

    private static readonly (string Name, Func<Material, Material> Change)[] OfMaterials =
    [
        ("fatigue strength, its slope kept", m => m with { FatigueStrength = 2 * m.FatigueStrength, FatigueSlope = Materials.Line(m).Slope }),
        ("strength", m => m with { Strength = 2 * m.Strength, Yield = 2 * m.Yield }),
        ("strength lost out of doors", m => m with { OutdoorLoss = Math.Min(2 * m.OutdoorLoss, 0.95) }),
        ("stiffness of the material", m => m with { Modulus = 2 * m.Modulus }),
    ];

    /// <summary>Middle of the days to the first break.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    /// <param name="seed">Seed.</param>
    public static double Middle(HandModel hand, GripLoads loads, ulong seed) => SampledLives.Quantile(Lasting.Sample(hand, loads, Samples, seed).FirstBreak, 0.5);

    /// <summary>For each dimension, all fingers and joints together: per cent of life for each per cent of the dimension.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>Name and elasticity d ln(life)/d ln(size); those that make no difference left out.</returns>
    public static IReadOnlyList<(string Name, double Elasticity)> OfDimensions(HandModel hand, GripLoads loads, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(hand);
        double[] found = new double[Dimensions.Length];
        Parallel.For(0, Dimensions.Length, i =>
        {
            double more = Middle(With(hand, h => Dimensions[i].Change(h, 1 + Step)), loads, seed), less = Middle(With(hand, h => Dimensions[i].Change(h, 1 / (1 + Step))), loads, seed);
            found[i] = Math.Log(more / less) / (2 * Math.Log(1 + Step));
        });
        return [.. Dimensions.Select((d, i) => (d.Name, found[i])).Where(f => Math.Abs(f.Item2) >= 0.05).OrderByDescending(f => Math.Abs(f.Item2))];
    }

    /// <summary>For each assumption, the factor on life when it is doubled.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="loads">The grips of its day.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>Name and factor.</returns>
    public static IReadOnlyList<(string Name, double Factor)> OfAssumptions(HandModel hand, GripLoads loads, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(loads);
        double now = Middle(hand, loads, seed);
        List<(string Name, Func<double> Life)> doubled =
        [
            .. Assumptions.Select(a => (a.Name, (Func<double>)(() => Middle(With(hand, a.Change), a.Name == "grips a day" ? Twice(loads) : loads, seed)))),
            .. OfMaterials.Select(m => (m.Name, (Func<double>)(() => Middle(WithMaterials(hand, m.Change), loads, seed)))),
            ("give of palm and shell", () => Middle(hand with { Structure = hand.Structure with { Shell = hand.Structure.Shell with { SideStiffness = hand.Structure.Shell.SideStiffness / 2 } } }, loads, seed)),
        ];
        double[] found = new double[doubled.Count];
        Parallel.For(0, found.Length, i => found[i] = doubled[i].Life() / now);
        return [.. doubled.Select((d, i) => (d.Name, found[i])).OrderByDescending(d => Math.Abs(Math.Log(d.Item2)))];
    }

    private static GripLoads Twice(GripLoads loads) => loads with { Grips = [.. loads.Grips.Select(g => g with { PerDay = 2 * g.PerDay })] };

    private static HandModel With(HandModel hand, Func<Hinges, Hinges> change) => hand with { Structure = hand.Structure with { Hinges = [.. hand.Structure.Hinges.Select(change)] } };

    private static HandModel With(HandModel hand, Func<Use, Use> change) => hand with { Structure = hand.Structure with { Use = change(hand.Structure.Use) } };

    private static HandModel WithMaterials(HandModel hand, Func<Material, Material> change)
    {
        Materials materials = new(hand);
        return hand with { Structure = hand.Structure with { Materials = [.. materials.Names.Select(n => change(materials.Of(n)))] } };
    }

    private static Triple Times(Triple t, double k) => new(t.First * k, t.Second * k, t.Third * k);
}
