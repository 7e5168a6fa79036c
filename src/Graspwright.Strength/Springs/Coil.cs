namespace Graspwright.Strength.Springs;

/// <summary>Wire that springs are wound from.</summary>
/// <param name="Factor">Tensile strength of a wire of one metre, as if the law held so far: A in A/d^m [Pa·m^m].</param>
/// <param name="Exponent">m.</param>
/// <param name="ShearModulus">Shear modulus [Pa].</param>
/// <param name="SetShare">Share of the tensile strength that the shear stress may reach before the spring sets.</param>
/// <source key="shigley-9">Tables 10-4, 10-5 and 10-6; from memory.</source>
public sealed record SpringWire(double Factor, double Exponent, double ShearModulus, double SetShare)
{
    private const double Millimetre = 1e-3;

    /// <summary>Hard-drawn music wire, 0.10 to 6.5 mm.</summary>
    public static SpringWire Music { get; } = new(2211e6 * Math.Pow(Millimetre, 0.145), 0.145, 81.7e9, 0.45);

    /// <summary>Stainless spring wire 302, 0.3 to 2.5 mm.</summary>
    public static SpringWire Stainless { get; } = new(1867e6 * Math.Pow(Millimetre, 0.146), 0.146, 69e9, 0.35);

    /// <summary>Tensile strength of a wire [Pa].</summary>
    /// <param name="wire">Its diameter [m].</param>
    public double Strength(double wire) => Factor / Math.Pow(wire, Exponent);
}

/// <summary>A coil spring that is pressed, ends closed and ground.</summary>
/// <param name="Wire">Diameter of the wire [m].</param>
/// <param name="Mean">Mean diameter of the coils [m], above the wire.</param>
/// <param name="Active">Coils that work.</param>
/// <param name="Kind">Kind of wire.</param>
/// <source key="shigley-9">Chapter 10.</source>
public sealed record Coil(double Wire, double Mean, double Active, SpringWire Kind)
{
    private const double EndCoils = 2;

    /// <summary>Zimmerli's endurance of spring steel, not peened: amplitude and mean of the shear stress [Pa].</summary>
    private const double EnduranceAmplitude = 241e6, EnduranceMean = 379e6;

    /// <summary>Shear strength ÷ tensile strength of wire.</summary>
    private const double ShearShare = 0.67;

    /// <summary>Wires in stock [mm], a common series.</summary>
    private static readonly double[] Stock =
    [
        0.20, 0.22, 0.25, 0.28, 0.30, 0.32, 0.36, 0.40, 0.45, 0.50, 0.56, 0.63, 0.70, 0.80, 0.90, 1.00, 1.10, 1.25, 1.40, 1.60, 1.80, 2.00, 2.25, 2.50,
    ];

    /// <summary>Spring index: mean diameter ÷ wire; 4 to 12 is easy to wind.</summary>
    public double Index => Mean / Wire;

    /// <summary>Rate [N/m].</summary>
    public double Rate => Math.Pow(Wire, 4) * Kind.ShearModulus / (8 * Mean * Mean * Mean * Active);

    /// <summary>Length with the coils on each other [m].</summary>
    public double Solid => Wire * (Active + EndCoils);

    /// <summary>Factor of curvature and shear, Bergsträsser's: (4C + 2)/(4C − 3).</summary>
    public double Bergstrasser => (4 * Index + 2) / (4 * Index - 3);

    /// <summary>The same, Wahl's: (4C − 1)/(4C − 4) + 0.615/C.</summary>
    public double Wahl => (4 * Index - 1) / (4 * Index - 4) + 0.615 / Index;

    /// <summary>Tensile strength of the wire [Pa].</summary>
    public double Strength => Kind.Strength(Wire);

    /// <summary>Greatest shear stress of the wire [Pa].</summary>
    /// <param name="newtons">Load [N].</param>
    public double Stress(double newtons) => Bergstrasser * 8 * newtons * Mean / (Math.PI * Wire * Wire * Wire);

    /// <summary>Load at which the spring sets [N].</summary>
    public double SetLoad => Kind.SetShare * Strength * Math.PI * Wire * Wire * Wire / (8 * Bergstrasser * Mean);

    /// <summary>How many times both stresses of a load that comes and goes may grow before the wire tires.</summary>
    /// <param name="least">Least load [N].</param>
    /// <param name="greatest">Greatest load [N].</param>
    /// <source key="zimmerli-1957">241 MPa amplitude about 379 MPa, whatever the wire; Goodman's line; from memory.</source>
    public double FatigueFactor(double least, double greatest)
    {
        double shear = ShearShare * Strength, limit = EnduranceAmplitude / (1 - EnduranceMean / shear);
        return Fatigue.MeanStress.GoodmanFactor(Stress((greatest - least) / 2), Stress((greatest + least) / 2), limit, shear);
    }

    /// <summary>Whether the free spring bows out sideways on flat ends when pressed far: length above 5.26 mean diameters.</summary>
    /// <param name="freeLength">Free length [m].</param>
    public bool Bows(double freeLength) => freeLength > 5.26 * Mean;

    /// <summary>The stock wire nearest this one.</summary>
    public double NearestStock => Stock.MinBy(w => Math.Abs(w * 1e-3 - Wire)) * 1e-3;

    /// <summary>The spring of the thinnest stock wire, with this outside diameter and about this rate, that does not set under a load.</summary>
    /// <param name="newtons">Load [N].</param>
    /// <returns><see langword="null"/> if no wire of the series does.</returns>
    public Coil? Stouter(double newtons)
    {
        double outside = Mean + Wire, rate = Rate;
        foreach (double wire in Stock)
        {
            double d = wire * 1e-3, mean = outside - d;
            if (mean <= 2 * d)
            {
                break;
            }

            double active = Math.Pow(d, 4) * Kind.ShearModulus / (8 * mean * mean * mean * rate);
            Coil coil = this with { Wire = d, Mean = mean, Active = active };
            if (active >= 2 && coil.SetLoad >= newtons)
            {
                return coil;
            }
        }

        return null;
    }
}
