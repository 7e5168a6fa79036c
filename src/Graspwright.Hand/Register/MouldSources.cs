namespace Graspwright.Hand;

/// <summary>Sources of the defaults of liner, form and copies.</summary>
internal static class MouldSources
{
    public static IReadOnlyList<Source> All { get; } =
    [
        new("silicone-heat", "Thermal conductivity of liner elastomers, 10.1097/JPO.0000000000000043", "Webber", 2014, SourceStanding.SeenQuoted,
            "Liner elastomers 0.145 to 0.155 W/(m·K); a moulded silicone rubber 0.25 in a public program. Filled putty conducts better: 0.25 is taken."),
        new("memory-silicone", "Density and specific heat of filled silicone putty", "", null, SourceStanding.FromMemory,
            "Density 1.1 to 1.5 g/cm³, 1.2 taken; specific heat 1200 to 1500 J/(kg·K), 1300 taken."),
        new("memory-ten-degrees", "Ten degrees about halve the time", "", null, SourceStanding.FromMemory,
            "Seen for epoxy, from memory for silicone; 2 is taken, 1.5 to 3 as its range."),
        new("memory-surface-resistance", "Surface resistances to still indoor air: 0.10 to 0.17 m²·K/W to still indoor air", "ISO 6946", null, SourceStanding.FromMemory,
            "6 to 10 W/(m²·K), convection and radiation together; 8 is taken."),
        new("memory-skin-temperature", "Skin of the working hand", "", null, SourceStanding.FromMemory, "30 to 35 °C; 32 °C is taken."),
        new("silicone-on-skin", "In vivo friction properties of human skin", "Zhang & Mak", 1999, SourceStanding.Seen,
            "Silicone on skin 0.61 (SD 0.21), the highest of five materials."),
        new("platinum-shrinkage", "Troubleshooting platinum-catalysed silicones", "us-tech.com 1082642", null, SourceStanding.SeenQuoted,
            "Below 1 % for platinum cure, 3 to 6 % for tin cure; for room cure 0.1 % from memory."),
        new("plaster-expansion", "Setting expansion of gypsum products", "ISO 6873, as quoted", null, SourceStanding.SeenQuoted,
            "0.05 to 0.15 % of a model stone seen; up to 0.30 % for model plaster from memory. 0.2 % is taken."),
        new("memory-wax", "Shrinkage of wax on cooling", "", null, SourceStanding.FromMemory, "Up to about 1 % from warm to room; 0.5 % is taken for sheet wax laid warm."),
    ];
}
