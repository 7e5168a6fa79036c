using Graspwright.Mechanics.Holding;
using Graspwright.Numerics;
using Graspwright.Workshop.Drive;

namespace Graspwright.Workshop.Jobs;

/// <summary>Something that hangs on the wrist, seen from the hand.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Mass">Its mass [kg].</param>
/// <param name="Place">Where it balances [m].</param>
public sealed record Carried(string Name, double Mass, Vector3D Place)
{
    /// <summary>Flexing moment of its weight on the wrist [N·m]; negative extends.</summary>
    /// <param name="down">Unit direction of gravity in the hand frame.</param>
    public double Flexing(Vector3D down) => Attitude.FlexingMoment(Weight(down));

    /// <summary>Sideways moment of its weight on the wrist [N·m]; positive bends it away from the thumb.</summary>
    /// <param name="down">Unit direction of gravity in the hand frame.</param>
    public double Sideways(Vector3D down) => Attitude.SidewaysMoment(Weight(down));

    private OutsideLoad Weight(Vector3D down) => new(Mass * Attitude.Gravity * down, Place, default);
}

/// <summary>The weight that the wrist carries beside the load: what is left of the hand, and the device.</summary>
public static class WristWeight
{
    /// <summary>Hand and device, in that order.</summary>
    /// <param name="hand">A hand with jobs.</param>
    /// <exception cref="ArgumentException">The hand says nothing about its weight.</exception>
    public static IReadOnlyList<Carried> Own(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Hand.HandBody body = hand.Body ?? throw new ArgumentException("A hand with jobs has a weight.", nameof(hand));
        return [new("hand", body.HandMass, Space(body.HandCentre)), new("device", body.Device, Space(body.DeviceCentre))];
    }

    private static Vector3D Space(Hand.Point point)
    {
        Vector2D plane = DriveMapping.ToVector(point);
        return new(plane.X, plane.Y, 0);
    }
}
