using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys about strength and life.</summary>
internal static class StructureKeys
{
    private const string Chosen = "workshop-choice", Assumed = "use-assumption";

    /// <summary>The sections, for the root of the file.</summary>
    public static HandKey[] Sections =>
    [
        Part("materials", () => Materials!),
        Part("hinges", () => Hinges!),
        Part("parts", () => Parts!),
        Part("springs", () => Springs!),
        Part("shell", () => Shell!),
        Part("repair", () => Repair!),
        Part("use", () => Use!),
    ];

    private static Bounds UpToOne { get; } = new(0, false, 1, "0 to 100 %");

    private static Bounds BelowOne { get; } = new(0, false, 0.99, "0 to 99 %");

    private static HandSection Materials { get; } = new("Materials of your own, or other figures for one of the table.", []) { AnyKey = Part("NAME", () => MaterialKeys!) };

    private static HandSection MaterialKeys { get; } = new("A material; what is left out is as in the grade it is like.",
    [
        Free("like", "Grade of the table that it is like.", "\"petg-along\"") with { DerivedDefault = "the grade of its own name" },
        Free("words", "What it is.", "\"PETG, four walls\"") with { DerivedDefault = "as the grade" },
        Number("density", "Density in kg/m³.", Bounds.Positive) with { DerivedDefault = "as the grade", Example = "1270" },
        Of("modulus", Dimension.Pressure, "Young's modulus.", "2 GPa", Bounds.Positive) with { DerivedDefault = "as the grade" },
        Number("poisson", "Poisson's ratio.", new(0, false, 0.499, "0 to 0.499")) with { DerivedDefault = "as the grade", Example = "0.36" },
        Of("yield", Dimension.Pressure, "Stress at which it stays bent.", "50 MPa", Bounds.Positive) with { DerivedDefault = "as the grade" },
        Of("strength", Dimension.Pressure, "Tensile strength.", "50 MPa", Bounds.Positive) with { DerivedDefault = "as the grade" },
        Number("shear_share", "Shear strength ÷ tensile strength.", Bounds.Share) with { DerivedDefault = "as the grade", Example = "0.6" },
        Of("fatigue_strength", Dimension.Pressure, "Amplitude, fully reversed, that it stands for fatigue_cycles.", "4 MPa", Bounds.Positive) with { DerivedDefault = "as the grade" },
        Number("fatigue_cycles", "Cycles of the fatigue strength.", new(1000, true, double.PositiveInfinity, "above 1000")) with { DerivedDefault = "as the grade", Example = "1000000" },
        Number("fatigue_slope", "Slope k in N·S^k = constant; 0 = from 0.9 of the strength at 1000 cycles.", Bounds.NotNegative) with { DerivedDefault = "as the grade", Example = "5" },
        Number("notch_sensitivity", "Notch sensitivity.", UpToOne) with { DerivedDefault = "as the grade", Example = "1" },
        Number("surface", "Factor of the surface on the fatigue strength.", Bounds.Share) with { DerivedDefault = "as the grade", Example = "0.8" },
        Choice("breaks", "Whether it bends before it breaks.", "bends first", "at once") with { DerivedDefault = "as the grade" },
        Number("outdoor_loss", "Share of strength lost in a year out of doors; indoors a tenth of it is taken.", BelowOne) with { DerivedDefault = "as the grade", Example = "\"15 %\"" },
        Number("strength_spread", "Spread of the strength from part to part, standard deviation ÷ mean.", BelowOne) with { DerivedDefault = "as the grade", Example = "\"10 %\"" },
        Number("life_spread", "Spread of the life from part to part, standard deviation of its base-ten logarithm.", new(0, false, 3, "0 to 3")) with { DerivedDefault = "as the grade", Example = "0.4" },
        Of("bearing_limit", Dimension.Pressure, "Pressure that a turning pin may press on it.", "10 MPa", Bounds.Positive) with { DerivedDefault = "as the grade" },
        Number("friction", "Friction of a dry steel pin on it.", Bounds.NotNegative) with { DerivedDefault = "as the grade", Example = "0.3" },
        Number("wear", "Wear against a steel pin, in millionths of a mm³ for each N·m rubbed.", Bounds.NotNegative) with { DerivedDefault = "as the grade", Example = "10" },
    ]);

