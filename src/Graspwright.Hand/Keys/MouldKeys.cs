using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of the limb's form, the liner and the copies.</summary>
internal static class MouldKeys
{
    private static readonly Bounds Fraction = new(0, false, 0.9, "0 to 90 %");
    private static readonly Bounds Indoors = new(273.15, false, 318.15, "0 to 45 °C");
    private static readonly Bounds KitchenFreezer = new(243.15, false, 283.15, "-30 to 10 °C: a kitchen freezer or fridge; anything colder burns skin and makes the putty too stiff to knead");

    public static HandSection Form { get; } = new("The limb by tape and vernier. Places count from a named zero along the limb, positive toward the fingertips.",
    [
        Free("zero", "Where the places are counted from.", "\"crease of the wrist\"") with { Default = "\"crease of the wrist\"" },
        Anywhere("near_edge", "Edge of the liner toward the elbow.", "-60 mm") with { DerivedDefault = "the first mark" },
        Anywhere("far_edge", "Edge of the liner toward the fingertips.", "80 mm") with { DerivedDefault = "the last mark" },
        Outline("near_line", "The same where it is no plane: corners of a line once round the limb, each a place and an angle; near_edge is then left out.", "[[\"-65 mm\", \"0 deg\"], [\"-60 mm\", \"120 deg\"], [\"-60 mm\", \"240 deg\"]]"),
        Outline("far_line", "The same for the edge toward the fingertips; far_edge is then left out.", "[[\"80 mm\", \"0 deg\"], [\"80 mm\", \"120 deg\"], [\"70 mm\", \"240 deg\"]]"),
        Part("marks", () => Marks!),
        Part("thumb", () => Thumb!),
        Part("patches", () => Patches!),
        Part("wires", () => FormKeys.Wires),
        Part("scan", () => FormKeys.Scan),
        Part("pattern", () => FormKeys.Pattern),
    ]);

    public static HandSection Liner { get; } = new("The liner of two-part silicone putty.",
    [
        Size("thickness", "Thickness.", "3 mm") with { Default = "\"3 mm\"", SourceKey = "workshop-choice" },
        Of("sheet_area", Dimension.Area, "Area of the sheet, where it is known.", "350 cm²", Bounds.Positive) with { DerivedDefault = "length times width, else from the tape marks" },
        Size("sheet_length", "Length of a plain sheet.", "200 mm"),
        Size("sheet_width", "Width of a plain sheet.", "180 mm"),
        Size("overlap", "Overlap where the sheet meets itself.", "8 mm") with { Default = "\"8 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Number("waste", "Share that stays on hands, cups and roller.", Fraction) with { Default = "\"10 %\"", SourceKey = "workshop-choice", Example = "\"10 %\"" },
        Number("spare", "Share mixed to be sure.", Fraction) with { Default = "\"5 %\"", SourceKey = "workshop-choice", Example = "\"5 %\"" },
        Part("putty", () => Putty!),
        Part("bench", () => Bench!),
        Part("work", () => Work!),
        Part("off", () => Off!),
    ]);

    public static HandSection Copies { get; } = new("The chain of copies: limb, negative, plaster, liner, wax, plaster, shell.",
    [
        Number("snug", "How much smaller than the limb the inside of the liner is wanted, of its girth.", new(0, false, 0.2, "0 to 20 %")) with { Default = "\"2 %\"", SourceKey = "workshop-choice", Example = "\"2 %\"" },
        Size("gap", "Gap wanted between liner and shell.", "0.5 mm") with { Default = "\"0.5 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("film", "Film of release agent or sealer, each time.", "0.05 mm") with { Default = "\"0.05 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("negative_wall", "Wall of the plaster negatives.", "6 mm") with { Default = "\"6 mm\"", SourceKey = "workshop-choice" },
        Number("water_for_powder", "Water ÷ powder of the plaster by weight, as its bag says.", new(0.19, false, 1.5, "0.19 to 1.5: with less there is too little water to set all of it")) with { Default = "0.6", SourceKey = "workshop-choice", Example = "0.6" },
        Number("plaster_growth", "Growth of plaster on setting.", new(0, false, 0.02, "0 to 2 %")) with { Default = "\"0.2 %\"", SourceKey = "plaster-expansion", Example = "\"0.2 %\"" },
        Number("silicone_shrinkage", "Shrinkage of the silicone.", new(0, false, 0.1, "0 to 10 %")) with { Default = "\"0.1 %\"", SourceKey = "platinum-shrinkage", Example = "\"0.1 %\"" },
        Size("wax", "Thickness of the wax: shell, gap and films.", "3.1 mm") with { DerivedDefault = "shell, gap and two films" },
        Number("wax_shrinkage", "Shrinkage of the wax on cooling.", new(0, false, 0.05, "0 to 5 %")) with { Default = "\"0.5 %\"", SourceKey = "memory-wax", Example = "\"0.5 %\"" },
        Size("shell", "Thickness of the shell.", "2.5 mm") with { Default = "\"2.5 mm\"", SourceKey = "workshop-choice" },
        Number("shell_shrinkage", "Shrinkage of the shell's resin.", new(0, false, 0.05, "0 to 5 %")) with { Default = "\"0.3 %\"", SourceKey = "workshop-choice", Example = "\"0.3 %\"" },
        Of("water", Dimension.Temperature, "Temperature of the mixing water.", "15 °C", Indoors) with { Default = "\"15 °C\"", SourceKey = "workshop-choice" },
    ]);

