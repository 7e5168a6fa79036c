using System.Runtime.InteropServices;
using Graspwright.Form.Surface;

namespace Graspwright.Form.Routes;

/// <summary>Distances from one point with a bound for each: waves over the triangles, side by side, neighbouring windows taken for one where that is allowed.</summary>
/// <remarks>
/// Why the error that a window carries is a bound. Too short: a window's distances are lengths of ways, plus at most what merging took off them, and
/// that is added to its error. Too long: where a wave is carried over a triangle, the distance at z is the least over its stretch of distance at y
/// plus |y − z|, and a least value changes by no more than what it is taken of; a merged window sees all that its parts saw; where a wave gives way,
/// its error goes over to the winner; the error of a neighbour on the same side counts too for what is as far as it is, because the straight way to z
/// may have crossed its stretch; a window is dropped only where the way by an end of its side is shorter with both errors against it. All points, not saddles only,
/// send waves on, so that no way that bends a little at a point is missed.
/// </remarks>
internal sealed class BoundedSpread
{
    private const double Hair = 1e-10;
    private const int Ask = 4096, Steps = 16, MostCompared = 16;
    private const long MostCarried = 40_000_000;
    private const int MostHeld = 8_000_000;

    private readonly Unfolded _flat;
    private readonly double _share;
    private readonly PriorityQueue<int, double> _queue = new(); // sides, and points as −1 − v
    private readonly double[] _error;
    private readonly bool[] _waits; // sides in the queue
    private readonly List<WaveWindow> _side = [], _run = [], _merged = [];
    private readonly Func<int, double>? _rest;
    private readonly double _limit;
    private readonly long _most;
    private double _sideMost; // greatest error on the side in hand

    /// <summary>Prepares.</summary>
    /// <param name="flat">The triangles laid flat.</param>
    /// <param name="share">Error allowed as a share of the distance.</param>
    /// <param name="rest">What is left of the way at least from a point; <see langword="null"/> = all points are asked for [m].</param>
    /// <param name="limit">Longer ways than this are not followed, where <paramref name="rest"/> is given [m].</param>
    /// <param name="most">Windows after which it gives up.</param>
    public BoundedSpread(Unfolded flat, double share, Func<int, double>? rest = null, double limit = double.PositiveInfinity, long most = MostCarried)
    {
        _most = most;
        (_flat, _share, _rest, _limit) = (flat, share, rest, limit * (1 + 1e-9));
        Front = new(flat.Length, share * flat.MeanLength / Steps);
        Far = new double[flat.First.Length - 1];
        _error = new double[Far.Length];
        Array.Fill(Far, double.PositiveInfinity);
        _waits = new bool[flat.Length.Length];
    }

    /// <summary>Distance of each point; infinite = not reached [m].</summary>
    public double[] Far { get; }

    /// <summary>How far each may be off, either way [m].</summary>
    public double[] Error => _error;

    /// <summary>Windows that were carried over a triangle.</summary>
    public long Count { get; private set; }

    /// <summary>The windows.</summary>
    public WaveFront Front { get; }

    private int[] Across => _flat.Sides.Across;

