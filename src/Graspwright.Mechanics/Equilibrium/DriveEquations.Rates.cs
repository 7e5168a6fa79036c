using System.Runtime.Intrinsics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Directional derivatives of what the path watches.</content>
internal sealed partial class DriveEquations
{
    /// <summary>Rate of the pull link's force along (φ rate, θ rate) [N per unit].</summary>
    public double PullForceRate(double phiRate, double thetaRate) => PullStiffness * (_pullSlope[0] * phiRate + _pullSlope[3] * thetaRate);

    /// <summary>Rate of a segment's overlap along a direction of the unknowns [m per unit].</summary>
    public double OverlapRate(int finger, int segment, ReadOnlySpan<double> v) => Group(finger, out int lane).OverlapRate(lane, segment, v);

    /// <summary>Rate of a cord's elongation along (v, θ rate 1): 0 pull link, 1 transfer link, then the fingers' pulls [m per unit].</summary>
    public double ElongationRate(int cord, ReadOnlySpan<double> v)
    {
        if (cord == 0)
        {
            return _pullSlope[0] * v[Phi] + _pullSlope[3];
        }

        if (cord == 1)
        {
            return _transferSlope[0] * v[0] + _transferSlope[1] * v[1] + _transferSlope[2] * v[2];
        }

        (double leaf, double takeUp) = Group(cord - 2, out int lane).PullRates(lane, v);
        return leaf - takeUp;
    }

    /// <summary>Rates of slide and of friction of all places along (v, θ rate 1).</summary>
    public void RubRates(ReadOnlySpan<double> v, Span<double> slides, Span<double> frictions)
    {
        double pull = _pullTurn[0] * v[Phi] + _pullTurn[3];
        double transfer = _transferTurn[0] * v[0] + _transferTurn[1] * v[1] + _transferTurn[2] * v[2];
        double crank = _crankSense * v[Phi];
        slides[AnchorPin] = pull - _forearmSense;
        slides[InputPin] = pull - crank;
        slides[OutputPin] = transfer - crank;
        slides[FulcrumPin] = v[Phi];
        slides[CarriagePin] = transfer;
        slides[RailPlace] = v[Carriage];
        slides[SlotPlace] = v[Shift];
        v.Slice(3, _bars.Length).CopyTo(slides[7..]);
        for (int i = 0; i < 7 + _bars.Length; i++)
        {
            ref RubbingPlace p = ref Places[i];
            frictions[i] = !p.Active ? 0 : p.Mode == 0 ? p.Stiffness * slides[i] : BoundRate(i, p.Mode > 0, v, 1);
        }

        foreach (FingerGroup group in _groups)
        {
            group.RubRates(v, Places, slides, frictions);
        }
    }

    /// <summary>Rate of a place's upper bound (or lower) along (v, θ rate) at the last evaluation.</summary>
    public double BoundRate(int place, bool upper, ReadOnlySpan<double> v, double thetaRate)
    {
        if (place < 7)
        {
            double rate = Vector256.Sum(_trunkBound[place] * Vector256.Create(v[0], v[1], v[2], thetaRate));
            return upper ? rate : -rate;
        }

        if (place < 7 + _bars.Length)
        {
            double rate = BarBoundRate(place - 7, v);
            return upper ? rate : -rate;
        }

        int f = _placeFinger[place];
        return Group(f, out int lane).BoundRate(lane, place - _firstJoint[f], upper, v);
    }

    private double BarBoundRate(int b, ReadOnlySpan<double> v)
    {
        (double first, double second) = BarEnds(b);
        (double perFirst, double perSecond) = BarBoundSlopes(b, first, second);
        double rate = 0;
        foreach (FingerGroup group in _groups)
        {
            (double one, double other) = group.BarEndRates(b, v);
            rate += perFirst * one + perSecond * other;
        }

        return rate;
    }
}
