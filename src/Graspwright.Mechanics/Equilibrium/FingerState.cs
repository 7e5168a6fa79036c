namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Unknowns and modes that the fingers' equations read, and what they write.</summary>
/// <param name="unknowns">Number of unknowns.</param>
/// <param name="fingers">Number of fingers.</param>
internal sealed class FingerState(int unknowns, int fingers)
{
    /// <summary>Unknowns [rad or m].</summary>
    public readonly double[] X = new double[unknowns];

    /// <summary>Residual [N·m or N].</summary>
    public readonly double[] R = new double[unknowns];

    /// <summary>Whether each finger's pull is attached.</summary>
    public readonly bool[] Attached = new bool[fingers];

    /// <summary>Whether each finger's pull carries load.</summary>
    public readonly bool[] Taut = new bool[fingers];

    /// <summary>Whether each segment touches: finger·3 + segment.</summary>
    public readonly bool[] Touching = new bool[3 * fingers];

    /// <summary>Overlap of each segment [m].</summary>
    public readonly double[] Overlap = new double[3 * fingers];

    /// <summary>Contact force of each segment [N].</summary>
    public readonly double[] ContactForce = new double[3 * fingers];

    /// <summary>Joint flexions q [rad], finger·3 + joint.</summary>
    public readonly double[] Joint = new double[3 * fingers];

    /// <summary>Elongation of each pull [m].</summary>
    public readonly double[] PullElongations = new double[fingers];

    /// <summary>Tension at each leaf T₁ [N].</summary>
    public readonly double[] LeafTension = new double[fingers];

    /// <summary>Travel of each leaf [m].</summary>
    public readonly double[] LeafTravel = new double[fingers];

    /// <summary>Tension behind each guide, at the finger T₂ [N].</summary>
    public readonly double[] FingerTension = new double[fingers];

    /// <summary>Places that rub.</summary>
    public RubbingPlace[] Places = [];

    /// <summary>Whether contacts, cords and friction follow the sign of what drives them.</summary>
    public bool ModesByValue;

    /// <summary>Whether the change of friction bounds enters the Jacobian.</summary>
    public bool BoundDerivatives = true;
}