    /// <summary>Spreads from a point.</summary>
    /// <param name="from">The point.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="InvalidOperationException">The surface is so crumpled that the windows are too many.</exception>
    public void Go(int from, CancellationToken stop)
    {
        Far[from] = 0;
        _queue.Enqueue(-1 - from, 0);
        for (long turn = 0; _queue.TryDequeue(out int what, out double key); turn++)
        {
            if (turn % Ask == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            if (what >= 0)
            {
                Side(what, key);
            }
            else if (key <= Far[-1 - what])
            {
                Fan(-1 - what);
            }
        }
    }

    // A way may turn at any point: its edges, and the far sides of its triangles.
    private void Fan(int v)
    {
        for (int i = _flat.First[v]; i < _flat.First[v + 1]; i++)
        {
            int h = _flat.Leaving[i], next = Neighbourhood.Next(h), back = Neighbourhood.Previous(h), across = Across[next];
            Reach(_flat.Sides.To(h), Far[v] + _flat.Length[h], _error[v]);
            Reach(_flat.Sides.From(back), Far[v] + _flat.Length[back], _error[v]);
            if (across >= 0)
            {
                // seen from the other triangle, the source lies below the side; the side there runs the other way
                double l = _flat.Length[next];
                WaveWindow w = new() { High = l, X = l - _flat.TipX[next], Y = -_flat.TipY[next], Before = Far[v], Error = _error[v], Pending = true };
                (w.AtLow, w.AtHigh) = (w.At(0), w.At(l));
                Put(across, in w);
            }
        }
    }

    private void Reach(int v, double d, double error)
    {
        if (_rest is not null && d + _rest(v) > _limit)
        {
            return;
        }

        double gain = Far[v] - d;
        if (gain > 1e-12 * d)
        {
            _error[v] = double.IsFinite(gain) ? Math.Max(error, _error[v] - gain) : error;
            Far[v] = d;
            _queue.Enqueue(-1 - v, d);
        }
        else if (error + Math.Min(0, gain) > _error[v])
        {
            _error[v] = Front.Stepped(error + Math.Min(0, gain));
            _queue.Enqueue(-1 - v, Far[v]);
        }
    }

    private void Put(int side, ref readonly WaveWindow w)
    {
        if (_rest is not null)
        {
            // what is left changes by no more than the way along the side
            double fromLow = w.AtHigh - w.High + _rest(_flat.Sides.From(side)), fromHigh = w.AtLow + w.Low - _flat.Length[side] + _rest(_flat.Sides.To(side));
            if (Math.Max(fromLow, fromHigh) > _limit)
            {
                return;
            }
        }

        if (!Lost(side, in w) && Front.Put(side, in w) && !_waits[side])
        {
            _waits[side] = true;
            _queue.Enqueue(side, Key(side));
        }
    }

    // Nothing that the window sees is nearer through it than through an end of the side, errors and all.
    private bool Lost(int side, ref readonly WaveWindow w)
    {
        int a = _flat.Sides.From(side), b = _flat.Sides.To(side);
        return Far[a] + _error[a] + w.High < w.AtHigh - w.Error || Far[b] + _error[b] + _flat.Length[side] - w.Low < w.AtLow - w.Error;
    }

    // A side is carried on when the wave has gone over all of it.
    private double Key(int side)
    {
        double key = 0;
        for (int i = Front.First(side); i >= 0; i = Front[i].Next)
        {
            ref WaveWindow w = ref Front[i];
            key = w.Pending ? Math.Max(key, Math.Max(w.AtLow, w.AtHigh)) : key;
        }

        return key;
    }

    private void Side(int side, double key)
    {
        double now = Key(side);
        if (now > key * (1 + 1e-12))
        {
            _queue.Enqueue(side, now);
            return;
        }

        _waits[side] = false;
        double near = Hair * _flat.Length[side], beyond = Math.Max(_flat.Length[Neighbourhood.Next(side)], _flat.Length[Neighbourhood.Previous(side)]);
        int before = -1;
        _side.Clear();
        for (int i = Front.First(side); i >= 0;)
        {
            ref WaveWindow w = ref Front[i];
            int next = w.Next;
            if (w.Pending && Lost(side, in w))
            {
                Front.Remove(side, before, i);
            }
            else
            {
                _side.Add(w);
                before = i;
            }

            i = next;
        }

        Span<WaveWindow> all = CollectionsMarshal.AsSpan(_side);
        _sideMost = Most(all);
        _merged.Clear();
        _run.Clear();
        foreach (ref WaveWindow w in all)
        {
            // carried on before, when its neighbours told of smaller errors
            w.Pending |= Shared(all, w.Error, Math.Max(w.AtLow, w.AtHigh) + beyond) > w.Told;
            if (_run.Count > 0 && !(w.Pending && w.Low - _run[^1].High < near))
            {
                Merge(0, _run.Count);
                _run.Clear();
            }

            (w.Pending ? _run : _merged).Add(w);
        }

        if (_run.Count > 0)
        {
            Merge(0, _run.Count);
        }

        all = CollectionsMarshal.AsSpan(_merged);
        _sideMost = Most(all);
        foreach (ref WaveWindow w in all)
        {
            w.Told = w.Pending ? Front.Stepped(Shared(all, w.Error, Math.Max(w.AtLow, w.AtHigh) + beyond)) : w.Told;
        }

        Front.Set(side, _merged);
        foreach (ref readonly WaveWindow w in all)
        {
            if (w.Pending)
            {
                Carry(side, in w);
            }
        }
    }

    private static double Most(ReadOnlySpan<WaveWindow> all)
    {
        double most = 0;
        foreach (ref readonly WaveWindow w in all)
        {
            most = Math.Max(most, w.Error);
        }

        return most;
    }

    // A straight way to a place may have crossed the stretch of a neighbour: its error counts where the place is as far as it is.
    private double Shared(ReadOnlySpan<WaveWindow> all, double own, double reach)
    {
        if (all.Length > MostCompared || own >= _sideMost)
        {
            return Math.Max(own, _sideMost);
        }

        double error = own;
        foreach (ref readonly WaveWindow w in all)
        {
            error = w.Error > error && w.Nearest - w.Error <= reach ? w.Error : error;
        }

        return error;
    }

    private void Merge(int from, int to)
    {
        if (to - from == 1)
        {
            _merged.Add(_run[from]);
        }
        else if (WaveMerging.Try(CollectionsMarshal.AsSpan(_run)[from..to], _share, out WaveWindow one))
        {
            _merged.Add(one);
        }
        else
        {
            int middle = (from + to) / 2;
            Merge(from, middle);
            Merge(middle, to);
        }
    }

    private void Carry(int h, ref readonly WaveWindow w)
    {
        if (++Count > _most || Front.Held > MostHeld)
        {
            throw new InvalidOperationException("The surface is too crumpled for distances this true: allow a larger error, or smooth and thin it first.");
        }

        int next = Neighbourhood.Next(h), back = Neighbourhood.Previous(h);
        double l = _flat.Length[h], cx = _flat.TipX[h], cy = _flat.TipY[h];
        double left = (w.Low - w.X) * (cy - w.Y) + w.Y * (cx - w.X), right = (w.High - w.X) * (cy - w.Y) + w.Y * (cx - w.X);
        bool onRight = left > 0, onLeft = right < 0;
        if (w.Low <= 0)
        {
            Reach(_flat.Sides.From(h), w.AtLow, ToldAt(in w, w.AtLow));
        }

        if (w.High >= l)
        {
            Reach(_flat.Sides.To(h), w.AtHigh, ToldAt(in w, w.AtHigh));
        }

        // two windows that touch must not both miss the tip by rounding
        double hair = Hair * l * (cy - w.Y);
        if (left <= hair && right >= -hair)
        {
            double far = w.Before + Math.Sqrt((cx - w.X) * (cx - w.X) + (cy - w.Y) * (cy - w.Y));
            Reach(_flat.Sides.From(back), far, ToldAt(in w, far));
        }

        if (!onLeft)
        {
            // the side from the end of h to the tip
            double a = onRight ? Meet(in w, w.Low, l, 0, cx, cy) : 1, b = w.High >= l ? 0 : Meet(in w, w.High, l, 0, cx, cy);
            Child(in w, next, b, a, l, 0, cx, cy);
        }

        if (!onRight)
        {
            double a = w.Low <= 0 ? 1 : Meet(in w, w.Low, cx, cy, 0, 0), b = onLeft ? Meet(in w, w.High, cx, cy, 0, 0) : 0;
            Child(in w, back, b, a, cx, cy, 0, 0);
        }
    }

    private double ToldAt(ref readonly WaveWindow w, double reach) => w.Told <= w.Error ? w.Error : Math.Min(w.Told, Shared(CollectionsMarshal.AsSpan(_merged), w.Error, reach));

    // Where the line from the source through a place of the side meets another side: share along it.
    private static double Meet(ref readonly WaveWindow w, double place, double ax, double ay, double bx, double by)
    {
        double dx = place - w.X, dy = -w.Y, ex = bx - ax, ey = by - ay, cross = ex * dy - ey * dx;
        double t = ((w.X - ax) * dy - (w.Y - ay) * dx) / cross;
        return double.IsNaN(t) ? 0 : t < Hair ? 0 : t > 1 - Hair ? 1 : t;
    }

    private void Child(ref readonly WaveWindow w, int side, double low, double high, double ax, double ay, double bx, double by)
    {
        int across = Across[side];
        double length = _flat.Length[side];
        if (across < 0 || !(high - low > Hair))
        {
            return;
        }

        // the frame of the side across: from b to a, its triangle on the other side
        double ux = (ax - bx) / length, uy = (ay - by) / length, px = w.X - bx, py = w.Y - by;
        WaveWindow child = new() { Low = high == 1 ? 0 : length * (1 - high), High = low == 0 ? length : length * (1 - low), X = px * ux + py * uy, Y = -Math.Abs(ux * py - uy * px), Before = w.Before, Pending = true };
        (child.AtLow, child.AtHigh) = (child.At(child.Low), child.At(child.High));
        child.Error = ToldAt(in w, Math.Max(child.AtLow, child.AtHigh));
        Put(across, in child);
    }
}
