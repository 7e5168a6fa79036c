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

        int f = cord - 2, nt = TrunkCount;
        double rate = 0;
        for (int a = Carriage; a < nt; a++)
        {
            rate += _leafSlopes[f * nt + a] * v[a];
        }

        for (int q = 0; q < Sizes[f]; q++)
        {
            rate -= _slopes[f * 3 + q] * v[Offsets[f] + q];
        }

        return rate;
    }
}
