using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>Peaks, give-back of the shift, width of the loop: what is read between states.</content>
internal sealed partial class PathFollower
{
    private void NotePeaks()
    {
        int k = 0;
        Peak(k++, Math.Abs(_eq.PullForce));
        Peak(k++, Math.Abs(_eq.TransferForce));
        Peak(k++, _eq.FulcrumLoad.Length);
        Peak(k++, Math.Abs(_eq.RailNormal));
        for (int b = 0; b < _eq.BarCount; b++)
        {
            (double first, double second) = _eq.BarEnds(b);
            Peak(k++, Math.Abs(first + second));
        }

        for (int f = 0; f < _eq.FingerCount; f++)
        {
            Peak(k++, Math.Abs(_eq.LeafTension[f]));
        }

        foreach (double load in _eq.JointLoads)
        {
            Peak(k++, load);
        }

        if (_eq.HasObject)
        {
            _eq.OverlapRates(_rateEnd, _overlapRate);
            for (int c = 0; c < _overlapRate.Length; c++)
            {
                NoteContactPeak(c);
            }
        }

        _thetaEarlierStill = _thetaLast;
        _thetaLast = _theta;
        NoteGiveBack();
    }

    /// <summary>Peak of a contact force, between states by the cubic piece that its rates give.</summary>
    private void NoteContactPeak(int c)
    {
        double force = _eq.ContactForce[c], rate = force > 0 ? _padStiffness[c / 3] * _overlapRate[c] : 0;
        _contactPeak[c] = Math.Max(_contactPeak[c], force);
        (double theta, double before, double rateBefore) = _contactBefore[c];
        double h = _theta - theta;
        if (_direction > 0 && h > 0 && rateBefore > 0 && rate <= 0 && before > 0)
        {
            _contactPeak[c] = Math.Max(_contactPeak[c], CubicPeak(before, force, h * rateBefore, h * rate));
        }

        _contactBefore[c] = (_theta, force, rate);
    }

    /// <summary>Greatest value on 0…1 of the cubic with given ends and end slopes, the first rising, the last falling.</summary>
    private static double CubicPeak(double first, double last, double rise, double fall)
    {
        double a = 2 * (first - last) + rise + fall, b = 3 * (last - first) - 2 * rise - fall;
        double root = Math.Sqrt(Math.Max(b * b - 3 * a * rise, 0));
        double x = Math.Clamp(-rise / (b - root), 0, 1); // b − root ≤ 0 here
        return first + x * (rise + x * (b + x * a));
    }

    private void Peak(int k, double force)
    {
        (double earlier, double last) = (_peakEarlier[k], _peakLast[k]);
        if (_smoothBefore && last >= earlier && last > force)
        {
            // The middle of three smooth states is the highest: the parabola through them tops it.
            double a = _thetaLast - _thetaEarlierStill, b = _theta - _thetaLast;
            double rise = (last - earlier) / a, fall = (force - last) / b, bend = (fall - rise) / (a + b);
            double slope = (rise * b + fall * a) / (a + b);
            double away = -slope / (2 * bend);
            Top(k, last + 0.5 * slope * away, _thetaLast + away);
        }

        Top(k, force, _theta);
        _peakEarlier[k] = last;
        _peakLast[k] = force;
    }

    private void Top(int k, double force, double theta)
    {
        if (force > _peaks[k])
        {
            _peaks[k] = force;
            _peakTheta[k] = theta;
            _peakOpening[k] = _direction < 0;
        }
    }

    /// <summary>−∫(∂s/∂d) dd while closing, by Simpson's rule between accepted states, the middle read from the tangents.</summary>
    private void NoteGiveBack()
    {
        if (_drive.Crank.Slot is null || _direction < 0)
        {
            return;
        }

        double phi = _eq.X[DriveEquations.Phi], d = _eq.X[DriveEquations.Shift], s = _eq.X[DriveEquations.Carriage], h = _theta - _giveTheta;
        if (d != _giveState.D)
        {
            (double phi0, double d0, double s0, double phiRate, double dRate, double sRate) = _giveState;
            double middlePhi = 0.5 * (phi0 + phi) + h / 8 * (phiRate - _rateEnd[DriveEquations.Phi]);
            double middleD = 0.5 * (d0 + d) + h / 8 * (dRate - _rateEnd[DriveEquations.Shift]);
            double middleS = 0.5 * (s0 + s) + h / 8 * (sRate - _rateEnd[DriveEquations.Carriage]);
            double middleRate = h > 0 ? 1.5 * (d - d0) / h - 0.25 * (dRate + _rateEnd[DriveEquations.Shift]) : 0;
            _shiftGiveBack -= h / 6 * (_eq.CarriagePerShift(phi0, d0, s0) * dRate
                + 4 * _eq.CarriagePerShift(middlePhi, middleD, middleS) * middleRate
                + _eq.CarriagePerShift(phi, d, s) * _rateEnd[DriveEquations.Shift]);
        }

        _giveTheta = _theta;
        _giveState = (phi, d, s, _rate[DriveEquations.Phi], _rate[DriveEquations.Shift], _rate[DriveEquations.Carriage]);
    }

    private (double Phi, double D, double S, double PhiRate, double DRate, double SRate) _giveState;
    private double _giveTheta;

    private void NoteMoment() => (_direction > 0 ? _closingMoments : _openingMoments).Add(_theta, _tau, _tauRate);

    /// <summary>The path leaves the last state with another slope than it came with.</summary>
    private void NoteNewSlope()
    {
        (_direction > 0 ? _closingMoments : _openingMoments).TurnLast(_tauRate);
        _giveState = _giveState with { PhiRate = _rate[DriveEquations.Phi], DRate = _rate[DriveEquations.Shift], SRate = _rate[DriveEquations.Carriage] };
    }

    /// <summary>Greatest τ_close − τ_open at the accepted states of the opening; the closing is read between its own by cubic pieces.</summary>
    private (double Max, double Theta) LargestLoop()
    {
        double max = 0, theta = 0;
        int k = _closingMoments.Count - 1;
        for (int i = 0; i < _openingMoments.Count; i++)
        {
            double at = _openingMoments.Theta(i);
            while (k > 1 && _closingMoments.Theta(k - 1) >= at)
            {
                k--;
            }

            if (k < 1)
            {
                break;
            }

            double width = _closingMoments.Within(k, at) - _openingMoments.Tau(i);
            if (width > max)
            {
                (max, theta) = (width, at);
            }
        }

        return (max, theta);
    }
}
