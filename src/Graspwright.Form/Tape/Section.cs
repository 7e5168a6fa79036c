namespace Graspwright.Form.Tape;

/// <summary>Cross-section of a limb: |x ÷ across|^p + |y ÷ deep|^p = 1. With p = 2 an ellipse; below it lean, above it full.</summary>
/// <param name="Across">Half width [m].</param>
/// <param name="Deep">Half depth [m].</param>
/// <param name="Power">Power p, above 1.</param>
/// <remarks>Lamé's curve: width, depth and girth have just one of it, as long as a closed curve without a dent can have them.</remarks>
public readonly record struct Section(double Across, double Deep, double Power)
{
    private const double Leanest = 1.002, Fullest = 400;

    private bool Elliptic => Math.Abs(Power - 2) < 1e-9;

    /// <summary>Girth [m].</summary>
    public double Girth
    {
        get
        {
            if (Elliptic)
            {
                return Ellipse.Perimeter(Across, Deep);
            }

            double fine = Chords(4096), coarse = Chords(2048);
            return fine + (fine - coarse) / 3;
        }
    }

    /// <summary>Area [m²].</summary>
    /// <source key="school-geometry">4·a·b·Γ(1 + 1/p)² ÷ Γ(1 + 2/p), added up over 4096 corners; π·a·b where p = 2.</source>
    public double Area
    {
        get
        {
            if (Elliptic)
            {
                return Math.PI * Across * Deep;
            }

            // a quarter, as the others mirror it
            double sum = 0;
            (double X, double Y) before = At(0);
            for (int i = 1; i <= 1024; i++)
            {
                (double X, double Y) here = At(2 * Math.PI * i / 4096);
                sum += before.Y * here.X - before.X * here.Y;
                before = here;
            }

            return 2 * sum;
        }
    }

    /// <summary>The section of a width, a depth and a girth.</summary>
    /// <param name="girth">Girth [m].</param>
    /// <param name="width">Width [m]; NaN = not measured.</param>
    /// <param name="depth">Depth [m]; NaN = not measured.</param>
    /// <returns>The section; <see langword="null"/> = no closed curve has them.</returns>
    public static Section? Of(double girth, double width, double depth)
    {
        if (double.IsNaN(width) && double.IsNaN(depth))
        {
            return new(girth / (2 * Math.PI), girth / (2 * Math.PI), 2);
        }

        if (double.IsNaN(width) || double.IsNaN(depth))
        {
            return OneSide(girth, double.IsNaN(width) ? depth : width, double.IsNaN(width));
        }

        if (!(girth >= 2 * double.Hypot(width, depth) && girth <= 2 * (width + depth)))
        {
            return null;
        }

        bool elliptic = Math.Abs(Ellipse.Perimeter(width / 2, depth / 2) - girth) < 1e-9 * girth;
        return new(width / 2, depth / 2, elliptic ? 2 : 1 / Root(u => new Section(width / 2, depth / 2, 1 / u).Girth - girth, 1 / Fullest, 1 / Leanest));
    }

    // Root of a falling function by false position, halving the value of an end that stays (the Illinois way). Girth is all but straight in 1/p, so it takes some ten steps.
    private static double Root(Func<double, double> f, double low, double high)
    {
        double above = f(low), below = f(high);
        if (above <= 0 || below >= 0)
        {
            return above <= 0 ? low : high;
        }

        for (int i = 0, stayed = 0; i < 80 && high - low > 4e-16; i++)
        {
            double u = Math.Clamp(high - below * (high - low) / (below - above), low, high), here = f(u);
            if (here == 0 || u == low || u == high)
            {
                return u;
            }

            if (here > 0)
            {
                (low, above) = (u, here);
                below = stayed > 0 ? below / 2 : below;
                stayed = 1;
            }
            else
            {
                (high, below) = (u, here);
                above = stayed < 0 ? above / 2 : above;
                stayed = -1;
            }
        }

        return (low + high) / 2;
    }

    /// <summary>Point of the section at an angle from the back toward the thumb: x toward the thumb, y toward the back [m].</summary>
    /// <param name="angle">Angle [rad].</param>
    public (double X, double Y) At(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double r;
        if (Elliptic)
        {
            r = 1 / Math.Sqrt(sin * sin / (Across * Across) + cos * cos / (Deep * Deep));
        }
        else
        {
            // the greater of the two goes before the power, which would run out of the numbers there are
            double a = Math.Abs(sin) / Across, b = Math.Abs(cos) / Deep, most = Math.Max(a, b);
            r = Math.Pow(1 + Math.Pow(Math.Min(a, b) / most, Power), -1 / Power) / most;
        }

        return (r * sin, r * cos);
    }

    // Only one of width and depth: the ellipse of that girth.
    private static Section? OneSide(double girth, double side, bool deep)
    {
        if (!(girth > 2.0001 * side) || girth > 20 * side)
        {
            return null;
        }

        double low = 1e-6 * side, high = girth;
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Ellipse.Perimeter(side / 2, middle) < girth ? (middle, high) : (low, middle);
        }

        return deep ? new(low, side / 2, 2) : new(side / 2, low, 2);
    }

    private double Chords(int count)
    {
        double sum = 0;
        (double X, double Y) before = At(0);
        for (int i = 1; i <= count / 4; i++)
        {
            (double X, double Y) here = At(2 * Math.PI * i / count);
            sum += double.Hypot(here.X - before.X, here.Y - before.Y);
            before = here;
        }

        return 4 * sum;
    }
}
