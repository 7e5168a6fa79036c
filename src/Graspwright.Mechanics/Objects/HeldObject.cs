using Graspwright.Numerics;

namespace Graspwright.Mechanics.Objects;

/// <summary>What the hand closes on.</summary>
public abstract record HeldObject
{
    /// <summary>Nothing held.</summary>
    public static HeldObject None { get; } = new NoObject();
}

/// <summary>Nothing held.</summary>
public sealed record NoObject : HeldObject;

/// <summary>A fixed cylinder, its axis across the hand.</summary>
/// <param name="Centre">Centre [m].</param>
/// <param name="Radius">Radius [m], above 0.</param>
public sealed record Cylinder(Vector2D Centre, double Radius) : HeldObject
{
    /// <summary>A cylinder resting on the palm line.</summary>
    /// <param name="palmPoint">Point of the palm line [m].</param>
    /// <param name="palmRadians">Direction of the palm line from +x [rad].</param>
    /// <param name="station">Distance along the line from the point [m].</param>
    /// <param name="radius">Radius [m].</param>
    public static Cylinder OnPalm(Vector2D palmPoint, double palmRadians, double station, double radius)
    {
        Vector2D along = Vector2D.AtAngle(palmRadians);
        Vector2D palmar = new(along.Y, -along.X);
        return new(palmPoint + station * along + radius * palmar, radius);
    }
}

/// <summary>A flat face held by the thumb: unlimited half plane. Contact points are PIP, DIP and fingertip.</summary>
/// <param name="Point">A point of the face [m].</param>
/// <param name="NormalRadians">Direction of its normal, toward the fingers, from +x [rad].</param>
public sealed record Face(Vector2D Point, double NormalRadians) : HeldObject;
