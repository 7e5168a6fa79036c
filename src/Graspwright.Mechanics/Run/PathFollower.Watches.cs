using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Equilibrium;

namespace Graspwright.Mechanics.Run;

/// <content>What may end a smooth piece of path: each watch is a number that stays at or above 0 while its mode holds.</content>
internal sealed partial class PathFollower
{
    private const double Applies = double.PositiveInfinity; // value of a watch that does not apply

    private int _watchCount, _contactWatch, _cordWatch, _slideWatch, _effortWatch, _travelWatch, _deadWatch;
    private readonly double[] _armSign = new double[2]; // of ∂L/∂θ and ∂L/∂φ of the pull link
    private double[] _before = [], _tolerated = [];
    private int[] _switchedHere = [];
    private double[] _endState = [], _still = [];
    private RunEnd? _end;

    private void SetUpWatches()
    {
        _contactWatch = 2 * _count;
        _cordWatch = _contactWatch + 3 * _eq.FingerCount;
        _slideWatch = _cordWatch + 2 + _eq.FingerCount;
        _effortWatch = _slideWatch + 2 * _eq.Places.Length;
        _travelWatch = _effortWatch + 1;
        _deadWatch = _travelWatch + 1; // pull link through the wrist axis, then through the fulcrum
        _watchCount = _deadWatch + 2;
        _before = new double[_watchCount];
        _tolerated = new double[_watchCount];
        _switchedHere = new int[_watchCount];
        _isCord = [_drive.PullLink.Kind == LinkKind.Cord, _drive.TransferLink.Kind == LinkKind.Cord, .. _drive.Fingers.Select(f => f.Pull.Kind == LinkKind.Cord)];
        _endState = new double[_count];
        _overlapRate = new double[3 * _eq.FingerCount];
        _pullRate = new double[_eq.FingerCount];
        _still = new double[_count];
        _now = new double[_watchCount];
        _rub = new RubRates(_eq.Places.Length);
        _rubEnd = new RubRates(_eq.Places.Length);
        _baseState = new double[_count];
        _baseRate = new double[_count];
        for (int w = 0; w < _watchCount; w++)
        {
            _tolerated[w] = w < _contactWatch ? 1e-11 : w < _slideWatch ? 1e-13 : w < _effortWatch ? 0 : 1e-11;
        }
    }

    /// <summary>Value of a watch at the evaluated state; rates are taken from <paramref name="rate"/>.</summary>
    private double Watch(int w, double[] rate)
    {
        if (w < _contactWatch)
        {
            int i = w % _count;
            bool low = w < _count;
            if (_eq.Frozen[i])
            {
                return Applies;
            }

            return _bound[i] switch
            {
                0 => low ? _eq.X[i] - _eq.Low[i] : _eq.High[i] - _eq.X[i],
                -1 => low ? _eq.R[i] + _tolerance[i] : Applies,
                _ => low ? Applies : _tolerance[i] - _eq.R[i],
            };
        }

        if (w < _cordWatch)
        {
            int c = w - _contactWatch;
            return !_eq.HasObject || FingerHeld(c / 3) ? Applies : _eq.Touching[c] ? _eq.Overlap[c] : -_eq.Overlap[c];
        }

        if (w < _slideWatch)
        {
            return CordValue(w - _cordWatch);
        }

        if (w < _effortWatch)
        {
            int place = PlaceOf(w);
            bool upper = w - _slideWatch == place;
            ref RubbingPlace p = ref _eq.Places[place];
            if (!p.Active || (p.Mode != 0 && (!upper || !p.IsLoaded)))
            {
                return Applies;
            }

            return p.Mode == 0
                ? (upper ? p.High - p.Friction : p.Friction - p.Low) / p.Stiffness
                : p.Mode * _direction * _eq.SlideRate(place, rate, 1);
        }

        if (w >= _deadWatch)
        {
            (double byTheta, double byPhi) = _eq.PullArms;
            return w == _deadWatch ? _armSign[0] * byTheta : _armSign[1] * byPhi;
        }

        if (_direction < 0)
        {
            return Applies;
        }

        double tau = Moment();
        return w == _travelWatch
            ? _drive.Wrist.TravelRadians - JointTravel(_eq.Theta, tau)
            : _options.EffortFraction is { } share ? share * CapacityAt(JointTravel(_eq.Theta, tau)) - tau : Applies;
    }

