using System.Runtime.InteropServices;

namespace Graspwright.Form.Routes;

/// <summary>Windows of every side in order along it, no two over one another: of waves that overlap the nearer one stays.</summary>
/// <remarks>
/// Where a wave gives way to another, its error goes over to the winner unless the winner leads by more: what the loser may have been short of
/// its own value is then still told.
/// </remarks>
internal sealed class WaveFront
{
    private const double Tie = 1e-13, Hair = 1e-11;

    private readonly double[] _length;
    private readonly double _step;
    private readonly int[] _first;
    private readonly List<(double Low, double High, int Owner)> _pieces = [];
    private readonly List<WaveWindow> _built = [];
    private WaveWindow[] _pool = new WaveWindow[1 << 10];
    private int _used, _free = -1;

    /// <summary>Begins with no window anywhere.</summary>
    /// <param name="length">Length of each side [m].</param>
    /// <param name="step">Steps in which errors of what was carried on already are raised: without them they could creep round a point for ever [m].</param>
    public WaveFront(double[] length, double step)
    {
        (_length, _step) = (length, step > 0 ? Math.ScaleB(1, Math.ILogB(step)) : 0); // a power of two: rounding up twice is rounding up once
        _first = new int[length.Length];
        Array.Fill(_first, -1);
    }

    /// <summary>Windows that are held.</summary>
    public int Held { get; private set; }

    /// <summary>An error rounded up to the next step.</summary>
    /// <param name="error">The error [m].</param>
    public double Stepped(double error) => _step > 0 ? Math.Ceiling(error / _step) * _step : error;

    /// <summary>The first window of a side; −1 = none.</summary>
    /// <param name="side">The side.</param>
    public int First(int side) => _first[side];

    /// <summary>A window.</summary>
    /// <param name="i">Its index.</param>
    public ref WaveWindow this[int i] => ref _pool[i];

    /// <summary>Takes a window out of its side.</summary>
    /// <param name="side">The side.</param>
    /// <param name="before">The window before it; −1 = none.</param>
    /// <param name="i">The window.</param>
    public void Remove(int side, int before, int i)
    {
        if (before < 0)
        {
            _first[side] = _pool[i].Next;
        }
        else
        {
            _pool[before].Next = _pool[i].Next;
        }

        Free(i);
    }

    /// <summary>Puts a window in where it is nearer than what is there.</summary>
    /// <param name="side">The side.</param>
    /// <param name="wave">The window, waiting to be carried on.</param>
    /// <returns>Whether any window of the side waits that did not before.</returns>
    public bool Put(int side, ref readonly WaveWindow wave)
    {
        if (_first[side] < 0)
        {
            _first[side] = New(in wave, -1);
            return true;
        }

        WaveWindow n = wave;
        bool woken = false;
        List<(double Low, double High, int Owner)> pieces = _pieces;
        pieces.Clear();
        double at = n.Low;
        for (int i = _first[side]; i >= 0; i = _pool[i].Next)
        {
            ref WaveWindow w = ref _pool[i];
            if (w.Low > at && at < n.High)
            {
                pieces.Add((at, Math.Min(n.High, w.Low), -1));
                at = Math.Min(n.High, w.Low);
            }

            double p = Math.Max(at, w.Low), q = Math.Min(n.High, w.High);
            if (q <= p)
            {
                pieces.Add((w.Low, w.High, i));
                continue;
            }

            if (p > w.Low)
            {
                pieces.Add((w.Low, p, i));
            }

            woken |= Compare(ref n, ref w, i, p, q);
            if (q < w.High)
            {
                pieces.Add((q, w.High, i));
            }

            at = q;
        }

        if (at < n.High)
        {
            pieces.Add((at, n.High, -1));
        }

        return Rebuild(side, in n) || woken;
    }

    /// <summary>Writes the windows of a side anew, as carried on.</summary>
    /// <param name="side">The side.</param>
    /// <param name="windows">Its windows in order.</param>
    public void Set(int side, List<WaveWindow> windows)
    {
        int i = _first[side], after = -1;
        while (i >= 0)
        {
            int next = _pool[i].Next;
            Free(i);
            i = next;
        }

        Span<WaveWindow> all = CollectionsMarshal.AsSpan(windows);
        for (int k = all.Length - 1; k >= 0; k--)
        {
            after = New(in all[k], after);
            _pool[after].Pending = false;
        }

        _first[side] = after;
    }

