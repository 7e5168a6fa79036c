using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Holding;

/// <summary>Grips written by hand, whose limits have closed forms.</summary>
internal static class MadeGrip
{
    /// <summary>One finger whose contact keeps a force, against a thumb that pushes back.</summary>
    public static Grasp Pinch(double force, double friction, double thickness = 0.003, double spin = 0) => new()
    {
        Contacts =
        [
            Finger(0, new(0.12, -0.05, 0), new(0, -1, 0), force, friction) with { SpinRadius = spin },
            new() { Name = "thumb", Kind = ContactKind.Thumb, Place = new(0.12, -0.05 - thickness, 0), Normal = new(0, 1, 0), Friction = friction, SpinRadius = spin, Stiffness = 14000, MostNormal = 1000 },
        ],
        Drives = [new(0, 0, force * 0.05)],
        Centre = new(0.12, -0.05, 0),
        Axis = new(0, 1, 0),
    };

    /// <summary>Contacts round a cylinder at angles, each a finger of its own with the same force.</summary>
    public static Grasp Ring(double radius, double force, double friction, params double[] degrees) => new()
    {
        Contacts = [.. degrees.Select((d, i) => Finger(i, Place(radius, d), -1 / radius * Place(radius, d), force, friction))],
        Drives = [.. degrees.Select((_, i) => new FingerDrive(i, 0, force * 0.05))],
        Centre = default,
        Axis = new(0, 0, 1),
    };

    /// <summary>A contact whose finger moves along its normal with an arm of 50 mm.</summary>
    public static HoldContact Finger(int finger, Vector3D place, Vector3D normal, double force, double friction) => new()
    {
        Name = $"finger {finger.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
        Kind = ContactKind.Finger,
        Finger = finger,
        Place = place,
        Normal = normal,
        Preload = force,
        Friction = friction,
        Stiffness = 14000,
        Motions = [0.05 * normal.InPlane],
    };

    private static Vector3D Place(double radius, double degrees)
    {
        Vector2D at = radius * Vector2D.AtAngle(degrees * Math.PI / 180);
        return new(at.X, at.Y, 0);
    }
}
