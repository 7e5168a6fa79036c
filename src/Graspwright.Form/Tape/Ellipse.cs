namespace Graspwright.Form.Tape;

/// <summary>The ellipse.</summary>
public static class Ellipse
{
    private const int Points = 64;

    /// <summary>Perimeter [as the half axes].</summary>
    /// <param name="a">One half axis, above 0.</param>
    /// <param name="b">The other, above 0.</param>
    /// <remarks>Trapezium rule over a quarter turn, which on a periodic function is exact to rounding unless the ellipse is a sliver.</remarks>
    public static double Perimeter(double a, double b)
    {
        double sum = (a + b) / 2;
        for (int i = 1; i < Points; i++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * i / Points);
            sum += double.Hypot(a * sin, b * cos);
        }

        return 2 * Math.PI * sum / Points;
    }
}
