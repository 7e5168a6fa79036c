using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>Accepting states, switching modes, the wrist, locks, energy books.</content>
internal sealed partial class PathFollower
{
    private bool[] _baseFrozen = [];
    private bool[] _lockActed = [];
    private double _storedBefore, _work, _dissipated, _pullBefore, _stepWork, _stepFriction;
    private double _workIn, _dissipatedClosing, _lost, _restStored, _workBack, _dissipatedOpening;
    private const int SwitchLimit = 8; // times one mode may change at one wrist angle
    private const double BalanceShare = 6e-5; // of a step's work
    private const double BalanceFloor = 1e-8; // J

    private double GimbalDrag => _drive.Joint.HasGimbal ? _drive.Friction.Pin * _drive.Joint.GimbalPinRadius : 0;

    /// <summary>Moment that the wearer supplies: the drive's, and the gimbal's friction against the motion.</summary>
    private double Moment() => _eq.WristMoment + _direction * GimbalDrag * Math.Abs(_eq.PullForce);

    private double MomentRate(ReadOnlySpan<double> rate) =>
        _eq.WristMomentRate(rate[DriveEquations.Phi], 1)
        + _direction * GimbalDrag * Math.Sign(_eq.PullForce) * _eq.PullForceRate(rate[DriveEquations.Phi], 1);

    private double GiveSlope() => 1 / _drive.Joint.CuffStiffness + 1 / _drive.Joint.ShellStiffness;

    private double JointTravel(double theta, double tau)
    {
        double give = tau * GiveSlope();
        if (_direction < 0 && _endMoment > 0)
        {
            give *= 1 + 3 * _drive.Joint.GiveHysteresis * (1 - tau / _endMoment);
        }

        return theta + give;
    }

    private double Sense => _drive.Wrist.Direction == DrivingDirection.Flexion ? 1 : -1;

    private double CapacityAt(double travel) => _drive.Wrist.Capacity.At(_drive.Wrist.StartRadians + Sense * travel);

    private double CapacitySlope(double travel) => Sense * _drive.Wrist.Capacity.SlopeAt(_drive.Wrist.StartRadians + Sense * travel);

    private bool FingerHeld(int finger) => _eq.Frozen[_eq.Offsets[finger]];

    /// <summary>Whether work, stored energy and friction of the step agree; without friction there is nothing to refine.</summary>
    private bool Balanced()
    {
        if (!_eq.HasFriction)
        {
            return true;
        }

        return Math.Abs(_stepWork - _stepFriction - (_eq.Stored - _storedBefore)) <= BalanceShare * Math.Abs(_stepWork) + BalanceFloor;
    }

    /// <summary>Work of the wrist and work of friction over the step, by quadrature of fourth order: both ends with their slopes.</summary>
    private void StepBooks(double end)
    {
        double h = end - _theta, tau = Moment();
        _stepWork = 0.5 * h * (_tau + tau) + h * h / 12 * (_tauRate - MomentRate(_rateEnd));
        _stepFriction = 0.5 * Math.Abs(h) * GimbalDrag * (Math.Abs(_pullBefore) + Math.Abs(_eq.PullForce));
        if (!_eq.HasFriction)
        {
            return;
        }

        for (int i = 0; i < _eq.Places.Length; i++)
        {
            ref RubbingPlace p = ref _eq.Places[i];
            if (p.Active)
            {
                _stepFriction += CubicWork(
                    p.FrictionBefore, p.Friction, h * _rub.Friction[i], h * _rubEnd.Friction[i],
                    p.Slide - p.SlideBefore, h * _rub.Slide[i], h * _rubEnd.Slide[i]);
            }
        }
    }

    /// <summary>∫M dγ over a step, both cubics given by their ends and end slopes: Gauss's rule of three points is exact.</summary>
    private static double CubicWork(double m0, double m1, double mRate0, double mRate1, double turned, double rate0, double rate1)
    {
        double gap = m1 - m0, a = mRate0 + mRate1 - 2 * gap, b = gap - mRate0 - a;
        double c = rate0 + rate1 - 2 * turned, d = turned - rate0 - c;
        double At(double x) => (m0 + x * (mRate0 + x * (b + x * a))) * (rate0 + x * (2 * d + x * 3 * c));
        return (5 * At(GaussLow) + 8 * At(0.5) + 5 * At(1 - GaussLow)) / 18;
    }

    private const double GaussLow = 0.1127016653792583; // (1 − √0.6)/2

    private RubRates _rub = new(0), _rubEnd = new(0); // at the step's start and at its end

    private void ResetBooks()
    {
        _storedBefore = _eq.Stored;
        _pullBefore = _eq.PullForce;
        _work = 0;
        _dissipated = 0;
    }

    /// <summary>Takes the evaluated and factored state, with its tangent in _rateEnd, as the path's new end.</summary>
    private void AcceptState(double at, bool goesOn)
    {
        _work += _stepWork;
        _dissipated += _stepFriction;
        if (Math.Abs(at - _theta) > 1e-12)
        {
            Array.Clear(_switchedHere);
        }

        _thetaEarlier = _theta;
        _start.CopyTo(_earlier, 0);
        _rate.CopyTo(_rateEarlier, 0);
        _smoothBefore = _smooth && _theta != 0;
        _smooth = true;
        _theta = at;
        _eq.X.CopyTo(_start, 0);
        _rateEnd.CopyTo(_rate, 0);
        _tau = Moment();
        _tauRate = MomentRate(_rate);
        if (_eq.HasFriction)
        {
            (_rub, _rubEnd) = (_rubEnd, _rub);
        }

        _storedBefore = _eq.Stored;
        _pullBefore = _eq.PullForce;
        AcceptPlaces();
        NotePeaks();
        NoteMoment();
        if (goesOn)
        {
            RememberWatches();
        }
    }

