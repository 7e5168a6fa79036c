using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of the day's jobs and of the body they meet: pads, thumb, closing lock, room.</summary>
internal static class DayKeys
{
    /// <summary>Words for the ways a forearm is held.</summary>
    public static string[] Attitudes { get; } = ["palm down", "thumb up", "palm up", "overhead", "hanging"];

    /// <summary>Words for directions of the hand.</summary>
    public static string[] Directions { get; } = ["distal", "proximal", "dorsal", "palmar", "toward the thumb", "away from the thumb"];

    public static HandSection WristRange { get; } = new("How far the wearer's wrist bends each way from straight, loaded and with the cuff on.",
    [
        Angle("flexion", "Toward the palm.", "40 deg", Bounds.HalfTurn) with { Default = "\"40 deg\"", SourceKey = "ryu-1991" },
        Angle("extension", "Toward the back of the hand.", "40 deg", Bounds.HalfTurn) with { Default = "\"40 deg\"", SourceKey = "ryu-1991" },
    ]);

    public static HandSection Pads { get; } = new("What the finger pads are made of, and how it holds on things.",
    [
        Choice("material", "Material of the pads.", "silicone", "metal") with { Default = "\"silicone\"", SourceKey = "memory-pad-friction" },
        Number("friction", "Friction of the pads on dry things.", Bounds.NotNegative) with { DerivedDefault = "0.5 for silicone, 0.2 for metal", SourceKey = "memory-pad-friction", Example = "0.6" },
        Number("wet_factor", "What is left of it when wet.", Bounds.Share) with { Default = "\"50 %\"", SourceKey = "memory-pad-friction", Example = "\"50 %\"" },
        Number("spread", "How far friction may differ, each way, as a share.", Bounds.Share with { High = 0.9, Words = "above 0, at most 90 %" }) with { Default = "\"25 %\"", SourceKey = "friction-spread", Example = "\"25 %\"" },
        Number("skin_friction", "Friction of the wearer's palm and thumb on dry things.", Bounds.NotNegative) with { Default = "0.46", SourceKey = "zhang-mak-1999", Example = "0.46" },
        Size("patch", "Width of the patch over which a pad touches.", "8 mm") with { Default = "\"8 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
    ]);

    public static HandSection Thumb { get; } = new("The wearer's own thumb.",
    [
        Of("pinch", Dimension.Force, "Greatest force it presses with.", "40 N", Bounds.Positive) with { Default = "\"40 N\"", SourceKey = "workshop-choice" },
        Size("across", "Where its pad lies across the hand when it wraps a handle, thumb side positive.", "25 mm") with { Default = "\"25 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.Any },
        Angle("heel", "Direction in which the ball of the thumb and the heel of the hand push what lies in the palm, from distal, dorsal positive.", "-15 deg", Bounds.Posture) with { Default = "\"-15 deg\"", SourceKey = "workshop-choice" },
        Size("pad_width", "Width of its pad that carries.", "18 mm") with { Default = "\"18 mm\"", SourceKey = "workshop-choice" },
        Of("pain_threshold", Dimension.Pressure, "Pressure at which its pad begins to hurt.", "300 kPa", Bounds.Positive) with { Default = "\"300 kPa\"", SourceKey = "chesterton-2003" },
        Of("limit", Dimension.Pressure, "Greatest pressure that its wearer allows on it.", "110 kPa", Bounds.Positive) with { DerivedDefault = "38 % of the pain threshold, where discomfort begins", SourceKey = "hand-discomfort" },
        Part("postures", () => Postures!),
    ]);

    public static HandSection ClosingLock { get; } = new("Lock at the pull of each finger that holds the closed hand while the wrist relaxes.",
    [
        Size("pitch", "Distance between two places in which it can catch, along the pull.", "0.8 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        Size("backlash", "Play before it carries, along the pull.", "0.1 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        Of("stiffness", Dimension.Stiffness, "Stiffness along the pull.", "600 N/mm", Bounds.Positive) with { Unbounded = "rigid", Default = "\"rigid\"", SourceKey = "no-play" },
        Of("may_carry", Dimension.Force, "Greatest force one finger's lock may carry.", "90 N", Bounds.Positive),
    ]);

    public static HandSection Room { get; } = new("What stands in the way of the moving parts, and where the knuckles come.",
    [
        Size("liner", "Thickness of the liner.", "3 mm") with { Default = "\"3 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("shell", "Thickness of the shell.", "2 mm") with { Default = "\"2 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("clearance", "Air between the shell and the base of the knuckles.", "2 mm") with { Default = "\"2 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("base", "From the base's near face to the knuckle axis.", "9 mm") with { Default = "\"9 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("hand_thickness", "Thickness of the bare hand behind the knuckles.", "26 mm") with { Default = "\"26 mm\"", SourceKey = "workshop-choice" },
        Size("hand_middle", "Height of the hand's middle above the wrist axis, dorsal positive.", "0 mm") with { Default = "\"0 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.Any },
        Size("link_width", "Width of pull link, crank arms and transfer link.", "6 mm") with { Default = "\"6 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("bar_width", "Width of the bars and of the carriage.", "6 mm") with { Default = "\"6 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("bar_pitch", "Distance from a bar to those that hang on it, along the rail.", "12 mm") with { Default = "\"12 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("drive_across", "Where links and crank lie across the hand, thumb side positive.", "0 mm") with { Default = "\"0 mm\"", Bounds = Bounds.Any },
        Size("least_gap", "Smallest gap allowed between moving parts and what they pass.", "1 mm") with { Default = "\"1 mm\"", SourceKey = "workshop-choice", Bounds = Bounds.NotNegative },
        Size("most_height", "Greatest height allowed over the back of the shell.", "35 mm"),
        Part("stumps", () => Stumps!),
        Part("sound_knuckles", () => SoundKnuckles!),
    ]);

    public static HandSection Jobs { get; } = new("The day's jobs, by name.", []) { AnyKey = Part("NAME", () => Job!) };

    public static HandSection Body { get; } = new("The weight on the wrist: what is left of the hand, and the device.",
    [
        Of("mass", Dimension.Mass, "Mass of the wearer.", "77 kg", Bounds.Positive) with { Default = "\"77 kg\"", SourceKey = "ansur-2012" },
        Number("hand_share", "Share of it that a whole hand has.", new(0, true, 0.05, "above 0, at most 5 %")) with { Default = "\"0.575 %\"", SourceKey = "plagenhoef-1983", Example = "\"0.65 %\"" },
        Number("hand_left", "Share of the hand that is left.", Bounds.Share) with { Default = "\"87 %\"", SourceKey = "workshop-choice", Example = "\"85 %\"" },
        Place("hand_centre", "Where what is left of the hand balances.", "[\"56 mm\", \"-3 mm\"]") with { DerivedDefault = "0.65 of the hand's breadth from the wrist", SourceKey = "workshop-choice" },
        Of("device", Dimension.Mass, "Mass of the device past the wrist's axis, as a kitchen scale shows it.", "250 g", Bounds.NotNegative) with { Default = "\"250 g\"", SourceKey = "memory-device-mass" },
        Place("device_centre", "Where the device balances on a finger laid across it.", "[\"72 mm\", \"12 mm\"]") with { DerivedDefault = "midway between the middle of the knuckles and the rail's rest", SourceKey = "workshop-choice" },
    ]);

    private static HandSection Postures { get; } = new("Postures of the thumb, by name.", []) { AnyKey = Part("NAME", () => Posture!) };

    private static HandSection Posture { get; } = new("A posture of the thumb. Places are [distal, dorsal, toward the thumb] from the wrist axis.",
    [
        Three("pad", Dimension.Length, "Middle of the pad.", "[\"95 mm\", \"-55 mm\", \"25 mm\"]", Bounds.Any) with { Required = true },
        Three("looks_at", Dimension.Length, "A place straight off the pad: the far end of a straw held on it.", "[\"98 mm\", \"-10 mm\", \"22 mm\"]", Bounds.Any) with { Required = true },
    ]);

    private static HandSection Stumps { get; } = new("Where each finger's stump ends.", []) { AnyKey = Place("NAME", "End of the stump.", "[\"62 mm\", \"0 mm\"]") };

    private static HandSection SoundKnuckles { get; } = new("Knuckle axes of the sound hand, mirrored.", []) { AnyKey = Place("NAME", "Knuckle axis.", "[\"88 mm\", \"0 mm\"]") };

    private static HandSection Job { get; } = new("A job.",
    [
        Free("object", "Name of the object that is held.", "\"mug\"") with { Required = true },
        Choice("as", "How it is held: in fingers and palm, between fingers and thumb, in hooked fingers alone, or in fingers, palm and thumb.", "cylinder", "plate", "hook bar", "handle")
            with { DerivedDefault = "cylinder or plate, as the object is" },
        Place("centre", "Where the middle of a cylinder lies in this job, if not where the object says.", "[\"92 mm\", \"-38 mm\"]"),
        Of("load", Dimension.Mass, "Mass of the whole thing.", "0.5 kg", Bounds.NotNegative) with { Default = "\"0 kg\"" },
        Three("hangs", Dimension.Length, "Where it hangs, from the middle of what is held: distal, dorsal, toward the thumb.", "[\"0 mm\", \"0 mm\", \"60 mm\"]", Bounds.Any) with { Default = "\"0 mm\"" },
        Of("pull", Dimension.Force, "A pull beside the weight.", "40 N", Bounds.NotNegative) with { Default = "\"0 N\"" },
        Choice("toward", "Where it pulls.", Directions) with { Default = "\"distal\"" },
        Of("twist", Dimension.Moment, "A moment about the axis of what is held.", "0.8 N·m", Bounds.NotNegative) with { Default = "\"0 N·m\"" },
        Choice("forearm", "How the forearm is held.", Attitudes) with { Default = "\"palm down\"" },
        Choice("grip", "Wrist holding on, or fingers locked and the wrist relaxed.", "hold", "lock and relax") with { Default = "\"hold\"" },
        Choice("effort", "Effort with which the hand is closed.", "all-day", "squeeze") with { Default = "\"all-day\"" },
        Free("locks", "Lock pattern in which it is gripped.", "\"point\""),
        Number("acceleration", "How hard it is moved, whichever way is worst, as a share of gravity.", Bounds.NotNegative) with { Default = "\"0 %\"", Example = "\"30 %\"" },
        Choice("surface", "Whether it is wet.", "dry", "wet") with { Default = "\"dry\"" },
        Number("times_a_day", "How often a day.", Bounds.NotNegative) with { Example = "20" },
    ]);
}
