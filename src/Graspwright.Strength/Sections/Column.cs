namespace Graspwright.Strength.Sections;

/// <summary>A straight rod that is pushed.</summary>
public static class Column
{
    /// <summary>Push that buckles a round rod on pins [N]: Euler's where it is slender, Johnson's parabola where it is stout.</summary>
    /// <param name="diameter">Diameter [m], above 0.</param>
    /// <param name="length">Free length [m], above 0.</param>
    /// <param name="modulus">Young's modulus [Pa].</param>
    /// <param name="yield">Stress at which it stays bent [Pa].</param>
    /// <source key="shigley-9">Section 4-12 to 4-14: the curves meet at half the yield.</source>
    public static double Buckling(double diameter, double length, double modulus, double yield)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length);
        Section round = Section.Round(diameter);
        double slender = length / Math.Sqrt(round.InertiaFlat / round.Area), limit = Math.PI * Math.Sqrt(2 * modulus / yield);
        double stress = slender >= limit
            ? Math.PI * Math.PI * modulus / (slender * slender)
            : yield - Math.Pow(yield * slender / (2 * Math.PI), 2) / modulus;
        return stress * round.Area;
    }
}
