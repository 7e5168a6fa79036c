namespace Graspwright.Hand;

/// <summary>Sources of the figures in <see cref="MaterialTable"/>, with what was taken from each.</summary>
public static class MaterialSources
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("metal-6061", "Aluminum 6061-T6 data page of a metals house, and a materials data sheet for shear and bearing", "Data pages for 6061-T6", null, SourceStanding.Seen,
            "Density, modulus, yield 276, strength 310, fatigue 96.5 MPa at 5·10⁸ reversed cycles, shear 207 MPa."),
        new("metal-7075", "Materials Science and Engineering, Appendix B; a comparison page for the fatigue strength", "Callister", null, SourceStanding.Seen,
            "Modulus, yield 505, strength 572, fatigue 160 MPa; the comparison page gives 480 and 560. Cycles of the fatigue strength from memory."),
        new("metal-2024", "Materials Science and Engineering, Appendix B; a comparison page for the fatigue strength", "Callister", null, SourceStanding.Seen,
            "Modulus, yield 345, strength 485; fatigue 90 to 180 MPa over tempers, 138 from memory; density from memory."),
        new("metal-304", "Data pages for stainless 304", "Data pages for 304", null, SourceStanding.Seen,
            "Annealed: yield 207, strength 517; fatigue 210 to 440 MPa over tempers, the lowest taken."),
        new("metal-17-4", "Figures for 17-4 PH H900 in public source text", "Public source text", null, SourceStanding.SeenQuoted,
            "Yield 1170, strength 1310; density, modulus and fatigue 500 MPa from memory."),
        new("memory-copper-alloys", "Free-cutting brass and bearing bronze", "", null, SourceStanding.FromMemory, "Every figure of both."),
        new("plastic-acetal", "Engineering Plastics Handbook, Table 5.5", "Engineering Plastics Handbook", null, SourceStanding.Seen,
            "Modulus 2.5 to 3.0 GPa, strength 65 to 72, shear 34 to 53 MPa; friction 0.22 on steel from a sheet supplier's page; pressure limit from memory."),
        new("memory-nylon", "Nylon 6/6 as it lies in a room", "", null, SourceStanding.FromMemory, "Every figure."),
        new("plastic-prints", "Properties of printed filament, Processes 2025 13(9):2733, and a table of print settings", "Processes 13(9):2733", 2025, SourceStanding.Seen,
            "PLA 3.5 GPa and 53 MPa, PETG 2.0 and 50, ABS 2.1 and 40; PA12 filament 1.4 and 50 from a filament's data sheet. Poisson's ratio, shear and friction from memory."),
        new("plastic-powder", "3D printing material comparison matrix", "Comparison matrix", null, SourceStanding.Seen,
            "Powder-bed nylon 40 to 75 MPa, near equal in all directions; modulus from memory."),
        new("plastic-resin", "3D printing material comparison matrix", "Comparison matrix", null, SourceStanding.Seen, "Tough resin 50 to 60 MPa, brittle in impact; modulus and density from memory."),
        new("plastic-glass-epoxy", "Glass-epoxy laminates, data page of a sheet supplier", "Laminate data page", null, SourceStanding.Seen,
            "Across the warp 241 MPa, bending modulus 18.6 GPa, shear 131 MPa; fatigue from memory."),
        new("print-slopes", "Round slopes of S-N lines in an open physics library", "Open physics library", null, SourceStanding.SeenQuoted, "About 5 for printed plastics; plastics have no true limit."),
        new("print-layers", "Strength across layers, in public source text", "Public source text", null, SourceStanding.SeenQuoted,
            "Filament prints 30 to 50 % weaker across layers, powder 10 to 20 %: 35, 40 and 15 % are taken."),
        new("memory-print-fatigue", "Printed plastics at a million cycles", "", null, SourceStanding.FromMemory, "10 to 20 % of the strength, pulled from nought; 15 % is taken, as a reversed amplitude by Goodman's line."),
        new("memory-plastic-fatigue", "Fatigue of turned plastics and laminate", "", null, SourceStanding.FromMemory, "Acetal 20 to 27 MPa at 10⁶ to 10⁷; nylon 20; laminate a quarter of its strength. Slopes 8 and 10 chosen."),
        new("memory-outdoors", "Strength lost in a year out of doors", "", null, SourceStanding.FromMemory,
            "PLA 10 %, PETG 15, ABS 30, acetal 40 unless stabilised; the others chosen near these; indoors a tenth. Lamp tests seen agree in order, not in figures."),
        new("memory-metal-spread", "Spread, notch and surface of metals", "", null, SourceStanding.FromMemory,
            "Strength 5 %, life 0.25 of its base-ten logarithm, notch sensitivity 0.7 to 0.9, surface 0.8 of a machined part; shear 0.62 of strength."),
        new("memory-wear", "Wear and pressure limits against a steel pin", "", null, SourceStanding.FromMemory,
            "Orders of magnitude in 10⁻⁶ mm³/(N·m): oiled bronze 3, acetal 0.3, printed plastic 10, dry steel on aluminium 300. A dry pin can be ten times off either way."),
    ];
}
