namespace Graspwright.Strength.Ears;

/// <summary>A flat eye pulled by a pin in its hole.</summary>
/// <param name="Width">Width of the eye at the hole [m].</param>
/// <param name="Thickness">Thickness [m].</param>
/// <param name="Hole">Diameter of the hole [m], below the width.</param>
/// <param name="Pin">Diameter of the pin [m].</param>
/// <param name="Edge">From the centre of the hole to the free edge [m], above half the hole.</param>
public readonly record struct Eye(double Width, double Thickness, double Hole, double Pin, double Edge)
{
    /// <summary>Pressure of the pin for each newton [Pa/N].</summary>
    public double BearingPerNewton => 1 / (Pin * Thickness);

    /// <summary>Stress beside the hole for each newton [Pa/N].</summary>
    public double NetPerNewton => 1 / ((Width - Hole) * Thickness);

    /// <summary>Shear of the two planes behind the pin for each newton [Pa/N].</summary>
    public double ShearOutPerNewton => 1 / (2 * (Edge - Hole / 2) * Thickness);

    /// <summary>Stress concentration of a hole that is loaded by its pin, on the net section.</summary>
    /// <remarks>Polynomial of the chart for a hole ÷ width of 0.15 to 0.75, held at its ends beyond. A pin with clearance can add a third to a half (Frocht and Hill); not added.</remarks>
    /// <source key="peterson-pilkey">Pin-loaded hole in a plate of finite width; coefficients from memory.</source>
    public double PinLoadedFactor
    {
        get
        {
            double x = Math.Clamp(Hole / Width, 0.15, 0.75);
            return 12.882 - 52.714 * x + 89.762 * x * x - 51.667 * x * x * x;
        }
    }

    /// <summary>Stress concentration of a hole in a pulled plate, on the net section.</summary>
    /// <param name="ratio">Hole ÷ width, 0 to 1.</param>
    /// <source key="roark-hole">3 − 3.13x + 3.66x² − 1.53x³, on the net section.</source>
    public static double PlainHoleFactor(double ratio) => 3 - 3.13 * ratio + 3.66 * ratio * ratio - 1.53 * ratio * ratio * ratio;

    /// <summary>Stress concentration in the corner of a flat bar that stands on a much thicker base and is bent.</summary>
    /// <param name="radius">Radius in the corner [m]; a corner called sharp is taken as 0.1 mm.</param>
    /// <param name="thickness">Thickness of the bar [m].</param>
    /// <source key="norton-shoulder">0.9072·(r/d)^(−1/3), shoulder three times the bar or more; coefficients from memory.</source>
    public static double RootFactor(double radius, double thickness)
    {
        const double Sharp = 1e-4;
        return Math.Max(1, 0.9072 * Math.Cbrt(thickness / Math.Max(radius, Sharp)));
    }
}