    private static HandSection Hinges { get; } = new("Hinges and phalanges, finger by finger; values under `hinges.all` hold for each finger that does not say otherwise. A hinge is a tongue between two ears on a pin. Three values stand for MCP, PIP, DIP or for proximal, middle, distal; one alone stands for all three.", [])
    {
        AnyKey = Part("NAME", () => HingeKeys!),
    };

    private static HandSection HingeKeys { get; } = new("The hinges of a finger.",
    [
        Free("base_material", "Material of the base with the ears of the MCP.", "\"6061-T6\"") with { Default = "\"6061-T6\"", SourceKey = Chosen },
        Free("finger_material", "Material of the phalanges with their tongues and ears.", "\"petg-along\"") with { Default = "\"pla-along\"", SourceKey = Chosen },
        Free("pin_material", "Material of the pins.", "\"brass\"") with { Default = "\"stainless-304\"", SourceKey = Chosen },
        Free("bushing_material", "Material of bushings in the ears, or none.", "\"bronze\"") with { Default = "\"none\"" },
        Three("bushing_wall", Dimension.Length, "Wall of the bushings.", "\"1 mm\"", Bounds.NotNegative) with { Default = "\"0 mm\"" },
        Guessed("ear_thickness", "Thickness of one ear.", "[\"3 mm\", \"3 mm\", \"2.5 mm\"]"),
        Guessed("ear_height", "Height of the ears, palm to back.", "[\"11 mm\", \"10 mm\", \"9 mm\"]"),
        Guessed("ear_length", "From the root of the ears to the pin.", "[\"9 mm\", \"8 mm\", \"7 mm\"]"),
        Guessed("edge", "From the centre of the pin to the free edge of the ears.", "[\"5.5 mm\", \"5 mm\", \"4.5 mm\"]"),
        Guessed("root_radius", "Radius in the corner at the root of the ears; 0 = sharp.", "[\"1 mm\", \"1 mm\", \"1 mm\"]") with { Bounds = Bounds.NotNegative },
        Guessed("tongue", "Thickness of the tongue.", "[\"8 mm\", \"7 mm\", \"6 mm\"]"),
        Guessed("gap", "Gap between tongue and ear, each side.", "[\"0.1 mm\", \"0.1 mm\", \"0.1 mm\"]") with { Bounds = Bounds.NotNegative },
        Guessed("pin_diameter", "Diameter of the pins.", "[\"3 mm\", \"2.5 mm\", \"2.5 mm\"]") with { Default = null, DerivedDefault = "twice the pin radius of the finger; else 3, 2.5, 2.5 mm" },
        Guessed("width", "Width of the phalanx, thumb side to little side.", "[\"14 mm\", \"13 mm\", \"11 mm\"]"),
        Guessed("height", "Height of the phalanx, palm to back, without its pad.", "[\"12 mm\", \"11 mm\", \"9 mm\"]"),
        Three("wall", Dimension.Length, "Wall of the phalanx.", "[\"3 mm\", \"3 mm\", \"3 mm\"]", Bounds.Positive) with { Unbounded = "solid", Default = "\"solid\"" },
    ]);

    private static HandSection Parts { get; } = new("Parts of the drive that carry a force of the closing run, by name.", []) { AnyKey = Part("NAME", () => PartKeys!) };

    private static HandSection PartKeys { get; } = new("A part of the drive.",
    [
        Choice("kind", "A pin between cheeks, a stud standing out on one side, an eye of a link, an arm bent at its end, a rod, or a thread that is pulled.", "pin", "stud", "eye", "arm", "rod", "thread") with { Required = true },
        Free("carries", "Whose force: pull link, transfer link, fulcrum, rail, bar NAME, pull FINGER, FINGER mcp, gimbal.", "\"pull link\"") with { Required = true },
        Free("material", "Its material.", "\"6061-T6\"") with { Required = true },
        Size("diameter", "Diameter of the pin, stud, hole, rod or thread; of an arm, of a hole through it.", "4 mm") with { Required = true },
        Size("thickness", "Pin: one cheek. Eye or arm: its thickness across the plane of motion.", "3 mm"),
        Size("width", "Pin: the part between the cheeks. Eye: its width. Arm: its depth in the plane of motion.", "10 mm"),
        Size("length", "Eye: hole centre to free edge. Arm or stud: force to root. Rod: free length. Thread: length engaged.", "6 mm"),
        Size("inner_radius", "Arm: inner radius where it is bent; leave it out for a straight one.", "6 mm"),
        Size("gap", "Pin: gap between cheek and part, each side.", "0.2 mm") with { Default = "\"0 mm\"", Bounds = Bounds.NotNegative },
    ]);

