using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Drive;

/// <summary>Hands what is held, and which fingers are locked, to the drive engine.</summary>
public static class HoldMapping
{
    /// <summary>A held thing.</summary>
    /// <param name="hand">The hand whose palm line a cylinder may rest on.</param>
    /// <param name="thing">The thing.</param>
    public static HeldObject ToHeld(Hand.HandModel hand, Hand.HandObject thing)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return thing switch
        {
            Hand.CylinderObject { Place: Hand.OnPalm place } cylinder =>
                Cylinder.OnPalm(DriveMapping.ToVector(hand.Palm.Point), hand.Palm.DirectionRadians, place.Station, cylinder.Diameter / 2),
            Hand.CylinderObject { Place: Hand.AtCentre place } cylinder => new Cylinder(DriveMapping.ToVector(place.Centre), cylinder.Diameter / 2),
            Hand.PlateObject plate => new Face(DriveMapping.ToVector(plate.FingerFace), plate.NormalRadians),
            Hand.NothingHeld => HeldObject.None,
            _ => throw new ArgumentException("A held thing is a cylinder, a plate or nothing.", nameof(thing)),
        };
    }

    /// <summary>The locks of a pattern.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="pattern">The pattern; <see langword="null"/> = all free.</param>
    public static IReadOnlyList<FingerLock> ToLocks(Hand.HandModel hand, Hand.LockPattern? pattern)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return pattern is null
            ? []
            : [.. pattern.Locks.Select(l => new FingerLock(DriveMapping.IndexOf(hand.Fingers, l.Finger), l.AtRadians, l.HoldsPull))];
    }

    /// <summary>Most that each finger's lock may carry [N], finger by finger; <see langword="null"/> = not given.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="pattern">The pattern; <see langword="null"/> = all free.</param>
    public static IReadOnlyList<double?> LockLimits(Hand.HandModel hand, Hand.LockPattern? pattern)
    {
        ArgumentNullException.ThrowIfNull(hand);
        double?[] limits = new double?[hand.Fingers.Count];
        foreach (Hand.FingerLock locked in pattern?.Locks ?? [])
        {
            limits[DriveMapping.IndexOf(hand.Fingers, locked.Finger)] = locked.MayCarry;
        }

        return limits;
    }
}
