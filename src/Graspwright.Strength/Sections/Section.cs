namespace Graspwright.Strength.Sections;

/// <summary>
/// A cross-section of a straight member, by the properties that bending and twisting need.
/// "Flat" is bending about the axis along the width (the depth works); "Side" is bending about the axis along the
/// depth (the width works).
/// </summary>
/// <param name="Area">Area in m².</param>
/// <param name="InertiaFlat">Second moment of area for bending through the depth, in m⁴.</param>
/// <param name="InertiaSide">Second moment of area for bending through the width, in m⁴.</param>
/// <param name="ModulusFlat">Section modulus for bending through the depth, in m³.</param>
/// <param name="ModulusSide">Section modulus for bending through the width, in m³.</param>
/// <param name="TorsionConstant">Torsion constant J of Saint-Venant in m⁴ (stiffness against twist is G·J).</param>
/// <param name="TorsionModulus">Torque per unit of largest shear stress, in m³.</param>
public readonly record struct Section(
    double Area,
    double InertiaFlat,
    double InertiaSide,
    double ModulusFlat,
    double ModulusSide,
    double TorsionConstant,
    double TorsionModulus)
{
    /// <summary>A solid rectangle.</summary>
    /// <param name="width">Width in m, above zero.</param>
    /// <param name="depth">Depth in m, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A side is not above zero.</exception>
    /// <remarks>
    /// Torsion: the series of Saint-Venant, J = a·b³·(1/3 − 64/π⁵·(b/a)·Σ tanh(nπa/2b)/n⁵) and the largest shear at the
    /// middle of the long side, summed over odd n until a term changes nothing (Timoshenko and Goodier, Theory of
    /// Elasticity, torsion of a rectangular bar).
    /// </remarks>
    public static Section Rectangle(double width, double depth)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(depth);
        var (constant, modulus) = RectangleTorsion(Math.Max(width, depth), Math.Min(width, depth));
        return new Section(
            width * depth,
            width * depth * depth * depth / 12.0,
            depth * width * width * width / 12.0,
            width * depth * depth / 6.0,
            depth * width * width / 6.0,
            constant,
            modulus);
    }

    /// <summary>A rectangle with an even wall all round; solid where the walls meet.</summary>
    /// <param name="width">Width in m, above zero.</param>
    /// <param name="depth">Depth in m, above zero.</param>
    /// <param name="wall">Wall in m, above zero; infinite = solid.</param>
    /// <remarks>Torsion of a thin closed wall by Bredt: J = 4·A²·t/perimeter and 2·A·t, A within the middle of the wall; never more than the solid.</remarks>
    public static Section Box(double width, double depth, double wall)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wall);
        Section solid = Rectangle(width, depth);
        if (2 * wall >= Math.Min(width, depth))
        {
            return solid;
        }

        Section hollow = Rectangle(width - 2 * wall, depth - 2 * wall);
        double flat = solid.InertiaFlat - hollow.InertiaFlat, side = solid.InertiaSide - hollow.InertiaSide;
        double within = (width - wall) * (depth - wall);
        double constant = 2 * within * within * wall / (width + depth - 2 * wall);
        return new(solid.Area - hollow.Area, flat, side, 2 * flat / depth, 2 * side / width, Math.Min(constant, solid.TorsionConstant), Math.Min(2 * within * wall, solid.TorsionModulus));
    }

    /// <summary>A round tube, or a solid round with a bore of nought.</summary>
    /// <param name="diameter">Outer diameter in m, above zero.</param>
    /// <param name="bore">Bore in m, from zero to below the diameter.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above zero, or the bore leaves no wall.</exception>
    public static Section Round(double diameter, double bore = 0.0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameter);
        ArgumentOutOfRangeException.ThrowIfNegative(bore);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bore, diameter);
        double area = Math.PI * (diameter * diameter - bore * bore) / 4.0;
        double inertia = Math.PI * (Math.Pow(diameter, 4) - Math.Pow(bore, 4)) / 64.0;
        double modulus = 2.0 * inertia / diameter;
        return new Section(area, inertia, inertia, modulus, modulus, 2.0 * inertia, 2.0 * modulus);
    }

    private static (double Constant, double Modulus) RectangleTorsion(double longSide, double shortSide)
    {
        double ratio = longSide / shortSide;
        double stiffness = 0.0;
        double shear = 0.0;
        for (int n = 1; n < 200; n += 2)
        {
            double angle = n * Math.PI * ratio / 2.0;
            stiffness += Math.Tanh(angle) / Math.Pow(n, 5);
            shear += angle > 350.0 ? 0.0 : 1.0 / (n * n * Math.Cosh(angle));
        }

        double constant = longSide * Math.Pow(shortSide, 3) *
            (1.0 / 3.0 - 64.0 / (Math.Pow(Math.PI, 5) * ratio) * stiffness);

        // Largest shear = G·θ·b·(1 − 8/π²·Σ 1/(n²·cosh)), torque = G·θ·J.
        return (constant, constant / (shortSide * (1.0 - 8.0 / (Math.PI * Math.PI) * shear)));
    }
}
