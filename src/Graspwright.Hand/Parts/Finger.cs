namespace Graspwright.Hand;

/// <summary>A planar finger of three segments. Joint triples are MCP, PIP, DIP; segment triples proximal, middle, distal.</summary>
/// <remarks>
/// Segment i points along −Σ_{j≤i}(o_j + q_j): o the open posture, q ≥ 0 the flexion from it. Ratios, springs and
/// take-up act on q.
/// </remarks>
public sealed record Finger
{
    /// <summary>Name of the finger.</summary>
    public required string Name { get; init; }

    /// <summary>MCP axis (the knuckle) [m].</summary>
    public required Point Knuckle { get; init; }

    /// <summary>Place across the hand, thumb side positive [m]; orders the fingers only.</summary>
    public double Across { get; init; }

    /// <summary>Splay σ [rad]: sums over fingers are weighted by cos σ.</summary>
    public double SplayRadians { get; init; }

    /// <summary>Measured length from knuckle axis to tip [m], where the segments follow from it; <see langword="null"/> = not given.</summary>
    public double? MeasuredLength { get; init; }

    /// <summary>Segment lengths [m], each above 0.</summary>
    public required Triple Segments { get; init; }

    /// <summary>Half thickness of each segment [m], 0 or more.</summary>
    public required Triple HalfThickness { get; init; }

    /// <summary>Open posture o [rad].</summary>
    public required Triple OpenRadians { get; init; }

    /// <summary>Upper stop of the flexion q of each joint [rad]; the lower is 0. DIP 0 = fused.</summary>
    public required Triple RangeRadians { get; init; }

    /// <summary>Contact stiffness of the pads [N/m], above 0.</summary>
    public required double PadStiffness { get; init; }

    /// <summary>How the joints hang together.</summary>
    public required FingerJoints Joints { get; init; }

    /// <summary>Take-up arms r of constant radius [m]; MCP only unless adaptive. MCP is ignored where a drive pin is given.</summary>
    public Triple Arms { get; init; }

    /// <summary>Drive pin at the MCP; <see langword="null"/> = constant arm.</summary>
    public DrivePin? DrivePin { get; init; }

    /// <summary>Rate of the return springs [N·m/rad].</summary>
    public Triple SpringRate { get; init; }

    /// <summary>Preload of the return springs [N·m], resting on the open stop.</summary>
    public Triple SpringPreload { get; init; }

    /// <summary>Constant drag on each joint [N·m].</summary>
    public Triple Drag { get; init; }

    /// <summary>Radius of each joint pin [m].</summary>
    public Triple PinRadius { get; init; }

    /// <summary>Diametral play of each joint pin when new [m].</summary>
    public Triple Play { get; init; }

    /// <summary>Diametral play of each joint pin when worn [m].</summary>
    public Triple WornPlay { get; init; }

    /// <summary>The finger's pull.</summary>
    public required FingerPull Pull { get; init; }
}

/// <summary>Three numbers, one for each joint or segment.</summary>
/// <param name="First">MCP or proximal.</param>
/// <param name="Second">PIP or middle.</param>
/// <param name="Third">DIP or distal.</param>
public readonly record struct Triple(double First, double Second, double Third);

/// <summary>How the joints of a finger hang together.</summary>
public abstract record FingerJoints;

/// <summary>Three free joints; take-up w = r₁q₁ + r₂q₂ + r₃q₃.</summary>
public sealed record AdaptiveJoints : FingerJoints;

/// <summary>PIP and DIP follow the MCP.</summary>
/// <param name="PipFromMcp">PIP flexion from MCP flexion.</param>
/// <param name="DipFromPip">DIP flexion from PIP flexion; with a fused DIP ignored.</param>
public sealed record CoupledJoints(Coupling PipFromMcp, Coupling DipFromPip) : FingerJoints;

/// <summary>One joint driven by the one before it.</summary>
public abstract record Coupling;

/// <summary>Constant ratio.</summary>
/// <param name="Ratio">Flexion of the driven joint ÷ flexion of the driver, 0 or more.</param>
public sealed record RatioCoupling(double Ratio) : Coupling;

/// <summary>Planar four-bar across a segment: an arm on the body before it, an arm on the body after it, a coupler between their pins.</summary>
/// <remarks>Angles are in the segment's own frame (x along the segment, y dorsal), open posture.</remarks>
/// <param name="BeforeRadius">Arm on the body before, from the driver joint [m], above 0.</param>
/// <param name="BeforeRadians">Its angle [rad].</param>
/// <param name="AfterRadius">Arm on the body after, from the driven joint [m], above 0.</param>
/// <param name="AfterRadians">Its angle [rad].</param>
public sealed record FourBarCoupling(double BeforeRadius, double BeforeRadians, double AfterRadius, double AfterRadians) : Coupling;

/// <summary>A pin on the proximal segment pulled along a fixed line: w₁ = (pin(q₁) − pin(0))·v.</summary>
/// <param name="Radius">Distance from the MCP axis [m], above 0.</param>
/// <param name="RestRadians">Angle at q₁ = 0, hand frame, from +x, dorsal positive [rad].</param>
/// <param name="LineRadians">Direction v of the pull, from +x [rad].</param>
public sealed record DrivePin(double Radius, double RestRadians, double LineRadians);

/// <summary>The pull from the balance tree to a finger.</summary>
public sealed record FingerPull
{
    /// <summary>Rod or cord.</summary>
    public LinkKind Kind { get; init; } = LinkKind.Cord;

    /// <summary>Axial stiffness [N/m], above 0.</summary>
    public required double Stiffness { get; init; }

    /// <summary>Slack at rest [m]; above 0 for cords only; below 0 the pull is strung.</summary>
    public double Slack { get; init; }

    /// <summary>Wrap round its guide [rad], 0 or more.</summary>
    public double GuideWrapRadians { get; init; }
}