    /// <summary>Derivative of a watch along (v, 1) at the evaluated state; not for places that slide.</summary>
    private double WatchRate(int w, double[] v)
    {
        if (w < _contactWatch)
        {
            int i = w % _count;
            double sign = w < _count ? 1 : -1;
            return sign * (_bound[i] == 0 ? v[i] : _eq.Jacobian.RowTimes(i, v) + _eq.ThetaDerivative[i]);
        }

        if (w < _cordWatch)
        {
            int c = w - _contactWatch;
            double rate = _eq.OverlapRate(c / 3, c % 3, v);
            return _eq.Touching[c] ? rate : -rate;
        }

        if (w < _slideWatch)
        {
            int cord = w - _cordWatch;
            double rate = _eq.ElongationRate(cord, v);
            return CordTaut(cord) ? rate : -rate;
        }

        if (w < _effortWatch)
        {
            int place = PlaceOf(w);
            bool upper = w - _slideWatch == place;
            ref RubbingPlace p = ref _eq.Places[place];
            double bound = _eq.BoundRate(place, upper, v, 1), friction = p.Stiffness * _eq.SlideRate(place, v, 1);
            return (upper ? bound - friction : friction - bound) / p.Stiffness;
        }

        if (w >= _deadWatch)
        {
            (double byTheta, double byPhi) = _eq.PullArmRates(v[DriveEquations.Phi], 1);
            return w == _deadWatch ? _armSign[0] * byTheta : _armSign[1] * byPhi;
        }

        double moment = MomentRate(v);
        double give = GiveSlope();
        double travel = 1 + give * moment;
        return w == _travelWatch
            ? -travel
            : _options.EffortFraction!.Value * CapacitySlope(JointTravel(_eq.Theta, Moment())) * travel - moment;
    }

    private bool CordTaut(int cord) => cord switch
    {
        0 => _eq.PullTaut,
        1 => _eq.TransferTaut,
        _ => _eq.Taut[cord - 2],
    };

    private double CordValue(int cord)
    {
        if (!_isCord[cord] || (cord >= 2 && !_eq.Attached[cord - 2]))
        {
            return Applies;
        }

        double elongation = cord switch
        {
            0 => _eq.PullElongation,
            1 => _eq.TransferElongation,
            _ => _eq.PullElongations[cord - 2],
        };
        return CordTaut(cord) ? elongation : -elongation;
    }

    /// <summary>First watch that the evaluated state breaks, by where its value would reach 0; −1 if none.</summary>
    /// <param name="except">A watch not to look at; −1 for none.</param>
    /// <param name="end">Wrist angle of the state.</param>
    /// <param name="now">Whether it is broken already at the start of the step.</param>
    private int FirstBroken(int except, double end, out bool now)
    {
        int first = -1;
        double earliest = double.PositiveInfinity;
        now = false;
        if (_eq.HasFriction)
        {
            _eq.RubRates(_rateEnd, _rubEnd);
        }

        WatchAll(_rubEnd.Slide, _now);
        for (int w = 0; w < _watchCount; w++)
        {
            double value = w == except ? Applies : _now[w];
            if (value >= 0)
            {
                continue;
            }

            double tolerated = Tolerated(w);
            if (value >= -tolerated)
            {
                continue;
            }

            double start = _before[w] == Applies ? 0 : Math.Max(_before[w], 0);
            bool atStart = start <= tolerated;
            // Of those broken already, what rubs goes first: the others answer to it.
            double share = !atStart ? start / (start - value) : w >= _slideWatch && w < _effortWatch ? -1 : 0;
            if (share < earliest)
            {
                earliest = share;
                first = w;
                now = atStart || end == _theta;
            }
        }

        return first;
    }

    private int PlaceOf(int w) => (w - _slideWatch) % _eq.Places.Length;

    /// <summary>How far a watch may be broken before it counts: its noise.</summary>
    private double Tolerated(int w) =>
        w < _slideWatch || w >= _effortWatch ? _tolerated[w] : _eq.Places[PlaceOf(w)].Mode == 0 ? StickNoise : SlideNoise;

    private const double StickNoise = 2e-14; // slide of the stiff spring
    private const double StickRateNoise = 1e-10; // the same per rad of wrist
    private const double SlideNoise = 1e-7;  // slide per rad of wrist

