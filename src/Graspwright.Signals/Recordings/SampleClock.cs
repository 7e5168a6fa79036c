namespace Graspwright.Signals.Recordings;

/// <summary>Times of samples that come down a line in pieces, by the receiver's clock.</summary>
/// <remarks>
/// A piece arrives some milliseconds after its samples were taken, now more, now less. A straight line through arrival
/// against running number, older pieces counting less, is the board's clock as this computer sees it; the times follow
/// it and always rise. How far arrivals scatter round it is kept as the jitter. A silence in which too few samples came
/// is a pause: the times jump over it. Samples that come far faster than any board sends were piped from a file: then
/// the stated rate counts.
/// </remarks>
/// <param name="statedHertz">Samples a second as stated [1/s]; counts until the line shows its own.</param>
public sealed class SampleClock(double statedHertz)
{
    private const double ForgetSeconds = 30, LeastSpan = 0.3, Fastest = 4, Slew = 0.05, Silence = 0.5;
    private double _weight, _meanNumber, _meanArrival, _numbers, _both, _arrivals, _spanFrom = double.NaN;
    private double _lastArrival = double.NaN, _paused, _pendingPause, _origin = double.NaN, _time;
    private long _lastInPiece, _number = -1;
    private bool _joined;

    /// <summary>Samples a second by this computer's clock [1/s]; NaN before the line has shown it.</summary>
    public double MeasuredHertz => Follows ? 1 / Slope : double.NaN;

    /// <summary>Standard deviation of the arrivals round the times [s]; NaN before the line has shown it.</summary>
    public double JitterSeconds => Follows ? Math.Sqrt(Math.Max(0, _arrivals - _both * _both / _numbers) / _weight) : double.NaN;

    /// <summary>Pauses in which the board sent nothing.</summary>
    public int Pauses { get; private set; }

    private double Slope => _both / _numbers;

    private bool Follows => _numbers > 0 && _lastArrival - _spanFrom >= LeastSpan && Slope * statedHertz > 1 / Fastest;

    private double Step => Follows ? Slope : 1 / statedHertz;

    /// <summary>Takes note of a piece.</summary>
    /// <param name="last">Running number of its last sample, lost ones counted.</param>
    /// <param name="arrival">When it arrived [s].</param>
    public void Piece(long last, double arrival)
    {
        if (!_joined)
        {
            // What was waiting on the line comes in the first piece and says nothing.
            (_joined, _lastArrival, _lastInPiece, _spanFrom) = (true, arrival, last, arrival);
            return;
        }

        double silence = arrival - _lastArrival, came = (last - _lastInPiece) * Step;
        if (silence > Silence && came < silence / 2)
        {
            double pause = silence - came;
            (_paused, _pendingPause) = (_paused + pause, _pendingPause + pause);
            Pauses++;
        }

        double keep = Math.Exp(-silence / ForgetSeconds), y = arrival - _paused;
        _weight = keep * _weight + 1;
        double dx = last - _meanNumber, dy = y - _meanArrival;
        _meanNumber += dx / _weight;
        _meanArrival += dy / _weight;
        _numbers = keep * _numbers + dx * (last - _meanNumber);
        _both = keep * _both + dx * (y - _meanArrival);
        _arrivals = keep * _arrivals + dy * (y - _meanArrival);
        (_lastArrival, _lastInPiece) = (arrival, last);
    }

    /// <summary>Time of a sample since the first one [s].</summary>
    /// <param name="number">Its running number, rising from call to call.</param>
    public double Time(long number)
    {
        if (_number < 0)
        {
            _number = number;
        }

        double step = Step;
        if (Follows)
        {
            double line = _meanArrival + Slope * (number - _meanNumber), before = _time - (_paused - _pendingPause) + step * (number - _number);
            _origin = double.IsNaN(_origin) ? line - before : _origin;
            step *= 1 + Math.Clamp(line - _origin - before, -Slew, Slew);
        }

        _time += step * (number - _number) + _pendingPause;
        (_number, _pendingPause) = (number, 0);
        return _time;
    }
}
