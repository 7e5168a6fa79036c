namespace Graspwright.Form.Hollows;

/// <summary>Which ball stands for a sheet that is pressed on by hand: it reaches the places that the sheet reaches.</summary>
/// <param name="Modulus">Young's modulus of the sheet [Pa].</param>
/// <param name="Thickness">Thickness [m].</param>
/// <param name="Pressure">Pressure of the hand [Pa].</param>
public sealed record BridgingRule(double Modulus, double Thickness, double Pressure)
{
    /// <summary>Poisson's ratio of rubber.</summary>
    public const double Poisson = 0.5;

    /// <summary>Stiffness of the sheet against bending, E·h³ ÷ 12(1 − ν²) [N·m].</summary>
    /// <source key="plate-strip">Plate bent one way.</source>
    public double Bending => Modulus * Thickness * Thickness * Thickness / (12 * (1 - Poisson * Poisson));

    /// <summary>Radius of the ball, never below the thickness [m].</summary>
    /// <remarks>
    /// A strip clamped on both sides of a groove of half width ρ, pressed by p, is bent in its middle to the curvature p·(2ρ)²/24 ÷ D.
    /// It lies in the groove where that is 1/ρ or more: ρ³ ≥ 6·D/p. A tighter hollow is bridged.
    /// </remarks>
    public double Radius => Math.Max(Thickness, Math.Cbrt(6 * Bending / Pressure));
}
