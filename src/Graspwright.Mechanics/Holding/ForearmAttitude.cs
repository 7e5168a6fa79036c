using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>How the forearm is held.</summary>
public enum ForearmAttitude
{
    /// <summary>Forearm level, palm down.</summary>
    PalmDown,

    /// <summary>Forearm level, thumb up.</summary>
    ThumbUp,

    /// <summary>Forearm level, palm up.</summary>
    PalmUp,

    /// <summary>Forearm upright, hand above it.</summary>
    Overhead,

    /// <summary>Forearm hanging, hand below it.</summary>
    Hanging,
}

/// <summary>Gravity and loads seen from the hand.</summary>
/// <remarks>Flexion by a turns the forearm by +a as seen from the hand, so a direction of the forearm becomes R(a) times itself.</remarks>
public static class Attitude
{
    /// <summary>Standard gravity [m/s²], exact (third General Conference on Weights and Measures).</summary>
    public const double Gravity = 9.80665;

    /// <summary>Unit direction of gravity in the hand frame.</summary>
    /// <param name="attitude">How the forearm is held.</param>
    /// <param name="wristRadians">Anatomical angle of the wrist, flexion positive [rad].</param>
    public static Vector3D Down(ForearmAttitude attitude, double wristRadians)
    {
        Vector3D forearm = attitude switch
        {
            ForearmAttitude.PalmDown => new(0, -1, 0),
            ForearmAttitude.PalmUp => new(0, 1, 0),
            ForearmAttitude.ThumbUp => new(0, 0, -1),
            ForearmAttitude.Overhead => new(-1, 0, 0),
            ForearmAttitude.Hanging => new(1, 0, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(attitude), attitude, "Unknown attitude."),
        };
        Vector2D turned = forearm.InPlane.Rotated(wristRadians);
        return new(turned.X, turned.Y, forearm.Z);
    }

    /// <summary>Flexing moment of a load on the wrist [N·m]: positive helps a flexion drive, negative opens it.</summary>
    /// <param name="load">The load.</param>
    public static double FlexingMoment(OutsideLoad load) => 0 - load.MomentAbout(default).Z;

    /// <summary>Sideways moment of a load on the wrist [N·m]: positive bends it away from the thumb.</summary>
    /// <param name="load">The load.</param>
    public static double SidewaysMoment(OutsideLoad load) => load.MomentAbout(default).Y;

    /// <summary>How far a held object tips against the vertical while the wrist bends [rad].</summary>
    /// <param name="attitude">How the forearm is held.</param>
    /// <param name="fromRadians">Anatomical angle at which the object is taken [rad].</param>
    /// <param name="toRadians">Anatomical angle at the end [rad].</param>
    public static double Tips(ForearmAttitude attitude, double fromRadians, double toRadians)
    {
        double cosine = Down(attitude, fromRadians).Dot(Down(attitude, toRadians));
        return Math.Acos(Math.Clamp(cosine, -1, 1));
    }
}
