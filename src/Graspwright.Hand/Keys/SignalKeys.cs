using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of the muscle signals, and what a lock does without power.</summary>
internal static class SignalKeys
{
    public static HandSection Signals { get; } = new("Muscle signals that lock and free the fingers; leave the section out if there are none. Places are on the paper pattern, in its own axes.",
    [
        Choice("kind", "What the amplifiers give: the raw signal or its smoothed envelope; without it the recordings are looked at.", "raw", "envelope"),
        Of("mains", Dimension.Frequency, "Frequency of the mains where it is worn.", "50 Hz", Bounds.Positive) with { Default = "\"50 Hz\"" },
        Of("delay_limit", Dimension.Time, "Longest time from tensing to acting, smoothing and hold together.", "125 ms", Bounds.Positive) with { Default = "\"125 ms\"", SourceKey = "farrell-weir-2007" },
        Size("least_spacing", "Least distance between the centres of two pairs.", "20 mm") with { Default = "\"20 mm\"", SourceKey = "memory-electrodes" },
        Number("separation_limit", "How many scatters two gestures must stay apart; at 3 about one window in fifteen is taken for the other.", Bounds.Positive) with { Default = "3", SourceKey = "workshop-choice", Example = "3" },
        Choice("controller", "Kind of controller that runs the filters.", "8 bit", "32 bit", "32 bit long products") with { Default = "\"32 bit\"" },
        Number("loop_share", "Share of the controller's time that the filters may take.", Bounds.Share) with { Default = "\"50 %\"", SourceKey = "workshop-choice", Example = "\"50 %\"" },
        Number("line_speed", "Speed of the serial line to a computer, bits a second.", Bounds.Positive) with { Default = "115200", Example = "115200" },
        NamedFile("map", "Site map: site, x_mm, y_mm, direction_deg, spacing_mm, recording (file, or file:channel).", "\"signals/map.csv\""),
        NamedFile("pattern", "Outline of the paper pattern on which sites are drawn, as DXF or CSV of points.", "\"signals/pattern.csv\""),
        Part("channels", () => Channels!),
        Part("recordings", () => Recordings!),
        Part("sore", () => Sore!),
        Part("stud", () => Stud!),
    ]);

    /// <summary>What is decided of each lock.</summary>
    public static HandKey[] OfLock =>
    [
        Choice("unpowered", "What the lock does when signal or power is lost; decide it for each lock.", "holds", "frees"),
        Free("hand_release", "How it is released by hand under full load, by the other hand or on a table edge.", "\"lever on the back, pushed against an edge\""),
    ];

    private static HandSection Channels { get; } = new("Channels by the names that the recordings use, in the order of the columns.", []) { AnyKey = Part("NAME", () => Channel!) };

    private static HandSection Channel { get; } = new("A channel: one pair of contacts.",
    [
        Free("gesture", "The gesture that it is to tell.", "\"fist\"") with { Required = true },
        Free("locks", "Lock pattern that it sets and frees.", "\"point\"") with { Default = "\"\"" },
        Free("site", "Its place in the site map.", "\"A3\"") with { Default = "\"\"" },
    ]);

    private static HandSection Recordings { get; } = new("Recordings by name.", []) { AnyKey = Part("NAME", () => Recording!) };

    private static HandSection Recording { get; } = new("A recording: CSV, EDF, EDF+, BDF or WAV.",
    [
        NamedFile("file", "The file.", "\"signals/morning.edf\"") with { Required = true },
        Choice("purpose", "Gestures on cue, or hours of wear in which no lock was wanted.", "gestures", "wear") with { Default = "\"gestures\"" },
        Number("donning", "Which time the contacts were put on; count up each time they come off.", Bounds.Positive) with { Default = "1", Example = "1" },
        Of("rate", Dimension.Frequency, "Samples a second, where the file does not say.", "1000 Hz", Bounds.Positive),
        NamedFile("cues", "List of cues, where the file holds no gestures: start_s, end_s, gesture.", "\"signals/cues.csv\""),
    ]);

    private static HandSection Sore { get; } = new("Places on the skin to keep off, by name.", []) { AnyKey = Part("NAME", () => SorePlace!) };

    private static HandSection SorePlace { get; } = new("A round place.",
    [
        Place("place", "Its centre on the pattern.", "[\"12 mm\", \"40 mm\"]") with { Required = true },
        Size("radius", "Its radius.", "8 mm") with { Required = true },
    ]);

    private static HandSection Stud { get; } = new("Contact stud, screwed together through the liner; leave the section out to skip its sums.",
    [
        Choice("metal", "What touches the skin.", "titanium", "silver", "gold", "niobium", "stainless steel", "plated brass", "brass", "nickel") with { Required = true },
        Size("dome_diameter", "Diameter of the dome's foot.", "10 mm") with { Default = "\"10 mm\"", SourceKey = "memory-electrodes" },
        Size("dome_height", "Height of the dome above the liner.", "1.5 mm") with { Default = "\"1.5 mm\"", SourceKey = "workshop-choice" },
        Size("flange_diameter", "Diameter of the flange in the liner.", "12 mm") with { Default = "\"12 mm\"", SourceKey = "workshop-choice" },
        Size("hole_diameter", "Hole cut in the liner.", "4 mm") with { Default = "\"4 mm\"", SourceKey = "workshop-choice" },
        Size("liner_thickness", "Thickness of the liner there.", "3 mm") with { Required = true },
        Number("squeeze", "How far the screw squeezes the liner, of its thickness.", Bounds.Third) with { Default = "\"15 %\"", SourceKey = "workshop-choice", Example = "\"15 %\"" },
        Number("shore_hardness", "Shore A hardness of the liner.", new(5, false, 80, "5 to 80")) with { Required = true, Example = "30" },
        Of("tear_strength", Dimension.Stiffness, "Tear strength of the liner, from its data sheet.", "15 N/mm", Bounds.Positive) with { Required = true },
        Number("stretch_at_break", "Stretch of the liner at break, from its data sheet.", Bounds.Positive) with { Required = true, Example = "\"400 %\"" },
        Of("pull_out", Dimension.Force, "Greatest pull on a stud when the liner is taken off.", "20 N", Bounds.Positive) with { Default = "\"20 N\"", SourceKey = "workshop-choice" },
        Size("shell_movement", "Movement between liner and shell that the wire bridges.", "4 mm") with { Default = "\"4 mm\"", SourceKey = "workshop-choice" },
        Size("wire_diameter", "Diameter of the wire with its cover.", "1.2 mm") with { Default = "\"1.2 mm\"", SourceKey = "workshop-choice" },
        Size("wire_length", "Free length of wire between liner and shell.", "50 mm") with { Required = true },
    ]);

    private static HandKey NamedFile(string name, string words, string example) => new() { Name = name, Form = KeyForm.FileName, Words = words, Example = example };
}
