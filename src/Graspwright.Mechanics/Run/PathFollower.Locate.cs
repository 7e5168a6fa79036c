
namespace Graspwright.Mechanics.Run;

/// <content>Events inside a step: equilibrium and event solved together.</content>
internal sealed partial class PathFollower
{
    /// <summary>Finds the state at which a watch reaches 0, between the step's start and <paramref name="upper"/>, whose state is evaluated.</summary>
    private bool Locate(int w, double upper, out double at)
    {
        bool place = w >= _slideWatch && w < _effortWatch;
        double low = _theta, high = upper, valueHigh = Watch(w, _rateEnd), valueLow = Math.Max(_before[w], 0);
        _eq.X.CopyTo(_endState, 0);
        at = Between(low, high, valueLow, valueHigh);
        if (!place || _eq.Places[PlaceOf(w)].Mode == 0)
        {
            InterpolateFromStart(at, upper);
            if (LocateTogether(w, upper, ref at))
            {
                return true;
            }
        }

        int side = 0;
        double baseAngle = _theta;
        _start.CopyTo(_baseState, 0);
        _rate.CopyTo(_baseRate, 0);
        for (int round = 0; round < 80; round++)
        {
            at = Between(low, high, valueLow, valueHigh);
            if (round == 0)
            {
                InterpolateFromStart(at, upper);
            }
            else
            {
                for (int i = 0; i < _count; i++)
                {
                    _eq.X[i] = _baseState[i] + (_held[i] ? 0 : (at - baseAngle) * _baseRate[i]);
                }
            }

            if (!Correct(at))
            {
                return false;
            }

            Tangent(_rateEnd);
            double value = Watch(w, _rateEnd);
            if (Math.Abs(value) <= Tolerated(w) || Math.Abs(high - low) < (place ? FinestSwitch : 1e-12))
            {
                return true;
            }

            baseAngle = at;
            _eq.X.CopyTo(_baseState, 0);
            _rateEnd.CopyTo(_baseRate, 0);
            if (value > 0)
            {
                valueHigh *= side > 0 ? 0.5 : 1;
                (low, valueLow, side) = (at, value, 1);
            }
            else
            {
                valueLow *= side < 0 ? 0.5 : 1;
                (high, valueHigh, side) = (at, value, -1);
            }
        }

        return false;
    }

    /// <summary>Locates an event foreseen by its rate, without the state at the step's end.</summary>
    private bool LocateForeseen(int w, double end, ref double at)
    {
        Predict(at - _theta);
        if (LocateTogether(w, end, ref at))
        {
            return true;
        }

        RestoreStart();
        return false;
    }

    private const double FinestSwitch = 1e-9; // rad; closer than this a place may change between sticking and sliding
    private double[] _baseState = [], _baseRate = [];

    private static double Between(double low, double high, double valueLow, double valueHigh)
    {
        double share = valueLow - valueHigh > 0 ? valueLow / (valueLow - valueHigh) : 0.5;
        return low + Math.Clamp(share, 0.001, 0.999) * (high - low);
    }

    /// <summary>Newton on (x, θ): J δx = −r − r_θ δθ and g + ∇g·δx + g_θ δθ = 0.</summary>
    private bool LocateTogether(int w, double upper, ref double at)
    {
        double first = Math.Min(_theta, upper), last = Math.Max(_theta, upper), margin = 0.02 * (last - first);
        for (int iteration = 0; iteration < NewtonLimit; iteration++)
        {
            _eq.Theta = at;
            _eq.Evaluate();
            Factor();
            double value = Watch(w, _rateEnd);
            if (value == Applies)
            {
                return false;
            }

            if (ResidualSize() <= 1 && Math.Abs(value) <= Exact(w))
            {
                return at >= first - 1e-12 && at <= last + 1e-12 && _eq.Jacobian.SmallestPivot > -1e-9;
            }

            NewtonSteps++;
            for (int i = 0; i < _count; i++)
            {
                _step[i] = -_eq.R[i];
                _side[i] = -_eq.ThetaDerivative[i];
            }

            _eq.Jacobian.Solve(_step, _held);
            _eq.Jacobian.Solve(_side, _held);
            double slope = WatchRate(w, _side);
            double change = WatchRate(w, _step) - WatchRate(w, _still);
            double turn = -(value + change) / slope;
            if (!double.IsFinite(turn) || at + turn < first - margin || at + turn > last + margin)
            {
                return false;
            }

            at += turn;
            for (int i = 0; i < _count; i++)
            {
                _eq.X[i] += _step[i] + turn * _side[i];
            }
        }

        return false;
    }

    /// <summary>How closely a watch is brought to 0: to the noise of its inputs.</summary>
    private double Exact(int w) => w < _contactWatch ? (_bound[w % _count] == 0 ? 1e-14 : 4 * _tolerance[w % _count]) : w < _slideWatch ? 1e-14 : w < _effortWatch ? StickNoise : 1e-9;

    /// <summary>First guess inside a step: the tangent, bent so that it meets the corrected end state.</summary>
    private void InterpolateFromStart(double at, double upper)
    {
        double share = upper == _theta ? 0 : (at - _theta) / (upper - _theta);
        double h = at - _theta, whole = upper - _theta;
        for (int i = 0; i < _count; i++)
        {
            double bend = _held[i] ? 0 : _endState[i] - _start[i] - whole * _rate[i];
            _eq.X[i] = _start[i] + (_held[i] ? 0 : h * _rate[i] + share * share * bend);
        }
    }
}
