namespace Graspwright.Mechanics.Run;

/// <summary>Wrist moment at the accepted states of one leg, with its slope before and after each; filled again without new memory.</summary>
internal sealed class MomentTrace
{
    private double[] _theta = new double[64], _tau = new double[64], _rateIn = new double[64], _rateOut = new double[64];

    /// <summary>Number of states.</summary>
    public int Count { get; private set; }

    /// <summary>Forgets all states.</summary>
    public void Clear() => Count = 0;

    /// <summary>Adds a state: wrist angle [rad], moment [N·m], its slope [N·m/rad].</summary>
    public void Add(double theta, double tau, double rate)
    {
        if (Count == _theta.Length)
        {
            Array.Resize(ref _theta, 2 * Count);
            Array.Resize(ref _tau, 2 * Count);
            Array.Resize(ref _rateIn, 2 * Count);
            Array.Resize(ref _rateOut, 2 * Count);
        }

        _theta[Count] = theta;
        _tau[Count] = tau;
        _rateIn[Count] = rate;
        _rateOut[Count++] = rate;
    }

    /// <summary>The path leaves the last state with another slope than it came with.</summary>
    public void TurnLast(double rate)
    {
        if (Count > 0)
        {
            _rateOut[Count - 1] = rate;
        }
    }

    /// <summary>Wrist angle of a state [rad].</summary>
    public double Theta(int state) => _theta[state];

    /// <summary>Moment at a state [N·m].</summary>
    public double Tau(int state) => _tau[state];

    /// <summary>Moment within the piece that ends at a state, by the cubic through both ends with their slopes [N·m].</summary>
    public double Within(int end, double theta)
    {
        double a = _theta[end - 1], first = _tau[end - 1], second = _tau[end], h = _theta[end] - a, x = h > 0 ? (theta - a) / h : 1;
        return first + x * h * _rateOut[end - 1]
            + x * x * (3 * (second - first) - h * (2 * _rateOut[end - 1] + _rateIn[end]))
            - x * x * x * (2 * (second - first) - h * (_rateOut[end - 1] + _rateIn[end]));
    }
}
