using static Graspwright.Hand.KeyMaking;

namespace Graspwright.Hand;

/// <summary>Keys about spares and about lives that were computed elsewhere.</summary>
internal static class DrawerKeys
{
    private const string Chosen = "workshop-choice";

    /// <summary>The sections, for the root of the file.</summary>
    public static HandKey[] Sections =>
    [
        Part("drawer", () => Drawer!),
        Part("computed_lives", () => Computed!),
    ];

    private static Bounds Chance { get; } = new(0, true, 0.5, "above 0, at most 50 %");

    private static HandSection Drawer { get; } = new("Spares: how long the drawer must last, and what chance of a stand-still is accepted. The log of parts is the file named log under [files].",
    [
        Of("period", Dimension.Time, "From one filling of the drawer to the next.", "90 days", Bounds.Positive) with { Default = "\"90 days\"", SourceKey = Chosen },
        Of("supply", Dimension.Time, "From an order, or from the start of making, to parts in the drawer.", "10 days", Bounds.NotNegative) with { Default = "\"10 days\"", SourceKey = Chosen },
        Number("chance", "Greatest chance that the hand stands still for want of a part in that time.", Chance) with { Default = "\"5 %\"", SourceKey = Chosen, Example = "\"5 %\"" },
        Number("unseen", "Greatest chance that something is broken unseen between two looks.", Chance) with { Default = "\"10 %\"", SourceKey = Chosen, Example = "\"10 %\"" },
    ]);

    private static HandSection Computed { get; } = new("Lives that were computed, by the name of the part as the log has it; the log then corrects them.", []) { AnyKey = Part("NAME", () => Life!) };

    private static HandSection Life { get; } = new("A computed life, in days by the calendar.",
    [
        Of("median", Dimension.Time, "The life that half of the parts outlive.", "21 days", Bounds.Positive) with { Required = true },
        Of("low", Dimension.Time, "Lower end of its 80 % band.", "9 days", Bounds.Positive) with { Required = true },
        Of("high", Dimension.Time, "Upper end of its 80 % band.", "49 days", Bounds.Positive) with { Required = true },
    ]);
}
