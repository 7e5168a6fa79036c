using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Loads on the joint pins of the fingers.</content>
internal sealed partial class DriveEquations
{
    private readonly Vector2D[] _load = new Vector2D[3];
    private readonly Vector2D[] _loadSlope = new Vector2D[9]; // by (q₁, q₂, q₃) or, coupled, by q₁ in entry j·3
    private readonly Vector2D[] _loadPull = new Vector2D[3];   // direction that the pull enters with

    /// <summary>Tension behind each guide, at the finger T₂ [N].</summary>
    public double[] FingerTension { get; private set; } = [];

    /// <summary>Load on a joint pin [N].</summary>
    /// <remarks>
    /// MCP: contact forces on the whole finger, the pull along its line, and the force of a coupler that starts on the
    /// palm. PIP, DIP of an adaptive finger: contact forces beyond and the pull along the segment before. Coupled by
    /// ratio: contact forces beyond, a lower bound. By four-bar: contact forces beyond and the couplers that reach over
    /// the joint, from the moment balance of the bodies beyond it.
    /// </remarks>
    public void JointLoads(int f, Span<double> loads)
    {
        RestoreOwnGradient(f);
        for (int j = 0; j < 3; j++)
        {
            FindLoad(f, _fingers[f], j);
            loads[j] = _load[j].Length;
        }
    }

    /// <summary>Friction bound of a joint unknown [N·m] and its change.</summary>
    /// <returns>∂bound/∂T₂ through the trunk.</returns>
    private double JointBound(int f, Finger finger, int unknown, ReadOnlySpan<double> t2Own, out double bound, double[] gradient)
    {
        Array.Clear(gradient);
        double mu = _drive.Friction.Pin;
        if (!_isCoupled[f])
        {
            double radius = mu * finger.PinRadius[unknown];
            bound = finger.Drag[unknown];
            if (radius == 0)
            {
                return 0;
            }

            FindLoad(f, finger, unknown);
            double size = _load[unknown].Length;
            bound += radius * size;
            if (size == 0)
            {
                return 0;
            }

            Vector2D unit = (1 / size) * _load[unknown];
            double along = unit.Dot(_loadPull[unknown]);
            for (int q = 0; q < 3; q++)
            {
                gradient[q] = radius * (unit.Dot(_loadSlope[unknown * 3 + q]) + along * t2Own[q]);
            }

            return radius * along;
        }

        bound = 0;
        double perTension = 0;
        for (int j = 0; j < 3; j++)
        {
            double turn = j == 0 ? 1 : _chain[f * 4 + j - 1], turnSlope = j == 0 ? 0 : _chain[f * 4 + j + 1];
            double share = Math.Abs(turn), shareSlope = turn < 0 ? -turnSlope : turnSlope;
            bound += share * finger.Drag[j];
            gradient[0] += shareSlope * finger.Drag[j];
            double radius = mu * finger.PinRadius[j];
            if (radius == 0 || (j > 0 && CarriesNothing(f, j)))
            {
                continue;
            }

            FindLoad(f, finger, j);
            double size = _load[j].Length;
            bound += share * radius * size;
            gradient[0] += shareSlope * radius * size;
            if (size == 0)
            {
                continue;
            }

            Vector2D unit = (1 / size) * _load[j];
            double along = unit.Dot(_loadPull[j]);
            gradient[0] += share * radius * (unit.Dot(_loadSlope[j * 3]) + along * t2Own[0]);
            perTension += share * radius * along;
        }

        return perTension;
    }

    /// <summary>Whether no contact and no coupler loads a pin beyond the knuckle of a coupled finger.</summary>
    private bool CarriesNothing(int f, int j) =>
        !_pip[f].IsFourBar && !_dip[f].IsFourBar
        && ContactForce[f * 3 + 2] == 0 && (j == 2 || ContactForce[f * 3 + 1] == 0);