    private static HandSection Marks { get; } = new("Marks along the limb, each with a name; what tape and vernier read there.", []) { AnyKey = Part("MARK", () => Mark!) };

    private static HandSection Mark { get; } = new("A mark.",
    [
        Anywhere("place", "Place along the limb.", "25 mm") with { Required = true },
        Size("girth", "Girth by tape, not pulled tight.", "172 mm") with { Required = true },
        Size("width", "Width, side to side, by vernier; left out = taken as round.", "60 mm"),
        Size("depth", "Depth, back to palm, by vernier.", "41 mm"),
    ]);

    private static HandSection Thumb { get; } = new("The thumb, as far as the liner covers it; leave the section out where it does not.",
    [
        Anywhere("place", "Place of its root along the limb.", "30 mm") with { Required = true },
        Size("root", "Girth at the root.", "78 mm") with { Required = true },
        Size("largest", "Largest girth beyond the root, at the knuckle as a rule.", "72 mm") with { Required = true },
        Size("length", "Length that is covered.", "25 mm") with { Required = true },
        Angle("angle", "Angle of the thumb away from the line of the arm.", "45 deg", Bounds.Tilt) with { Default = "\"45 deg\"", SourceKey = "workshop-choice" },
    ]);

    private static HandSection Patches { get; } = new("Patches that a cut keeps away from, each with a name.", []) { AnyKey = Part("PATCH", () => Patch!) };

    private static HandSection Patch { get; } = new("A patch. Angles go round from the back of the hand (0) toward the thumb.",
    [
        Choice("kind", "An electric contact, a seam, or what the skin is like there.", "contact", "seam", "tender", "scar", "numb", "bony", "likes load", "keep out") with { Required = true },
        Anywhere("from", "From this place along the limb.", "-40 mm") with { DerivedDefault = "to be given, or outline" },
        Anywhere("to", "To this place.", "-15 mm") with { DerivedDefault = "to be given, or outline" },
        Angle("angle_from", "From this angle.", "30 deg", Bounds.Turn) with { DerivedDefault = "to be given, or outline" },
        Angle("angle_to", "To this angle, going on toward the thumb and round.", "80 deg", Bounds.Turn) with { DerivedDefault = "to be given, or outline" },
        Outline("outline", "Drawn freely instead of the four: its corners in turn, each a place and an angle, straight over the surface from one to the next.", "[[\"-40 mm\", \"30 deg\"], [\"-15 mm\", \"50 deg\"], [\"-40 mm\", \"80 deg\"]]"),
        Size("relief", "How far the form is built up there, so that the liner stands off; below 0 = carved, so that it presses.", "1 mm") with { Default = "\"0 mm\"", Bounds = Bounds.Any },
        Size("thickness", "Thickness of the sheet there; left out = as elsewhere.", "4 mm"),
    ]);

