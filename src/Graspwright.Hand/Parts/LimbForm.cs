namespace Graspwright.Hand;

/// <summary>The limb as tape and vernier read it.</summary>
public sealed record LimbForm
{
    /// <summary>Where the places are counted from, in words.</summary>
    public required string Zero { get; init; }

    /// <summary>Marks, in order of place.</summary>
    public required IReadOnlyList<LimbMark> Marks { get; init; }

    /// <summary>Edge of the liner toward the elbow [m].</summary>
    public required double NearEdge { get; init; }

    /// <summary>Edge of the liner toward the fingertips [m].</summary>
    public required double FarEdge { get; init; }

    /// <summary>Thumb that the liner covers; <see langword="null"/> = none.</summary>
    public LimbThumb? Thumb { get; init; }

    /// <summary>Patches that cuts and seams keep away from.</summary>
    public IReadOnlyList<LimbPatch> Patches { get; init; } = [];
}

/// <summary>A mark along the limb.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Place from the zero, positive toward the fingertips [m].</param>
/// <param name="Girth">Girth [m].</param>
/// <param name="Width">Width, side to side [m]; <see langword="null"/> = not measured.</param>
/// <param name="Depth">Depth, back to palm [m]; <see langword="null"/> = not measured.</param>
public sealed record LimbMark(string Name, double Place, double Girth, double? Width, double? Depth);

/// <summary>The thumb, as far as the liner covers it.</summary>
/// <param name="Place">Place of its root [m].</param>
/// <param name="Root">Girth at the root [m].</param>
/// <param name="Largest">Largest girth beyond it [m].</param>
/// <param name="Length">Length that is covered [m].</param>
/// <param name="AngleRadians">Angle away from the line of the arm [rad].</param>
public sealed record LimbThumb(double Place, double Root, double Largest, double Length, double AngleRadians);

/// <summary>Why a patch is kept clear.</summary>
public enum PatchKind
{
    /// <summary>An electric contact on the skin.</summary>
    Contact,

    /// <summary>A seam of the liner.</summary>
    Seam,

    /// <summary>Tender skin.</summary>
    Tender,
}

/// <summary>A patch on the limb. Angles go round from the back of the hand toward the thumb.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">Why it is kept clear.</param>
/// <param name="From">From this place [m].</param>
/// <param name="To">To this place [m].</param>
/// <param name="AngleFromRadians">From this angle [rad].</param>
/// <param name="AngleToRadians">To this angle [rad].</param>
public sealed record LimbPatch(string Name, PatchKind Kind, double From, double To, double AngleFromRadians, double AngleToRadians);

/// <summary>The chain of copies from the limb to the shell.</summary>
/// <param name="Snug">Share by which the liner's inside is wanted smaller than the limb.</param>
/// <param name="Gap">Gap wanted between liner and shell [m].</param>
/// <param name="Film">Thickness of a film of release agent or sealer [m].</param>
/// <param name="NegativeWall">Wall of the plaster negatives [m].</param>
/// <param name="WaterForPowder">Water ÷ powder of the plaster, by weight.</param>
/// <param name="PlasterGrowth">Growth of plaster on setting.</param>
/// <param name="SiliconeShrinkage">Shrinkage of the silicone.</param>
/// <param name="Wax">Thickness of the wax [m].</param>
/// <param name="WaxShrinkage">Shrinkage of the wax.</param>
/// <param name="Shell">Thickness of the shell [m].</param>
/// <param name="ShellShrinkage">Shrinkage of the shell's resin.</param>
/// <param name="Water">Temperature of the mixing water [K].</param>
public sealed record CopyPlan(
    double Snug, double Gap, double Film, double NegativeWall, double WaterForPowder, double PlasterGrowth,
    double SiliconeShrinkage, double Wax, double WaxShrinkage, double Shell, double ShellShrinkage, double Water);
