namespace Graspwright.Mechanics.Equilibrium;

/// <content>Directional derivatives of what the path watches.</content>
internal sealed partial class DriveEquations
{
    /// <summary>Rate of the pull link's force along (φ rate, θ rate) [N per unit].</summary>
    public double PullForceRate(double phiRate, double thetaRate) => PullStiffness * (_lPhi * phiRate + _lTheta * thetaRate);

    /// <summary>Rate of a segment's overlap along a direction of the unknowns [m per unit].</summary>
    public double OverlapRate(int finger, int segment, ReadOnlySpan<double> v)
    {
        int o = Offsets[finger];
        double v1 = v[o], v2, v3;
        if (_isCoupled[finger])
        {
            v2 = _chain[finger * 4] * v1;
            v3 = _chain[finger * 4 + 1] * v1;
        }
        else
        {
            v2 = v[o + 1];
            v3 = v[o + 2];
        }

        FingerGeometry g = _geometry[finger];
        if (ContactForce[finger * 3 + segment] == 0)
        {
            Meet(g, segment);
        }

        return g.Slope(segment, 0) * v1 + g.Slope(segment, 1) * v2 + g.Slope(segment, 2) * v3;
    }

    /// <summary>Rate of a cord's elongation along (v, θ rate 1): 0 pull link, 1 transfer link, then the fingers' pulls [m per unit].</summary>
    public double ElongationRate(int cord, ReadOnlySpan<double> v)
    {
        if (cord == 0)
        {
            return _lPhi * v[Phi] + _lTheta;
        }

        if (cord == 1)
        {
            return _m1[0] * v[0] + _m1[1] * v[1] + _m1[2] * v[2];
        }

        int f = cord - 2;
        return LeafRate(f, v) - TakeUpRate(f, v);
    }

    /// <summary>Rate of a leaf's travel.</summary>
    private double LeafRate(int f, ReadOnlySpan<double> v)
    {
        int nt = TrunkCount;
        double rate = 0;
        foreach (int a in _leafUnknowns.AsSpan(f * nt, _leafBarCount[f] + 1))
        {
            rate += _leafSlopes[f * nt + a] * v[a];
        }

        return rate;
    }

    /// <summary>Rate of a finger's take-up.</summary>
    private double TakeUpRate(int f, ReadOnlySpan<double> v)
    {
        double rate = 0;
        for (int q = 0; q < Sizes[f]; q++)
        {
            rate += _slopes[f * 3 + q] * v[Offsets[f] + q];
        }

        return rate;
    }

    /// <summary>Slides of all places along (v, θ rate 1).</summary>
    public void SlideRates(ReadOnlySpan<double> v, Span<double> rates)
    {
        double pull = _aPhi * v[Phi] + _aTheta;
        double transfer = _b1[0] * v[0] + _b1[1] * v[1] + _b1[2] * v[2];
        double crank = _crankSense * v[Phi];
        rates[AnchorPin] = pull - _forearmSense;
        rates[InputPin] = pull - crank;
        rates[OutputPin] = transfer - crank;
        rates[FulcrumPin] = v[Phi];
        rates[CarriagePin] = transfer;
        rates[RailPlace] = v[Carriage];
        rates[SlotPlace] = v[Shift];
        for (int b = 0; b < _bars.Length; b++)
        {
            rates[7 + b] = v[3 + b];
        }

        for (int f = 0; f < _fingers.Length; f++)
        {
            rates[_guide[f]] = TakeUpRate(f, v);
            for (int q = 0; q < Sizes[f]; q++)
            {
                rates[_firstJoint[f] + q] = v[Offsets[f] + q];
            }
        }
    }

    /// <summary>Rate of a place's upper bound (or lower) along (v, θ rate) at the last evaluation.</summary>
    public double BoundRate(int place, bool upper, ReadOnlySpan<double> v, double thetaRate)
    {
        if (place <= InputPin)
        {
            double radius = _drive.Friction.Pin * (place == AnchorPin ? _drive.PullLink.AnchorPinRadius : _drive.PullLink.CrankPinRadius);
            return (upper ? radius : -radius) * Math.Sign(PullForce) * PullForceRate(v[Phi], thetaRate);
        }

        if (place < 7)
        {
            int at = place * 4;
            double rate = _trunkBound[at] * v[0] + _trunkBound[at + 1] * v[1] + _trunkBound[at + 2] * v[2] + _trunkBound[at + 3] * thetaRate;
            return upper ? rate : -rate;
        }

        if (place < 7 + _bars.Length)
        {
            double rate = BarBoundRate(place - 7, v);
            return upper ? rate : -rate;
        }

        int f = _placeFinger[place];
        double tension = LeafStiffness[f] * (LeafRate(f, v) - TakeUpRate(f, v));
        if (place == _guide[f])
        {
            return LeafTension[f] <= 0 ? 0 : (upper ? _guideForward[f] : _guideBack[f]) * tension;
        }

        double own = 0;
        int joint = place - _firstJoint[f];
        for (int q = 0; q < Sizes[f]; q++)
        {
            own += _jointBound[(f * 3 + joint) * 4 + q] * v[Offsets[f] + q];
        }

        own += _jointBound[(f * 3 + joint) * 4 + 3] * LeafStiffness[f] * LeafRate(f, v);
        return upper ? own : -own;
    }

    private double BarBoundRate(int b, ReadOnlySpan<double> v)
    {
        Drive.BalanceBar bar = _bars[b];
        (double first, double second) = BarEnds(b);
        double both = bar.PivotPinRadius * Math.Sign(first + second), mu = _drive.Friction.Pin, rate = 0;
        for (int f = 0; f < _fingers.Length; f++)
        {
            int end = EndOf(f, b);
            double weight = end == 1 ? both + bar.FirstPinRadius * Math.Sign(first) : end == 2 ? both + bar.SecondPinRadius * Math.Sign(second) : 0;
            rate += weight == 0 ? 0 : mu * weight * LeafStiffness[f] * (LeafRate(f, v) - TakeUpRate(f, v));
        }

        return rate;
    }

    private readonly double[] _trunkBound = new double[7 * 4];
    private double[] _jointBound = []; // (finger·3 + unknown)·4: by own unknowns, by T₁ through the trunk
    private int[] _placeFinger = [];
}
