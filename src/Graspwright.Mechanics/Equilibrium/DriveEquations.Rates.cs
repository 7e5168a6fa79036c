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

    /// <summary>Rates of slide, of friction and of both bounds of all places along (v, θ rate 1).</summary>
    public void RubRates(ReadOnlySpan<double> v, RubRates rates)
    {
        double pull = _pullTurn[0] * v[Phi] + _pullTurn[3];
        double transfer = _transferTurn[0] * v[0] + _transferTurn[1] * v[1] + _transferTurn[2] * v[2];
        double crank = _crankSense * v[Phi];
        Span<double> slides = rates.Slide;
        slides[AnchorPin] = pull - _forearmSense;
        slides[InputPin] = pull - crank;
        slides[OutputPin] = transfer - crank;
        slides[FulcrumPin] = v[Phi];
        slides[CarriagePin] = transfer;
        slides[RailPlace] = v[Carriage];
        slides[SlotPlace] = v[Shift];
        v.Slice(3, _bars.Length).CopyTo(slides[7..]);
        foreach (FingerGroup group in _groups)
        {
            group.RubRates(v, Places, rates);
        }

        for (int i = 0; i < 7 + _bars.Length; i++)
        {
            ref RubbingPlace p = ref Places[i];
            if (p.Active)
            {
                double bound = i < 7 ? TrunkBoundRate(i, v, 1) : BarBoundRate(i - 7);
                rates.Set(i, p.Mode, p.Stiffness, slides[i], bound, -bound);
            }
        }
    }

    /// <summary>Rates of the overlaps of all segments along a direction of the unknowns [m per unit], finger·3 + segment.</summary>
    public void OverlapRates(ReadOnlySpan<double> v, Span<double> rates)
    {
        for (int g = 0; g < _groups.Length; g++)
        {
            _groups[g].OverlapRates(v, rates[(3 * FingerGroup.Lanes * g)..]);
        }
    }

    /// <summary>Rates of the elongations of the fingers' pulls [m per unit].</summary>
    public void PullRates(ReadOnlySpan<double> v, Span<double> rates)
    {
        for (int g = 0; g < _groups.Length; g++)
        {
            _groups[g].ElongationRates(v, rates[(FingerGroup.Lanes * g)..]);
        }
    }

    /// <summary>Rate of a place's upper bound (or lower) along (v, θ rate) at the last evaluation.</summary>
    public double BoundRate(int place, bool upper, ReadOnlySpan<double> v, double thetaRate)
    {
        if (place < 7)
        {
            double rate = TrunkBoundRate(place, v, thetaRate);
            return upper ? rate : -rate;
        }

        if (place < 7 + _bars.Length)
        {
            foreach (FingerGroup group in _groups)
            {
                group.FindTensionRates(v);
            }

            double rate = BarBoundRate(place - 7);
            return upper ? rate : -rate;
        }

        int f = _placeFinger[place];
        return Group(f, out int lane).BoundRate(lane, place - _firstJoint[f], upper, v);
    }

    private double TrunkBoundRate(int place, ReadOnlySpan<double> v, double thetaRate) =>
        Vector256.Sum(_trunkBound[place] * Vector256.Create(v[0], v[1], v[2], thetaRate));

    /// <summary>Rate of a bar's bound along the direction that the pulls' rates were last asked for.</summary>
    private double BarBoundRate(int b)
    {
        (double first, double second) = BarEnds(b);
        (double perFirst, double perSecond) = BarBoundSlopes(b, first, second);
        double rate = 0;
        foreach (FingerGroup group in _groups)
        {
            (double one, double other) = group.BarEndRates(b);
            rate += perFirst * one + perSecond * other;
        }

        return rate;
    }
}
