using System.Globalization;

namespace Graspwright.Workshop.Measures;

/// <summary>Angles as the bench reads them.</summary>
public static class Angles
{
    /// <summary>Degrees in a radian.</summary>
    public const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>An angle to a tenth of a degree.</summary>
    /// <param name="radians">Angle [rad].</param>
    public static string Text(double radians) => string.Create(CultureInfo.InvariantCulture, $"{radians * DegreesPerRadian:0.0}°");
}