    private static HandSection Putty { get; } = new("The label of the tub; without work time, set time and their temperature there is no clock.",
    [
        Free("name", "What you call it.", "\"grey putty\"") with { Default = "\"\"" },
        Number("ratio_a", "Parts of A by weight.", Bounds.Positive) with { Default = "1", SourceKey = "workshop-choice", Example = "1" },
        Number("ratio_b", "Parts of B by weight.", Bounds.Positive) with { Default = "1", SourceKey = "workshop-choice", Example = "1" },
        Number("ratio_error", "Error of the ratio that the label allows.", Bounds.Share) with { Example = "\"5 %\"" },
        Of("density_a", Dimension.Density, "Density of A.", "1.2 g/cm³", Bounds.Positive) with { Default = "\"1.2 g/cm³\"", SourceKey = "memory-silicone" },
        Of("density_b", Dimension.Density, "Density of B.", "1.2 g/cm³", Bounds.Positive) with { Default = "\"1.2 g/cm³\"", SourceKey = "memory-silicone" },
        Of("mix_time", Dimension.Time, "Mixing time on the label.", "60 s", Bounds.Positive),
        Of("work_time", Dimension.Time, "Work time on the label, from the start of mixing.", "4 min", Bounds.Positive),
        Of("set_time", Dimension.Time, "Time on the label after which it may leave the mould, from the start of mixing.", "12 min", Bounds.Positive),
        Of("full_time", Dimension.Time, "Time of full cure on the label.", "2 h", Bounds.Positive),
        Of("at", Dimension.Temperature, "Temperature for which the label's times hold.", "23 °C", Indoors),
        Number("shore_a", "Hardness, Shore A.", new(5, false, 90, "5 to 90")) with { Example = "20" },
        Number("elongation", "Elongation at break.", new(0.05, false, 20, "5 to 2000 %")) with { Example = "\"300 %\"" },
        Of("tear", Dimension.Stiffness, "Tear strength, force for each thickness.", "8 N/mm", Bounds.Positive),
        Number("price", "Price of a pack.", Bounds.Positive) with { Example = "46" },
        Of("pack", Dimension.Mass, "Mass of a pack, both parts.", "1 kg", Bounds.Positive),
        Free("money", "Money of the price.", "\"EUR\"") with { Default = "\"\"" },
        Choice("rule", "How curing follows temperature.", "ten degrees", "arrhenius") with { Default = "\"ten degrees\"" },
        Number("ten_degree_factor", "How many times faster it cures ten degrees warmer.", new(1.1, false, 5, "1.1 to 5")) with { Default = "2", SourceKey = "memory-ten-degrees", Example = "2" },
        Of("conductivity", Dimension.Conductivity, "Conductivity.", "0.25 W/(m·K)", Bounds.Positive) with { Default = "\"0.25 W/(m·K)\"", SourceKey = "silicone-heat" },
        Of("specific_heat", Dimension.SpecificHeat, "Specific heat.", "1300 J/(kg·K)", Bounds.Positive) with { Default = "\"1300 J/(kg·K)\"", SourceKey = "memory-silicone" },
        Number("mix_share", "Share of the work time by which it must be mixed, where the label gives no mixing time.", Bounds.Share) with { Default = "\"40 %\"", SourceKey = "workshop-choice", Example = "\"40 %\"" },
        Number("hands_off_share", "How far on from work time to set time it may still be touched.", Bounds.Share) with { Default = "\"40 %\"", SourceKey = "workshop-choice", Example = "\"40 %\"" },
        Number("cure_at_set", "Share of the bonds made at the set time, where the label gives no time of full cure.", new(0.5, false, 0.98, "50 to 98 %")) with { Default = "\"90 %\"", SourceKey = "workshop-choice", Example = "\"90 %\"" },
    ]);

