namespace Graspwright.Mechanics.Run;

/// <summary>A finger frozen from a wrist angle of closing on, to the end of the loop.</summary>
/// <param name="FingerIndex">Index of the finger.</param>
/// <param name="AtRadians">θ of closing at which it acts [rad]; 0 = from the start.</param>
/// <param name="HoldsPull">Whether the pull stays attached; if not, the leaf carries no force.</param>
public sealed record FingerLock(int FingerIndex, double AtRadians, bool HoldsPull);

/// <summary>How a closing run is driven.</summary>
public sealed record RunOptions
{
    /// <summary>Share of the wrist's capacity that ends the run, 0 to 1; <see langword="null"/> = run on to the end of travel.</summary>
    public double? EffortFraction { get; init; } = 0.18;

    /// <summary>Step of the output [rad].</summary>
    public double OutputStepRadians { get; init; } = Math.PI / 180;

    /// <summary>Whether to open again.</summary>
    public bool Opening { get; init; } = true;

    /// <summary>Fingers locked, in any order.</summary>
    public IReadOnlyList<FingerLock> Locks { get; init; } = [];
}

/// <summary>Why the closing ended.</summary>
public enum RunEnd
{
    /// <summary>The wrist's effort limit.</summary>
    Effort,

    /// <summary>The wearer's travel.</summary>
    Travel,

    /// <summary>The path could not be followed; see <see cref="RunFailure"/>.</summary>
    NotFollowed,
}

/// <summary>Where the path could not be followed.</summary>
/// <param name="ThetaRadians">Last wrist angle reached [rad].</param>
/// <param name="Opening">Whether the hand was opening.</param>
/// <param name="Residual">Greatest force or moment out of balance of the last try [N or N·m].</param>
/// <param name="Reason">What stopped it, in plain words.</param>
public sealed record RunFailure(double ThetaRadians, bool Opening, double Residual, string Reason);
