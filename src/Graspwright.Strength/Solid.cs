namespace Graspwright.Strength;

/// <summary>A material as the sums need it, in SI.</summary>
/// <param name="Modulus">Young's modulus [Pa].</param>
/// <param name="ShearModulus">Shear modulus [Pa].</param>
/// <param name="Yield">Stress at which it stays bent [Pa].</param>
/// <param name="Strength">Tensile strength [Pa].</param>
/// <param name="ShearShare">Shear strength ÷ tensile strength.</param>
/// <param name="NotchSensitivity">Notch sensitivity q, 0 to 1.</param>
/// <param name="Brittle">Whether it breaks without bending first.</param>
public sealed record Solid(double Modulus, double ShearModulus, double Yield, double Strength, double ShearShare, double NotchSensitivity, bool Brittle)
{
    /// <summary>Factor of a notch that counts, from the one of elasticity.</summary>
    /// <param name="elastic">Stress concentration factor K_t, 1 or more.</param>
    /// <returns>1 + q·(K_t − 1).</returns>
    public double Notch(double elastic) => 1 + NotchSensitivity * (elastic - 1);
}

/// <summary>One way in which a part can break under a force, by the stress for each newton.</summary>
/// <param name="Part">Which part breaks.</param>
/// <param name="Mode">How.</param>
/// <param name="StressPerNewton">Nominal stress for each newton of the force [Pa/N], 0 or more.</param>
/// <param name="Notch">Stress concentration factor K_t, 1 or more.</param>
/// <param name="Plastic">Ratio of plastic to elastic bending strength of the section; 1 without bending.</param>
/// <param name="Shear">Whether it is shear.</param>
public readonly record struct StressCheck(HingePart Part, string Mode, double StressPerNewton, double Notch, double Plastic, bool Shear)
{
    /// <summary>Force that breaks the part [N]: a brittle one at its notch, one that bends first by its plastic section.</summary>
    /// <param name="solid">Its material.</param>
    /// <returns>Infinity where the force puts no stress on it.</returns>
    public double BreakingForce(Solid solid)
    {
        ArgumentNullException.ThrowIfNull(solid);
        double strength = solid.Strength * (Shear ? solid.ShearShare : 1);
        return strength * (solid.Brittle ? 1 / solid.Notch(Notch) : Plastic) / StressPerNewton;
    }

    /// <summary>Force at which the part stays bent [N]; a brittle one breaks there.</summary>
    /// <param name="solid">Its material.</param>
    public double BendingForce(Solid solid)
    {
        ArgumentNullException.ThrowIfNull(solid);
        return solid.Brittle ? BreakingForce(solid) : solid.Yield * (Shear ? solid.ShearShare : 1) / StressPerNewton;
    }
}

/// <summary>Which part of a hinge.</summary>
public enum HingePart
{
    /// <summary>The two ears.</summary>
    Ears,

    /// <summary>The pin.</summary>
    Pin,

    /// <summary>The tongue between the ears.</summary>
    Tongue,

    /// <summary>The phalanx beyond the hinge.</summary>
    Phalanx,
}