    /// <summary>Load vector of joint j, its slopes by the joints (T₂ held), and the direction of the pull in it.</summary>
    private void FindLoad(int f, Finger finger, int j)
    {
        FingerGeometry geometry = _geometry[f];
        Vector2D load = default;
        Span<Vector2D> slope = stackalloc Vector2D[3];
        slope.Clear();
        for (int i = j; i < 3; i++)
        {
            double force = ContactForce[f * 3 + i];
            if (force == 0)
            {
                continue;
            }

            load += force * geometry.Normal(i);
            for (int a = 0; a < 3; a++)
            {
                slope[a] += finger.PadStiffness * geometry.Slope(i, a) * geometry.Normal(i) + force * geometry.NormalSlope(i, a);
            }
        }

        _loadPull[j] = PullDirection(f, finger, j);
        load += FingerTension[f] * _loadPull[j];
        if (!_isCoupled[f])
        {
            // The pull along the segment before turns with the joints before: d(−e)/dq = +e⊥.
            for (int a = 0; a < j; a++)
            {
                slope[a] += FingerTension[f] * geometry.Along(j - 1).Perpendicular;
            }

            for (int a = 0; a < 3; a++)
            {
                _loadSlope[j * 3 + a] = slope[a];
            }

            _load[j] = load;
            return;
        }

        Vector2D along = slope[0] + _chain[f * 4] * slope[1] + _chain[f * 4 + 1] * slope[2];
        AddCouplers(f, j, ref load, ref along);
        _load[j] = load;
        _loadSlope[j * 3] = along;
    }

    private Vector2D PullDirection(int f, Finger finger, int j)
    {
        if (j == 0)
        {
            return finger.DrivePin is { } pin ? Vector2D.AtAngle(pin.LineRadians) : _railDirection;
        }

        return _isCoupled[f] ? default : -_geometry[f].Along(j - 1);
    }

    /// <summary>
    /// Adds the couplers that reach over a joint. A coupler's moment about its driven joint balances what acts beyond:
    /// clockwise ∂Π/∂q₃ at the DIP; ∂Π/∂q₂ + (dq₃/dq₂)·∂Π/∂q₃ at the PIP.
    /// </summary>
    private void AddCouplers(int f, int j, ref Vector2D load, ref Vector2D slope)
    {
        if (!_pip[f].IsFourBar && !_dip[f].IsFourBar)
        {
            return;
        }

        double q1 = Joint[f * 3], q2 = Joint[f * 3 + 1], q3 = Joint[f * 3 + 2];
        double a1 = _chain[f * 4], dq3 = _chain[f * 4 + 1];
        if (_pip[f].IsFourBar && j <= 1)
        {
            _dip[f].TryEvaluate(q2, out _, out double b1, out double b2);
            double moment = _g3[1] + b1 * _g3[2] + StopMoment(f, 1);
            double rate = RowRate(1, a1, dq3) + b1 * RowRate(2, a1, dq3) + b2 * a1 * _g3[2];
            Couple(_pip[f].Line(q1, q2, a1), _geometry[f].Along(0), 1, moment, rate, ref load, ref slope);
        }

        if (_dip[f].IsFourBar && !_dipFused[f] && j >= 1)
        {
            _dip[f].TryEvaluate(q2, out _, out double b1, out _);
            double moment = _g3[2] + StopMoment(f, 2);
            CouplerLine line = _dip[f].Line(q2, q3, b1);
            line = line with { UnitRate = a1 * line.UnitRate, LeverRate = a1 * line.LeverRate };
            Couple(line, _geometry[f].Along(1), 1 + a1, moment, RowRate(2, a1, dq3), ref load, ref slope);
        }
    }

    private double RowRate(int row, double a1, double dq3) => _h3[row * 3] + a1 * _h3[row * 3 + 1] + dq3 * _h3[row * 3 + 2];

    /// <summary>Moment of the stop where the finger's range ends at the PIP (1) or DIP (2) and the stop acts.</summary>
    private double StopMoment(int f, int driven)
    {
        int o = Offsets[f];
        if (_limitingJoint[f] == 0 || _limitingJoint[f] < driven || X[o] < High[o])
        {
            return 0;
        }

        double reaction = -R[o]; // pushes q₁ back; R is complete only after the finger has been added
        double perJoint = _limitingJoint[f] == 1 ? _chain[f * 4] : _chain[f * 4 + 1];
        double moment = reaction / perJoint;
        _dip[f].TryEvaluate(Joint[f * 3 + 1], out _, out double b1, out _);
        return driven == _limitingJoint[f] ? moment : b1 * moment;
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

    /// <summary>Gradient of a finger's own energy at the last evaluation, as the loads need it.</summary>
    private void RestoreOwnGradient(int f)
    {
        if (!_pip[f].IsFourBar && !_dip[f].IsFourBar)
        {
            return; // only couplers ask for it
        }

        Array.Clear(_h3);
        for (int j = 0; j < 3; j++)
        {
            _g3[j] = _springPreload[f * 3 + j] + _springRate[f * 3 + j] * Joint[f * 3 + j];
            for (int i = 0; i < 3; i++)
            {
                _g3[j] += ContactForce[f * 3 + i] == 0 ? 0 : ContactForce[f * 3 + i] * _geometry[f].Slope(i, j);
            }
        }
    }
}
