namespace Graspwright.Signals.Contacts;

/// <summary>A screw-together stud clamped in a silicone liner: dome on the skin side, flange under it, screw from behind.</summary>
public sealed record Stud
{
    /// <summary>Diameter of the dome's foot [m].</summary>
    public required double DomeDiameter { get; init; }

    /// <summary>Height of the dome above the liner [m].</summary>
    public required double DomeHeight { get; init; }

    /// <summary>Diameter of the flange that holds it in the liner [m].</summary>
    public required double FlangeDiameter { get; init; }

    /// <summary>Hole cut in the liner for the shank [m].</summary>
    public required double HoleDiameter { get; init; }

    /// <summary>Thickness of the liner there [m].</summary>
    public required double LinerThickness { get; init; }

    /// <summary>How far the screw squeezes the liner, as a share of its thickness.</summary>
    public required double Squeeze { get; init; }

    /// <summary>Shore A hardness of the liner.</summary>
    public required double ShoreHardness { get; init; }

    /// <summary>Tear strength of the liner [N/m].</summary>
    public required double TearStrength { get; init; }

    /// <summary>Stretch at break of the liner, as a share.</summary>
    public required double StretchAtBreak { get; init; }

    /// <summary>Movement between liner and shell that the wire bridges [m].</summary>
    public required double ShellMovement { get; init; }

    /// <summary>Diameter of the wire with its cover [m].</summary>
    public required double WireDiameter { get; init; }

    /// <summary>Free length of the wire between liner and shell [m].</summary>
    public required double WireLength { get; init; }
}

/// <summary>What a stud does to skin and liner.</summary>
public sealed record StudResult
{
    /// <summary>Young's modulus of the liner [Pa].</summary>
    public required double LinerModulus { get; init; }

    /// <summary>Radius of the dome as a part of a ball [m].</summary>
    public required double DomeRadius { get; init; }

    /// <summary>Mean pressure on the skin under the dome [Pa].</summary>
    public required double SkinPressure { get; init; }

    /// <summary>Pressure of the clamp on the liner [Pa].</summary>
    public required double ClampPressure { get; init; }

    /// <summary>Pull at which the flange tears the liner [N].</summary>
    public required double TearOut { get; init; }

    /// <summary>Stretch that the hole needs to let the flange through, as a share.</summary>
    public required double SlipStretch { get; init; }

    /// <summary>Length of wire that the movement needs: a half circle of the least radius, and the movement [m].</summary>
    public required double WireNeeded { get; init; }
}

/// <summary>Sums of a stud.</summary>
public static class StudSums
{
    /// <summary>Modulus of the flesh of a forearm under a small punch [Pa]; from memory, tens of kilopascals, and no measurement of this wearer.</summary>
    public const double FleshModulus = 45e3;

    /// <summary>Least bending radius of a wire that moves, in its own diameters; common practice, no source.</summary>
    public const double WireBend = 10;

    private const double Poisson = 0.49;

    /// <summary>Young's modulus of silicone by its hardness, good from 20 to 80.</summary>
    /// <remarks><source key="gent-1958">A. N. Gent 1958, <i>On the relation between indentation hardness and Young's modulus</i>.</source></remarks>
    /// <param name="shoreHardness">Shore A hardness.</param>
    /// <returns>Modulus [Pa].</returns>
    public static double Modulus(double shoreHardness) => 1e6 * 0.0981 * (56 + 7.62336 * shoreHardness) / (0.137505 * (254 - 2.54 * shoreHardness));

    /// <summary>Works a stud out.</summary>
    /// <remarks>
    /// Skin: a ball pressed in by its own height, <source key="hertz-1882">H. Hertz 1882, <i>Über die Berührung fester elastischer Körper</i></source>:
    /// force 4/3·E*·√R·h^1.5 on a circle of radius √(R·h). Tearing: tear strength × thickness on both sides of the shank.
    /// </remarks>
    /// <param name="stud">The stud.</param>
    public static StudResult Of(Stud stud)
    {
        ArgumentNullException.ThrowIfNull(stud);
        double half = stud.DomeDiameter / 2, h = stud.DomeHeight, radius = (half * half + h * h) / (2 * h);
        double plane = FleshModulus / (1 - Poisson * Poisson), modulus = Modulus(stud.ShoreHardness);
        return new()
        {
            LinerModulus = modulus,
            DomeRadius = radius,
            SkinPressure = 4 / (3 * Math.PI) * plane * Math.Sqrt(h / radius),
            ClampPressure = modulus * stud.Squeeze,
            TearOut = 2 * stud.TearStrength * stud.LinerThickness * (1 - stud.Squeeze),
            SlipStretch = stud.FlangeDiameter / stud.HoleDiameter - 1,
            WireNeeded = Math.PI * WireBend * stud.WireDiameter + stud.ShellMovement,
        };
    }
}

/// <summary>A metal and whether it may lie on skin all day.</summary>
/// <param name="Name">Its name.</param>
/// <param name="OnSkin">Whether it may.</param>
/// <param name="Why">Why.</param>
public sealed record ContactMetal(string Name, bool OnSkin, string Why)
{
    /// <summary>Metals that are known here.</summary>
    public static IReadOnlyList<ContactMetal> All { get; } =
    [
        new("titanium", true, "no nickel; its own oxide does well on dry skin"),
        new("silver", true, "no nickel; it blackens, which does no harm to the signal"),
        new("gold", true, "no nickel when solid; plating wears through to what lies below"),
        new("niobium", true, "no nickel"),
        new("stainless steel", false, "the usual kinds hold eight to fourteen parts in a hundred of nickel, which sweat can draw out"),
        new("plated brass", false, "the plating wears through, and nickel often lies under it"),
        new("brass", false, "sweat corrodes it, and lead and zinc come off"),
        new("nickel", false, "nickel is the commonest metal allergy of the skin"),
    ];
}
