using Graspwright.Numerics;

namespace Graspwright.Mechanics.Drive;

/// <summary>A whole drive from wrist to fingertips, in SI units and in the hand frame.</summary>
/// <remarks>
/// Hand frame: origin on the wrist's flexion axis, x distal (to the fingertips), y dorsal (to the back of the
/// hand). Angles are in radians, anticlockwise from +x. Every length is in metres, every force in newtons.
/// <c>docs/physics.md</c> draws the frame and derives the model.
/// </remarks>
public sealed record DriveModel
{
    /// <summary>The wearer's wrist: driving direction, start, travel, capacity.</summary>
    public required Wrist Wrist { get; init; }

    /// <summary>Give of cuff and hand shell, and the gimbal that closes the force loop.</summary>
    public WristJoint Joint { get; init; } = new();

    /// <summary>Link from the forearm anchor to the crank.</summary>
    public required PullLink PullLink { get; init; }

    /// <summary>Bell crank, fixed or load-sensing.</summary>
    public required BellCrank Crank { get; init; }

    /// <summary>Link from the crank's output pin to the carriage.</summary>
    public required TransferLink TransferLink { get; init; }

    /// <summary>Rail on which the carriage runs.</summary>
    public required Rail Rail { get; init; }

    /// <summary>Root of the balance tree.</summary>
    public required BalanceNode Tree { get; init; }

    /// <summary>The fingers, thumb side first.</summary>
    public required IReadOnlyList<Finger> Fingers { get; init; }

    /// <summary>Coefficients of friction.</summary>
    public FrictionCoefficients Friction { get; init; } = new();
}

/// <summary>Which way the wrist moves to close the hand.</summary>
public enum DrivingDirection
{
    /// <summary>Palm toward the forearm.</summary>
    Flexion,

    /// <summary>Back of the hand toward the forearm.</summary>
    Extension,
}

/// <summary>The wearer's wrist.</summary>
public sealed record Wrist
{
    /// <summary>Driving direction.</summary>
    public DrivingDirection Direction { get; init; } = DrivingDirection.Flexion;

    /// <summary>Anatomical angle of the start posture [rad], flexion positive, 0 = straight.</summary>
    public double StartRadians { get; init; }

    /// <summary>Travel of the wearer's own joint in the driving direction from the start posture [rad], above 0.</summary>
    public required double TravelRadians { get; init; }

    /// <summary>Greatest moment in the driving direction against the anatomical angle.</summary>
    public required MomentTable Capacity { get; init; }
}

/// <summary>A moment tabled against an angle: linear between entries, constant outside.</summary>
/// <param name="AnglesRadians">Angles [rad], strictly rising, at least one.</param>
/// <param name="MomentsNewtonMetres">Moments [N·m], one for each angle.</param>
public sealed record MomentTable(IReadOnlyList<double> AnglesRadians, IReadOnlyList<double> MomentsNewtonMetres)
{
    /// <summary>Moment at an angle [N·m].</summary>
    /// <param name="radians">Angle [rad].</param>
    public double At(double radians)
    {
        IReadOnlyList<double> a = AnglesRadians, m = MomentsNewtonMetres;
        if (radians <= a[0])
        {
            return m[0];
        }

        for (int i = 1; i < a.Count; i++)
        {
            if (radians <= a[i])
            {
                return m[i - 1] + (m[i] - m[i - 1]) * ((radians - a[i - 1]) / (a[i] - a[i - 1]));
            }
        }

        return m[^1];
    }

    /// <summary>Slope of the moment at an angle [N·m/rad]; of the entry to the left at a corner.</summary>
    /// <param name="radians">Angle [rad].</param>
    public double SlopeAt(double radians)
    {
        IReadOnlyList<double> a = AnglesRadians, m = MomentsNewtonMetres;
        for (int i = 1; radians > a[0] && i < a.Count; i++)
        {
            if (radians <= a[i])
            {
                return (m[i] - m[i - 1]) / (a[i] - a[i - 1]);
            }
        }

        return 0;
    }
}

/// <summary>What lies between the wearer's joint and the drive.</summary>
public sealed record WristJoint
{
    /// <summary>Rotational stiffness of forearm cuff and flesh about the wrist axis [N·m/rad]; infinite = no give.</summary>
    public double CuffStiffness { get; init; } = double.PositiveInfinity;

