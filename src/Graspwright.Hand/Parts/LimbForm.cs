namespace Graspwright.Hand;

/// <summary>The limb as tape and vernier read it.</summary>
public sealed record LimbForm
{
    /// <summary>Where the places are counted from, in words.</summary>
    public required string Zero { get; init; }

    /// <summary>Marks, in order of place.</summary>
    public required IReadOnlyList<LimbMark> Marks { get; init; }

    /// <summary>Edge of the liner toward the elbow; of a drawn line, the mean of its places over the angle [m].</summary>
    public required double NearEdge { get; init; }

    /// <summary>Edge of the liner toward the fingertips; of a drawn line, the mean of its places over the angle [m].</summary>
    public required double FarEdge { get; init; }

    /// <summary>Drawn edge toward the elbow: corners once round the limb; empty = the plane at <see cref="NearEdge"/>.</summary>
    public IReadOnlyList<LimbCorner> NearLine { get; init; } = [];

    /// <summary>Drawn edge toward the fingertips; empty = the plane at <see cref="FarEdge"/>.</summary>
    public IReadOnlyList<LimbCorner> FarLine { get; init; } = [];

    /// <summary>Thumb that the liner covers; <see langword="null"/> = none.</summary>
    public LimbThumb? Thumb { get; init; }

    /// <summary>The skin map: patches that cuts, seams and thickness heed.</summary>
    public IReadOnlyList<LimbPatch> Patches { get; init; } = [];

    /// <summary>Wires over the liner.</summary>
    public IReadOnlyList<LimbWire> Wires { get; init; } = [];

    /// <summary>A scan of the limb; <see langword="null"/> = the form is made from the marks.</summary>
    public LimbScan? Scan { get; init; }

    /// <summary>How the paper pattern is made.</summary>
    public PatternPlan Pattern { get; init; } = PatternPlan.Usual;
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

    /// <summary>A scar.</summary>
    Scar,

    /// <summary>Skin without feeling.</summary>
    Numb,

    /// <summary>Bone close under the skin.</summary>
    Bony,

    /// <summary>Skin that likes load.</summary>
    LikesLoad,

    /// <summary>Not covered, or nothing built there.</summary>
    KeepOut,
}

/// <summary>A patch on the limb. Angles go round from the back of the hand toward the thumb.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">Why it is kept clear.</param>
/// <param name="From">From this place [m].</param>
/// <param name="To">To this place [m].</param>
/// <param name="AngleFromRadians">From this angle [rad].</param>
/// <param name="AngleToRadians">To this angle [rad].</param>
/// <param name="Relief">How far the form is built up there, so that the liner stands off; below 0 = carved, so that it presses [m].</param>
/// <param name="Thickness">Thickness of the sheet there; <see langword="null"/> = as elsewhere [m].</param>
public sealed record LimbPatch(string Name, PatchKind Kind, double From, double To, double AngleFromRadians, double AngleToRadians, double Relief = 0, double? Thickness = null)
{
    /// <summary>Its corners in turn, where it is drawn freely: places and angles are then those of the box round it; empty = it is that box.</summary>
    public IReadOnlyList<LimbCorner> Outline { get; init; } = [];
}

/// <summary>A spot on the limb: the middle of a patch, or a place and an angle.</summary>
/// <param name="Patch">Name of the patch; <see langword="null"/> = by place and angle.</param>
/// <param name="Place">Place along the limb [m].</param>
/// <param name="AngleRadians">Angle round it [rad].</param>
public sealed record LimbSpot(string? Patch, double Place, double AngleRadians);

/// <summary>A wire over the liner.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Via">Where it passes on the way; <see langword="null"/> = the shortest way.</param>
/// <param name="Clearance">How far it keeps from skin that must not be rubbed [m].</param>
/// <param name="Slack">Share of its way that it is longer.</param>
/// <param name="Diameter">Diameter over its insulation; <see langword="null"/> = not known [m].</param>
/// <param name="LeastBend">Least radius of a bend ÷ diameter.</param>
public sealed record LimbWire(string Name, LimbSpot From, LimbSpot To, LimbSpot? Via, double Clearance, double Slack, double? Diameter, double LeastBend);

/// <summary>A scan of the limb.</summary>
/// <param name="File">Name of its file, relative to the hand file.</param>
/// <param name="Unit">Unit of its numbers: mm, cm, m, in; <see langword="null"/> = guessed from the size.</param>
/// <param name="Along">Axis of the scan that points toward the fingertips: x, -x, y, -y, z, -z.</param>
/// <param name="Back">Axis that points out of the back of the hand.</param>
/// <param name="Zero">Where the zero of the places lies on the axis along the limb [m].</param>
/// <param name="SmallHole">Longest rim of a hole that is closed [m].</param>
/// <param name="Thin">How far it may stray when it is thinned; 0 = it is not, <see langword="null"/> = left to its size [m].</param>
public sealed record LimbScan(string File, string? Unit, string Along, string Back, double Zero, double SmallHole, double? Thin = null);

/// <summary>How the paper pattern is made.</summary>
/// <param name="SeamRadians">Angle of the long seam [rad].</param>
/// <param name="Allowance">Allowance beside seams; <see langword="null"/> = the liner's overlap [m].</param>
/// <param name="BothSides">On both sides of a seam; else on the first only.</param>
/// <param name="Notches">Distance of notches along seams [m].</param>
/// <param name="Stretch">Share by which the sheet may be stretched or squeezed.</param>
/// <param name="HandPressure">Pressure of the hand on the sheet [Pa].</param>
/// <param name="Thumb">What is made of the thumb: sleeve or opening.</param>
public sealed record PatternPlan(double SeamRadians, double? Allowance, bool BothSides, double Notches, double Stretch, double HandPressure, string Thumb)
{
    /// <summary>The defaults.</summary>
    public static PatternPlan Usual { get; } = new(270 * Math.PI / 180, null, BothSides: false, 0.04, 0.05, 20e3, "sleeve");

    /// <summary>Outline of the thumb's opening; empty = along its root.</summary>
    public IReadOnlyList<LimbCorner> Opening { get; init; } = [];
}

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
