using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Room;

/// <summary>The sizes of bodies that the drive's lines lack, and what stands still: hand, liner and shell.</summary>
public sealed record RoomModel
{
    /// <summary>The drive.</summary>
    public required DriveModel Drive { get; init; }

    /// <summary>Half thickness of pull link, crank arms and transfer link [m].</summary>
    public required double LinkRadius { get; init; }

    /// <summary>Half thickness of the bars and of the carriage [m].</summary>
    public required double BarRadius { get; init; }

    /// <summary>Distance from a bar to the bars that hang on it, along the rail [m].</summary>
    public required double BarPitch { get; init; }

    /// <summary>Place of links and crank across the hand, thumb side positive [m].</summary>
    public double DriveAcross { get; init; }

    /// <summary>Hand with liner and shell: one capsule for each ray of the hand.</summary>
    public required IReadOnlyList<StillBody> Still { get; init; }

    /// <summary>Height of the shell's back [m], from which the height of the moving parts is told.</summary>
    public required double BackOfShell { get; init; }
}

/// <summary>A body that stands still.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Body">Its shape.</param>
public sealed record StillBody(string Name, Capsule Body);

/// <summary>Two bodies and how near they come.</summary>
/// <param name="First">Name of one.</param>
/// <param name="Second">Name of the other.</param>
/// <param name="Gap">Smallest gap over the sweep [m], to a micrometre; negative = they overlap.</param>
/// <param name="GapTheta">Wrist angle of it [rad].</param>
/// <param name="Place">Where, at that angle [m].</param>
/// <param name="Radii">Sum of the two radii [m]; the gap is the distance of the axes less this.</param>
/// <param name="ClashTheta">Wrist angle at which they first touch [rad]; <see langword="null"/> = they do not.</param>
public sealed record NearPair(string First, string Second, double Gap, double GapTheta, Vector3D Place, double Radii, double? ClashTheta);

/// <summary>What a sweep found.</summary>
/// <param name="Pairs">Every pair that was watched, the nearest first.</param>
/// <param name="Height">Greatest height of a moving part above the shell's back [m].</param>
/// <param name="HeightTheta">Wrist angle of it [rad].</param>
/// <param name="HighestPart">Which part.</param>
public sealed record SweepResult(IReadOnlyList<NearPair> Pairs, double Height, double HeightTheta, string HighestPart)
{
    /// <summary>Smallest gap of all pairs [m]; infinite without pairs.</summary>
    public double Clearance => Pairs.Count > 0 ? Pairs[0].Gap : double.PositiveInfinity;

    /// <summary>Fingers, their middle and distal segments, beside the palm and the stumps; the nearest first. To meet there is no clash, it is a fist.</summary>
    public IReadOnlyList<NearPair> OnPalm { get; init; } = [];

    /// <summary>The clash that comes first, or <see langword="null"/>.</summary>
    public NearPair? FirstClash => Pairs.Where(p => p.ClashTheta is not null).MinBy(p => p.ClashTheta);
}
