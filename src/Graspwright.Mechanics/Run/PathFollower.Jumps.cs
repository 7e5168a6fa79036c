using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>Where no neighbouring equilibrium exists: monotone descent to the next one at the same wrist angle.</content>
internal sealed partial class PathFollower
{
    private const double Beyond = 2e-8;          // rad past the last state, so that the lost equilibrium is really gone
    private const double DescentStride = 0.03;   // largest scaled step
    private const int DescentLimit = 1500;
    private const int BoundRounds = 80;
    private const int MostPushes = 20;
    private const double LeastJump = 1e-8;       // J
    private const double FurthestRepair = 1e-3;  // rad
    private double _repairAngle;
    private int _repairs;

    /// <summary>Leaves a state that has no neighbour, or whose modes cannot be told apart.</summary>
    private bool Jump()
    {
        RestoreStart();
        LeaveState();
        double stored = _storedBefore, dissipated = _dissipated, worked = _work;
        double[] before = Snapshot();
        if (Math.Abs(_theta - _repairAngle) > 4 * FurthestRepair)
        {
            _repairAngle = _theta;
            _repairs = 0;
        }

        // Where the modes stay undecided the next tries reach further, so that the path goes on.
        double at = _theta + _direction * Math.Min(Beyond * Math.Pow(4, _repairs), FurthestRepair);
        if (++_repairs > 400 || at < 0 || !Settle(at))
        {
            Fail("No neighbouring balance was found, and none by descent.");
            return false;
        }

        double across = at - _theta;
        _work += 0.5 * across * (_tau + Moment());
        _theta = at;
        AcceptJump(before, stored, dissipated, worked, byLock: false);
        return true;
    }

    private void AcceptJump(double[] before, double stored, double dissipated, double workBefore, bool byLock)
    {
        double moved = 0;
        for (int i = 0; i < _count; i++)
        {
            moved = Math.Max(moved, Math.Abs(_eq.X[i] - _start[i]) / _scale[i]);
        }

        double rubbed = 0;
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            rubbed += p.Active ? 0.5 * (p.Friction + p.FrictionBefore) * (p.Slide - p.SlideBefore) : 0;
        }

