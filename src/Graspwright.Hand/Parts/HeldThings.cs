namespace Graspwright.Hand;

/// <summary>A named thing to close on.</summary>
/// <param name="Name">Its name.</param>
public abstract record HandObject(string Name);

/// <summary>A fixed cylinder, its axis across the hand.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Diameter">Diameter [m], above 0.</param>
/// <param name="Place">Where it lies.</param>
public sealed record CylinderObject(string Name, double Diameter, CylinderPlace Place) : HandObject(Name);

/// <summary>Where a cylinder lies.</summary>
public abstract record CylinderPlace;

/// <summary>On the palm line: centre = palm point + station·direction + radius·palmar normal.</summary>
/// <param name="Station">Distance along the palm line from its point [m].</param>
public sealed record OnPalm(double Station) : CylinderPlace;

/// <summary>Fixed by its centre.</summary>
/// <param name="Centre">Centre [m].</param>
public sealed record AtCentre(Point Centre) : CylinderPlace;

/// <summary>A flat plate held by the thumb. The fingers meet the face through <see cref="FingerFace"/>.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Point">A point of the face on the thumb [m].</param>
/// <param name="NormalRadians">Direction of the normal toward the fingers, from +x [rad].</param>
/// <param name="Thickness">Thickness of the plate [m], 0 or more.</param>
public sealed record PlateObject(string Name, Point Point, double NormalRadians, double Thickness) : HandObject(Name)
{
    /// <summary>A point of the face that the fingers meet [m].</summary>
    public Point FingerFace => new(
        Point.X + Thickness * Math.Cos(NormalRadians),
        Point.Y + Thickness * Math.Sin(NormalRadians));
}

/// <summary>Nothing held: the hand closes on air.</summary>
/// <param name="Name">Its name.</param>
public sealed record NothingHeld(string Name) : HandObject(Name);

/// <summary>Fingers locked together under one name.</summary>
/// <param name="Name">Name of the pattern.</param>
/// <param name="Locks">Its locks.</param>
public sealed record LockPattern(string Name, IReadOnlyList<FingerLock> Locks);

/// <summary>A lock on one finger.</summary>
/// <param name="Finger">Name of the finger.</param>
/// <param name="AtRadians">Wrist motion of closing at which it acts [rad]; 0 = from the start.</param>
/// <param name="HoldsPull">Whether the pull stays attached; if not, the leaf carries no force.</param>
/// <param name="MayCarry">Greatest force the lock may carry [N]; <see langword="null"/> = not given.</param>
public sealed record FingerLock(string Finger, double AtRadians, bool HoldsPull, double? MayCarry)
{
    /// <summary>What it does when signal or power is lost: <see langword="true"/> = it holds; <see langword="null"/> = not decided.</summary>
    public bool? HoldsUnpowered { get; init; }

    /// <summary>How it is released by hand under full load; empty = not said.</summary>
    public string HandRelease { get; init; } = "";
}
