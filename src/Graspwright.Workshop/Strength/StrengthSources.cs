using Graspwright.Hand;

namespace Graspwright.Workshop.Strength;

/// <summary>Sources that figures of strength and life rest on.</summary>
public static class StrengthSources
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("side-hinge", "A hinge pushed sideways, derived in docs/strength.md", "Graspwright developers", null, SourceStanding.Chosen,
            "Two ways share each moment by their stiffness; not checked against a broken hinge."),
        new("miner-1945", "Sum of damage", "Palmgren and Miner", 1945, SourceStanding.SeenQuoted, "Damage adds up to 1; worked examples of three books agree."),
    ];
}