    /// <summary>Rotational stiffness of the hand shell about the wrist axis [N·m/rad]; infinite = no give.</summary>
    public double ShellStiffness { get; init; } = double.PositiveInfinity;

    /// <summary>Hysteresis share of the give, 0 to 1/3: on opening it is τ/k·(1 + 3h(1 − τ/τ_end)).</summary>
    public double GiveHysteresis { get; init; }

    /// <summary>Whether a gimbal pin on the wrist axis closes the force loop.</summary>
    public bool HasGimbal { get; init; }

    /// <summary>Radius of the gimbal pin [m].</summary>
    public double GimbalPinRadius { get; init; }

    /// <summary>Offset of the gimbal's axis from the wearer's own wrist axis, hand frame [m].</summary>
    public Vector2D GimbalOffset { get; init; }

    /// <summary>Diametral play of the gimbal pin [m].</summary>
    public double GimbalPlay { get; init; }
}

/// <summary>Whether a link can push.</summary>
public enum LinkKind
{
    /// <summary>Carries tension and compression.</summary>
    Rod,

    /// <summary>Carries tension only.</summary>
    Cord,
}

/// <summary>Link from the forearm anchor to the crank's input pin.</summary>
public sealed record PullLink
{
    /// <summary>Rod or cord.</summary>
    public LinkKind Kind { get; init; } = LinkKind.Rod;

    /// <summary>Anchor on the forearm, hand frame at the start posture [m].</summary>
    public required Vector2D Anchor { get; init; }

    /// <summary>Axial stiffness [N/m].</summary>
    public required double Stiffness { get; init; }

    /// <summary>Slack at rest [m]: free length less pin distance. Cords only where above 0; below 0 the link is strung.</summary>
    public double Slack { get; init; }

    /// <summary>Radius of the pin at the anchor [m]; 0 = no friction there.</summary>
    public double AnchorPinRadius { get; init; }

    /// <summary>Radius of the pin at the crank [m].</summary>
    public double CrankPinRadius { get; init; }

    /// <summary>Diametral play of the pin at the anchor [m].</summary>
    public double AnchorPlay { get; init; }

    /// <summary>Diametral play of the pin at the crank [m].</summary>
    public double CrankPlay { get; init; }
}

/// <summary>Bell crank, turning by φ from rest in the sense that keeps the pull link's length as the wrist drives.</summary>
public sealed record BellCrank
{
    /// <summary>Fulcrum [m].</summary>
    public required Vector2D Fulcrum { get; init; }

    /// <summary>Input pin from the fulcrum, at rest [m].</summary>
    public required Vector2D Input { get; init; }

    /// <summary>Output pin from the fulcrum, at rest, slot not shifted [m].</summary>
    public required Vector2D Output { get; init; }

    /// <summary>Upper stop of the crank [rad], above 0.</summary>
    public required double StopRadians { get; init; }

    /// <summary>Slot of a load-sensing arm; <see langword="null"/> = fixed.</summary>
    public Slot? Slot { get; init; }

    /// <summary>Radius of the fulcrum pin [m].</summary>
    public double FulcrumPinRadius { get; init; }

    /// <summary>Radius of the output pin [m].</summary>
    public double OutputPinRadius { get; init; }

    /// <summary>Constant drag on the crank [N·m].</summary>
    public double Drag { get; init; }

    /// <summary>Diametral play of the fulcrum pin [m].</summary>
    public double FulcrumPlay { get; init; }

    /// <summary>Diametral play of the output pin [m].</summary>
    public double OutputPlay { get; init; }
}

/// <summary>Slot in which the output pin shifts under load: straight, or an arc of a circle.</summary>
public sealed record Slot
{
    /// <summary>Direction in which the pin sets out when it shifts, at rest, from +x [rad].</summary>
    public required double DirectionRadians { get; init; }

    /// <summary>Length of the shift, along the slot [m], above 0.</summary>
    public required double Length { get; init; }

    /// <summary>How far the slot's direction turns from its near to its far end [rad], anticlockwise positive; 0 = straight.</summary>
    public double TurnRadians { get; init; }

    /// <summary>How much the slot's direction turns for each metre of shift [rad/m]; 0 = straight.</summary>
    public double Curvature => TurnRadians / Length;

    /// <summary>Spring force that the shift starts against [N], 0 or more.</summary>
    public required double Preload { get; init; }

    /// <summary>Spring rate along the slot [N/m], 0 or more.</summary>
    public required double Rate { get; init; }

