using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Reference;

/// <summary>A planar four-bar: ground along +x from the crank's pivot at the origin to the rocker's pivot.</summary>
/// <remarks>
/// Loop: a∠θ₂ + b∠θ₃ = d∠0 + c∠θ₄, with crank a, coupler b, rocker c, ground d; angles anticlockwise from the ground.
/// The two closures mirror the rocker in the line from its pivot to the crank pin.
/// </remarks>
/// <param name="Ground">Distance d between the fixed pivots [m], above 0.</param>
/// <param name="Crank">Crank a [m], above 0.</param>
/// <param name="Coupler">Coupler b [m], above 0.</param>
/// <param name="Rocker">Rocker c [m], above 0.</param>
public readonly record struct FourBar(double Ground, double Crank, double Coupler, double Rocker)
{
    /// <summary>Position at a crank angle.</summary>
    /// <param name="crankRadians">Crank angle θ₂ [rad].</param>
    /// <param name="closure">Which of the two ways it is put together.</param>
    /// <returns>The position; <see langword="null"/> where the links do not reach each other.</returns>
    public FourBarPosition? At(double crankRadians, Closure closure)
    {
        Vector2D crankPin = Crank * Vector2D.AtAngle(crankRadians);
        Vector2D rockerPivot = new(Ground, 0);
        Vector2D back = crankPin - rockerPivot;
        double gap = back.Length;
        double cosine = (Rocker * Rocker + gap * gap - Coupler * Coupler) / (2 * Rocker * gap);
        if (!(Math.Abs(cosine) <= 1))
        {
            return null;
        }

        double turn = Math.Acos(cosine);
        double rocker = Math.Atan2(back.Y, back.X) + (closure == Closure.Open ? -turn : turn);
        Vector2D coupler = rockerPivot + Rocker * Vector2D.AtAngle(rocker) - crankPin;
        return new FourBarPosition(this, crankRadians, Math.Atan2(coupler.Y, coupler.X), rocker);
    }
}

/// <summary>The two ways in which the links of a four-bar close.</summary>
public enum Closure
{
    /// <summary>Rocker clockwise of the line from its pivot to the crank pin: the minus root of the half-tangent equation.</summary>
    Open,

    /// <summary>Rocker anticlockwise of that line.</summary>
    Crossed,
}

/// <summary>A four-bar at one crank angle, with the rates that follow from the crank's.</summary>
/// <param name="Bar">The four-bar.</param>
/// <param name="CrankRadians">Crank angle θ₂ [rad].</param>
/// <param name="CouplerRadians">Coupler angle θ₃ [rad].</param>
/// <param name="RockerRadians">Rocker angle θ₄ [rad].</param>
public readonly record struct FourBarPosition(FourBar Bar, double CrankRadians, double CouplerRadians, double RockerRadians)
{
    /// <summary>Pin between crank and coupler [m].</summary>
    public Vector2D CrankPin => Bar.Crank * Vector2D.AtAngle(CrankRadians);

    /// <summary>Pin between coupler and rocker [m].</summary>
    public Vector2D RockerPin => CrankPin + Bar.Coupler * Vector2D.AtAngle(CouplerRadians);

    /// <summary>Coupler's turn ÷ crank's turn [-]. Infinite where coupler and rocker lie in one line.</summary>
    public double CouplerRatio => Bar.Crank * Math.Sin(RockerRadians - CrankRadians) / (Bar.Coupler * Math.Sin(CouplerRadians - RockerRadians));

    /// <summary>Rocker's turn ÷ crank's turn [-]. Infinite where coupler and rocker lie in one line.</summary>
    public double RockerRatio => Bar.Crank * Math.Sin(CrankRadians - CouplerRadians) / (Bar.Rocker * Math.Sin(RockerRadians - CouplerRadians));

    /// <summary>Moment at the rocker that balances a moment of 1 at the crank, without friction [-]: no work is lost.</summary>
    public double MomentRatio => 1 / RockerRatio;

    /// <summary>Point fixed to the coupler [m].</summary>
    /// <param name="distance">Distance from the crank pin [m].</param>
    /// <param name="radians">Angle from the coupler, anticlockwise [rad].</param>
    public Vector2D CouplerPoint(double distance, double radians) => CrankPin + distance * Vector2D.AtAngle(CouplerRadians + radians);

    /// <summary>Angular accelerations of coupler and rocker [rad/s²].</summary>
    /// <param name="crankRate">Angular velocity of the crank [rad/s].</param>
    /// <param name="crankAcceleration">Angular acceleration of the crank [rad/s²].</param>
    public (double Coupler, double Rocker) Accelerations(double crankRate, double crankAcceleration)
    {
        Vector2D e2 = Vector2D.AtAngle(CrankRadians), e3 = Vector2D.AtAngle(CouplerRadians), e4 = Vector2D.AtAngle(RockerRadians);
        double w3 = CouplerRatio * crankRate, w4 = RockerRatio * crankRate;

        // Loop twice differentiated, all but the unknown terms: b α₃ e₃⊥ − c α₄ e₄⊥ = −known.
        Vector2D known = Bar.Crank * crankAcceleration * e2.Perpendicular - Bar.Crank * crankRate * crankRate * e2
            - Bar.Coupler * w3 * w3 * e3 + Bar.Rocker * w4 * w4 * e4;
        double sine = Math.Sin(RockerRadians - CouplerRadians);
        return (-known.Dot(e4) / (Bar.Coupler * sine), -known.Dot(e3) / (Bar.Rocker * sine));
    }
}
