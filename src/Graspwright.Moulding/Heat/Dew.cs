namespace Graspwright.Moulding.Heat;

/// <summary>The temperature below which moisture of the air settles on a surface.</summary>
public static class Dew
{
    /// <summary>Factor of the Magnus formula over water.</summary>
    public const double Factor = 17.62;

    /// <summary>Temperature of the Magnus formula over water [K difference].</summary>
    public const double Reach = 243.12;

    private const double Zero = 273.15;

    /// <summary>Dew point by the Magnus formula.</summary>
    /// <param name="air">Temperature of the air [K]; the formula holds from −45 to 60 °C.</param>
    /// <param name="humidity">Relative humidity, above 0 and at most 1.</param>
    /// <returns>Dew point [K].</returns>
    /// <source key="magnus-sonntag-1990">Constants 17.62 and 243.12 °C.</source>
    public static double Point(double air, double humidity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(humidity);
        double celsius = air - Zero;
        double gamma = Math.Log(humidity) + Factor * celsius / (Reach + celsius);
        return Reach * gamma / (Factor - gamma) + Zero;
    }
}
