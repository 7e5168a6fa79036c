using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys of a finger.</summary>
internal static class FingerKeys
{
    public static HandSection Finger { get; } = new("A finger. Three values stand for MCP, PIP, DIP or for the proximal, middle, distal segment; one alone stands for all three.",
    [
        Place("knuckle", "MCP axis.", "[\"95 mm\", \"0 mm\"]") with { Required = true },
        Size("across", "Place across the hand, thumb side positive; orders the fingers if every finger gives it.", "30 mm")
            with { DerivedDefault = "a quarter of the hand breadth from finger to finger", SourceKey = "ansur-2012", Bounds = Bounds.Any },
        Angle("splay", "Splay: forces count by its cosine.", "4 deg", Bounds.Tilt with { Low = -Bounds.Tilt.High, Words = "-90 to 90 deg, both excluded" }) with { Default = "\"0 deg\"" },
        Size("length", "Length of the finger from knuckle axis to tip; the segments follow from it.", "82 mm") with { DerivedDefault = "from segments" },
        Three("segments", Dimension.Length, "Lengths of the segments.", "[\"45 mm\", \"25 mm\", \"20 mm\"]", Bounds.Positive)
            with { DerivedDefault = "by the finger's name, to its length where given", SourceKey = "buryanov-2010" },
        Three("half_thickness", Dimension.Length, "Half thickness of the segments.", "[\"8.5 mm\", \"7.5 mm\", \"6.5 mm\"]", Bounds.NotNegative)
            with { Default = "[\"8.5 mm\", \"7.5 mm\", \"6.5 mm\"]", SourceKey = "workshop-choice" },
        Three("open", Dimension.Angle, "Open posture of the joints, flexion positive.", "[\"10 deg\", \"10 deg\", \"5 deg\"]", Bounds.Posture)
            with { Default = "[\"10 deg\", \"10 deg\", \"5 deg\"]", SourceKey = "workshop-choice" },
        Three("range", Dimension.Angle, "Flexion of the joints from open to the upper stop; DIP 0 = fused.", "[\"85 deg\", \"95 deg\", \"80 deg\"]", Bounds.UpToHalfTurn)
            with { Default = "[\"87 deg\", \"97 deg\", \"82 deg\"]", SourceKey = "joint-ranges-2024" },
        Of("pad_stiffness", Dimension.Stiffness, "Contact stiffness of the pads.", "12 N/mm", Bounds.Positive) with { Default = "\"12 N/mm\"", SourceKey = "workshop-choice" },
        Choice("joints", "Coupled joints follow the MCP, adaptive joints are free.", "coupled", "adaptive") with { Default = "\"coupled\"" },
        Number("pip_ratio", "Coupled: PIP flexion ÷ MCP flexion.", Bounds.NotNegative) with { Default = "1", SourceKey = "memory-mcp-pip", Example = "1" },
        Number("dip_ratio", "Coupled: DIP flexion ÷ PIP flexion.", Bounds.NotNegative) with { Default = "0.667", SourceKey = "roda-sales-2022", Example = "0.667" },
        Part("pip_four_bar", () => FourBar!),
        Part("dip_four_bar", () => FourBar!),
        Size("arm", "Take-up arm at the MCP; or give arms.", "10 mm") with { DerivedDefault = "from arms" },
        Three("arms", Dimension.Length, "Adaptive: take-up arms at MCP, PIP, DIP.", "[\"8 mm\", \"5 mm\", \"3 mm\"]", Bounds.NotNegative)
            with { Default = "[\"10 mm\", \"0 mm\", \"0 mm\"]", DerivedDefault = "MCP alone where the joints are coupled; adaptive joints need them", SourceKey = "workshop-choice" },
        Part("drive_pin", () => DrivePin!),
        Three("spring_rate", Dimension.AngularStiffness, "Rate of the return springs.", "[\"20 N·mm/rad\", \"10 N·mm/rad\", \"10 N·mm/rad\"]", Bounds.NotNegative)
            with { Default = "[\"20 N·mm/rad\", \"10 N·mm/rad\", \"10 N·mm/rad\"]", SourceKey = "workshop-choice" },
        Three("spring_preload", Dimension.Moment, "Preload of the return springs on the open stop.", "[\"20 N·mm\", \"10 N·mm\", \"10 N·mm\"]", Bounds.NotNegative)
            with { Default = "[\"20 N·mm\", \"10 N·mm\", \"10 N·mm\"]", SourceKey = "workshop-choice" },
        Three("drag", Dimension.Moment, "Constant drag of the joints.", "\"2 N·mm\"", Bounds.NotNegative) with { Default = "\"0 N·mm\"", SourceKey = "no-drag" },
        Three("pin_radius", Dimension.Length, "Radius of the joint pins.", "[\"2 mm\", \"1.5 mm\", \"1.5 mm\"]", Bounds.NotNegative) with { Default = "\"0 mm\"", SourceKey = "no-play" },
        Three("play", Dimension.Length, "Play of the joint pins when new, across the diameter.", "\"0.05 mm\"", Bounds.NotNegative) with { Default = "\"0 mm\"", SourceKey = "no-play" },
        Three("worn_play", Dimension.Length, "Play of the joint pins when worn.", "\"0.2 mm\"", Bounds.NotNegative) with { DerivedDefault = "as when new", SourceKey = "no-play" },
        Part("pull", () => Pull!),
    ]);

    private static HandSection FourBar { get; } = new("Four-bar across a segment instead of the ratio; angles in the segment's own frame, open posture.",
    [
        Size("before_arm", "Arm on the body before, from the driving joint.", "6 mm") with { Required = true },
        Angle("before_angle", "Its direction.", "-60 deg", Bounds.Turn) with { Required = true },
        Size("after_arm", "Arm on the body after, from the driven joint.", "5 mm") with { Required = true },
        Angle("after_angle", "Its direction.", "100 deg", Bounds.Turn) with { Required = true },
    ]);

    private static HandSection DrivePin { get; } = new("Pin on the proximal segment, pulled along a fixed line, instead of the arm at the MCP.",
    [
        Size("radius", "Distance from the MCP axis.", "11 mm") with { Required = true },
        Angle("angle", "Direction from the MCP axis, open posture, from distal, dorsal positive.", "-60 deg", Bounds.Turn) with { Required = true },
        Angle("line", "Direction of the pull.", "180 deg", Bounds.Turn) with { DerivedDefault = "along the rail" },
    ]);

    private static HandSection Pull { get; } = new("The pull from the balance bar to the finger.",
    [
        Choice("kind", "A rod also pushes, a cord only pulls.", "rod", "cord") with { Default = "\"cord\"" },
        Of("stiffness", Dimension.Stiffness, "Stiffness along the pull.", "500 N/mm", Bounds.Positive) with { Default = "\"500 N/mm\"", SourceKey = "workshop-choice" },
        Size("slack", "Slack at rest; above 0 for cords only, below 0 it is strung.", "0 mm") with { Default = "\"0 mm\"", Bounds = Bounds.Any },
        Angle("guide_wrap", "Wrap round its guide.", "40 deg", Bounds.Turn with { Low = 0, Words = "0 to 360 deg" }) with { Default = "\"0 deg\"", SourceKey = "no-drag" },
    ]);
}
