using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Directional derivatives of what the path watches, at the last evaluation.</content>
internal sealed partial class FingerGroup
{
    /// <summary>Rate of a segment's overlap along a direction of the unknowns [m per unit].</summary>
    public double OverlapRate(int lane, int segment, ReadOnlySpan<double> v)
    {
        double v1 = v[_at[lane]], v2, v3;
        if (_coupled[lane])
        {
            v2 = _chainA[lane] * v1;
            v3 = _chainB[lane] * v1;
        }
        else
        {
            v2 = v[_at[lane] + 1];
            v3 = v[_at[lane] + 2];
        }

        int row = segment * (segment + 1) / 2;
        double rate = _slope[row][lane] * v1;
        rate += segment > 0 ? _slope[row + 1][lane] * v2 : 0;
        return segment > 1 ? rate + _slope[row + 2][lane] * v3 : rate;
    }

    /// <summary>Rate of a leaf's travel and of its finger's take-up [m per unit].</summary>
    public (double Leaf, double TakeUp) PullRates(int lane, ReadOnlySpan<double> v) => (LeafRate(v)[lane], TakeUpRate(v)[lane]);

    /// <summary>Rate of the slide of guide (−1) or of a joint.</summary>
    public double SlideRate(int lane, int joint, ReadOnlySpan<double> v) => joint < 0 ? TakeUpRate(v)[lane] : v[_at[lane] + joint];

    /// <summary>Rate of the upper bound of guide (−1) or joint, or of the lower one.</summary>
    public double BoundRate(int lane, int joint, bool upper, ReadOnlySpan<double> v)
    {
        Lane leaf = LeafRate(v);
        if (joint < 0)
        {
            double tension = _stiffness[lane] * (leaf[lane] - TakeUpRate(v)[lane]);
            return _tension[lane] <= 0 ? 0 : (upper ? _guideForward[lane] : _guideBack[lane]) * tension;
        }

        double rate = JointBoundRate(joint, v, leaf)[lane];
        return upper ? rate : -rate;
    }

    /// <summary>Rates of every place of the fingers along (v, θ rate 1).</summary>
    public void RubRates(ReadOnlySpan<double> v, ReadOnlySpan<RubbingPlace> places, RubRates rates)
    {
        Lane leaf = LeafRate(v), taken = TakeUpRate(v);
        _tensionRate = _stiffness * (leaf - taken);
        Lane pulled = Vector256.GreaterThan(_tension, Lane.Zero) & _tensionRate, ahead = _guideForward * pulled, back = _guideBack * pulled;
        for (int l = 0; l < Count && _anyGuide; l++)
        {
            int at = _guideAt[l];
            if (at >= 0)
            {
                rates.Set(at, places[at].Mode, places[at].Stiffness, taken[l], ahead[l], back[l]);
            }
        }

        for (int j = 0; j < Width && _anyJoint; j++)
        {
            Lane bound = JointBoundRate(j, v, leaf);
            for (int l = 0; l < Count; l++)
            {
                int at = _jointAt[Lanes * j + l];
                if (at >= 0)
                {
                    rates.Set(at, places[at].Mode, places[at].Stiffness, v[_at[l] + j], bound[l], -bound[l]);
                }
            }
        }
    }

    /// <summary>Finds the rates of the pulls' tensions along a direction of the unknowns.</summary>
    public void FindTensionRates(ReadOnlySpan<double> v) => _tensionRate = _stiffness * (LeafRate(v) - TakeUpRate(v));

    /// <summary>Rates of the overlaps of all segments [m per unit], lane·3 + segment.</summary>
    public void OverlapRates(ReadOnlySpan<double> v, Span<double> rates)
    {
        Lane v1 = Gather(v, 0), v2 = _chainA * v1, v3 = _chainB * v1;
        if (_anyAdaptive)
        {
            v2 = Vector256.ConditionalSelect(_adaptive, Gather(v, 1), v2);
            v3 = Vector256.ConditionalSelect(_adaptive, Gather(v, 2), v3);
        }

        Lane first = _slope[0] * v1, second = _slope[1] * v1 + _slope[2] * v2, third = _slope[3] * v1 + _slope[4] * v2 + _slope[5] * v3;
        for (int l = 0; l < Count; l++)
        {
            rates[3 * l] = first[l];
            rates[3 * l + 1] = second[l];
            rates[3 * l + 2] = third[l];
        }
    }

    /// <summary>Rates of the elongations of the pulls [m per unit].</summary>
    public void ElongationRates(ReadOnlySpan<double> v, Span<double> rates)
    {
        Lane rate = LeafRate(v) - TakeUpRate(v);
        for (int l = 0; l < Count; l++)
        {
            rates[l] = rate[l];
        }
    }

    private Lane _tensionRate;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane JointBoundRate(int j, ReadOnlySpan<double> v, Lane leaf)
    {
        Lane rate = _jointBoundPerLeaf[j] * _stiffness * leaf;
        for (int q = 0; q < Width; q++)
        {
            rate += _jointBoundOwn[3 * j + q] * Gather(v, q);
        }

        return rate;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane LeafRate(ReadOnlySpan<double> v)
    {
        Lane rate = default;
        for (int i = 0; i < _leaf.Length; i++)
        {
            rate += _leaf[i] * v[DriveEquations.Carriage + i];
        }

        return rate;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane TakeUpRate(ReadOnlySpan<double> v)
    {
        Lane rate = _take[0] * Gather(v, 0);
        return _anyAdaptive ? rate + _take[1] * Gather(v, 1) + _take[2] * Gather(v, 2) : rate;
    }
}
