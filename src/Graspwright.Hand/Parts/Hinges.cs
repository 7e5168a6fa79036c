namespace Graspwright.Hand;

/// <summary>Hinges and phalanges of one finger by what a vernier reads. Triples are MCP, PIP, DIP, or proximal, middle, distal.</summary>
/// <remarks>A hinge is a tongue between two ears on a pin. The ears of the MCP stand on the base, those of PIP and DIP on the phalanx before.</remarks>
public sealed record Hinges
{
    /// <summary>Name of the finger.</summary>
    public required string Finger { get; init; }

    /// <summary>Material of base and MCP ears.</summary>
    public string BaseMaterial { get; init; } = "6061-T6";

    /// <summary>Material of the phalanges with their tongues and ears.</summary>
    public string FingerMaterial { get; init; } = "pla-along";

    /// <summary>Material of the pins.</summary>
    public string PinMaterial { get; init; } = "stainless-304";

    /// <summary>Material of the bushings, or <see cref="NoBushing"/>.</summary>
    public string BushingMaterial { get; init; } = NoBushing;

    /// <summary>The word for no bushing.</summary>
    public const string NoBushing = "none";

    /// <summary>Wall of the bushings [m]; 0 = none.</summary>
    public Triple BushingWall { get; init; }

    /// <summary>Thickness of one ear [m].</summary>
    public Triple EarThickness { get; init; } = new(0.003, 0.003, 0.0025);

    /// <summary>Height of the ears across the finger's length, palm to back [m].</summary>
    public Triple EarHeight { get; init; } = new(0.011, 0.010, 0.009);

    /// <summary>From the root of the ears to the pin [m].</summary>
    public Triple EarLength { get; init; } = new(0.009, 0.008, 0.007);

    /// <summary>From the centre of the pin to the free edge of the ears [m].</summary>
    public Triple Edge { get; init; } = new(0.0055, 0.005, 0.0045);

    /// <summary>Radius at the root of the ears [m]; 0 = a sharp corner.</summary>
    public Triple RootRadius { get; init; } = new(0.001, 0.001, 0.001);

    /// <summary>Thickness of the tongue [m].</summary>
    public Triple Tongue { get; init; } = new(0.008, 0.007, 0.006);

    /// <summary>Gap between tongue and ear on each side [m], 0 or more.</summary>
    public Triple Gap { get; init; } = new(0.0001, 0.0001, 0.0001);

    /// <summary>Diameter of the pin [m].</summary>
    public Triple PinDiameter { get; init; } = new(0.003, 0.0025, 0.0025);

    /// <summary>Width of the phalanx, thumb side to little side [m].</summary>
    public Triple Width { get; init; } = new(0.014, 0.013, 0.011);

    /// <summary>Height of the phalanx, palm to back, pad not counted [m].</summary>
    public Triple Height { get; init; } = new(0.012, 0.011, 0.009);

    /// <summary>Wall of the phalanx [m]; infinite = solid.</summary>
    public Triple Wall { get; init; } = new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
}

/// <summary>What stands behind the fingers when one is pushed sideways.</summary>
public sealed record Shell
{
    /// <summary>Length of palm that the shell bears on [m].</summary>
    public double BearingLength { get; init; } = 0.07;

    /// <summary>Height of the side of the palm that it bears on [m].</summary>
    public double BearingHeight { get; init; } = 0.02;

    /// <summary>Stiffness of palm and shell under a sideways push at a knuckle [N/m].</summary>
    public double SideStiffness { get; init; } = 25_000;

    /// <summary>Sideways moment that breaks the shell or its fixings [N·m]; <see langword="null"/> = not given.</summary>
    public double? BreakingMoment { get; init; }

    /// <summary>Pressure on the skin that the wearer accepts for an instant [Pa].</summary>
    public double SkinLimit { get; init; } = 200_000;
}

/// <summary>How long a broken part takes to replace, with the part at hand.</summary>
public sealed record Repair
{
    /// <summary>A pin [s].</summary>
    public double Pin { get; init; } = 5 * 60;

    /// <summary>A finger [s].</summary>
    public double Finger { get; init; } = 3 * 3600;