    private static HandSection Springs { get; } = new("Coil springs that are pressed, by name.", []) { AnyKey = Part("NAME", () => SpringKeys!) };

    private static HandSection SpringKeys { get; } = new("A coil spring with closed and ground ends.",
    [
        Choice("duty", "The spring of the crank's slot, or one that brings something back.", "slot", "return") with { Default = "\"return\"" },
        Size("wire", "Diameter of the wire.", "0.8 mm") with { Required = true },
        Size("outside", "Outside diameter.", "7 mm") with { Required = true },
        Number("coils", "Coils that work, the two end coils not counted.", new(1, false, 200, "1 to 200")) with { Required = true, Example = "8" },
        Size("free_length", "Length with no load.", "25 mm") with { Required = true },
        Size("fitted_length", "Length as fitted.", "22 mm") with { Required = true },
        Size("stroke", "Further compression in use.", "7 mm") with { Required = true },
        Choice("material", "Kind of wire.", "music wire", "stainless wire") with { Default = "\"music wire\"", SourceKey = Chosen },
    ]);

    private static HandSection Shell { get; } = new("What stands behind the fingers when one is pushed sideways.",
    [
        Size("bearing_length", "Length of palm that the shell bears on.", "70 mm") with { Default = "\"70 mm\"", SourceKey = Chosen },
        Size("bearing_height", "Height of the side of the palm that it bears on.", "20 mm") with { Default = "\"20 mm\"", SourceKey = Chosen },
        Of("side_stiffness", Dimension.Stiffness, "Stiffness of palm and shell under a sideways push at a knuckle.", "25 N/mm", Bounds.Positive) with { Default = "\"25 N/mm\"", SourceKey = Chosen },
        Of("breaking_moment", Dimension.Moment, "Sideways moment that breaks the shell or its fixings; without it the shell is not judged.", "40 N·m", Bounds.Positive),
        Of("skin_limit", Dimension.Pressure, "Pressure on the skin that the wearer accepts for an instant.", "200 kPa", Bounds.Positive) with { Default = "\"200 kPa\"", SourceKey = "memory-skin" },
    ]);

    private static HandSection Repair { get; } = new("How long a broken part takes to replace, with the part at hand.",
    [
        Of("pin", Dimension.Time, "A pin.", "5 min", Bounds.Positive) with { Default = "\"5 min\"", SourceKey = Chosen },
        Of("finger", Dimension.Time, "A finger.", "3 h", Bounds.Positive) with { Default = "\"3 h\"", SourceKey = Chosen },
        Of("base", Dimension.Time, "The base with its ears.", "8 h", Bounds.Positive) with { Default = "\"8 h\"", SourceKey = Chosen },
        Of("shell", Dimension.Time, "The shell.", "20 h", Bounds.Positive) with { Default = "\"20 h\"", SourceKey = Chosen },
        Of("quick", Dimension.Time, "The longest repair that you still call quick.", "15 min", Bounds.Positive) with { Default = "\"15 min\"", SourceKey = Chosen },
    ]);

