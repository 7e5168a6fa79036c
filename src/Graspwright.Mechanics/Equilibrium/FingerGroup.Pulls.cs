using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>From unknowns to flexions, take-up of the pulls, and what the fingers put into residual and Jacobian.</content>
internal sealed partial class FingerGroup
{
    private Lane _chainA, _chainB, _chainA2, _chainB2; // dq₂/dq₁, dq₃/dq₁ of coupled fingers and their derivatives by q₁
    private readonly Lane[] _take = new Lane[3];                                // ∂w/∂q over the finger's unknowns
    private Lane _taken, _takeCurve;                    // w and ∂²w/∂q₁²
    private Lane _travel, _elongation, _stiffness, _tension;
    private Lane[] _leaf = [], _leafArm = [];           // ∂travel/∂ carriage and bars; signed arm at each bar, 0 where not behind it
    private Lane[] _firstEnd = [], _secondEnd = [];     // 1 where the finger hangs on that end of a bar
    private readonly Lane[] _row = new Lane[3];                                 // residual of the finger's unknowns

    /// <summary>Says behind which bars each finger hangs.</summary>
    /// <param name="bars">Number of bars.</param>
    /// <param name="arms">Signed arm of finger f at bar b at f·bars + b [m]: minus the first arm, plus the second, 0 where it is not behind the bar.</param>
    /// <param name="ends">1, 2 = behind the first, second end of the bar; 0 = not behind it.</param>
    public void Hang(int bars, ReadOnlySpan<double> arms, ReadOnlySpan<int> ends)
    {
        _leaf = new Lane[1 + bars];
        _leaf[0] = Lane.One;
        _leafArm = new Lane[bars];
        _firstEnd = new Lane[bars];
        _secondEnd = new Lane[bars];
        for (int b = 0; b < bars; b++)
        {
            for (int l = 0; l < Count; l++)
            {
                int at = (_first + l) * bars + b;
                _leafArm[b] = With(_leafArm[b], l, arms[at]);
                _firstEnd[b] = With(_firstEnd[b], l, ends[at] == 1 ? 1 : 0);
                _secondEnd[b] = With(_secondEnd[b], l, ends[at] == 2 ? 1 : 0);
            }
        }
    }

    /// <summary>Flexions from the unknowns.</summary>
    private void Bend(ReadOnlySpan<double> x)
    {
        Lane q1 = Gather(x, 0), q2 = _pipRatio * q1, q3 = _dipRatio * q2;
        _chainA = _pipRatio;
        _chainB = _dipRatio * _pipRatio;
        for (int l = 0; l < Count && _anyFourBar; l++)
        {
            if (_pip[l].IsFourBar || _dip[l].IsFourBar)
            {
                _pip[l].TryEvaluate(q1[l], out double second, out double a1, out double a2);
                _dip[l].TryEvaluate(second, out double third, out double b1, out double b2);
                q2 = With(q2, l, second);
                q3 = With(q3, l, third);
                _chainA = With(_chainA, l, a1);
                _chainB = With(_chainB, l, b1 * a1);
                _chainA2 = With(_chainA2, l, a2);
                _chainB2 = With(_chainB2, l, b2 * a1 * a1 + b1 * a2);
            }
        }

        if (_anyAdaptive)
        {
            q2 = Vector256.ConditionalSelect(_adaptive, Gather(x, 1), q2);
            q3 = Vector256.ConditionalSelect(_adaptive, Gather(x, 2), q3);
        }

        Place(q1, q2, q3);
    }

    /// <summary>Lanes with one of them replaced.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lane With(Lane lanes, int lane, double value) =>
        Vector256.ConditionalSelect(Vector256.Equals(Vector256.Create(0.0, 1, 2, 3), Vector256.Create((double)lane)), Vector256.Create(value), lanes);

    /// <summary>Unknown q of each finger; for a coupled finger its only one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Gather(ReadOnlySpan<double> x, int q) =>
        Vector256.Create(x[_at[4 * q]], x[_at[4 * q + 1]], x[_at[4 * q + 2]], x[_at[4 * q + 3]]);

    /// <summary>Take-up w(q), slope and curvature over the finger's unknowns. Only a drive pin bends it.</summary>
    private void TakeUp()
    {
        Lane q1 = _q[0];
        _arm.CopyTo(_take, 0);
        _taken = _arm[0] * q1;
        if (_anyDrivePin)
        {
            SineAndCosine.Of(_drivePinRest - q1, out Lane sin, out Lane cos);
            VectorLanes at = new(_drivePinRadius * cos, _drivePinRadius * sin);
            Lane along = at.Dot(_pinLine);
            _taken = Vector256.ConditionalSelect(_hasDrivePin, along - _drivePinAtRest, _taken);
            _take[0] = Vector256.ConditionalSelect(_hasDrivePin, -at.Cross(_pinLine), _take[0]);
            _takeCurve = _hasDrivePin & -along;
        }

        if (_anyAdaptive)
        {
            _taken += _arm[1] * _q[1] + _arm[2] * _q[2];
        }
    }