    // Who is nearer where on [p, q]; the difference of two waves has at most one turning point: where the line through both sources meets the side.
    private bool Compare(ref WaveWindow n, ref WaveWindow w, int owner, double p, double q)
    {
        double atP = n.At(p) - w.At(p), atQ = n.At(q) - w.At(q), scale = Tie * (w.AtLow + w.AtHigh);
        double turn = n.X - n.Y * (w.X - n.X) / (w.Y - n.Y), least = double.PositiveInfinity, most = double.NegativeInfinity;
        if (turn > p && turn < q)
        {
            double atTurn = n.At(turn) - w.At(turn);
            Monotone(in n, in w, owner, p, turn, atP, atTurn, scale, ref least, ref most);
            Monotone(in n, in w, owner, turn, q, atTurn, atQ, scale, ref least, ref most);
        }
        else
        {
            Monotone(in n, in w, owner, p, q, atP, atQ, scale, ref least, ref most);
        }

        // the loser's error less the winner's least lead
        n.Error = Math.Max(n.Error, most > double.NegativeInfinity ? w.Error + most : 0);
        double over = least < double.PositiveInfinity ? n.Error - least : 0;
        if (over > w.Error)
        {
            bool woken = !w.Pending;
            w.Error = woken ? Stepped(over) : over;
            w.Pending = true;
            return woken;
        }

        return false;
    }

    // least: how little w leads by at least where it wins; most: how little n leads by where it wins, below 0.
    private void Monotone(ref readonly WaveWindow n, ref readonly WaveWindow w, int owner, double p, double q, double atP, double atQ, double scale, ref double least, ref double most)
    {
        bool firstP = atP < -scale, firstQ = atQ < -scale;
        if (firstP != firstQ && atP < 0 == atQ < 0)
        {
            (firstP, firstQ) = (true, true); // level at one end only
        }

        if (firstP == firstQ)
        {
            _pieces.Add((p, q, firstP ? -1 : owner));
            if (firstP)
            {
                most = Math.Max(most, Math.Max(atP, atQ));
            }
            else
            {
                least = Math.Min(least, Math.Max(0, Math.Min(atP, atQ)));
            }

            return;
        }

        double x = Cross(in n, in w, p, q, atP, atQ);
        _pieces.Add((p, x, firstP ? -1 : owner));
        _pieces.Add((x, q, firstQ ? -1 : owner));
        (least, most) = (0, 0);
    }

    // Where two waves are level, by the false position with halved ends.
    private static double Cross(ref readonly WaveWindow n, ref readonly WaveWindow w, double p, double q, double atP, double atQ)
    {
        double close = 1e-14 * (q - p), level = 4e-16 * w.AtLow, x = (p + q) / 2;
        int side = 0;
        for (int i = 0; i < 60 && q - p > close; i++)
        {
            x = atP == atQ ? (p + q) / 2 : Math.Clamp(p - atP * (q - p) / (atQ - atP), p, q);
            double d = n.At(x) - w.At(x);
            if (Math.Abs(d) <= level)
            {
                break;
            }

            if (d < 0 == atQ < 0)
            {
                (q, atQ, atP, side) = (x, d, side == 1 ? atP / 2 : atP, 1);
            }
            else
            {
                (p, atP, atQ, side) = (x, d, side == -1 ? atQ / 2 : atQ, -1);
            }
        }

        return x;
    }

    // Pieces of one owner that touch become one window again.
    private bool Rebuild(int side, ref readonly WaveWindow n)
    {
        double hair = Hair * _length[side];
        int kept = 0;
        for (int i = 0; i < _pieces.Count; i++)
        {
            (double low, double high, int owner) = _pieces[i];
            if (kept > 0 && (_pieces[kept - 1].Owner == owner || high - low < hair) && low - _pieces[kept - 1].High < hair)
            {
                _pieces[kept - 1] = (_pieces[kept - 1].Low, high, _pieces[kept - 1].Owner);
            }
            else
            {
                _pieces[kept++] = (low, high, owner);
            }
        }

        _pieces.RemoveRange(kept, _pieces.Count - kept);
        bool won = false;
        _built.Clear();
        foreach ((double low, double high, int owner) in _pieces)
        {
            won |= owner < 0;
            _built.Add(owner < 0 ? n.On(low, high) : _pool[owner].On(low, high));
        }

        if (!won)
        {
            return false;
        }

        for (int i = _first[side]; i >= 0;)
        {
            int next = _pool[i].Next;
            Free(i);
            i = next;
        }

        int after = -1;
        Span<WaveWindow> built = CollectionsMarshal.AsSpan(_built);
        for (int i = built.Length - 1; i >= 0; i--)
        {
            after = New(in built[i], after);
        }

        _first[side] = after;
        return true;
    }

    private int New(ref readonly WaveWindow w, int next)
    {
        int i = _free;
        if (i >= 0)
        {
            _free = _pool[i].Next;
        }
        else
        {
            i = _used++;
            if (i == _pool.Length)
            {
                Array.Resize(ref _pool, 2 * _pool.Length);
            }
        }

        _pool[i] = w;
        _pool[i].Next = next;
        Held++;
        return i;
    }

    private void Free(int i)
    {
        _pool[i].Next = _free;
        _free = i;
        Held--;
    }
}
