namespace Graspwright.Moulding.Heat;

/// <summary>Shapes through which heat flows in one direction.</summary>
public enum BodyShape
{
    /// <summary>A sheet; length = its whole thickness, both sides exposed.</summary>
    Slab,

    /// <summary>A long round bar or a full tub whose ends are left out; length = its radius.</summary>
    Cylinder,

    /// <summary>A ball; length = its radius.</summary>
    Sphere,
}

/// <summary>What a body is made of.</summary>
/// <param name="Conductivity">Conductivity [W/(m·K)], above 0.</param>
/// <param name="Density">Density [kg/m³], above 0.</param>
/// <param name="SpecificHeat">Specific heat [J/(kg·K)], above 0.</param>
public readonly record struct HeatedStuff(double Conductivity, double Density, double SpecificHeat)
{
    /// <summary>Diffusivity k ÷ (ρ·c) [m²/s].</summary>
    public double Diffusivity => Conductivity / (Density * SpecificHeat);

    /// <summary>Heat held by a volume [J/(m³·K)].</summary>
    public double HeatCapacity => Density * SpecificHeat;
}

/// <summary>What touches a body on its two sides.</summary>
/// <param name="InnerTransfer">Heat transfer at the inner side of a slab [W/(m²·K)]; 0 = insulated. Not used for cylinder and sphere.</param>
/// <param name="InnerTemperature">Temperature beyond the inner side [K].</param>
/// <param name="OuterTransfer">Heat transfer at the outer side [W/(m²·K)], 0 or more.</param>
/// <param name="OuterTemperature">Temperature beyond the outer side [K].</param>
public readonly record struct Surroundings(double InnerTransfer, double InnerTemperature, double OuterTransfer, double OuterTemperature);
