using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>Where no neighbouring equilibrium exists: monotone descent to the next one at the same wrist angle.</content>
internal sealed partial class PathFollower
{
    private const double Beyond = 2e-8;          // rad past the last state, so that the lost equilibrium is really gone
    private const double DescentStride = 0.03;   // largest scaled step
    private const int DescentLimit = 4000;
    private double _repairAngle;
    private int _repairs;

    /// <summary>Leaves a state that has no neighbour, or whose modes cannot be told apart.</summary>
    private bool Jump()
    {
        RestoreStart();
        LeaveState();
        double stored = _storedBefore, dissipated = _dissipated;
        double[] before = Snapshot();
        if (Math.Abs(_theta - _repairAngle) > 1e-5)
        {
            _repairAngle = _theta;
            _repairs = 0;
        }

        double at = _theta + _direction * Beyond;
        if (++_repairs > 60 || at < 0 || !Settle(at))
        {
            Fail("No neighbouring balance was found, and none by descent.");
            return false;
        }

        _theta = at;
        AcceptJump(before, stored, dissipated, byLock: false);
        return true;
    }

    private void AcceptJump(double[] before, double stored, double dissipated, bool byLock)
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
        bool real = moved > 1e-5 || byLock;
        _eq.X.CopyTo(_start, 0);
        _storedBefore = _eq.Stored;
        AcceptPlaces();
        _pullBefore = _eq.PullForce;
        Array.Clear(_switchedHere);
        NoteSwitchedInJump(before, real);
        LeaveState();
        _stride = Math.Max(_stride, 1e-5);
        double lost = stored - _eq.Stored - rubbed;
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

    private bool Descend()
    {
        for (int iteration = 0; iteration < DescentLimit; iteration++)
        {
            _eq.Evaluate();
            for (int i = 0; i < _count; i++)
            {
                bool low = _eq.X[i] <= _eq.Low[i], high = _eq.X[i] >= _eq.High[i];
                _held[i] = _eq.Frozen[i] || (low && _eq.R[i] > 0) || (high && _eq.R[i] < 0);
            }

            if (ResidualSize() <= 1 && iteration > 0)
            {
                Factor();
                if (_eq.Jacobian.SmallestPivot > -1e-9)
                {
                    return true;
                }

                Unbalance();
                continue;
            }

            FactorPositive();
            for (int i = 0; i < _count; i++)
            {
                _step[i] = -_eq.R[i];
            }

            NewtonSteps++;
            _eq.Jacobian.Solve(_step, _held);
            if (!StepDown())
            {
                return false;
            }
        }

        return false;
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

    /// <summary>A balance that is not stable is left along a small push.</summary>
    private void Unbalance()
    {
        for (int i = 0; i < _count; i++)
        {
            if (!_held[i])
            {
                double push = 1e-6 * _scale[i] * (i % 2 == 0 ? 1 : -0.7);
                _eq.X[i] = Math.Clamp(_eq.X[i] + push, _eq.Low[i], _eq.High[i]);
            }
        }
    }

    /// <summary>A capped step; without friction also a falling one.</summary>
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

        double cut = largest > DescentStride ? DescentStride / largest : 1;
        _eq.X.CopyTo(_endState, 0);
        double energy = _eq.Stored;
        for (int halving = 0; halving < 40; halving++)
        {
            for (int i = 0; i < _count; i++)
            {
                _eq.X[i] = Math.Clamp(_endState[i] + cut * _step[i], _eq.Low[i], _eq.High[i]);
            }

            if (_eq.HasFriction || largest < 1e-9)
            {
                return true;
            }

            _eq.Evaluate();
            if (_eq.Stored <= energy + 1e-15)
            {
                return true;
            }

            cut *= 0.5;
        }

        return true;
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
