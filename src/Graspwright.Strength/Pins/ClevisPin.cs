namespace Graspwright.Strength.Pins;

/// <summary>A pin through two ears and the tongue between them.</summary>
/// <param name="Diameter">Diameter [m], above 0.</param>
/// <param name="Ear">Thickness of one ear [m], above 0.</param>
/// <param name="Tongue">Thickness of the tongue [m], above 0.</param>
/// <param name="Gap">Gap between ear and tongue on each side [m], 0 or more.</param>
public readonly record struct ClevisPin(double Diameter, double Ear, double Tongue, double Gap)
{
    /// <summary>Plastic ÷ elastic bending strength of a round section.</summary>
    public const double RoundPlastic = 16 / (3 * Math.PI);

    /// <summary>Distance of the middles of the two ears [m].</summary>
    public double Spacing => Tongue + 2 * Gap + Ear;

    /// <summary>Area [m²].</summary>
    public double Area => Math.PI * Diameter * Diameter / 4;

    /// <summary>Section modulus [m³].</summary>
    public double Modulus => Math.PI * Diameter * Diameter * Diameter / 32;

    /// <summary>Second moment of area [m⁴].</summary>
    public double Inertia => Modulus * Diameter / 2;

    /// <summary>Moment in the middle of the pin for each newton across the hinge [m]: (b + 4c + 2a)/8.</summary>
    /// <source key="en-1993-1-8">Clause 3.13.2, the moment of a pin between two cheeks; formula of the figure from memory.</source>
    public double MomentPerNewton => (Tongue + 4 * Gap + 2 * Ear) / 8;

    /// <summary>Shear stress for each newton across the hinge [Pa/N]: two planes share it.</summary>
    public double ShearPerNewton => 1 / (2 * Area);

    /// <summary>Greatest moment in the pin for each newton that one ear takes of a couple about an axis across the pin [m].</summary>
    /// <remarks>
    /// The tongue takes the couple as a load that grows evenly from its middle, the ears as forces in their middles.
    /// Inside the tongue the moment still rises until the shear is nought.
    /// </remarks>
    public double CoupleMomentPerNewton
    {
        get
        {
            double w = Tongue, s = Spacing, out1 = Gap + Ear / 2;
            double slope = 12 * s / (w * w * w);
            double z = Math.Sqrt(Math.Max(0, w * w / 4 - 2 / slope)), d = w / 2 - z;
            double inside = d - slope / 2 * (w * w / 4 * d - (w * w * w / 8 - z * z * z) / 3);
            return out1 + inside;
        }
    }

    /// <summary>Moment of a couple for each radian that it tilts the pin's middle [N·m/rad]: a beam on two ends turned in its middle.</summary>
    /// <param name="modulus">Young's modulus of the pin [Pa].</param>
    public double TiltStiffness(double modulus) => 12 * modulus * Inertia / Spacing;
}
