using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Fatigue;

namespace Graspwright.Workshop.Strength;

/// <summary>The materials of a hand, handed to the engine.</summary>
/// <param name="hand">The hand.</param>
public sealed class Materials(HandModel hand)
{
    /// <summary>Share of the tensile strength through which the fatigue line runs at 1000 cycles where no slope is given.</summary>
    private const double ShareAtThousand = 0.9;

    private const double IndoorShare = 0.1, DaysOfYear = 365, SecondsOfDay = 86_400;

    /// <summary>A material by name; the file's own comes before the table's.</summary>
    /// <param name="name">Name.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public Material Of(string name) => hand.Structure.Materials.FirstOrDefault(m => m.Name == name) ?? MaterialTable.Find(name)
        ?? throw new ArgumentException($"There is no material '{name}'.", nameof(name));

    /// <summary>Whether there is such a material.</summary>
    /// <param name="name">Name.</param>
    public bool Has(string name) => hand.Structure.Materials.Any(m => m.Name == name) || MaterialTable.Find(name) is not null;

    /// <summary>Every name there is.</summary>
    public IEnumerable<string> Names => MaterialTable.All.Concat(hand.Structure.Materials).Select(m => m.Name).Distinct(StringComparer.Ordinal);

    /// <summary>As the sums of strength take it.</summary>
    /// <param name="name">Name.</param>
    public Solid Solid(string name)
    {
        Material m = Of(name);
        return new(m.Modulus, m.ShearModulus, m.Yield, m.Strength, m.ShearShare, m.NotchSensitivity, m.Brittle);
    }

    /// <summary>Its fatigue line, surface counted in.</summary>
    /// <param name="material">The material.</param>
    public static FatigueLine Line(Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        double strength = material.FatigueStrength * material.Surface;
        return material.FatigueSlope > 0
            ? new(strength, material.FatigueCycles, material.FatigueSlope)
            : FatigueLine.Through(material.Strength, ShareAtThousand, strength, material.FatigueCycles);
    }

    /// <summary>Rate at which it loses strength [1/day of wear]: out of doors as given, indoors a tenth of that.</summary>
    /// <param name="material">The material.</param>
    /// <param name="use">The day of wear.</param>
    public static double Ageing(Material material, Use use)
    {
        ArgumentNullException.ThrowIfNull(material);
        ArgumentNullException.ThrowIfNull(use);
        double outdoors = use.OutdoorSeconds / SecondsOfDay;
        return Math.Log(1 / (1 - material.OutdoorLoss)) * (outdoors + IndoorShare * (1 - outdoors)) / DaysOfYear;
    }
}
