using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>What touches the object at a contact.</summary>
public enum ContactKind
{
    /// <summary>A segment of a finger of the device.</summary>
    Finger,

    /// <summary>The palm, which only pushes back.</summary>
    Palm,

    /// <summary>The wearer's own thumb.</summary>
    Thumb,
}

/// <summary>A contact on the object. Space is the hand frame: x distal, y dorsal, z toward the thumb.</summary>
/// <remarks>For a right hand that frame is left-handed; statics is the same in a mirror, so one set of formulas serves both hands.</remarks>
public sealed record HoldContact
{
    /// <summary>Its name: <c>index proximal</c>, <c>palm</c>, <c>thumb</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What touches.</summary>
    public required ContactKind Kind { get; init; }

    /// <summary>Index of the finger; −1 else.</summary>
    public int Finger { get; init; } = -1;

    /// <summary>Place on the object's surface [m].</summary>
    public required Vector3D Place { get; init; }

    /// <summary>Unit direction in which it pushes the object.</summary>
    public required Vector3D Normal { get; init; }

    /// <summary>Normal force before the load comes [N]; for palm and thumb found from balance.</summary>
    public double Preload { get; init; }

    /// <summary>Greatest normal force [N]; infinite = it pushes back as far as needed.</summary>
    public double MostNormal { get; init; } = double.PositiveInfinity;

    /// <summary>Coefficient of friction, 0 or more.</summary>
    public required double Friction { get; init; }

    /// <summary>Radius at which friction resists turning about the normal [m]; 0 = a point. Two thirds of the patch's radius for even pressure.</summary>
    public double SpinRadius { get; init; }

    /// <summary>Stiffness along the normal [N/m], above 0.</summary>
    public required double Stiffness { get; init; }

    /// <summary>Velocity of the contact for a unit rate of each of the finger's free motions [m/rad]; empty for palm and thumb.</summary>
    public IReadOnlyList<Vector2D> Motions { get; init; } = [];
}

/// <summary>What drives or holds one free motion of a finger.</summary>
/// <param name="Finger">Index of the finger.</param>
/// <param name="Motion">Index among the finger's free motions.</param>
/// <param name="Drive">Generalised force of the drive on it [N·m]: Σ contact force · velocity, kept while the wrist holds its effort.</param>
public readonly record struct FingerDrive(int Finger, int Motion, double Drive);

/// <summary>A grip on an object: its contacts and how their forces may change.</summary>
public sealed record Grasp
{
    /// <summary>Contacts.</summary>
    public required IReadOnlyList<HoldContact> Contacts { get; init; }

    /// <summary>Drives of the fingers' motions; used where the grip is not locked.</summary>
    public IReadOnlyList<FingerDrive> Drives { get; init; } = [];

    /// <summary>
    /// Locked: fingers stand where they were, wrist relaxed. Contact forces then grow by no more than springs at the
    /// contacts would take of the load, and a finger's motions carry what its lock bears.
    /// </summary>
    public bool Locked { get; init; }

    /// <summary>Greatest generalised force that a lock bears on a finger's motion [N·m]; empty = not given.</summary>
    public IReadOnlyList<FingerDrive> LockLimits { get; init; } = [];

    /// <summary>A point of the object from which moments and motions are told, mostly its centre [m].</summary>
    public required Vector3D Centre { get; init; }

    /// <summary>The object's own axis (a cylinder's axis, a plate's normal), unit.</summary>
    public required Vector3D Axis { get; init; }
}

/// <summary>An outside load on the object.</summary>
/// <param name="Force">Force [N].</param>
/// <param name="Place">Where it acts [m].</param>
/// <param name="Moment">A free moment beside it [N·m].</param>
public readonly record struct OutsideLoad(Vector3D Force, Vector3D Place, Vector3D Moment)
{
    /// <summary>Moment about a point [N·m].</summary>
    /// <param name="point">The point [m].</param>
    public Vector3D MomentAbout(Vector3D point) => (Place - point).Cross(Force) + Moment;

    /// <summary>Both at once, as one load about a point.</summary>
    /// <param name="other">The other load.</param>
    /// <param name="point">The point [m].</param>
    public OutsideLoad With(OutsideLoad other, Vector3D point) =>
        new(Force + other.Force, point, MomentAbout(point) + other.MomentAbout(point));
}
