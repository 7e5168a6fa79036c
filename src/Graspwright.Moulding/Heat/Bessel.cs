namespace Graspwright.Moulding.Heat;

/// <summary>Bessel functions of the first kind, orders 0 and 1, for the series of the cylinder.</summary>
/// <remarks>Bessel's integral (Abramowitz and Stegun 9.1.21, from memory) by the trapezium rule, which on a whole period is exact to rounding once its points outnumber the argument.</remarks>
public static class Bessel
{
    /// <summary>J₀.</summary>
    /// <param name="x">Argument.</param>
    public static double J0(double x) => Integral(0, x);

    /// <summary>J₁.</summary>
    /// <param name="x">Argument.</param>
    public static double J1(double x) => Integral(1, x);

    /// <summary>Zero number n (from 0) of J₀.</summary>
    /// <param name="n">Number, from 0.</param>
    public static double ZeroOfJ0(int n) => Zero(0, (n + 0.75) * Math.PI);

    /// <summary>Zero number n of J₁, the zero at 0 counted as number 0.</summary>
    /// <param name="n">Number, from 0.</param>
    public static double ZeroOfJ1(int n) => n == 0 ? 0 : Zero(1, (n + 0.25) * Math.PI);

    private static double Integral(int order, double x)
    {
        int points = 40 + (int)(1.5 * Math.Abs(x));
        double sum = (1 + Math.Cos(order * Math.PI)) / 2;
        for (int i = 1; i < points; i++)
        {
            double angle = Math.PI * i / points;
            sum += Math.Cos(order * angle - x * Math.Sin(angle));
        }

        return sum / points;
    }

    // McMahon's first term lies within 0.05 of the zero; each zero alone within half of π.
    private static double Zero(int order, double near)
    {
        double low = near - 0.4, high = near + 0.4, sign = Math.Sign(Integral(order, low));
        while (high - low > 4e-16 * high)
        {
            double middle = (low + high) / 2;
            if (middle <= low || middle >= high)
            {
                break;
            }

            if (Math.Sign(Integral(order, middle)) == sign)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low + high) / 2;
    }
}
