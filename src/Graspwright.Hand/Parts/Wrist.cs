namespace Graspwright.Hand;

/// <summary>Which way the wrist moves to close the hand.</summary>
public enum DrivingDirection
{
    /// <summary>Palm toward the forearm.</summary>
    Flexion,

    /// <summary>Back of the hand toward the forearm.</summary>
    Extension,
}

/// <summary>The wearer's wrist.</summary>
public sealed record Wrist
{
    /// <summary>Driving direction.</summary>
    public DrivingDirection Direction { get; init; } = DrivingDirection.Flexion;

    /// <summary>Anatomical angle of the start posture [rad], flexion positive, 0 = straight.</summary>
    public double StartRadians { get; init; }

    /// <summary>Travel of the wearer's own joint in the driving direction from the start posture [rad], above 0.</summary>
    public required double TravelRadians { get; init; }

    /// <summary>Greatest flexion moment against the anatomical angle.</summary>
    public required MomentTable FlexionCapacity { get; init; }

    /// <summary>Greatest extension moment against the anatomical angle.</summary>
    public required MomentTable ExtensionCapacity { get; init; }

    /// <summary>Capacity in the driving direction.</summary>
    public MomentTable DrivingCapacity => Direction == DrivingDirection.Flexion ? FlexionCapacity : ExtensionCapacity;

    /// <summary>Share of capacity the wearer accepts for a short squeeze, above 0 to 1.</summary>
    public required double SqueezeShare { get; init; }

    /// <summary>Share of capacity the wearer can repeat all day, above 0 to 1.</summary>
    public required double AllDayShare { get; init; }

    /// <summary>Comfortable angular speed of the wrist [rad/s].</summary>
    public required double SpeedRadiansPerSecond { get; init; }
}

/// <summary>A moment tabled against an angle: linear between entries, constant outside.</summary>
/// <param name="AnglesRadians">Anatomical angles [rad], flexion positive, strictly rising, at least one.</param>
/// <param name="MomentsNewtonMetres">Moments [N·m], one for each angle.</param>
public sealed record MomentTable(IReadOnlyList<double> AnglesRadians, IReadOnlyList<double> MomentsNewtonMetres);

/// <summary>What gives between the wearer's joint and the drive.</summary>
public sealed record Give
{
    /// <summary>Rotational stiffness of cuff and flesh about the wrist axis [N·m/rad]; infinite = no give.</summary>
    public double CuffStiffness { get; init; } = double.PositiveInfinity;

    /// <summary>Rotational stiffness of the hand shell about the wrist axis [N·m/rad]; infinite = no give.</summary>
    public double ShellStiffness { get; init; } = double.PositiveInfinity;

    /// <summary>Hysteresis share of the give, 0 to 1/3.</summary>
    public double Hysteresis { get; init; }
}

/// <summary>Pin on the wrist axis between forearm cuff and hand shell.</summary>
/// <param name="Pin">The pin.</param>
/// <param name="Offset">Offset of its axis from the wearer's own wrist axis, hand frame [m].</param>
public sealed record Gimbal(Pin Pin, Point Offset);

/// <summary>Line of the palm on which held things rest.</summary>
/// <param name="Point">A point of the line, station 0 [m].</param>
/// <param name="DirectionRadians">Direction of rising stations, from +x [rad].</param>
public sealed record PalmLine(Point Point, double DirectionRadians);
