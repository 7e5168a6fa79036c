namespace Graspwright.Hand;

/// <summary>What kind of quantity a value is; each has one SI unit in the model.</summary>
public enum Dimension
{
    /// <summary>Pure number or share; 1.</summary>
    Number,

    /// <summary>Length [m].</summary>
    Length,

    /// <summary>Angle [rad].</summary>
    Angle,

    /// <summary>Force [N].</summary>
    Force,

    /// <summary>Moment [N·m].</summary>
    Moment,

    /// <summary>Stiffness along a line [N/m].</summary>
    Stiffness,

    /// <summary>Stiffness about an axis [N·m/rad].</summary>
    AngularStiffness,

    /// <summary>Mass [kg].</summary>
    Mass,

    /// <summary>Pressure or stress [Pa].</summary>
    Pressure,

    /// <summary>Time [s].</summary>
    Time,

    /// <summary>Temperature [K].</summary>
    Temperature,

    /// <summary>Speed of turning [rad/s].</summary>
    AngularSpeed,

    /// <summary>Energy [J].</summary>
    Energy,

    /// <summary>Volume [m³].</summary>
    Volume,

    /// <summary>Area [m²].</summary>
    Area,

    /// <summary>Density [kg/m³].</summary>
    Density,

    /// <summary>Conductivity of heat [W/(m·K)].</summary>
    Conductivity,

    /// <summary>Specific heat [J/(kg·K)].</summary>
    SpecificHeat,

    /// <summary>Heat transfer at a surface [W/(m²·K)].</summary>
    HeatTransfer,

    /// <summary>Frequency, or samples a second [1/s].</summary>
    Frequency,
}

/// <summary>Words about dimensions.</summary>
public static class DimensionWords
{
    /// <summary>The dimension as it stands in a sentence.</summary>
    /// <param name="dimension">The dimension.</param>
    public static string Words(this Dimension dimension) => dimension switch
    {
        Dimension.Number => "a plain number or a share",
        Dimension.Length => "a length",
        Dimension.Angle => "an angle",
        Dimension.Force => "a force",
        Dimension.Moment => "a moment",
        Dimension.Stiffness => "a stiffness along a line",
        Dimension.AngularStiffness => "a stiffness about an axis",
        Dimension.Mass => "a mass",
        Dimension.Pressure => "a pressure",
        Dimension.Time => "a time",
        Dimension.Temperature => "a temperature",
        Dimension.AngularSpeed => "a speed of turning",
        Dimension.Energy => "an energy",
        Dimension.Volume => "a volume",
        Dimension.Area => "an area",
        Dimension.Density => "a density",
        Dimension.Conductivity => "a conductivity of heat",
        Dimension.SpecificHeat => "a specific heat",
        Dimension.HeatTransfer => "a heat transfer at a surface",
        Dimension.Frequency => "a frequency",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "Unknown dimension."),
    };
}
