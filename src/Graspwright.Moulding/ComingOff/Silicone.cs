namespace Graspwright.Moulding.ComingOff;

/// <summary>What the hardness, elongation and tear strength on a label say about stretching and tearing.</summary>
public static class Silicone
{
    /// <summary>Modulus of elasticity from Shore A hardness.</summary>
    /// <param name="shoreA">Shore A, 0 to below 100; the relation is good from 20 to 80.</param>
    /// <returns>Modulus [Pa].</returns>
    /// <source key="gent-1958">E = 0.0981·(56 + 7.62336·S) ÷ (0.137505·(254 − 2.54·S)) MPa.</source>
    public static double Modulus(double shoreA)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(shoreA);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(shoreA, 100);
        return 1e6 * 0.0981 * (56 + 7.62336 * shoreA) / (0.137505 * (254 - 2.54 * shoreA));
    }

    /// <summary>Hardness from modulus, the same relation turned round.</summary>
    /// <param name="modulus">Modulus [Pa], above 0.</param>
    public static double ShoreA(double modulus)
    {
        double c = modulus / 1e6 * 0.137505 / 0.0981;
        return (254 * c - 56) / (7.62336 + 2.54 * c);
    }

    /// <summary>Energy stored in a volume stretched in one direction, neo-Hookean and incompressible.</summary>
    /// <param name="modulus">Modulus [Pa].</param>
    /// <param name="elongation">Elongation, 0 or more.</param>
    /// <returns>Energy [J/m³].</returns>
    /// <source key="treloar-rubber">W = E ÷ 6·(λ² + 2 ÷ λ − 3).</source>
    public static double Stored(double modulus, double elongation)
    {
        double stretch = 1 + elongation;
        return modulus / 6 * (stretch * stretch + 2 / stretch - 3);
    }

    /// <summary>Energy that a short cut from an edge sets free for each new area, in a sheet stretched across it.</summary>
    /// <param name="modulus">Modulus [Pa].</param>
    /// <param name="elongation">Elongation across the cut.</param>
    /// <param name="length">Length of the cut from an edge [m].</param>
    /// <returns>Tearing energy [J/m²].</returns>
    /// <source key="greensmith-1963">2·K·W·c, K from 3 at small stretches to just below 2 at threefold length; K = 3 ÷ √λ.</source>
    public static double ShortCutEnergy(double modulus, double elongation, double length) => 2 * 3 / Math.Sqrt(1 + elongation) * Stored(modulus, elongation) * length;

    /// <summary>Energy that a long cut along a tube sets free for each new area: a ring more of it goes slack with every step.</summary>
    /// <param name="modulus">Modulus [Pa].</param>
    /// <param name="elongation">Elongation round the tube ahead of the cut.</param>
    /// <param name="girth">Girth of the tube, unstretched [m].</param>
    /// <returns>Tearing energy [J/m²].</returns>
    /// <source key="rivlin-thomas-1953">The long cut in a wide sheet: energy of a volume × height of the sheet across the cut, which is the girth.</source>
    public static double LongCutEnergy(double modulus, double elongation, double girth) => Stored(modulus, elongation) * girth;

    /// <summary>Energy that tearing takes for each new area, from the tear strength of a trousers test.</summary>
    /// <param name="tearStrength">Tear strength: force ÷ thickness [N/m].</param>
    /// <returns>Tearing energy [J/m²].</returns>
    /// <source key="rivlin-thomas-1953">T = 2·F ÷ h while the legs hardly stretch.</source>
    public static double TearResistance(double tearStrength) => 2 * tearStrength;

    /// <summary>Diameter of the round hole at the end of a cut at which the energy set free just breaks the silicone.</summary>
    /// <param name="tearingEnergy">Energy set free [J/m²].</param>
    /// <param name="breaking">Energy to break of a volume [J/m³], above 0.</param>
    /// <returns>Diameter [m].</returns>
    /// <source key="thomas-1955">T is about energy to break × diameter of the tip.</source>
    public static double HoleDiameter(double tearingEnergy, double breaking) => tearingEnergy / breaking;
}
