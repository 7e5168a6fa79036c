using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Flexion of a driven joint from that of its driver, with two derivatives: constant ratio or planar four-bar.</summary>
/// <remarks>
/// Four-bar, in the frame of the segment between the two joints (x along it): the body before carries pin a, which turns
/// by +q of the driver; the body after carries pin b about the driven joint, which turns by −q of the driven joint. The
/// coupler keeps |b − a|; the branch is that of the open posture.
/// </remarks>
internal readonly struct JointCoupling
{
    private readonly FourBarCoupling? _bar;
    private readonly double _ratio, _segment, _coupler, _branch;

    /// <summary>Sets a coupling up across a segment.</summary>
    /// <param name="coupling">Ratio or four-bar.</param>
    /// <param name="segmentLength">Length of the segment between the two joints [m].</param>
    public JointCoupling(Coupling coupling, double segmentLength)
    {
        _segment = segmentLength;
        _ratio = 0;
        _coupler = 0;
        _branch = 1;
        _bar = coupling as FourBarCoupling;
        if (_bar is null)
        {
            _ratio = ((RatioCoupling)coupling).Ratio;
            return;
        }

        Vector2D a = _bar.BeforeRadius * Vector2D.AtAngle(_bar.BeforeRadians);
        Vector2D arm = _bar.AfterRadius * Vector2D.AtAngle(_bar.AfterRadians);
        Vector2D toJoint = new Vector2D(segmentLength, 0) - a;
        _coupler = (toJoint + arm).Length;
        _branch = toJoint.Cross(arm) >= 0 ? 1 : -1;
    }

    /// <summary>Whether it is a four-bar.</summary>
    public bool IsFourBar => _bar is not null;

    /// <summary>Driven flexion and its first and second derivative.</summary>
    /// <param name="driver">Driver's flexion [rad].</param>
    /// <param name="value">Driven flexion [rad].</param>
    /// <param name="first">First derivative.</param>
    /// <param name="second">Second derivative [1/rad].</param>
    /// <returns><see langword="false"/> if the four-bar cannot be assembled there.</returns>
    public bool TryEvaluate(double driver, out double value, out double first, out double second)
    {
        value = _ratio * driver;
        first = _ratio;
        second = 0;
        if (_bar is null)
        {
            return true;
        }

        Pins(driver, out Vector2D a, out Vector2D toJoint);
        double reach = (_coupler * _coupler - toJoint.Dot(toJoint) - _bar.AfterRadius * _bar.AfterRadius) / (2 * _bar.AfterRadius);
        double rest = toJoint.Dot(toJoint) - reach * reach;
        bool closes = rest > 0;
        double turn = Math.Atan2(toJoint.Y, toJoint.X) + _branch * Math.Atan2(Math.Sqrt(Math.Max(rest, 0)), reach);
        value = Math.IEEERemainder(_bar.AfterRadians - turn, 2 * Math.PI);
        Vector2D arm = _bar.AfterRadius * Vector2D.AtAngle(turn);
        Vector2D u = toJoint + arm, aTurn = a.Perpendicular, bTurn = -arm.Perpendicular;
        double lever = u.Dot(bTurn);
        first = u.Dot(aTurn) / lever;
        Vector2D rate = first * bTurn - aTurn;
        second = (-rate.Dot(rate) + first * first * u.Dot(arm) - u.Dot(a)) / lever;
        return closes;
    }

    /// <summary>Coupler line in the segment's frame: pin b and unit direction from b to a, with their derivative by the driver's flexion.</summary>
    /// <param name="driver">Driver's flexion [rad].</param>
    /// <param name="driven">Driven flexion [rad].</param>
    /// <param name="slope">Its derivative.</param>
    public CouplerLine Line(double driver, double driven, double slope)
    {
        Pins(driver, out Vector2D a, out Vector2D toJoint);
        Vector2D arm = _bar!.AfterRadius * Vector2D.AtAngle(_bar.AfterRadians - driven);
        Vector2D fromBToA = -(toJoint + arm);
        double inverse = 1 / fromBToA.Length;
        Vector2D unit = inverse * fromBToA;
        Vector2D armRate = -slope * arm.Perpendicular;
        Vector2D rate = a.Perpendicular - armRate;
        Vector2D unitRate = inverse * (rate - unit.Dot(rate) * unit);
        return new(unit, unitRate, arm.Cross(unit), armRate.Cross(unit) + arm.Cross(unitRate));
    }

    private void Pins(double driver, out Vector2D a, out Vector2D toJoint)
    {
        a = _bar!.BeforeRadius * Vector2D.AtAngle(_bar.BeforeRadians + driver);
        toJoint = new Vector2D(_segment, 0) - a;
    }
}

/// <summary>Line of a coupler seen from the segment it crosses.</summary>
/// <param name="Unit">Unit direction from the pin on the body after to the pin on the body before.</param>
/// <param name="UnitRate">Its derivative by the driver's flexion.</param>
/// <param name="Lever">Signed lever about the driven joint [m], anticlockwise positive.</param>
/// <param name="LeverRate">Its derivative.</param>
internal readonly record struct CouplerLine(Vector2D Unit, Vector2D UnitRate, double Lever, double LeverRate);
