namespace Graspwright.Hand;

/// <summary>Generic grades of material. A maker adds to it or overrides it under <c>[materials.NAME]</c>.</summary>
/// <remarks>
/// Figures without a published fatigue or wear test are from memory or chosen; the sources say which. They are means for
/// planning, not allowables.
/// </remarks>
public static class MaterialTable
{
    private const double MPa = 1e6, GPa = 1e9;

    /// <summary>Every grade.</summary>
    public static IReadOnlyList<Material> All { get; } =
    [
        Metal("6061-T6", "wrought aluminium 6061-T6", 2700, 68.9, 276, 310, 96.5, 5e8, 20, 0.45, 300, "metal-6061", "memory-metal-spread", "memory-wear"),
        Metal("7075-T6", "wrought aluminium 7075-T6", 2800, 70, 505, 572, 160, 5e8, 20, 0.45, 300, "metal-7075", "memory-metal-spread", "memory-wear"),
        Metal("2024-T3", "wrought aluminium 2024-T3", 2780, 71, 345, 485, 138, 5e8, 20, 0.45, 300, "metal-2024", "memory-metal-spread", "memory-wear"),
        Metal("stainless-304", "stainless steel 304, soft", 7800, 200, 207, 517, 210, 1e7, 30, 0.4, 50, "metal-304", "memory-metal-spread", "memory-wear"),
        Metal("stainless-17-4", "stainless steel 17-4 PH, aged H900", 7800, 196, 1170, 1310, 500, 1e7, 40, 0.4, 30, "metal-17-4", "memory-metal-spread", "memory-wear"),
        Metal("brass", "free-cutting brass", 8500, 97, 310, 400, 140, 1e8, 20, 0.3, 30, "memory-copper-alloys", "memory-metal-spread", "memory-wear"),
        Metal("bronze", "porous oiled bearing bronze", 8800, 100, 140, 270, 110, 1e8, 14, 0.08, 3, "memory-copper-alloys", "memory-metal-spread", "memory-wear"),
        Plastic("acetal", "acetal, turned or milled", 1410, 2.8, 68, 23, 1e6, 8, 0.55, 0.40, 0.05, 0.25, 10, 0.22, 0.3, "plastic-acetal", "memory-plastic-fatigue", "memory-outdoors", "memory-wear") with { NotchSensitivity = 0.9 },
        Plastic("nylon-66", "nylon 6/6, turned or milled, as it lies in a room", 1140, 1.7, 60, 20, 1e6, 8, 0.6, 0.25, 0.06, 0.25, 8, 0.3, 1.5, "memory-nylon", "memory-plastic-fatigue", "memory-outdoors", "memory-wear") with { NotchSensitivity = 0.9 },
        .. Print("pla", "PLA print", 1250, 3.5, 53, 0.10, 0.65, 0.19, "plastic-prints", "print-slopes", "memory-print-fatigue", "print-layers", "memory-outdoors", "memory-wear"),
        .. Print("petg", "PETG print", 1270, 2.0, 50, 0.15, 0.65, 0.25, "plastic-prints", "print-slopes", "memory-print-fatigue", "print-layers", "memory-outdoors", "memory-wear"),
        .. Print("abs", "ABS print", 1040, 2.1, 40, 0.30, 0.60, 0.30, "plastic-prints", "print-slopes", "memory-print-fatigue", "print-layers", "memory-outdoors", "memory-wear"),
        .. Print("pa12-filament", "PA12 filament print", 1010, 1.4, 50, 0.25, 0.65, 0.28, "plastic-prints", "print-slopes", "memory-print-fatigue", "print-layers", "memory-outdoors", "memory-wear"),
        .. Print("pa12-powder", "PA12 powder print", 980, 1.65, 48, 0.25, 0.85, 0.28, "plastic-powder", "print-slopes", "memory-print-fatigue", "print-layers", "memory-outdoors", "memory-wear"),
        Plastic("resin-tough", "tough photopolymer resin print", 1180, 2.0, 55, 4.0, 1e6, 5, 0.55, 0.30, 0.12, 0.40, 5, 0.4, 20, "plastic-resin", "print-slopes", "memory-print-fatigue", "memory-outdoors", "memory-wear") with { Brittle = true },
        Plastic("glass-epoxy", "pressed woven glass-epoxy sheet", 1820, 18.6, 241, 60, 1e6, 10, 0.5, 0.05, 0.08, 0.40, 20, 0.3, 5, "plastic-glass-epoxy", "memory-plastic-fatigue", "memory-outdoors", "memory-wear") with { Brittle = true, NotchSensitivity = 0.7 },
    ];

    /// <summary>A grade of the table.</summary>
    /// <param name="name">Its name.</param>
    /// <returns><see langword="null"/> if the table has none of that name.</returns>
    public static Material? Find(string name) => All.FirstOrDefault(m => string.Equals(m.Name, name, StringComparison.Ordinal));

    private static Material Metal(string name, string words, double density, double modulus, double yield, double strength, double fatigue, double cycles,
        double bearing, double friction, double wear, params string[] sources) => new()
        {
            Name = name,
            Words = words,
            Density = density,
            Modulus = modulus * GPa,
            Poisson = modulus > 150 ? 0.29 : 0.33,
            Yield = yield * MPa,
            Strength = strength * MPa,
            ShearShare = 0.62,
            FatigueStrength = fatigue * MPa,
            FatigueCycles = cycles,
            NotchSensitivity = 0.8,
            Surface = 0.8,
            StrengthSpread = 0.05,
            LifeSpread = 0.25,
            BearingLimit = bearing * MPa,
            Friction = friction,
            Wear = wear,
            SourceKeys = sources,
        };

    private static Material Plastic(string name, string words, double density, double modulus, double strength, double fatigue, double cycles, double slope,
        double shear, double outdoors, double spread, double lifeSpread, double bearing, double friction, double wear, params string[] sources) => new()
        {
            Name = name,
            Words = words,
            Density = density,
            Modulus = modulus * GPa,
            Poisson = 0.36,
            Yield = strength * MPa,
            Strength = strength * MPa,
            ShearShare = shear,
            FatigueStrength = fatigue * MPa,
            FatigueCycles = cycles,
            FatigueSlope = slope,
            OutdoorLoss = outdoors,
            StrengthSpread = spread,
            LifeSpread = lifeSpread,
            BearingLimit = bearing * MPa,
            Friction = friction,
            Wear = wear,
            SourceKeys = sources,
        };

    /// <summary>A print pulled along its layers, and one pulled across them.</summary>
    private static IEnumerable<Material> Print(string name, string words, double density, double modulus, double strength, double outdoors, double across, double friction, params string[] sources)
    {
        // From memory: at 10⁶ cycles from nought a print holds 10 to 20 % of its strength; 15 % is taken. As fully reversed
        // amplitude by Goodman: 0.075/(1 − 0.075) of the strength.
        const double Reversed = 0.075 / (1 - 0.075);
        Material along = Plastic(name + "-along", words + ", pulled along its layers", density, modulus, strength, strength * Reversed, 1e6, 5, 0.55, outdoors, 0.10, 0.40, 5, friction, 10, sources) with { Brittle = true };
        yield return along;
        yield return along with
        {
            Name = name + "-across",
            Words = words + ", pulled across its layers",
            Yield = along.Yield * across,
            Strength = along.Strength * across,
            FatigueStrength = along.FatigueStrength * across,
            StrengthSpread = 0.18,
        };
    }
}
