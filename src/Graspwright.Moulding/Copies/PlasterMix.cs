namespace Graspwright.Moulding.Copies;

/// <summary>Powder and water of a plaster mix, and how warm it gets.</summary>
/// <param name="Powder">Powder [kg].</param>
/// <param name="Water">Water [kg].</param>
/// <param name="GreatestRise">Rise of temperature if no heat is lost [K].</param>
public readonly record struct PlasterMix(double Powder, double Water, double GreatestRise)
{
    /// <summary>Density of the powder's grains [kg/m³].</summary>
    /// <source key="plaster-chemistry">Hemihydrate, beta form: 2.64 g/cm³.</source>
    public const double GrainDensity = 2640;

    /// <summary>Density of water [kg/m³].</summary>
    public const double WaterDensity = 1000;

    /// <summary>Heat set free by a kilogram of powder [J/kg].</summary>
    /// <source key="plaster-chemistry">19.2 kJ/mol from heats of formation, over 145.15 g/mol.</source>
    public const double HeatOfSetting = 19_200 / 0.14515;

    private const double GypsumForPowder = 172.17 / 145.15, GypsumHeat = 1090, WaterHeat = 4186;

    /// <summary>A mix for a volume.</summary>
    /// <param name="volume">Volume of the mix [m³], above 0.</param>
    /// <param name="waterForPowder">Water ÷ powder by weight, 0.19 or more: below that there is too little water to set all of it.</param>
    public static PlasterMix Of(double volume, double waterForPowder)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        ArgumentOutOfRangeException.ThrowIfLessThan(waterForPowder, 0.19);
        double powder = volume / (1 / GrainDensity + waterForPowder / WaterDensity);
        double heat = GypsumForPowder * GypsumHeat + (waterForPowder - (GypsumForPowder - 1)) * WaterHeat;
        return new(powder, powder * waterForPowder, HeatOfSetting / heat);
    }
}
