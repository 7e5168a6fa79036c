namespace Graspwright.Hand;

/// <summary>The liner between skin and shell: sheet, putty, bench, work and coming off.</summary>
public sealed record Liner
{
    /// <summary>Thickness [m].</summary>
    public required double Thickness { get; init; }

    /// <summary>Area of the sheet [m²]; <see langword="null"/> = from length and width, else from the tape marks.</summary>
    public double? SheetArea { get; init; }

    /// <summary>Length of a plain sheet [m].</summary>
    public double? SheetLength { get; init; }

    /// <summary>Width of a plain sheet [m].</summary>
    public double? SheetWidth { get; init; }

    /// <summary>Overlap where the sheet meets itself [m].</summary>
    public double Overlap { get; init; }

    /// <summary>Share lost on hands, cups and roller.</summary>
    public double Waste { get; init; }

    /// <summary>Share mixed to be sure.</summary>
    public double Spare { get; init; }

    /// <summary>What the tub says.</summary>
    public required PuttyLabel Putty { get; init; }

    /// <summary>Scale, room, freezer, hands.</summary>
    public required PuttyBench Bench { get; init; }

    /// <summary>How long the maker takes.</summary>
    public required PuttyWork Work { get; init; }

    /// <summary>How it comes off and goes on.</summary>
    public required ComingOffWishes Off { get; init; }
}

/// <summary>The label of a tub of two-part putty.</summary>
public sealed record PuttyLabel
{
    /// <summary>What the maker calls it; empty = nothing.</summary>
    public string Name { get; init; } = "";

    /// <summary>Parts by weight of A.</summary>
    public required double RatioA { get; init; }

    /// <summary>Parts by weight of B.</summary>
    public required double RatioB { get; init; }

    /// <summary>Error of the ratio that the label allows; <see langword="null"/> = not on the label.</summary>
    public double? RatioError { get; init; }

    /// <summary>Density of A [kg/m³].</summary>
    public required double DensityA { get; init; }

    /// <summary>Density of B [kg/m³].</summary>
    public required double DensityB { get; init; }

    /// <summary>Mixing time [s]; <see langword="null"/> = not on the label.</summary>
    public double? MixTime { get; init; }

    /// <summary>Work time from the start of mixing [s].</summary>
    public required double WorkTime { get; init; }

    /// <summary>Time until it may leave the mould [s].</summary>
    public required double SetTime { get; init; }

    /// <summary>Time of full cure [s]; <see langword="null"/> = not on the label.</summary>
    public double? FullTime { get; init; }

    /// <summary>Temperature for which the times hold [K].</summary>
    public required double At { get; init; }

    /// <summary>Hardness, Shore A; <see langword="null"/> = not on the label.</summary>
    public double? ShoreA { get; init; }

    /// <summary>Elongation at break, 1 = to twice its length; <see langword="null"/> = not on the label.</summary>
    public double? Elongation { get; init; }

    /// <summary>Tear strength [N/m]; <see langword="null"/> = not on the label.</summary>
    public double? Tear { get; init; }

    /// <summary>Price of a pack; <see langword="null"/> = not given.</summary>
    public double? Price { get; init; }

    /// <summary>Mass of a pack, both parts [kg].</summary>
    public double? Pack { get; init; }

    /// <summary>Money of the price.</summary>
    public string Money { get; init; } = "";

    /// <summary>Whether curing follows Arrhenius' law; else the ten-degree rule.</summary>
    public bool Arrhenius { get; init; }

    /// <summary>Factor for ten degrees.</summary>
    public double TenDegreeFactor { get; init; }

    /// <summary>Conductivity [W/(m·K)].</summary>
    public double Conductivity { get; init; }

    /// <summary>Specific heat [J/(kg·K)].</summary>
    public double SpecificHeat { get; init; }

    /// <summary>Share of the work time by which it must be mixed, where the label gives no mixing time.</summary>
    public double MixShare { get; init; }

    /// <summary>How far from work time to set time it may still be touched.</summary>
    public double HandsOffShare { get; init; }

    /// <summary>Share of the bonds made at the set time, where the label gives no time of full cure.</summary>
    public double CureAtSet { get; init; }
}

/// <summary>In which shape the parts lie in the freezer.</summary>
public enum ChilledAs
{
    /// <summary>Each part a ball.</summary>
    Ball,

    /// <summary>Each part in a round tub.</summary>
    Tub,

    /// <summary>Each part patted flat.</summary>
    Sheet,
}

/// <summary>Scale, room, freezer and hands.</summary>
public sealed record PuttyBench
{
    /// <summary>Smallest step of the scale [kg].</summary>
    public required double ScaleStep { get; init; }

    /// <summary>Volume of the mixing tub [m³]; <see langword="null"/> = kneaded by hand without one.</summary>
    public double? Tub { get; init; }

    /// <summary>Room [K].</summary>
    public required double Room { get; init; }

    /// <summary>Relative humidity of the room.</summary>
    public required double Humidity { get; init; }

    /// <summary>Mould or limb under the sheet [K].</summary>
    public required double Mould { get; init; }

    /// <summary>Skin of the hands [K].</summary>
    public required double Hand { get; init; }

    /// <summary>Freezer [K].</summary>
    public required double Freezer { get; init; }

    /// <summary>Time in the freezer [s]; 0 = not chilled.</summary>
    public double Chill { get; init; }

    /// <summary>Shape in the freezer.</summary>
    public ChilledAs ChilledAs { get; init; }

    /// <summary>Thickness of a part patted flat [m].</summary>
    public double FlatThickness { get; init; }

    /// <summary>From the freezer to the start of mixing [s].</summary>
    public double Carry { get; init; }

    /// <summary>Helpers beside the maker.</summary>
    public int Helpers { get; init; }

    /// <summary>Heat transfer to still air [W/(m²·K)].</summary>
    public double AirTransfer { get; init; }

    /// <summary>Heat transfer in the freezer [W/(m²·K)].</summary>
    public double FreezerTransfer { get; init; }

    /// <summary>Heat transfer between hand and putty [W/(m²·K)].</summary>
    public double HandTransfer { get; init; }

    /// <summary>Heat transfer between putty and table or mould [W/(m²·K)].</summary>
    public double ContactTransfer { get; init; }

    /// <summary>Share of the ball under the hands while mixing.</summary>
    public double HandShare { get; init; }

    /// <summary>Share of the sheet under the hands while working.</summary>
    public double WorkingShare { get; init; }
}

/// <summary>How long the maker takes.</summary>
/// <param name="Mix">Mixing [s].</param>
/// <param name="Roll">Rolling out 100 cm² [s].</param>
/// <param name="Drape">Draping 100 cm² [s].</param>
/// <param name="Seams">100 mm of seam [s].</param>
/// <param name="Hollow">Pressing into one hollow [s].</param>
/// <param name="Hollows">How many hollows there are.</param>
/// <param name="Smooth">Smoothing 100 cm² [s].</param>
public sealed record PuttyWork(double Mix, double Roll, double Drape, double Seams, double Hollow, int Hollows, double Smooth);

/// <summary>How the liner comes off and goes on.</summary>
/// <param name="StretchShare">Share of the label's elongation that is allowed.</param>
/// <param name="Friction">Coefficient of friction on skin.</param>
/// <param name="OneHandPull">Force that the maker pulls with one hand [N].</param>
/// <param name="Clearance">Least distance of a cut from patches [m].</param>
public sealed record ComingOffWishes(double StretchShare, double Friction, double OneHandPull, double Clearance);
