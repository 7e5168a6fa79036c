using Graspwright.Numerics;

namespace Graspwright.Mechanics.Linkage;

/// <summary>On which side of the line from the crank's tip to the rocker's pivot the pin between coupler and rocker lies.</summary>
public enum Closure
{
    /// <summary>To the left, looking from the crank's tip to the rocker's pivot.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,
}

/// <summary>Angles of a four-bar's links, each from the line that runs from the crank's pivot to the rocker's, anticlockwise.</summary>
/// <param name="CrankRadians">Crank, from its pivot to its tip [rad].</param>
/// <param name="CouplerRadians">Coupler, from the crank's tip to the rocker's [rad].</param>
/// <param name="RockerRadians">Rocker, from its pivot to its tip [rad].</param>
public readonly record struct FourBarPosture(double CrankRadians, double CouplerRadians, double RockerRadians);

/// <summary>Turning of the coupler and the rocker that goes with a turning of the crank.</summary>
/// <param name="Coupler">Angular velocity [rad/s], or acceleration [rad/s²].</param>
/// <param name="Rocker">Angular velocity [rad/s], or acceleration [rad/s²].</param>
public readonly record struct FourBarTurning(double Coupler, double Rocker);

/// <summary>A planar linkage of four bars in closed form: crank and rocker on two fixed pivots, a coupler between their tips.</summary>
/// <remarks>
/// The coupler, the rocker and the line from the crank's tip to the rocker's pivot form a triangle of known sides. Its
/// angles are taken from the half-angle formula with differences of sides as factors (W. Kahan, "Miscalculating Area and
/// Angles of a Needle-like Triangle", from memory), so that nothing cancels where the linkage lies nearly flat.
/// Velocities and accelerations come from differentiating the loop of the four bars once and twice (R. L. Norton,
/// Design of Machinery, ch. 6 and 7, from memory; derived again in the tests by differences of the positions).
/// </remarks>
public readonly record struct FourBar
{
    /// <summary>Describes a four-bar.</summary>
    /// <param name="crank">Length of the crank [m], above 0.</param>
    /// <param name="coupler">Length of the coupler [m], above 0.</param>
    /// <param name="rocker">Length of the rocker [m], above 0.</param>
    /// <param name="ground">Distance between the fixed pivots [m], above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not a finite number above 0.</exception>
    public FourBar(double crank, double coupler, double rocker, double ground)
    {
        Crank = Positive(crank, nameof(crank));
        Coupler = Positive(coupler, nameof(coupler));
        Rocker = Positive(rocker, nameof(rocker));
        Ground = Positive(ground, nameof(ground));
    }

    /// <summary>Length of the crank [m].</summary>
    public double Crank { get; }

    /// <summary>Length of the coupler [m].</summary>
    public double Coupler { get; }

    /// <summary>Length of the rocker [m].</summary>
    public double Rocker { get; }

    /// <summary>Distance between the fixed pivots [m].</summary>
    public double Ground { get; }

    /// <summary>How far the coupler and the rocker are from meeting.</summary>
    /// <param name="crankRadians">Angle of the crank [rad].</param>
    /// <returns>The missing or surplus length [m]; 0 where the linkage can be assembled.</returns>
    public double Gap(double crankRadians)
    {
        double span = Span(crankRadians).Length;
        return Math.Max(0, Math.Max(span - Coupler - Rocker, Math.Abs(Coupler - Rocker) - span));
    }

    /// <summary>Finds the angles of coupler and rocker.</summary>
    /// <param name="crankRadians">Angle of the crank [rad].</param>
    /// <param name="closure">Which of the two ways of assembling it.</param>
    /// <param name="posture">The angles, within a half turn either way of 0.</param>
    /// <returns>
    /// <see langword="false"/> where the linkage cannot be assembled (see <see cref="Gap"/>), or where the crank's tip lies
    /// on the rocker's pivot and every angle of the rocker fits.
    /// </returns>
    public bool TryAssemble(double crankRadians, Closure closure, out FourBarPosture posture)
    {
        Vector2D toPivot = Span(crankRadians);
        double span = toPivot.Length;
        double atTip = HalfAngle(Coupler, span, Rocker), atPivot = HalfAngle(Rocker, span, Coupler);
        double side = closure == Closure.Left ? 1 : -1, line = Math.Atan2(toPivot.Y, toPivot.X);
        posture = new(crankRadians, Wrapped(line + side * 2 * atTip), Wrapped(line + Math.PI - side * 2 * atPivot));
        return span > 0 && double.IsFinite(atTip) && double.IsFinite(atPivot);
    }

    /// <summary>Angular velocities of coupler and rocker.</summary>
    /// <param name="posture">Angles of an assembled linkage.</param>
    /// <param name="crankSpeed">Angular velocity of the crank [rad/s]; with 1 the answer is the ratio of velocities.</param>
    /// <returns>Angular velocities [rad/s]; not finite where coupler and rocker lie in one line.</returns>
    public FourBarTurning Velocity(FourBarPosture posture, double crankSpeed)
    {
        double between = Math.Sin(posture.RockerRadians - posture.CouplerRadians), tip = Crank * crankSpeed;
        return new(
            tip * Math.Sin(posture.CrankRadians - posture.RockerRadians) / (Coupler * between),
            tip * Math.Sin(posture.CrankRadians - posture.CouplerRadians) / (Rocker * between));
    }

    /// <summary>Angular accelerations of coupler and rocker.</summary>
    /// <param name="posture">Angles of an assembled linkage.</param>
    /// <param name="crankSpeed">Angular velocity of the crank [rad/s].</param>
    /// <param name="crankAcceleration">Angular acceleration of the crank [rad/s²].</param>
    /// <returns>Angular accelerations [rad/s²]; not finite where coupler and rocker lie in one line.</returns>
    public FourBarTurning Acceleration(FourBarPosture posture, double crankSpeed, double crankAcceleration)
    {
        FourBarTurning speed = Velocity(posture, crankSpeed);
        double inward = Crank * crankSpeed * crankSpeed, along = Crank * crankAcceleration;
        double couplerPull = Coupler * speed.Coupler * speed.Coupler, rockerPull = Rocker * speed.Rocker * speed.Rocker;
        (double between, double betweenCosine) = Math.SinCos(posture.RockerRadians - posture.CouplerRadians);
        (double toRocker, double toRockerCosine) = Math.SinCos(posture.CrankRadians - posture.RockerRadians);
        (double toCoupler, double toCouplerCosine) = Math.SinCos(posture.CrankRadians - posture.CouplerRadians);
        return new(
            (along * toRocker + inward * toRockerCosine + couplerPull * betweenCosine - rockerPull) / (Coupler * between),
            (along * toCoupler + inward * toCouplerCosine + couplerPull - rockerPull * betweenCosine) / (Rocker * between));
    }

    private static double Positive(double length, string name) => double.IsFinite(length) && length > 0
        ? length
        : throw new ArgumentOutOfRangeException(name, length, "A bar's length is a finite number above 0.");

    /// <summary>Half the angle between sides <paramref name="one"/> and <paramref name="other"/>; NaN if there is no such triangle.</summary>
    private static double HalfAngle(double one, double other, double opposite) => Math.Atan2(
        Math.Sqrt((opposite - (other - one)) * (opposite + (other - one))),
        Math.Sqrt((one + other - opposite) * (one + other + opposite)));

    private static double Wrapped(double radians) => Math.IEEERemainder(radians, 2 * Math.PI);

    private Vector2D Span(double crankRadians) => new Vector2D(Ground, 0) - Crank * Vector2D.AtAngle(crankRadians);
}