    private static HandSection Use { get; } = new("A day of wear. No published count of grips or knocks was found: count your own for a week first. The reason for each default stands in docs/use.md.",
    [
        Number("grips", "Grips on a day of wear, those of all jobs included; what the jobs leave is spread evenly over the objects.", Bounds.NotNegative) with { DerivedDefault = "what the jobs add up to, or 600 where none is counted", SourceKey = Assumed, Example = "600" },
        Of("hold", Dimension.Time, "How long a grip is held, on average.", "4 s", Bounds.NotNegative) with { Default = "\"4 s\"", SourceKey = Chosen },
        Number("gentle", "Share of the grips at half the all-day effort.", UpToOne) with { Default = "\"65 %\"", SourceKey = Assumed, Example = "\"65 %\"" },
        Number("firm", "Share at the all-day effort.", UpToOne) with { Default = "\"30 %\"", SourceKey = Assumed, Example = "\"30 %\"" },
        Number("hard", "Share at the squeeze effort.", UpToOne) with { Default = "\"5 %\"", SourceKey = Assumed, Example = "\"5 %\"" },
        Of("worn", Dimension.Time, "Hours worn on a day of wear.", "8 h", new(0, true, 86400, "above 0, at most 24 h")) with { Default = "\"8 h\"", SourceKey = Assumed },
        Of("outdoors", Dimension.Time, "Of these, out of doors.", "1.5 h", new(0, false, 86400, "0 to 24 h")) with { Default = "\"1.5 h\"", SourceKey = Assumed },
        Number("reaching", "Share of a knock's energy that bends the finger.", Bounds.Share) with { Default = "\"50 %\"", SourceKey = Assumed, Example = "\"50 %\"" },
        Number("count_spread", "How far the counts may lie off, standard deviation of the natural logarithm.", new(0, false, 2, "0 to 2")) with { Default = "0.35", SourceKey = Assumed, Example = "0.35" },
        Number("energy_spread", "The same for the energy of knocks.", new(0, false, 2, "0 to 2")) with { Default = "0.4", SourceKey = Assumed, Example = "0.4" },
        Number("load_spread", "The same for the loads of grips.", new(0, false, 2, "0 to 2")) with { Default = "0.2", SourceKey = Assumed, Example = "0.2" },
        Part("knocks", () => Knocks!) with { DerivedDefault = "brush, bump, knock and blow of docs/use.md", SourceKey = Assumed },
        Part("exposure", () => Exposure!) with { DerivedDefault = "the two outer fingers twice an inner one", SourceKey = Assumed },
        Part("jobs", () => Jobs!),
        Part("history", () => History!),
    ]);

    private static HandSection Knocks { get; } = new("Classes of sideways knocks at a fingertip, by name.", []) { AnyKey = Part("NAME", () => KnockKeys!) };

    private static HandSection KnockKeys { get; } = new("A class of knocks.",
    [
        Of("energy", Dimension.Energy, "Energy of the whole knock.", "0.25 J", Bounds.Positive) with { Required = true },
        Number("per_day", "Number on a day of wear, all fingers together.", Bounds.NotNegative) with { Required = true, Example = "3" },
    ]);

    private static HandSection Exposure { get; } = new("Share of the knocks that each finger takes; together 100 %.", [])
    {
        AnyKey = Number("FINGER", "Share.", UpToOne) with { Example = "\"30 %\"" },
    };

    private static HandSection Jobs { get; } = new("Grips of the day that are no job of [jobs], by name. Jobs of [jobs] with times_a_day count by themselves: all-day effort as firm, squeeze as hard.", []) { AnyKey = Part("NAME", () => JobKeys!) };

    private static HandSection JobKeys { get; } = new("Grips of one kind.",
    [
        Free("object", "The thing gripped, one of the objects.", "\"mug\"") with { Required = true },
        Choice("effort", "Half the all-day effort, the all-day effort, or the squeeze.", "gentle", "firm", "hard") with { Default = "\"firm\"" },
        Number("per_day", "Grips on a day of wear.", Bounds.NotNegative) with { Required = true, Example = "40" },
    ]);

    private static HandSection History { get; } = new("A recorded history of the wrist's moment, counted by rainflow, instead of grips.",
    [
        new() { Name = "file", Form = KeyForm.FileName, Words = "A CSV file with one column of moments in N·m, named moment [N·m].", Example = "\"bench/day.csv\"", Required = true },
        Number("days", "Days of wear that it covers.", Bounds.Positive) with { Required = true, Example = "1" },
        Free("object", "The thing it was recorded on, one of the objects.", "\"mug\"") with { Required = true },
    ]);

    private static HandKey Guessed(string name, string words, string value) =>
        Three(name, Dimension.Length, words, value, Bounds.Positive) with { Default = value, SourceKey = Chosen };
}
