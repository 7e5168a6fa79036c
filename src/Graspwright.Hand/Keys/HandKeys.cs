using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Every key of the hand file outside the fingers. This table is the only description of the format.</summary>
public static class HandKeys
{
    /// <summary>The whole file.</summary>
    public static HandSection Root { get; } = new("The hand.",
    [
        Free("name", "Name of the hand.", "\"first hand\"") with { Required = true },
        Free("description", "What it is for.", "\"for the boatyard\"") with { Default = "\"\"" },
        Part("wearer", () => Wearer!),
        Part("wrist", () => Wrist!),
        Part("give", () => Give!),
        Part("gimbal", () => Gimbal!),
        Part("palm", () => Palm!),
        Part("pull_link", () => PullLink!),
        Part("crank", () => Crank!),
        Part("transfer_link", () => TransferLink!),
        Part("rail", () => Rail!),
        Part("balance", () => Bar!) with { Form = KeyForm.FingerOrBar, Words = "The root of the balance tree.", Example = "\"index\"", DerivedDefault = "neighbours paired, then the pairs", SourceKey = "workshop-choice" },
        Part("fingers", () => Fingers!),
        Part("friction", () => Friction!),
        Part("locks", () => Locks!),
        Part("objects", () => Objects!),
        .. StructureKeys.Sections,
        .. DrawerKeys.Sections,
        .. DecisionKeys.Sections,
        Part("form", () => MouldKeys.Form),
        Part("liner", () => MouldKeys.Liner),
        Part("copies", () => MouldKeys.Copies),
        Part("signals", () => SignalKeys.Signals),
        Part("tolerances", () => Tolerances!),
        Part("files", () => Files!),
        Part("wrist_range", () => DayKeys.WristRange),
        Part("pads", () => DayKeys.Pads),
        Part("thumb", () => DayKeys.Thumb),
        Part("closing_lock", () => DayKeys.ClosingLock),
        Part("room", () => DayKeys.Room),
        Part("jobs", () => DayKeys.Jobs),
        Part("body", () => DayKeys.Body),
    ])
    {
        Moved = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["day"] = "move grips, hold and worn to [use]: they are said once there, for the wrist's load and for the life of the parts",
        },
    };

    /// <summary>A pin.</summary>
    internal static HandSection Pin { get; } = new("A pin.",
    [
        Size("radius", "Radius of the pin; 0 = no friction there.", "2 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        Size("play", "Play across the diameter when new.", "0.05 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        Size("worn_play", "Play across the diameter when worn.", "0.2 mm") with { DerivedDefault = "as when new", SourceKey = "no-play", Bounds = Bounds.NotNegative },
    ]);

    private static HandSection Wearer { get; } = new("The wearer.",
    [
        Choice("side", "Which hand it replaces.", "left", "right") with { Required = true },
        Size("hand_breadth", "Breadth of the hand across the knuckles; the places of the fingers follow from it.", "85 mm") with { Default = "\"85 mm\"", SourceKey = "ansur-2012" },
    ]);

    private static HandSection Wrist { get; } = new("The wearer's wrist.",
    [
        Choice("drive", "Which way the wrist bends to close the hand: flexion is palm toward forearm.", "flexion", "extension") with { Default = "\"flexion\"" },
        Angle("start", "Start posture: angle of the wrist with the hand open, flexion positive, 0 = straight.", "0 deg", Bounds.Posture) with { Default = "\"0 deg\"" },
        Angle("travel", "How far the wrist bends from the start posture in the driving direction, loaded.", "38 deg", Bounds.HalfTurn) with { Required = true },
        Number("squeeze_share", "Share of strength accepted for a short squeeze.", Bounds.Share) with { Default = "\"50 %\"", SourceKey = "jonsson-levels", Example = "\"50 %\"" },
        Number("all_day_share", "Share of strength that can be repeated all day.", Bounds.Share) with { Default = "\"18 %\"", SourceKey = "smit-2010", Example = "\"18 %\"" },
        Of("speed", Dimension.AngularSpeed, "Comfortable speed of bending.", "120 deg/s", Bounds.Positive) with { Default = "\"179 deg/s\"", SourceKey = "circumduction-2012" },
        Part("capacity", () => Capacity!),
    ]);

    private static HandSection Capacity { get; } = new("Greatest moment of the wrist against its anatomical angle (flexion positive, 0 = straight): straight between entries, constant outside.",
    [
        Moments("flexion", "Bending toward the palm.",
            "[[\"-60 deg\", \"9.2 N·m\"], [\"0 deg\", \"11 N·m\"], [\"40 deg\", \"12.2 N·m\"], [\"70 deg\", \"11 N·m\"]]") with { SourceKey = "delp-1996" },
        Moments("extension", "Bending toward the back of the hand.",
            "[[\"-70 deg\", \"7.1 N·m\"], [\"30 deg\", \"7.1 N·m\"], [\"70 deg\", \"5.7 N·m\"]]") with { SourceKey = "delp-1996" },
    ]);

    private static HandSection Give { get; } = new("Give between the wearer's joint and the drive, about the wrist axis.",
    [
        Of("cuff", Dimension.AngularStiffness, "Stiffness of cuff and flesh.", "1.5 N·m/deg", Bounds.Positive) with { Unbounded = "rigid", Default = "\"rigid\"", SourceKey = "no-give" },
        Of("shell", Dimension.AngularStiffness, "Stiffness of the hand shell.", "6 N·m/deg", Bounds.Positive) with { Unbounded = "rigid", Default = "\"rigid\"", SourceKey = "no-give" },
        Number("hysteresis", "Share h of the give that comes back late: τ/k·(1 + 3h·(1 − τ/τ_end)) on opening.", Bounds.Third) with { Default = "\"0 %\"", SourceKey = "no-give", Example = "\"15 %\"" },
    ]);

    private static HandSection Gimbal { get; } = new("Pin on the wrist axis between cuff and shell; leave the section out if there is none.",
    [
        PinPart("pin", "The gimbal pin."),
        Place("offset", "Offset of its axis from the wearer's own wrist axis.", "[\"0 mm\", \"0 mm\"]") with { Default = "[\"0 mm\", \"0 mm\"]" },
    ]);

    private static HandSection Palm { get; } = new("Line of the palm on which held things rest.",
    [
        Place("point", "A point of the line; stations count from it.", "[\"0 mm\", \"-12 mm\"]") with { Required = true },
        Angle("direction", "Direction of rising stations, from distal, dorsal positive.", "0 deg", Bounds.Turn) with { Default = "\"0 deg\"" },
    ]);

    private static HandSection PullLink { get; } = new("Link from the forearm to the crank.",
    [
        Choice("kind", "A rod also pushes, a cord only pulls.", "rod", "cord") with { Default = "\"rod\"" },
        Place("anchor", "Anchor on the forearm at the start posture.", "[\"-45 mm\", \"28 mm\"]") with { Required = true },
        .. LinkKeys,
        PinPart("anchor_pin", "Pin at the anchor."),
        PinPart("crank_pin", "Pin at the crank."),
    ]);

    private static HandSection Crank { get; } = new("Bell crank, at rest.",
    [
        Place("fulcrum", "Fulcrum.", "[\"20 mm\", \"20 mm\"]") with { Required = true },
        Place("input", "Input pin from the fulcrum; or give input_arm and input_angle.", "[\"3 mm\", \"18 mm\"]") with { DerivedDefault = "from input_arm and input_angle" },
        Size("input_arm", "Length of the input arm.", "18 mm") with { DerivedDefault = "from input" },
        Angle("input_angle", "Direction of the input arm, from distal, dorsal positive.", "80 deg", Bounds.Turn) with { DerivedDefault = "from input" },
        Place("output", "Output pin from the fulcrum, not shifted.", "[\"5 mm\", \"14 mm\"]") with { Required = true },
        Angle("stop", "Upper stop of the crank's turn.", "80 deg", Bounds.HalfTurn) with { Default = "\"80 deg\"", SourceKey = "workshop-choice" },
        Of("drag", Dimension.Moment, "Constant drag.", "5 N·mm", Bounds.NotNegative) with { Default = "\"0 N·mm\"", SourceKey = "no-drag" },
        PinPart("fulcrum_pin", "Pin at the fulcrum."),
        PinPart("output_pin", "Output pin."),
        Part("slot", () => Slot!),
    ]);

    private static HandSection Slot { get; } = new("Slot of a load-sensing arm; leave the section out for a fixed arm.",
    [
        Angle("direction", "Direction in which the pin sets out when it shifts, at rest, from distal, dorsal positive.", "-110 deg", Bounds.Turn) with { Required = true },
        Size("length", "Length of the shift.", "7 mm") with { Required = true },
        Of("preload", Dimension.Force, "Spring force that the shift starts against.", "45 N", Bounds.NotNegative) with { Required = true },
        Of("rate", Dimension.Stiffness, "Spring rate along the slot.", "3 N/mm", Bounds.NotNegative) with { Required = true },
        Angle("turn", "How far the slot's direction turns from its near to its far end, dorsal positive: a slot filed to an arc of radius length ÷ turn, or a pin on a swinging lever of that length. 0 = straight.", "12 deg", Bounds.Posture) with { Default = "\"0 deg\"" },
    ]);

    private static HandSection TransferLink { get; } = new("Link from the crank to the carriage.",
    [
        Choice("kind", "A rod also pushes, a cord only pulls.", "rod", "cord") with { Default = "\"rod\"" },
        .. LinkKeys,
        PinPart("carriage_pin", "Pin at the carriage."),
    ]);

    private static HandSection Rail { get; } = new("Straight rail of the carriage.",
    [
        Place("rest", "Carriage pin at rest.", "[\"60 mm\", \"30 mm\"]") with { Required = true },
        Angle("direction", "Direction of travel on closing, from distal, dorsal positive.", "180 deg", Bounds.Turn) with { Default = "\"180 deg\"" },
        Size("travel", "Travel of the carriage.", "25 mm") with { Required = true },
        Of("drag", Dimension.Force, "Constant drag.", "1 N", Bounds.NotNegative) with { Default = "\"0 N\"", SourceKey = "no-drag" },
        Size("guide_length", "Length of the carriage's guide; without it there is no jam check.", "18 mm"),
        Place("load_offset", "Offset of the loads from the guide's line: dorsal, and across the hand.", "[\"4 mm\", \"0 mm\"]") with { Default = "[\"0 mm\", \"0 mm\"]" },
    ]);

    private static HandSection Bar { get; } = new("A balance bar: each end carries a finger by its name, or a further bar.",
    [
        Free("name", "Name of the bar.", "\"root\"") with { DerivedDefault = "root, then root first, root second" },
        Size("first_arm", "Arm of the first end from the pivot.", "20 mm") with { DerivedDefault = "half the distance of the ends across the hand" },
        Size("second_arm", "Arm of the second end from the pivot.", "20 mm") with { DerivedDefault = "half the distance of the ends across the hand" },
        Angle("tilt_stop", "Tilt stop either way; 0 = a rigid bar.", "35 deg", Bounds.Tilt) with { Default = "\"35 deg\"", SourceKey = "workshop-choice" },
        PinPart("pivot_pin", "Pin of the pivot."),
        Size("first_pin_radius", "Radius of the pin at the first end.", "1 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        Size("second_pin_radius", "Radius of the pin at the second end.", "1 mm") with { Default = "\"0 mm\"", SourceKey = "no-play", Bounds = Bounds.NotNegative },
        End("first", "What the first end carries."),
        End("second", "What the second end carries."),
    ]);

    private static HandSection Fingers { get; } = new("The fingers, thumb side first; values under `fingers.all` hold for each finger that does not say otherwise.", [])
    {
        AnyKey = Part("NAME", () => FingerKeys.Finger),
    };

    private static HandSection Friction { get; } = new("Coefficients of friction.",
    [
        Number("pin", "At every pin.", Bounds.NotNegative) with { Default = "0.12", SourceKey = "memory-friction", Example = "0.12" },
        Number("rail", "Between carriage and rail.", Bounds.NotNegative) with { Default = "0.15", SourceKey = "memory-friction", Example = "0.15" },
        Number("slot", "Between output pin and slot.", Bounds.NotNegative) with { Default = "0.12", SourceKey = "memory-friction", Example = "0.12" },
        Number("guide", "Between finger pull and its guide.", Bounds.NotNegative) with { Default = "0.15", SourceKey = "memory-friction", Example = "0.15" },
    ]);

    private static HandSection Locks { get; } = new("Named lock patterns; in each, the locked fingers by name.", [])
    {
        AnyKey = Part("PATTERN", () => Pattern!),
    };

    private static HandSection Pattern { get; } = new("A lock pattern.", []) { AnyKey = Part("FINGER", () => Lock!) };

    private static HandSection Lock { get; } = new("A lock on one finger.",
    [
        Angle("at", "Wrist motion of closing at which it acts; 0 = from the start.", "0 deg", Bounds.UpToHalfTurn) with { Default = "\"0 deg\"" },
        Choice("pull", "Whether the pull stays attached.", "holds pull", "lets go") with { Required = true },
        Of("may_carry", Dimension.Force, "Greatest force the lock may carry.", "80 N", Bounds.Positive),
        .. SignalKeys.OfLock,
    ]);

    private static HandSection Objects { get; } = new("Things to close on, by name.", []) { AnyKey = Part("NAME", () => Object!) };

    private static HandSection Object { get; } = new("A thing to close on.",
    [
        Choice("shape", "Cylinder across the hand, plate held by the thumb, or nothing.", "cylinder", "plate", "nothing") with { Required = true },
        Size("diameter", "Cylinder: its diameter.", "60 mm"),
        Size("station", "Cylinder on the palm line: distance from the line's point.", "73 mm") with { Bounds = Bounds.Any },
        Place("centre", "Cylinder placed freely: its centre.", "[\"73 mm\", \"-42 mm\"]"),
        Place("point", "Plate: a point of the face on the thumb.", "[\"120 mm\", \"-60 mm\"]"),
        Angle("normal", "Plate: direction of the normal toward the fingers, from distal, dorsal positive.", "90 deg", Bounds.Turn),
        Size("thickness", "Plate: its thickness.", "3 mm") with { Bounds = Bounds.NotNegative },
    ]);

    private static HandSection Tolerances { get; } = new("How far values may lie from this file, each way; the key is the path of the value, in quotes.", [])
    {
        AnyKey = new() { Name = "\"PATH\"", Form = KeyForm.Tolerance, Words = "Half width, in a unit of that value.", Bounds = Bounds.NotNegative, Example = "\"0.2 mm\"" },
    };

    private static HandSection Files { get; } = new("Other files of this hand, inside its folder.", [])
    {
        AnyKey = new() { Name = "NAME", Form = KeyForm.FileName, Words = "Where the file is, relative to this one.", Example = "\"bench/readings.csv\"" },
    };

    private static HandKey[] LinkKeys =>
    [
        Of("stiffness", Dimension.Stiffness, "Stiffness along the link.", "1000 N/mm", Bounds.Positive) with { Default = "\"1000 N/mm\"", SourceKey = "workshop-choice" },
        Size("slack", "Free length less distance of the pins at rest; above 0 for cords only, below 0 it is strung.", "0 mm") with { Default = "\"0 mm\"", Bounds = Bounds.Any },
    ];
}
