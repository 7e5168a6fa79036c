using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Cure;

/// <summary>In which shape the parts lie in the freezer.</summary>
public enum ChillShape
{
    /// <summary>Each part a ball.</summary>
    Ball,

    /// <summary>Each part in a round tub as high as wide; its ends are left out.</summary>
    Tub,

    /// <summary>Each part patted flat to a sheet.</summary>
    Sheet,
}

/// <summary>Everything the cure clock is told. Times in s, temperatures in K, all else in SI.</summary>
public sealed record CureInputs
{
    /// <summary>Work time of the label at its temperature [s], from the start of mixing.</summary>
    public required double WorkTime { get; init; }

    /// <summary>Time of the label after which the piece may leave the mould [s], above the work time.</summary>
    public required double SetTime { get; init; }

    /// <summary>Mixing time that the label allows [s]; <see langword="null"/> = not on the label.</summary>
    public double? LabelMixTime { get; init; }

    /// <summary>Time of full cure on the label [s]; <see langword="null"/> = not on the label.</summary>
    public double? FullTime { get; init; }

    /// <summary>Temperature for which the label's times hold [K].</summary>
    public required double LabelTemperature { get; init; }

    /// <summary>How curing follows temperature.</summary>
    public CureRule Rule { get; init; }

    /// <summary>Factor for ten degrees.</summary>
    public double TenDegreeFactor { get; init; } = 2;

    /// <summary>Share of the work time by which it must be mixed, where the label gives no mixing time.</summary>
    public double MixShare { get; init; } = 0.4;

    /// <summary>How far between work time and set time it may still be touched, 0 to 1.</summary>
    public double HandsOffShare { get; init; } = 0.4;

    /// <summary>Share of the bonds made when it may leave the mould, where the label gives no time of full cure; below 0.99.</summary>
    public double CureAtSet { get; init; } = 0.9;

    /// <summary>Conductivity [W/(m·K)].</summary>
    public required double Conductivity { get; init; }

    /// <summary>Specific heat [J/(kg·K)].</summary>
    public required double SpecificHeat { get; init; }

    /// <summary>Density of the mixture [kg/m³].</summary>
    public required double Density { get; init; }

    /// <summary>Mass of one batch, both parts [kg].</summary>
    public required double Mass { get; init; }

    /// <summary>Mass of the heavier part ÷ mass of the batch.</summary>
    public double GreaterPart { get; init; } = 0.5;

    /// <summary>Thickness of the sheet [m].</summary>
    public required double Thickness { get; init; }

    /// <summary>Room [K].</summary>
    public required double Room { get; init; }

    /// <summary>Mould or limb on which it is draped [K].</summary>
    public required double Mould { get; init; }

    /// <summary>Skin of the hands [K].</summary>
    public required double Hand { get; init; }

    /// <summary>Freezer [K].</summary>
    public required double Freezer { get; init; }

    /// <summary>Time in the freezer [s]; 0 = not chilled.</summary>
    public double Chill { get; init; }

    /// <summary>Shape in the freezer.</summary>
    public ChillShape Shape { get; init; }

    /// <summary>Thickness of a part patted flat for the freezer [m].</summary>
    public double FlatThickness { get; init; } = 0.01;

    /// <summary>Time from the freezer to the start of mixing [s].</summary>
    public double Carry { get; init; }

    /// <summary>Temperature below which moisture of the air settles on the putty [K]; <see langword="null"/> = not asked for.</summary>
    public double? DewPoint { get; init; }

    /// <summary>Heat transfer to still air, convection and radiation together [W/(m²·K)].</summary>
    public required double AirTransfer { get; init; }

    /// <summary>Heat transfer in the freezer [W/(m²·K)].</summary>
    public required double FreezerTransfer { get; init; }

    /// <summary>Heat transfer between hand and putty [W/(m²·K)].</summary>
    public required double HandTransfer { get; init; }

    /// <summary>Heat transfer between putty and table or mould [W/(m²·K)].</summary>
    public required double ContactTransfer { get; init; }

    /// <summary>Share of the ball's surface under the hands while mixing.</summary>
    public required double HandShare { get; init; }

    /// <summary>Share of the sheet under the hands while working.</summary>
    public required double WorkingShare { get; init; }

    /// <summary>The maker's time for mixing [s].</summary>
    public required double MixSeconds { get; init; }

    /// <summary>Time from the end of mixing until the sheet lies on the mould [s].</summary>
    public required double RollSeconds { get; init; }

    /// <summary>The putty as heat sees it.</summary>
    public HeatedStuff Stuff => new(Conductivity, Density, SpecificHeat);

    /// <summary>The label's speed rule.</summary>
    public CureRate Rate => new(Rule, TenDegreeFactor, LabelTemperature);

    /// <summary>Label seconds by which it must be mixed.</summary>
    public double MixAge => LabelMixTime ?? MixShare * WorkTime;

    /// <summary>Label seconds after which hands come off.</summary>
    public double HandsOffAge => WorkTime + HandsOffShare * (SetTime - WorkTime);

    /// <summary>Label seconds of full cure: the label's, else until 99 % of the bonds are made, at a rate in proportion to those left.</summary>
    public double FullAge => FullTime ?? SetTime * Math.Log(0.01) / Math.Log(1 - CureAtSet);
}
