using System.Runtime.CompilerServices;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Loads on the joint pins.</content>
/// <remarks>
/// MCP: contact forces on the whole finger, the pull along its line, and the force of a coupler that starts on the palm.
/// PIP, DIP of an adaptive finger: contact forces beyond and the pull along the segment before. Coupled by ratio:
/// contact forces beyond, a lower bound. By four-bar: contact forces beyond and the couplers that reach over the joint,
/// from the moment balance of the bodies beyond it.
/// </remarks>
internal sealed partial class FingerGroup
{
    private readonly VectorLanes[] _load = new VectorLanes[3];        // at the last evaluation
    private readonly VectorLanes[] _loadSlope = new VectorLanes[6];   // ∂/∂q_a of the contact forces on segments from i on: entry i(i + 1)/2 + a
    private readonly VectorLanes[] _couplerByFirst = new VectorLanes[3]; // what couplers add to ∂load/∂q₁

    /// <summary>Loads on the joint pins at the last evaluation [N]: lane·3 + joint, 0 MCP, 1 PIP, 2 DIP.</summary>
    public void Loads(Span<double> loads)
    {
        for (int j = 0; j < 3; j++)
        {
            Lane size = PushAt(j).Length;
            for (int l = 0; l < Count; l++)
            {
                loads[3 * l + j] = IsFourBar(l) ? CoupledLoad(l, j) : size[l];
            }
        }
    }

    private double CoupledLoad(int lane, int joint)
    {
        Vector2D load = PushAt(joint)[lane], rate = default;
        AddCouplers(lane, joint, ref load, ref rate);
        return load.Length;
    }

    private bool IsFourBar(int lane) => _pip[lane].IsFourBar || _dip[lane].IsFourBar;

    /// <summary>Contact forces beyond a joint and the pull in it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private VectorLanes PushAt(int joint)
    {
        VectorLanes push = joint == 0 ? _fingerTension * _pullDirection : _fingerTension * PullAt(joint);
        for (int i = 2; i >= joint && _hasObject; i--)
        {
            push += _force[i] * _normal[i];
        }

        return push;
    }

    /// <summary>Direction of the pull in the pin of the PIP or DIP: back along the segment before, of an adaptive finger.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private VectorLanes PullAt(int joint)
    {
        VectorLanes before = _along[joint - 1];
        return new(_adaptive & -before.X, _adaptive & -before.Y);
    }

    /// <summary>Loads and their slopes by the flexions, contacts gathered from the tip.</summary>
    private void FindLoads()
    {
        VectorLanes push = default;
        for (int j = 2; j >= 0; j--)
        {
            if (_hasObject)
            {
                push += _force[j] * _normal[j];
            }

            _load[j] = push + _fingerTension * (j == 0 ? _pullDirection : PullAt(j));
        }

        if (_hasObject)
        {
            _loadSlope[5] = _pushSlope[5];
            _loadSlope[4] = _pushSlope[4];
            _loadSlope[3] = _pushSlope[3];
            _loadSlope[2] = _pushSlope[2] + _pushSlope[4];
            _loadSlope[1] = _pushSlope[1] + _pushSlope[3];
            _loadSlope[0] = _pushSlope[0] + _loadSlope[1];
        }

        for (int l = 0; l < Count && _anyFourBar; l++)
        {
            if (IsFourBar(l))
            {
                FindCouplers(l);
            }
        }
    }

    /// <summary>∂load/∂q_q at joint j of an adaptive finger, T₂ held.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private VectorLanes LoadSlope(int j, int q)
    {
        if (q >= j)
        {
            return _loadSlope[(q * (q + 1) / 2) + q];
        }

        // The pull along the segment before turns with the joints before: d(−e)/dq = +e⊥.
        Lane pull = _adaptive & _fingerTension;
        return _loadSlope[(j * (j + 1) / 2) + q] + pull * _along[j - 1].Perpendicular;
    }

    /// <summary>∂load/∂ first unknown at joint j, T₂ held: along the chain of a coupled finger, by q₁ alone of an adaptive one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private VectorLanes LoadByFirst(int j)
    {
        VectorLanes byFirst = LoadSlope(j, 0) + _chainA * LoadSlope(j, 1) + _chainB * LoadSlope(j, 2);
        return _anyFourBar ? byFirst + _couplerByFirst[j] : byFirst;
    }

    private void FindCouplers(int lane)
    {
        for (int j = 0; j < 3; j++)
        {
            Vector2D load = default, rate = default;
            AddCouplers(lane, j, ref load, ref rate);
            VectorLanes before = _load[j], byFirst = _couplerByFirst[j];
            _load[j] = new(With(before.X, lane, before.X[lane] + load.X), With(before.Y, lane, before.Y[lane] + load.Y));
            _couplerByFirst[j] = new(With(byFirst.X, lane, rate.X), With(byFirst.Y, lane, rate.Y));
        }
    }
}