    private static HandSection Bench { get; } = new("Scale, room, freezer and hands.",
    [
        Of("scale_step", Dimension.Mass, "Smallest step of the scale.", "1 g", Bounds.Positive) with { Default = "\"1 g\"", SourceKey = "workshop-choice" },
        Of("tub", Dimension.Volume, "Volume of the tub it is mixed in; left out = kneaded without one.", "400 ml", Bounds.Positive),
        Of("room", Dimension.Temperature, "Room.", "20 °C", Indoors) with { Default = "\"20 °C\"", SourceKey = "workshop-choice" },
        Number("humidity", "Relative humidity of the room.", Bounds.Share) with { Default = "\"55 %\"", SourceKey = "workshop-choice", Example = "\"55 %\"" },
        Of("mould", Dimension.Temperature, "Plaster or limb under the sheet.", "20 °C", Indoors) with { DerivedDefault = "as the room" },
        Of("hand", Dimension.Temperature, "Skin of the hands.", "32 °C", Indoors) with { Default = "\"32 °C\"", SourceKey = "memory-skin-temperature" },
        Of("freezer", Dimension.Temperature, "Freezer.", "-18 °C", KitchenFreezer) with { Default = "\"-18 °C\"", SourceKey = "workshop-choice" },
        Of("chill", Dimension.Time, "Time in the freezer; 0 = not chilled.", "15 min", new(0, false, 24 * 3600, "0 to 24 h")) with { Default = "\"0 min\"" },
        Choice("chilled_as", "Shape of each part in the freezer.", "ball", "tub", "sheet") with { Default = "\"ball\"" },
        Size("flat", "Thickness of a part patted flat for the freezer.", "10 mm") with { Default = "\"10 mm\"", SourceKey = "workshop-choice" },
        Of("carry", Dimension.Time, "From the freezer to the start of mixing.", "30 s", new(0, false, 3600, "0 to 1 h")) with { Default = "\"30 s\"", SourceKey = "workshop-choice" },
        Number("helpers", "Helpers beside you, 0 to 4.", new(0, false, 4, "0 to 4")) with { Default = "0", Example = "1" },
        Of("air_transfer", Dimension.HeatTransfer, "Heat transfer to still air, convection and radiation.", "8 W/(m²·K)", Bounds.Positive) with { Default = "\"8 W/(m²·K)\"", SourceKey = "memory-surface-resistance" },
        Of("freezer_transfer", Dimension.HeatTransfer, "Heat transfer in the freezer.", "8 W/(m²·K)", Bounds.Positive) with { Default = "\"8 W/(m²·K)\"", SourceKey = "memory-surface-resistance" },
        Of("hand_transfer", Dimension.HeatTransfer, "Heat transfer between hand and putty.", "100 W/(m²·K)", Bounds.Positive) with { Default = "\"100 W/(m²·K)\"", SourceKey = "workshop-choice" },
        Of("contact_transfer", Dimension.HeatTransfer, "Heat transfer between putty and table or mould.", "100 W/(m²·K)", Bounds.Positive) with { Default = "\"100 W/(m²·K)\"", SourceKey = "workshop-choice" },
        Number("hand_share", "Share of the ball under the hands while mixing.", Bounds.Share) with { Default = "\"40 %\"", SourceKey = "workshop-choice", Example = "\"40 %\"" },
        Number("working_share", "Share of the sheet under the hands while working.", Bounds.Share) with { Default = "\"25 %\"", SourceKey = "workshop-choice", Example = "\"25 %\"" },
    ]);

    private static HandSection Work { get; } = new("How long you take: time yourself on dough.",
    [
        Seconds("mix", "Mixing until it is one colour.", "75 s"),
        Seconds("roll", "Rolling out 100 cm².", "20 s"),
        Seconds("drape", "Draping 100 cm².", "20 s"),
        Seconds("seams", "Closing 100 mm of seam.", "15 s"),
        Seconds("hollow", "Pressing into one hollow.", "10 s"),
        Number("hollows", "How many hollows there are, 0 to 50.", new(0, false, 50, "0 to 50")) with { Default = "1", SourceKey = "workshop-choice", Example = "2" },
        Seconds("smooth", "Smoothing 100 cm².", "12 s"),
    ]);

    private static HandSection Off { get; } = new("How the liner comes off and goes on.",
    [
        Number("stretch_share", "Share of the label's elongation that is allowed.", Bounds.Share) with { Default = "\"25 %\"", SourceKey = "workshop-choice", Example = "\"25 %\"" },
        Number("friction", "Friction on skin; soap, water or powder lower it.", Bounds.NotNegative) with { Default = "0.61", SourceKey = "silicone-on-skin", Example = "0.3" },
        Of("one_hand_pull", Dimension.Force, "Force that you pull with one hand.", "60 N", Bounds.Positive) with { Default = "\"60 N\"", SourceKey = "workshop-choice" },
        Size("clearance", "Least distance of a cut from contacts, seams and tender skin.", "8 mm") with { Default = "\"8 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
    ]);

    private static HandKey Anywhere(string name, string words, string example) => Size(name, words, example) with { Bounds = Bounds.Any };

    private static HandKey Seconds(string name, string words, string value) =>
        Of(name, Dimension.Time, words, value, new(0, true, 3600, "above 0, at most 1 h")) with { Default = $"\"{value}\"", SourceKey = "workshop-choice" };
}