    /// <summary>The pulls: tension, and what it puts into the trunk's residual and Jacobian and into the fingers' own.</summary>
    private void AddPulls(ReadOnlySpan<double> tiltSin, ReadOnlySpan<double> tiltCos, FingerState state, ArrowMatrix.Fingers block, Span<double> a, int stride)
    {
        int bars = _leafArm.Length;
        Lane travel = Vector256.Create(state.X[DriveEquations.Carriage]);
        for (int b = 0; b < bars; b++)
        {
            travel += _leafArm[b] * tiltSin[b];
            _leaf[1 + b] = _leafArm[b] * tiltCos[b];
        }

        _travel = travel;
        _elongation = travel - _taken - _slack;
        Lane taut = state.ModesByValue ? Vector256.GreaterThan(_elongation, Lane.Zero) : Chosen(state.Taut);
        _stiffness = Chosen(state.Attached) & (_rod | taut) & _pullStiffness;
        _tension = _stiffness * _elongation;
        _stored += Vector256.Create(0.5) * _tension * _elongation;

        Span<double> r = state.R;
        const int carriage = DriveEquations.Carriage;
        for (int i = 0; i <= bars; i++)
        {
            Lane pulled = _stiffness * _leaf[i];
            r[carriage + i] += Vector256.Sum(_tension * _leaf[i]);
            int at = (carriage + i) * stride + carriage;
            for (int j = 0; j < i; j++)
            {
                double sum = Vector256.Sum(pulled * _leaf[j]);
                a[at + j] += sum;
                a[(carriage + j) * stride + carriage + i] += sum;
            }

            a[at + i] += Vector256.Sum(i == 0 ? pulled : pulled * _leaf[i] - _tension * _leafArm[i - 1] * tiltSin[i - 1]);
        }

        Own(block);
        int width = Width;
        for (int q = 0; q < width; q++)
        {
            Lane cross = -_stiffness * _take[q];
            for (int i = 0; i <= bars; i++)
            {
                Lane entry = cross * _leaf[i];
                block.B[i * 3 + q] = entry;
                block.C[i * 3 + q] = entry;
            }
        }
    }

    /// <summary>All bits set in the lanes whose finger is chosen.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Chosen(bool[] fingers)
    {
        long first = fingers[_first] ? -1 : 0;
        long second = Count > 1 && fingers[_first + 1] ? -1 : 0;
        long third = Count > 2 && fingers[_first + 2] ? -1 : 0;
        long fourth = Count > 3 && fingers[_first + 3] ? -1 : 0;
        return Vector256.Create(first, second, third, fourth).AsDouble();
    }

    /// <summary>Residual and Hessian of the finger's own energy and of its pull, over its own unknowns.</summary>
    private void Own(ArrowMatrix.Fingers block)
    {
        Lane a = _chainA, b = _chainB, two = Vector256.Create(2.0);
        Span<Lane> d = block.D;
        Lane pulled = _stiffness * _take[0];
        _row[0] = _gradient[0] + a * _gradient[1] + b * _gradient[2] - _tension * _take[0];
        d[0] = _hessian[0] + a * a * _hessian[2] + b * b * _hessian[5] + two * (a * _hessian[1] + b * _hessian[3] + a * b * _hessian[4])
            + _gradient[1] * _chainA2 + _gradient[2] * _chainB2 + pulled * _take[0] - _tension * _takeCurve;
        if (!_anyAdaptive)
        {
            return;
        }

        // A coupled lane keeps unit rows for the unknowns that it lacks.
        Lane unit = Vector256.AndNot(Lane.One, _adaptive), second = _stiffness * _take[1];
        _row[1] = _adaptive & (_gradient[1] - _tension * _take[1]);
        _row[2] = _adaptive & (_gradient[2] - _tension * _take[2]);
        d[1] = d[3] = _adaptive & (_hessian[1] + pulled * _take[1]);
        d[2] = d[6] = _adaptive & (_hessian[3] + pulled * _take[2]);
        d[4] = (_adaptive & (_hessian[2] + second * _take[1])) + unit;
        d[5] = d[7] = _adaptive & (_hessian[4] + second * _take[2]);
        d[8] = (_adaptive & (_hessian[5] + _stiffness * _take[2] * _take[2])) + unit;
    }
}
