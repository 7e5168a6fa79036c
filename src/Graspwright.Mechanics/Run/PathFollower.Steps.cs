namespace Graspwright.Mechanics.Run;

/// <content>One step: predict, correct, land at its end or at the first event inside it.</content>
internal sealed partial class PathFollower
{
    /// <summary>Tries one step; lands at its end or at the first event inside it.</summary>
    private Outcome TryStep(double end)
    {
        int first = Foreseen(end, out double upper);
        bool now = false, located = first >= 0 && LocateForeseen(first, end, ref upper);
        if (located)
        {
            Tangent(_rateEnd);
            int earlier = FirstBroken(first, upper, out now);
            if (earlier < 0)
            {
                return LandOn(first, upper);
            }

            first = earlier;
        }
        else
        {
            if (!Reach(end))
            {
                return Outcome.NotReached;
            }

            Tangent(_rateEnd);
            first = FirstBroken(-1, end, out now);
            if (first < 0)
            {
                return Land(end, goesOn: true);
            }

            upper = end;
        }

        for (int tries = 0; tries < 40; tries++)
        {
            if (now)
            {
                RestoreStart();
                return Switch(first) ? Outcome.Landed : Outcome.Failed;
            }

            if (!Locate(first, upper, out double at))
            {
                RestoreStart();
                return Outcome.NotReached;
            }

            Tangent(_rateEnd);
            int earlier = FirstBroken(first, at, out now);
            if (earlier < 0)
            {
                return LandOn(first, at);
            }

            first = earlier;
            upper = at;
        }

        RestoreStart();
        return Outcome.NotReached;
    }

    /// <summary>Lands where a watch reaches 0 and switches its mode.</summary>
    private Outcome LandOn(int watch, double at)
    {
        Outcome outcome = Land(at, goesOn: false);
        return outcome != Outcome.Landed ? outcome : Switch(watch) ? Outcome.Landed : Outcome.Failed;
    }

    /// <summary>Takes the evaluated state as the path's new end, unless the energy books of the step do not close.</summary>
    /// <param name="at">Its wrist angle.</param>
    /// <param name="goesOn">Whether the path goes on in the same modes; else a switch follows.</param>
    private Outcome Land(double at, bool goesOn)
    {
        _tried = Math.Abs(at - _theta);
        StepBooks(at);
        if (!Balanced() && Math.Abs(at - _theta) > FinestBalance)
        {
            RestoreStart();
            return Outcome.Unbalanced;
        }

        AcceptState(at, goesOn);
        return Outcome.Landed;
    }

    private double _tried; // rad: how far the last landing would have gone

    /// <summary>Predicts and corrects a state at a wrist angle, in the present modes.</summary>
    private bool Reach(double end)
    {
        double h = end - _theta;
        Predict(h);
        if (!Correct(end) || _eq.Jacobian.SmallestPivot < -1e-9)
        {
            RestoreStart();
            return false;
        }

        double moved = 0;
        for (int i = 0; i < _count; i++)
        {
            moved = Math.Max(moved, Math.Abs(_eq.X[i] - _start[i] - (_held[i] ? 0 : h * _rate[i])) / _scale[i]);
        }

        if (moved > LargestCorrection)
        {
            RestoreStart();
            return false;
        }

        return true;
    }

    /// <summary>First guess: the cubic through the last two states and their tangents, the tangent alone behind a switch.</summary>
    private void Predict(double h)
    {
        double back = _theta - _thetaEarlier;
        bool cubic = _smooth && Math.Abs(h) <= 1.5 * Math.Abs(back);
        double x = cubic ? h / back : 0;
        for (int i = 0; i < _count; i++)
        {
            if (_held[i])
            {
                _eq.X[i] = _start[i];
                continue;
            }

            double guess = _start[i] + h * _rate[i];
            if (cubic)
            {
                // Hermite cubic on the last step, run on to 1 + x.
                double gap = _start[i] - _earlier[i], first = back * _rateEarlier[i], last = back * _rate[i];
                double third = first + last - 2 * gap, second = last - gap + third;
                guess += x * x * (second + x * third);
            }

            _eq.X[i] = guess;
        }
    }

    private readonly double[] _earlier, _rateEarlier;
    private double _thetaEarlier;
    private bool _smooth;

    /// <summary>Newton at a fixed wrist angle. Leaves the equations evaluated and factored at the state it found.</summary>
    private bool Correct(double theta)
    {
        _eq.Theta = theta;
        for (int iteration = 0; iteration < NewtonLimit; iteration++)
        {
            _eq.Evaluate();
            Factor();
            if (ResidualSize() <= 1)
            {
                return true;
            }

            if (!TakeStep())
            {
                return false;
            }
        }

        return false;
    }

    private bool TakeStep()
    {
        NewtonSteps++;
        for (int i = 0; i < _count; i++)
        {
            _step[i] = -_eq.R[i];
        }

        _eq.Jacobian.Solve(_step, _held);
        double largest = 0;
        for (int i = 0; i < _count; i++)
        {
            largest = Math.Max(largest, Math.Abs(_step[i]) / _scale[i]);
        }

        if (!(largest < 1e3))
        {
            return false;
        }

        double cut = largest > 0.3 ? 0.3 / largest : 1;
        for (int i = 0; i < _count; i++)
        {
            _eq.X[i] += cut * _step[i];
        }

        return true;
    }

    private void Factor()
    {
        Factorisations++;
        _eq.Jacobian.Factor(_held, _eq.Ridge);
    }

    private double ResidualSize()
    {
        double worst = 0;
        _residual = 0;
        for (int i = 0; i < _count; i++)
        {
            if (!_held[i])
            {
                double r = Math.Abs(_eq.R[i]);
                worst = Math.Max(worst, r / _tolerance[i]);
                _residual = Math.Max(_residual, r);
            }
        }

        return double.IsNaN(_eq.Stored) ? double.PositiveInfinity : worst;
    }

    /// <summary>dx/dθ = −J⁻¹ ∂r/∂θ at the evaluated and factored state.</summary>
    private void Tangent(double[] rate)
    {
        for (int i = 0; i < _count; i++)
        {
            rate[i] = -_eq.ThetaDerivative[i];
        }

        _eq.Jacobian.Solve(rate, _held);
    }
}
