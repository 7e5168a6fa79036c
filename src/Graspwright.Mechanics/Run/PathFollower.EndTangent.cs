using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>How the end of closing moves with a parameter, without another run.</content>
/// <remarks>
/// The end lies where r(x, θ, p) = 0 and g(θ, τ, p) = 0, g being the effort or travel limit. With J the Jacobian already
/// factorised there, x_p = −J⁻¹ ∂r/∂p, x_θ = −J⁻¹ ∂r/∂θ, θ_p = −g_p/g_θ along these, and the state moves by x_p + x_θ θ_p.
/// ∂r/∂p is the central difference of the residual of two drives at the same state, stops moved with the drives; recorded
/// columns follow along that tangent. No equilibrium is solved again.
/// </remarks>
internal sealed partial class PathFollower
{
    /// <summary>Rate of every recorded column at the end of closing; <see langword="null"/> where a place sticks, as what it carries depends on the way there.</summary>
    /// <param name="up">The drive with the parameter one step up, not run.</param>
    /// <param name="down">The drive with the parameter one step down, not run.</param>
    /// <param name="step">The step, in the parameter's unit.</param>
    public double[]? EndTangent(PathFollower up, PathFollower down, double step)
    {
        foreach (ref RubbingPlace p in _eq.Places.AsSpan())
        {
            if (p is { Active: true, Mode: 0, IsLoaded: true })
            {
                return null;
            }
        }

        RestoreStart();
        FindRates();
        double tau = Moment(), tauTheta = MomentRate(_rate), half = 0.5 / step;
        up.Take(this);
        down.Take(this);
        double[] move = new double[_count];
        for (int i = 0; i < _count; i++)
        {
            move[i] = -half * (up._eq.R[i] - down._eq.R[i]);
        }

        _eq.Jacobian.Solve(move, _held);
        double tauStep = half * (up.Moment() - down.Moment());
        for (int i = 0; i < _count; i++)
        {
            _side[i] = _rate[i] + move[i];
        }

        tauStep += MomentRate(_side) - tauTheta;
        const double turn = 1e-6;
        double gTheta = (Past(_theta + turn, tau + turn * tauTheta) - Past(_theta - turn, tau - turn * tauTheta)) / (2 * turn);
        double gStep = half * (up.Past(_theta, tau + step * tauStep) - down.Past(_theta, tau - step * tauStep));
        double thetaStep = -gStep / gTheta;
        for (int i = 0; i < _count; i++)
        {
            move[i] += _rate[i] * thetaStep;
        }

        double[] above = up.Along(move, step, thetaStep), below = down.Along(move, -step, thetaStep);
        for (int c = 0; c < above.Length; c++)
        {
            above[c] = half * (above[c] - below[c]);
        }

        return above;
    }

    /// <summary>Takes over the state of another drive, with stops of its own.</summary>
    private void Take(PathFollower from)
    {
        from._eq.X.CopyTo(_eq.X, 0);
        from._eq.Places.CopyTo(_eq.Places, 0);
        from._eq.Attached.CopyTo(_eq.Attached, 0);
        from._eq.Touching.CopyTo(_eq.Touching, 0);
        from._eq.Taut.CopyTo(_eq.Taut, 0);
        from._eq.Frozen.CopyTo(_eq.Frozen, 0);
        from._bound.CopyTo(_bound, 0);
        (_eq.PullTaut, _eq.TransferTaut, _eq.ModesByValue, _eq.BoundDerivatives) = (from._eq.PullTaut, from._eq.TransferTaut, false, true);
        (_eq.Theta, _theta, _direction) = (from._theta, from._theta, 1);
        Hold();
        Stop();
        _eq.Evaluate();
    }

    private void Stop()
    {
        for (int i = 0; i < _count; i++)
        {
            _eq.X[i] = _eq.Frozen[i] || _bound[i] == 0 ? _eq.X[i] : _bound[i] > 0 ? _eq.High[i] : _eq.Low[i];
        }
    }

    /// <summary>The recorded columns a step along a tangent.</summary>
    private double[] Along(double[] move, double step, double thetaStep)
    {
        for (int i = 0; i < _count; i++)
        {
            _eq.X[i] += step * move[i];
        }

        Stop();
        _theta += step * thetaStep;
        _eq.Theta = _theta;
        _eq.Evaluate();
        _tau = Moment();
        double[] row = new double[_layout.Columns];
        Fill(row, output: false);
        return row;
    }

    /// <summary>How far the end of closing is passed: effort [N·m], or travel [rad].</summary>
    private double Past(double theta, double tau)
    {
        double travel = JointTravel(theta, tau);
        return _end == RunEnd.Travel || _options.EffortFraction is null ? travel - _drive.Wrist.TravelRadians : tau - _options.EffortFraction.Value * CapacityAt(travel);
    }
}
