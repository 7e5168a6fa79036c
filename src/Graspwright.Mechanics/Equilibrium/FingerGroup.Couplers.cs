using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Forces of the couplers of four-bar fingers on the joint pins, one finger at a time.</content>
internal sealed partial class FingerGroup
{
    /// <summary>
    /// Adds the couplers that reach over a joint. A coupler's moment about its driven joint balances what acts beyond:
    /// clockwise ∂Π/∂q₃ at the DIP; ∂Π/∂q₂ + (dq₃/dq₂)·∂Π/∂q₃ at the PIP.
    /// </summary>
    private void AddCouplers(int lane, int j, ref Vector2D load, ref Vector2D slope)
    {
        double q1 = _q[0][lane], q2 = _q[1][lane], q3 = _q[2][lane];
        double a1 = _chainA[lane];
        if (_pip[lane].IsFourBar && j <= 1)
        {
            _dip[lane].TryEvaluate(q2, out _, out double b1, out double b2);
            double moment = _gradient[1][lane] + b1 * _gradient[2][lane] + StopMoment(lane, 1);
            double rate = RowRate(lane, 1) + b1 * RowRate(lane, 2) + b2 * a1 * _gradient[2][lane];
            Couple(_pip[lane].Line(q1, q2, a1), Along(lane, 0), 1, moment, rate, ref load, ref slope);
        }

        if (_dip[lane].IsFourBar && !_dipFused[lane] && j >= 1)
        {
            _dip[lane].TryEvaluate(q2, out _, out double b1, out _);
            double moment = _gradient[2][lane] + StopMoment(lane, 2);
            CouplerLine line = _dip[lane].Line(q2, q3, b1);
            line = line with { UnitRate = a1 * line.UnitRate, LeverRate = a1 * line.LeverRate };
            Couple(line, Along(lane, 1), 1 + a1, moment, RowRate(lane, 2), ref load, ref slope);
        }
    }

    /// <summary>d(∂Π/∂q₂) or d(∂Π/∂q₃) along the chain.</summary>
    private double RowRate(int lane, int row)
    {
        double first = _hessian[row == 1 ? 1 : 3][lane], second = _hessian[row == 1 ? 2 : 4][lane], third = _hessian[row == 1 ? 4 : 5][lane];
        return first + _chainA[lane] * second + _chainB[lane] * third;
    }

    /// <summary>Moment of the stop where the finger's range ends at the PIP (1) or DIP (2) and the stop acts.</summary>
    private double StopMoment(int lane, int driven)
    {
        int limiting = _limitingJoint[lane];
        if (limiting == 0 || limiting < driven || _q[0][lane] < _high[lane])
        {
            return 0;
        }

        double reaction = -_row[0][lane]; // pushes q₁ back; complete only after the finger has been evaluated
        double moment = reaction / (limiting == 1 ? _chainA[lane] : _chainB[lane]);
        _dip[lane].TryEvaluate(_q[1][lane], out _, out double b1, out _);
        return driven == limiting ? moment : b1 * moment;
    }

    private static void Couple(CouplerLine line, Vector2D along, double turnRate, double clockwise, double rate, ref Vector2D load, ref Vector2D slope)
    {
        // Force λ along the coupler: clockwise moment −λ·lever about the driven joint.
        double force = -clockwise / line.Lever;
        double forceRate = (-rate - force * line.LeverRate) / line.Lever;
        Vector2D unit = line.Unit.X * along + line.Unit.Y * along.Perpendicular;
        Vector2D turned = line.UnitRate.X * along + line.UnitRate.Y * along.Perpendicular;
        load += force * unit;
        slope += forceRate * unit + force * (turned - turnRate * unit.Perpendicular);
    }
}
