namespace Graspwright.Strength.Sections;

/// <summary>A rectangular bar that is curved before it is loaded, by Winkler's theory.</summary>
/// <remarks>
/// The neutral line lies inside the middle by e = R − h/ln(r_o/r_i). Two rounded radii must not be subtracted, so the
/// logarithm is taken as 2·artanh(h/2R), whose series gives e without loss of digits in gently curved bars.
/// </remarks>
/// <source key="winkler-curved">Stress σ = N/A ± M·c/(A·e·r).</source>
public static class CurvedBar
{
    /// <summary>Stress at the inner and the outer face.</summary>
    /// <param name="inner">Inner radius [m], above 0.</param>
    /// <param name="depth">Depth of the bar in the plane of bending [m], above 0.</param>
    /// <param name="thickness">Thickness across it [m], above 0.</param>
    /// <param name="moment">Moment about the middle of the section, positive where it straightens the bar [N·m].</param>
    /// <param name="pull">Pull across the section [N].</param>
    /// <returns>Stresses, pull positive [Pa].</returns>
    public static (double Inner, double Outer) Stress(double inner, double depth, double thickness, double moment, double pull)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(inner);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(depth);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(thickness);
        double area = depth * thickness, middle = inner + depth / 2, outer = inner + depth;
        double shift = Shift(middle, depth), neutral = middle - shift;
        double axial = pull / area, bend = moment / (area * shift);
        return (axial + bend * (neutral - inner) / inner, axial - bend * (outer - neutral) / outer);
    }

    /// <summary>e, distance of the neutral line from the middle [m].</summary>
    private static double Shift(double middle, double depth)
    {
        double x = depth / (2 * middle), square = x * x;
        if (x > 0.1)
        {
            return middle - depth / Math.Log((1 + x) / (1 - x));
        }

        // artanh(x)/x − 1 = x²/3 + x⁴/5 + …; e = R·(1 − 1/(1 + that)).
        double sum = 0, power = square;
        for (int n = 3; n < 40; n += 2)
        {
            sum += power / n;
            power *= square;
        }

        return middle * sum / (1 + sum);
    }
}