    /// <summary>Switches the mode of a watch at the accepted state.</summary>
    private bool Switch(int w)
    {
        if (w == _effortWatch || w == _travelWatch)
        {
            _end = w == _effortWatch ? RunEnd.Effort : RunEnd.Travel;
            LeaveState();
            Note(w == _effortWatch ? EventKind.EffortLimit : EventKind.TravelEnd, "wrist", 0, Moment(), false);
            return true;
        }

        if (w >= _deadWatch)
        {
            _armSign[w - _deadWatch] = -_armSign[w - _deadWatch];
            LeaveState();
            Note(EventKind.DeadCentre, w == _deadWatch ? "wrist axis" : "fulcrum", 0, 0, false);
            Record(false);
            return true;
        }

        if (++_switchedHere[w] > SwitchLimit)
        {
            return Jump();
        }

        if (w < _contactWatch)
        {
            SwitchStop(w % _count, w < _count ? -1 : 1);
        }
        else if (w < _cordWatch)
        {
            int c = w - _contactWatch;
            _eq.Touching[c] = !_eq.Touching[c];
            NoteContact(c, false);
        }
        else if (w < _slideWatch)
        {
            SwitchCord(w - _cordWatch);
        }
        else
        {
            SwitchPlace(PlaceOf(w), w - _slideWatch < _eq.Places.Length);
        }

        FindRates();
        SettlePlaces(w >= _slideWatch ? PlaceOf(w) : -1);
        SetOut();
        if (_eq.Jacobian.SmallestPivot < -1e-9)
        {
            return Jump();
        }

        if (w < _slideWatch)
        {
            Record(false);
        }

        return true;
    }

    private void SwitchStop(int i, int side)
    {
        if (_bound[i] == 0)
        {
            _bound[i] = side;
            _eq.X[i] = side < 0 ? _eq.Low[i] : _eq.High[i];
            _start[i] = _eq.X[i];
            NoteStop(EventKind.StopReached, i, side);
        }
        else
        {
            _bound[i] = 0;
            NoteStop(EventKind.StopLeft, i, side);
        }
    }

    private void SwitchCord(int cord)
    {
        bool taut = !CordTaut(cord);
        switch (cord)
        {
            case 0:
                _eq.PullTaut = taut;
                break;
            case 1:
                _eq.TransferTaut = taut;
                break;
            default:
                _eq.Taut[cord - 2] = taut;
                break;
        }

        Note(taut ? EventKind.Taut : EventKind.Slack, _cordNames[cord], 0, 0, false);
    }

    private void ReleaseLocks()
    {
        if (_baseFrozen.Length == 0)
        {
            _baseFrozen = [.. _eq.Frozen];
            _lockActed = new bool[_options.Locks.Count];
        }

        _baseFrozen.CopyTo(_eq.Frozen, 0);
        Array.Clear(_lockActed);
    }

    private double NextLock(double theta)
    {
        double next = double.PositiveInfinity;
        for (int i = 0; i < _lockActed.Length; i++)
        {
            if (!_lockActed[i])
            {
                next = Math.Min(next, Math.Max(theta, _options.Locks[i].AtRadians));
            }
        }

        return next;
    }

    /// <summary>Freezes the fingers whose lock acts at or before θ; says whether one let its pull go.</summary>
    private bool ApplyLocks(double theta)
    {
        bool letsGo = false;
        for (int i = 0; i < _lockActed.Length; i++)
        {
            FingerLock l = _options.Locks[i];
            if (_lockActed[i] || l.AtRadians > theta)
            {
                continue;
            }

            _lockActed[i] = true;
            for (int q = 0; q < _eq.Sizes[l.FingerIndex]; q++)
            {
                _eq.Frozen[_eq.Offsets[l.FingerIndex] + q] = true;
            }

            if (!l.HoldsPull)
            {
                _eq.Attached[l.FingerIndex] = false;
                letsGo = true;
            }

            if (theta > 0)
            {
                Note(EventKind.Lock, _drive.Fingers[l.FingerIndex].Name, 0, 0, false);
            }
        }

        return letsGo;
    }

    private bool ActLocks(double theta)
    {
        double stored = _storedBefore;
        double[] before = Snapshot();
        bool letsGo = ApplyLocks(theta);
        LeaveState();
        NoteAllTouch(false);
        if (!letsGo)
        {
            Record(false);
            return true;
        }

        double dissipated = _dissipated;
        if (!Settle(_theta))
        {
            Fail("No balance was found after a lock let its pull go.");
            return false;
        }

        AcceptJump(before, stored, dissipated, _work, byLock: true);
        return true;
    }

    private void FinishClosing()
    {
        _end ??= RunEnd.NotFollowed;
        _endMoment = _tau;
        if (_closing[^1][TraceLayout.Theta] != _theta || _closing[^1][TraceLayout.OutputStep] == 0)
        {
            Record(true);
        }

        _workIn = _work;
        _dissipatedClosing = _dissipated;
    }

    private void BeginOpening()
    {
        RunEnd? end = _end;
        _end = null;
        _direction = -1;
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p.Mode = 0;
        }

        Array.Clear(_switchedHere);
        FindRates();
        SettlePlaces(-1);
        SetOut();
        ResetBooks();
        _closedBy = end;
        _stride = _options.OutputStepRadians;
        Record(true);
    }

    private RunEnd? _closedBy;
}