    /// <summary>The base with its ears [s].</summary>
    public double Base { get; init; } = 8 * 3600;

    /// <summary>The shell [s].</summary>
    public double Shell { get; init; } = 20 * 3600;

    /// <summary>Longest repair that still counts as quick [s].</summary>
    public double Quick { get; init; } = 15 * 60;
}

/// <summary>What a part of the drive is, which decides how it is checked.</summary>
public enum PartKind
{
    /// <summary>A pin between cheeks.</summary>
    Pin,

    /// <summary>A pin that stands out on one side.</summary>
    Stud,

    /// <summary>An eye: a link end or lug.</summary>
    Eye,

    /// <summary>An arm bent by a force at its end.</summary>
    Arm,

    /// <summary>A straight rod pulled or pushed.</summary>
    Rod,

    /// <summary>A thread that is pulled.</summary>
    Thread,
}

/// <summary>A part of the drive that carries one of the forces of the closing run.</summary>
public sealed record StructuralPart
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public required PartKind Kind { get; init; }

    /// <summary>The force it carries, by the name of the closing run: <c>pull link</c>, <c>fulcrum</c>, <c>bar root</c> …</summary>
    public required string Carries { get; init; }

    /// <summary>Material.</summary>
    public required string Material { get; init; }

    /// <summary>Diameter of pin, hole, rod or thread [m].</summary>
    public required double Diameter { get; init; }

    /// <summary>Pin: thickness of one cheek. Eye: its thickness. Arm: its thickness across the plane of motion [m].</summary>
    public double? Thickness { get; init; }

    /// <summary>Pin: width of the part between the cheeks. Eye: its width. Arm: its depth in the plane of motion [m].</summary>
    public double? Width { get; init; }

    /// <summary>Eye: from hole to free edge. Arm: from force to root. Stud: from force to root. Rod: free length. Thread: engaged length [m].</summary>
    public double? Length { get; init; }

    /// <summary>Arm: inner radius where it is bent [m]; <see langword="null"/> = straight.</summary>
    public double? InnerRadius { get; init; }

    /// <summary>Pin: gap on each side [m].</summary>
    public double Gap { get; init; }
}

/// <summary>What a coil spring does.</summary>
public enum SpringDuty
{
    /// <summary>The spring of the crank's slot.</summary>
    Slot,

    /// <summary>A spring that brings something back.</summary>
    Return,
}

/// <summary>A helical compression spring.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Duty">What it does.</param>
/// <param name="Wire">Diameter of the wire [m].</param>
/// <param name="Outside">Outside diameter [m].</param>
/// <param name="Coils">Active coils.</param>
/// <param name="FreeLength">Free length [m].</param>
/// <param name="FittedLength">Length as fitted [m].</param>
/// <param name="Stroke">Further compression in use [m].</param>
/// <param name="Material">Kind of wire: <c>music wire</c> or <c>stainless wire</c>.</param>
public sealed record CoilSpring(string Name, SpringDuty Duty, double Wire, double Outside, double Coils, double FreeLength, double FittedLength, double Stroke, string Material);

/// <summary>Everything the file says about strength and life.</summary>
public sealed record HandStructure
{
    /// <summary>Materials of the maker's own, beside the table.</summary>
    public IReadOnlyList<Material> Materials { get; init; } = [];

    /// <summary>Hinges, one for each finger, in the order of the fingers.</summary>
    public IReadOnlyList<Hinges> Hinges { get; init; } = [];

    /// <summary>Parts of the drive.</summary>
    public IReadOnlyList<StructuralPart> Parts { get; init; } = [];

    /// <summary>Coil springs.</summary>
    public IReadOnlyList<CoilSpring> Springs { get; init; } = [];

    /// <summary>The shell.</summary>
    public Shell Shell { get; init; } = new();

    /// <summary>Repair times.</summary>
    public Repair Repair { get; init; } = new();

    /// <summary>A day of wear.</summary>
    public Use Use { get; init; } = new();

    /// <summary>Every default of these sections that stands in for a measurement.</summary>
    public IReadOnlyList<Guess> Guesses { get; init; } = [];
}