        _dissipated = dissipated + rubbed;
        double lost = stored + _work - workBefore - _eq.Stored - rubbed;
        bool real = byLock || (moved > 1e-5 && lost > LeastJump); // else only the modes were put right
        _smoothBefore = false;
        _eq.X.CopyTo(_start, 0);
        _storedBefore = _eq.Stored;
        AcceptPlaces();
        _pullBefore = _eq.PullForce;
        Array.Clear(_switchedHere);
        NoteSwitchedInJump(before, real);
        LeaveState();
        _stride = Math.Max(_stride, 1e-5);
        if (real)
        {
            _lost += lost;
            NotePeaks();
            NoteJump(before, lost, byLock);
        }
    }

    /// <summary>Descends to a balance at a wrist angle, from the present unknowns; leaves modes, held unknowns and places in step with it.</summary>
    private bool Settle(double theta)
    {
        _eq.Theta = theta;
        _eq.ModesByValue = true;
        _eq.BoundDerivatives = false;
        bool found = Descend();
        _eq.ModesByValue = false;
        _eq.BoundDerivatives = true;
        if (!found)
        {
            return false;
        }

        ModesFromValues();
        Hold();
        return Correct(theta);
    }

    /// <summary>Descends with the friction bounds held, then lets them follow the loads, until both agree.</summary>
    private bool Descend()
    {
        if (!_eq.HasFriction)
        {
            return DescendOnce();
        }

        for (int round = 0; round < BoundRounds; round++)
        {
            HoldBounds(false);
            _eq.Evaluate();
            HoldByValue();
            if (round > 0 && ResidualSize() <= 1)
            {
                return true;
            }

            HoldBounds(true);
            bool found = DescendOnce();
            HoldBounds(false);
            if (!found)
            {
                return false;
            }
        }

        return false;
    }

    private void HoldBounds(bool held)
    {
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            p.BoundsHeld = held;
        }
    }

    /// <summary>Holds what its stop pushes against.</summary>
    private void HoldByValue()
    {
        for (int i = 0; i < _count; i++)
        {
            bool low = _eq.X[i] <= _eq.Low[i], high = _eq.X[i] >= _eq.High[i];
            _held[i] = _eq.Frozen[i] || (low && _eq.R[i] > 0) || (high && _eq.R[i] < 0);
        }
    }

    private bool DescendOnce()
    {
        int pushes = 0;
        for (int iteration = 0; iteration < DescentLimit; iteration++)
        {
            _eq.Evaluate();
            HoldByValue();
            if (ResidualSize() <= 1)
            {
                Factor();
                if (_eq.Jacobian.SmallestPivot > -1e-9)
                {
                    return true;
                }

                Unbalance(1e-6 * Math.Pow(4, Math.Min(pushes++, 6)));
                continue;
            }

            FactorPositive();
            for (int i = 0; i < _count; i++)
            {
                _step[i] = -_eq.R[i];
            }

            NewtonSteps++;
            _eq.Jacobian.Solve(_step, _held);
            if (StepDown())
            {
                continue;
            }

            // No way down along either direction: the state is on a ridge, or on the edge of a sticking piece.
            if (pushes > MostPushes)
            {
                return false;
            }

            Unbalance(1e-6 * Math.Pow(4, Math.Min(pushes++, 6)));
        }

        return false;
    }

    /// <summary>Stored energy and work against friction with the bounds held: what a descent lowers.</summary>
    private double Potential()
    {
        double sum = _eq.Stored;
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            sum += p.Active ? p.Work : 0;
        }

        return sum;
    }

    /// <summary>Factors with enough added stiffness to make the matrix positive definite.</summary>
    private void FactorPositive()
    {
        Factor();
        double added = 0;
        while (_eq.Jacobian.SmallestPivot <= 1e-12 && added < 1e9)
        {
            added = added == 0 ? 1e-3 : 4 * added;
            for (int i = 0; i < _count; i++)
            {
                _side[i] = added / (_scale[i] * _scale[i]);
            }

            Factorisations++;
            _eq.Jacobian.Factor(_held, _side);
        }
    }

    /// <summary>A balance that is not stable is left along a small push [scaled], each time a stronger one.</summary>
    private void Unbalance(double size)
    {
        for (int i = 0; i < _count; i++)
        {
            if (!_held[i])
            {
                double push = size * _scale[i] * (i % 2 == 0 ? 1 : -0.7);
                _eq.X[i] = Math.Clamp(_eq.X[i] + push, _eq.Low[i], _eq.High[i]);
            }
        }
    }

    /// <summary>A capped step downhill: Newton's, and where the stops bend that uphill, one along the scaled residual.</summary>
    private bool StepDown()
    {
        double largest = 0;
        for (int i = 0; i < _count; i++)
        {
            largest = Math.Max(largest, Math.Abs(_step[i]) / _scale[i]);
        }

        if (!double.IsFinite(largest))
        {
            return false;
        }

        _eq.X.CopyTo(_endState, 0);
        double energy = Potential();
        if (Lower(energy, largest))
        {
            return true;
        }

        _endState.CopyTo(_eq.X, 0);
        _eq.Evaluate();
        largest = 0;
        for (int i = 0; i < _count; i++)
        {
            _step[i] = _held[i] ? 0 : -_eq.R[i] * _scale[i] * _scale[i];
            largest = Math.Max(largest, Math.Abs(_step[i]) / _scale[i]);
        }

        return Lower(energy, largest);
    }

    /// <summary>
    /// Shortens a step until the slope along it has lost half its size and not turned up by more. Sticking pieces are
    /// some 1e-8 wide, so that slopes tell what energies no longer can.
    /// </summary>
    private bool Lower(double energy, double largest)
    {
        const int Shortenings = 60;
        double downhill = 0;
        for (int i = 0; i < _count; i++)
        {
            downhill += _held[i] ? 0 : _eq.R[i] * _step[i];
        }

        if (downhill >= 0)
        {
            return false;
        }

        double cut = largest > DescentStride ? DescentStride / largest : 1, low = 0, high = cut;
        for (int shortening = 0; shortening < Shortenings; shortening++)
        {
            for (int i = 0; i < _count; i++)
            {
                _eq.X[i] = Math.Clamp(_endState[i] + cut * _step[i], _eq.Low[i], _eq.High[i]);
            }

            _eq.Evaluate();
            double slope = 0;
            for (int i = 0; i < _count; i++)
            {
                slope += _eq.R[i] * (_eq.X[i] - _endState[i]) / cut;
            }

            bool tooFar = slope > -0.5 * downhill || Potential() > energy + 1e-12 * Math.Abs(energy);
            if (!tooFar && (slope >= 0.9 * downhill || high == cut || shortening > 20))
            {
                return true;
            }

            (low, high) = tooFar ? (low, cut) : (cut, high);
            if (!tooFar && slope > 0.5 * downhill)
            {
                return true;
            }

            cut = 0.5 * (low + high);
        }

        return false;
    }

    private void ModesFromValues()
    {
        for (int c = 0; c < _eq.Touching.Length; c++)
        {
            _eq.Touching[c] = _eq.HasObject && _eq.Overlap[c] > 0;
        }

        _eq.PullTaut = _eq.PullElongation > 0;
        _eq.TransferTaut = _eq.TransferElongation > 0;
        for (int f = 0; f < _eq.FingerCount; f++)
        {
            _eq.Taut[f] = _eq.PullElongations[f] > 0;
        }

        for (int i = 0; i < _count; i++)
        {
            bool held = _held[i] && !_eq.Frozen[i];
            _bound[i] = !held ? 0 : _eq.X[i] <= _eq.Low[i] ? -1 : 1;
        }
    }
}
