namespace Graspwright.Hand;

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
    public required Point Anchor { get; init; }

    /// <summary>Axial stiffness [N/m], above 0.</summary>
    public required double Stiffness { get; init; }

    /// <summary>Slack at rest [m]: free length less pin distance. Above 0 for cords only; below 0 the link is strung.</summary>
    public double Slack { get; init; }

    /// <summary>Pin at the anchor.</summary>
    public Pin AnchorPin { get; init; }

    /// <summary>Pin at the crank.</summary>
    public Pin CrankPin { get; init; }
}

/// <summary>Bell crank.</summary>
public sealed record Crank
{
    /// <summary>Fulcrum [m].</summary>
    public required Point Fulcrum { get; init; }

    /// <summary>Input pin from the fulcrum, at rest [m].</summary>
    public required Point Input { get; init; }

    /// <summary>Output pin from the fulcrum, at rest, slot not shifted [m].</summary>
    public required Point Output { get; init; }

    /// <summary>Upper stop of the crank [rad], above 0.</summary>
    public required double StopRadians { get; init; }

    /// <summary>Slot of a load-sensing arm; <see langword="null"/> = fixed arm.</summary>
    public Slot? Slot { get; init; }

    /// <summary>Pin at the fulcrum.</summary>
    public Pin FulcrumPin { get; init; }

    /// <summary>Output pin.</summary>
    public Pin OutputPin { get; init; }

    /// <summary>Constant drag on the crank [N·m].</summary>
    public double Drag { get; init; }
}

/// <summary>Slot in which the output pin shifts under load.</summary>
/// <param name="DirectionRadians">Direction in which the pin sets out when it shifts, at rest, from +x [rad].</param>
/// <param name="Length">Length of the shift along the slot [m], above 0.</param>
/// <param name="Preload">Spring force that the shift starts against [N], 0 or more.</param>
/// <param name="Rate">Spring rate along the slot [N/m], 0 or more.</param>
/// <param name="TurnRadians">How far its direction turns from its near to its far end [rad], anticlockwise positive; 0 = straight.</param>
public sealed record Slot(double DirectionRadians, double Length, double Preload, double Rate, double TurnRadians = 0);

/// <summary>Link from the crank's output pin to the carriage pin.</summary>
public sealed record TransferLink
{
    /// <summary>Rod or cord.</summary>
    public LinkKind Kind { get; init; } = LinkKind.Rod;

    /// <summary>Axial stiffness [N/m], above 0.</summary>
    public required double Stiffness { get; init; }

    /// <summary>Slack at rest [m]; above 0 for cords only; below 0 the link is strung.</summary>
    public double Slack { get; init; }

    /// <summary>Pin at the carriage.</summary>
    public Pin CarriagePin { get; init; }
}

/// <summary>Straight rail of the carriage.</summary>
public sealed record Rail
{
    /// <summary>Carriage pin at rest [m].</summary>
    public required Point Rest { get; init; }

    /// <summary>Direction of carriage travel on closing, from +x [rad].</summary>
    public required double DirectionRadians { get; init; }

    /// <summary>Travel of the carriage [m], above 0.</summary>
    public required double Travel { get; init; }

    /// <summary>Constant drag on the carriage [N].</summary>
    public double Drag { get; init; }

    /// <summary>Length of the carriage's guide [m]; <see langword="null"/> = not given, no jam check.</summary>
    public double? GuideLength { get; init; }

    /// <summary>Offset of the carriage's loads from the guide's line: X dorsal in the plane, Y across the hand [m].</summary>
    public Point LoadOffset { get; init; }
}

/// <summary>A node of the balance tree: a finger's pull or a bar.</summary>
public abstract record BalanceNode;

/// <summary>A finger's pull.</summary>
/// <param name="Finger">Name of the finger.</param>
public sealed record FingerLeaf(string Finger) : BalanceNode;

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

    /// <summary>Pivot pin and its play.</summary>
    public Pin PivotPin { get; init; }

    /// <summary>Radius of the pin at the first end [m].</summary>
    public double FirstPinRadius { get; init; }

    /// <summary>Radius of the pin at the second end [m].</summary>
    public double SecondPinRadius { get; init; }
}

/// <summary>Coefficients of friction, 0 = frictionless.</summary>
public sealed record Friction
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
