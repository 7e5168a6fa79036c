namespace Graspwright.Hand;

/// <summary>A grade of material by generic name, in SI units.</summary>
/// <remarks>Each figure of the table has its source and standing in <see cref="MaterialTable"/>.</remarks>
public sealed record Material
{
    /// <summary>Name, such as <c>6061-T6</c> or <c>pla-along</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in plain words.</summary>
    public string Words { get; init; } = "";

    /// <summary>Name of the grade of the table that it was made from; empty = it is one.</summary>
    public string Like { get; init; } = "";

    /// <summary>Density [kg/m³].</summary>
    public double Density { get; init; }

    /// <summary>Young's modulus [Pa].</summary>
    public double Modulus { get; init; }

    /// <summary>Poisson's ratio.</summary>
    public double Poisson { get; init; } = 0.33;

    /// <summary>Stress at which it stays bent: 0.2 % offset, or for plastics the strength [Pa].</summary>
    public double Yield { get; init; }

    /// <summary>Tensile strength [Pa].</summary>
    public double Strength { get; init; }

    /// <summary>Shear strength ÷ tensile strength.</summary>
    public double ShearShare { get; init; } = 0.6;

    /// <summary>Fatigue strength: fully reversed amplitude [Pa] at <see cref="FatigueCycles"/>.</summary>
    public double FatigueStrength { get; init; }

    /// <summary>Cycles of the fatigue strength.</summary>
    public double FatigueCycles { get; init; } = 1e6;

    /// <summary>Slope k of N·Sᵏ = C up to <see cref="FatigueCycles"/>; 0 = from 0.9 of the strength at 10³ cycles.</summary>
    public double FatigueSlope { get; init; }

    /// <summary>Notch sensitivity q, 0 to 1.</summary>
    public double NotchSensitivity { get; init; } = 1;

    /// <summary>Factor of the surface on the fatigue strength, above 0, at most 1.</summary>
    public double Surface { get; init; } = 1;

    /// <summary>Whether it breaks without bending first.</summary>
    public bool Brittle { get; init; }

    /// <summary>Share of strength lost in a year out of doors.</summary>
    public double OutdoorLoss { get; init; }

    /// <summary>Coefficient of variation of the strength from part to part.</summary>
    public double StrengthSpread { get; init; }

    /// <summary>Standard deviation of log₁₀ of the fatigue life from part to part.</summary>
    public double LifeSpread { get; init; }

    /// <summary>Pressure that a pin may press on it while it turns [Pa].</summary>
    public double BearingLimit { get; init; }

    /// <summary>Friction of a dry steel pin on it.</summary>
    public double Friction { get; init; }

    /// <summary>Wear of it against a steel pin [10⁻⁶ mm³/(N·m) = 10⁻¹⁵ m²/N].</summary>
    public double Wear { get; init; }

    /// <summary>Sources of its figures, by key; each with what was taken.</summary>
    public IReadOnlyList<string> SourceKeys { get; init; } = [];

    /// <summary>Shear modulus of an isotropic material [Pa].</summary>
    public double ShearModulus => Modulus / (2 * (1 + Poisson));
}
