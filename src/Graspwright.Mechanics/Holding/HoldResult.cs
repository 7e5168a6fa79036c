using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>How a grip gives way.</summary>
public enum GiveWay
{
    /// <summary>It does not within a hundred times the load.</summary>
    None,

    /// <summary>The object falls: it moves the way gravity pulls.</summary>
    Drop,

    /// <summary>The object turns about its own axis.</summary>
    Twist,

    /// <summary>The object tips about another axis.</summary>
    Tip,

    /// <summary>The object slides along its own axis.</summary>
    Slide,

    /// <summary>The object is pulled out of the hand across its axis.</summary>
    PullOut,

    /// <summary>The fingers push it out before any load comes.</summary>
    PushedOut,
}

/// <summary>A contact and the way the object slides on it.</summary>
/// <param name="Contact">Index of the contact; −1 = none.</param>
/// <param name="Direction">Unit direction of the object's motion there; null vector where it turns on the spot.</param>
public readonly record struct ContactSlip(int Contact, Vector3D Direction);

/// <summary>What a grip holds of one load.</summary>
public sealed record HoldResult
{
    /// <summary>The limit beyond which no load factor is sought.</summary>
    public const double MostFactor = 100;

    /// <summary>The factor of a grip whose fingers push the object out with any load and with none.</summary>
    public const double NotBalanced = -1;

    /// <summary>Greatest multiple of the load that contact forces inside their cones can balance; <see cref="NotBalanced"/> where none is.</summary>
    public required double Factor { get; init; }

    /// <summary>How much the true limit can lie above <see cref="Factor"/> at most: what the solver left, relative.</summary>
    public double Gap { get; init; }

    /// <summary>Multiple of the load at which the first contact slips if contacts share the load as springs; NaN where it is not known.</summary>
    public double FirstSlipFactor { get; init; } = double.NaN;

    /// <summary>The contact that slips first.</summary>
    public ContactSlip FirstSlip { get; init; } = new(-1, default);

    /// <summary>How the grip gives way at the limit.</summary>
    public GiveWay Mode { get; init; }

    /// <summary>Velocity of the object's centre at the limit, for a unit of the load's power.</summary>
    public Vector3D Velocity { get; init; }

    /// <summary>Rate of turning at the limit, for a unit of the load's power.</summary>
    public Vector3D Turning { get; init; }

    /// <summary>Contact forces on the object at the limit, in the order of the contacts [N].</summary>
    public IReadOnlyList<Vector3D> Forces { get; init; } = [];
}