    /// <summary>Where the pin is from the near end, the crank at rest [m].</summary>
    /// <param name="shift">Shift along the slot [m].</param>
    public Vector2D At(double shift)
    {
        // An arc's chord is sin x/x of its length, x half the angle it turns by, and points half way between its ends.
        double half = 0.5 * Curvature * shift;
        double chord = Math.Abs(half) < 1e-4 ? 1 - half * half / 6 : Math.Sin(half) / half;
        return chord * shift * Vector2D.AtAngle(DirectionRadians + half);
    }

    /// <summary>Unit vector along the slot, the crank at rest.</summary>
    /// <param name="shift">Shift along the slot [m].</param>
    public Vector2D Along(double shift) => Vector2D.AtAngle(DirectionRadians + Curvature * shift);
}

/// <summary>Link from the crank's output pin to the carriage pin.</summary>
public sealed record TransferLink
{
    /// <summary>Rod or cord.</summary>
    public LinkKind Kind { get; init; } = LinkKind.Rod;

    /// <summary>Axial stiffness [N/m].</summary>
    public required double Stiffness { get; init; }

    /// <summary>Slack at rest [m]; cords only where above 0; below 0 the link is strung.</summary>
    public double Slack { get; init; }

    /// <summary>Radius of the carriage pin [m].</summary>
    public double CarriagePinRadius { get; init; }

    /// <summary>Diametral play of the carriage pin [m].</summary>
    public double CarriagePlay { get; init; }
}

/// <summary>Straight rail of the carriage.</summary>
public sealed record Rail
{
    /// <summary>Carriage pin at rest [m].</summary>
    public required Vector2D Rest { get; init; }

    /// <summary>Direction of carriage travel on closing, from +x [rad].</summary>
    public required double DirectionRadians { get; init; }

    /// <summary>Travel of the carriage [m], above 0.</summary>
    public required double Travel { get; init; }

    /// <summary>Constant drag on the carriage [N].</summary>
    public double Drag { get; init; }

    /// <summary>Length of the carriage's guide [m]; <see langword="null"/> = not given, no jam check.</summary>
    public double? GuideLength { get; init; }

    /// <summary>Offset of the carriage's loads from the guide's line: dorsal in the plane, and across the hand [m].</summary>
    public Vector2D LoadOffset { get; init; }
}

/// <summary>A node of the balance tree: a finger's pull or a bar.</summary>
public abstract record BalanceNode;

/// <summary>A finger's pull.</summary>
/// <param name="FingerIndex">Index in <see cref="DriveModel.Fingers"/>.</param>
public sealed record FingerLeaf(int FingerIndex) : BalanceNode;

/// <summary>A balance bar with two children. x₁ = x − l₁ sin t, x₂ = x + l₂ sin t.</summary>
public sealed record BalanceBar : BalanceNode
{
    /// <summary>Name of the bar.</summary>
    public required string Name { get; init; }

    /// <summary>Arm of the first child from the pivot [m], above 0.</summary>
    public required double FirstArm { get; init; }

    /// <summary>Arm of the second child from the pivot [m], above 0.</summary>
    public required double SecondArm { get; init; }

    /// <summary>Tilt stop either way [rad]; 0 = a rigid bar.</summary>
    public required double TiltStopRadians { get; init; }

    /// <summary>First child.</summary>
    public required BalanceNode First { get; init; }

    /// <summary>Second child.</summary>
    public required BalanceNode Second { get; init; }

    /// <summary>Radius of the pivot pin [m].</summary>
    public double PivotPinRadius { get; init; }

    /// <summary>Radius of the pin at the first end [m].</summary>
    public double FirstPinRadius { get; init; }

    /// <summary>Radius of the pin at the second end [m].</summary>
    public double SecondPinRadius { get; init; }

    /// <summary>Diametral play of the pivot [m].</summary>
    public double Play { get; init; }
}

/// <summary>Coefficients of friction, all 0 = frictionless.</summary>
public sealed record FrictionCoefficients
{
    /// <summary>At every pin.</summary>
    public double Pin { get; init; }

    /// <summary>Between carriage and rail.</summary>
    public double Rail { get; init; }

    /// <summary>Between output pin and slot.</summary>
    public double Slot { get; init; }

    /// <summary>Between finger pull and its guide.</summary>
    public double Guide { get; init; }
}