    private void RememberWatches()
    {
        WatchAll(_rub.Slide, _before);
        _foreseen = -1;
        _foreseenAway = double.PositiveInfinity;
        for (int i = 0; i < _count; i++)
        {
            if (_bound[i] == 0)
            {
                Foresee(i, _rate[i], _tolerated[i]);
                Foresee(_count + i, -_rate[i], _tolerated[i]);
            }
            else if (!_eq.Frozen[i])
            {
                int w = _bound[i] < 0 ? i : _count + i;
                Foresee(w, WatchRate(w, _rate), _tolerated[w]);
            }
        }

        if (_eq.HasObject)
        {
            _eq.OverlapRates(_rate, _overlapRate);
            for (int c = 0; c < _overlapRate.Length; c++)
            {
                Foresee(_contactWatch + c, _eq.Touching[c] ? _overlapRate[c] : -_overlapRate[c], _tolerated[_contactWatch + c]);
            }
        }

        _eq.PullRates(_rate, _pullRate);
        for (int cord = 0; cord < _isCord.Length; cord++)
        {
            if (_before[_cordWatch + cord] != Applies)
            {
                double rate = cord < 2 ? _eq.ElongationRate(cord, _rate) : _pullRate[cord - 2];
                Foresee(_cordWatch + cord, CordTaut(cord) ? rate : -rate, _tolerated[_cordWatch + cord]);
            }
        }

        for (int i = 0; i < _eq.Places.Length && _eq.HasFriction; i++)
        {
            ref RubbingPlace p = ref _eq.Places[i];
            if (p.Active && p.Mode == 0)
            {
                Foresee(_slideWatch + i, (_rub.High[i] - _rub.Friction[i]) / p.Stiffness, StickNoise);
                Foresee(_slideWatch + _eq.Places.Length + i, (_rub.Friction[i] - _rub.Low[i]) / p.Stiffness, StickNoise);
            }
        }

        for (int w = _effortWatch; w <= _travelWatch && _direction > 0; w++)
        {
            if (_before[w] != Applies)
            {
                Foresee(w, WatchRate(w, _rate), _tolerated[w]);
            }
        }
    }

    /// <summary>Notes a watch that by its rate reaches 0 before any noted so far.</summary>
    private void Foresee(int w, double rate, double tolerated)
    {
        double value = _before[w], fall = -_direction * rate;
        if (fall > 0 && value < fall * _foreseenAway && value > tolerated)
        {
            (_foreseen, _foreseenAway) = (w, value / fall);
        }
    }

    private int _foreseen;
    private double _foreseenAway;
    private double[] _overlapRate = [], _pullRate = [];
    private bool[] _isCord = []; // pull link, transfer link, then the fingers' pulls
    /// <summary>The watch that by its rate reaches 0 first within a step, and where; −1 if none.</summary>
    private int Foreseen(double end, out double at)
    {
        at = _theta + _direction * _foreseenAway;
        return _foreseen >= 0 && _foreseenAway < Math.Abs(end - _theta) ? _foreseen : -1;
    }

    /// <summary>Values of all watches at the evaluated state.</summary>
    private void WatchAll(double[] slides, double[] values)
    {
        for (int i = 0; i < _count; i++)
        {
            int bound = _bound[i];
            bool frozen = _eq.Frozen[i];
            values[i] = frozen || bound > 0 ? Applies : bound == 0 ? _eq.X[i] - _eq.Low[i] : _eq.R[i] + _tolerance[i];
            values[_count + i] = frozen || bound < 0 ? Applies : bound == 0 ? _eq.High[i] - _eq.X[i] : _tolerance[i] - _eq.R[i];
        }

        for (int c = 0; c < _cordWatch - _contactWatch; c++)
        {
            values[_contactWatch + c] = !_eq.HasObject || FingerHeld(c / 3) ? Applies : _eq.Touching[c] ? _eq.Overlap[c] : -_eq.Overlap[c];
        }

        for (int w = _cordWatch; w < _slideWatch; w++)
        {
            values[w] = CordValue(w - _cordWatch);
        }

        if (_eq.HasFriction)
        {
            WatchPlaces(slides, values);
        }
        else
        {
            Array.Fill(values, Applies, _slideWatch, _effortWatch - _slideWatch);
        }

        values[_effortWatch] = values[_travelWatch] = Applies;
        if (_direction > 0)
        {
            double tau = Moment(), travel = JointTravel(_eq.Theta, tau);
            values[_travelWatch] = _drive.Wrist.TravelRadians - travel;
            values[_effortWatch] = _options.EffortFraction is { } share ? share * CapacityAt(travel) - tau : Applies;
        }

        (double byTheta, double byPhi) = _eq.PullArms;
        values[_deadWatch] = _armSign[0] * byTheta;
        values[_deadWatch + 1] = _armSign[1] * byPhi;
    }

    private void WatchPlaces(double[] slides, double[] values)
    {
        int places = _eq.Places.Length;
        for (int i = 0; i < places; i++)
        {
            ref RubbingPlace p = ref _eq.Places[i];
            double upper = Applies, lower = Applies;
            if (p.Active)
            {
                if (p.Mode == 0)
                {
                    upper = (p.High - p.Friction) / p.Stiffness;
                    lower = (p.Friction - p.Low) / p.Stiffness;
                }
                else if (p.IsLoaded)
                {
                    upper = p.Mode * _direction * slides[i];
                }
            }

            values[_slideWatch + i] = upper;
            values[_slideWatch + places + i] = lower;
        }
    }

    private double[] _now = [];
}
