namespace Graspwright.Hand;

/// <summary>Three lengths of space in the hand frame: x distal, y dorsal, z toward the thumb [m].</summary>
public readonly record struct SpacePoint(double X, double Y, double Z);

/// <summary>How a thing is held.</summary>
public enum HeldAs
{
    /// <summary>In fingers and palm.</summary>
    Cylinder,

    /// <summary>Between fingers and thumb.</summary>
    Plate,

    /// <summary>In hooked fingers alone.</summary>
    HookBar,

    /// <summary>In fingers, palm and thumb.</summary>
    Handle,
}

/// <summary>A job of the day.</summary>
/// <param name="Name">Its name.</param>
public sealed record Job(string Name)
{
    /// <summary>Name of the object.</summary>
    public required string ObjectName { get; init; }

    /// <summary>How it is held.</summary>
    public required HeldAs As { get; init; }

    /// <summary>Where the middle of a cylinder lies in this job [m]; <see langword="null"/> = where the object says.</summary>
    public Point? Centre { get; init; }

    /// <summary>Mass of the whole thing [kg].</summary>
    public double Load { get; init; }

    /// <summary>Where it hangs, from the middle of what is held [m].</summary>
    public SpacePoint Hangs { get; init; }

    /// <summary>A pull beside the weight [N].</summary>
    public double Pull { get; init; }

    /// <summary>Where it pulls, in the words of the file.</summary>
    public string Toward { get; init; } = DayKeys.Directions[0];

    /// <summary>A moment about the axis of what is held [N·m].</summary>
    public double Twist { get; init; }

    /// <summary>How the forearm is held, in the words of the file.</summary>
    public string Forearm { get; init; } = DayKeys.Attitudes[0];

    /// <summary>Whether the fingers are locked and the wrist relaxed.</summary>
    public bool LockAndRelax { get; init; }

    /// <summary>Whether the hand is closed with the short squeeze, or else with the all-day effort.</summary>
    public bool Squeeze { get; init; }

    /// <summary>Lock pattern; <see langword="null"/> = all free.</summary>
    public string? Locks { get; init; }

    /// <summary>How hard it is moved, as a share of gravity.</summary>
    public double Acceleration { get; init; }

    /// <summary>Whether it is wet.</summary>
    public bool Wet { get; init; }

    /// <summary>How often a day; <see langword="null"/> = not given.</summary>
    public double? TimesADay { get; init; }
}

/// <summary>How far the wrist bends each way from straight.</summary>
/// <param name="FlexionRadians">Toward the palm [rad].</param>
/// <param name="ExtensionRadians">Toward the back of the hand [rad].</param>
public sealed record WristRange(double FlexionRadians, double ExtensionRadians);

/// <summary>The finger pads.</summary>
/// <param name="Material">Material, in the word of the file.</param>
/// <param name="Friction">Friction on dry things.</param>
/// <param name="WetFactor">What is left of it when wet, above 0 to 1.</param>
/// <param name="Spread">How far friction may differ each way, as a share.</param>
/// <param name="SkinFriction">Friction of palm and thumb on dry things.</param>
/// <param name="Patch">Width of the patch over which a pad touches [m].</param>
public sealed record Pads(string Material, double Friction, double WetFactor, double Spread, double SkinFriction, double Patch);

/// <summary>The wearer's own thumb.</summary>
/// <param name="Pinch">Greatest force it presses with [N].</param>
/// <param name="Across">Its place across the hand on a handle [m].</param>
/// <param name="HeelRadians">Direction in which the ball of the thumb and the heel of the hand push what lies in the palm, from +x [rad].</param>
/// <param name="PadWidth">Width of its pad that carries [m].</param>
/// <param name="PainThreshold">Pressure at which its pad begins to hurt [Pa].</param>
/// <param name="Limit">Greatest pressure that its wearer allows [Pa].</param>
/// <param name="Postures">Its postures.</param>
public sealed record Thumb(double Pinch, double Across, double HeelRadians, double PadWidth, double PainThreshold, double Limit, IReadOnlyList<ThumbPosture> Postures);

/// <summary>A posture of the thumb.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Pad">Middle of the pad [m].</param>
/// <param name="LooksAt">A place straight off the pad [m].</param>
public sealed record ThumbPosture(string Name, SpacePoint Pad, SpacePoint LooksAt);

/// <summary>Lock at the pull of each finger that holds the closed hand.</summary>
/// <param name="Pitch">Distance between two places in which it can catch [m].</param>
/// <param name="Backlash">Play before it carries [m].</param>
/// <param name="Stiffness">Stiffness [N/m]; infinite = rigid.</param>
/// <param name="MayCarry">Greatest force of one finger's lock [N]; <see langword="null"/> = not given.</param>
public sealed record ClosingLock(double Pitch, double Backlash, double Stiffness, double? MayCarry);

/// <summary>What stands in the way of the moving parts.</summary>
public sealed record HandRoom
{
    /// <summary>Thickness of the liner [m].</summary>
    public required double Liner { get; init; }

    /// <summary>Thickness of the shell [m].</summary>
    public required double Shell { get; init; }

    /// <summary>Air between shell and base [m].</summary>
    public required double Clearance { get; init; }

    /// <summary>From the base's near face to the knuckle axis [m].</summary>
    public required double Base { get; init; }

    /// <summary>Thickness of the bare hand [m].</summary>
    public required double HandThickness { get; init; }

    /// <summary>Height of the hand's middle above the wrist axis [m].</summary>
    public required double HandMiddle { get; init; }

    /// <summary>Width of links and crank arms [m].</summary>
    public required double LinkWidth { get; init; }

    /// <summary>Width of bars and carriage [m].</summary>
    public required double BarWidth { get; init; }

    /// <summary>Distance from a bar to those that hang on it [m].</summary>
    public required double BarPitch { get; init; }

    /// <summary>Place of links and crank across the hand [m].</summary>
    public required double DriveAcross { get; init; }

    /// <summary>Smallest gap allowed [m].</summary>
    public required double LeastGap { get; init; }

    /// <summary>Greatest height allowed over the back of the shell [m]; <see langword="null"/> = no limit given.</summary>
    public double? MostHeight { get; init; }

    /// <summary>Where each finger's stump ends.</summary>
    public IReadOnlyList<NamedPlace> Stumps { get; init; } = [];

    /// <summary>Knuckle axes of the sound hand, mirrored.</summary>
    public IReadOnlyList<NamedPlace> SoundKnuckles { get; init; } = [];
}

/// <summary>A place of a finger.</summary>
/// <param name="Finger">Name of the finger.</param>
/// <param name="Place">Place [m].</param>
public sealed record NamedPlace(string Finger, Point Place);

/// <summary>The weight on the wrist: what is left of the hand, and the device.</summary>
/// <param name="Mass">Mass of the wearer [kg].</param>
/// <param name="HandShare">Share of it that a whole hand has, 0 to 1.</param>
/// <param name="HandLeft">Share of the hand that is left, 0 to 1.</param>
/// <param name="HandCentre">Where what is left balances [m].</param>
/// <param name="Device">Mass of the device past the wrist's axis [kg].</param>
/// <param name="DeviceCentre">Where the device balances [m].</param>
public sealed record HandBody(double Mass, double HandShare, double HandLeft, Point HandCentre, double Device, Point DeviceCentre)
{
    /// <summary>Mass of what is left of the hand [kg].</summary>
    public double HandMass => Mass * HandShare * HandLeft;
}
