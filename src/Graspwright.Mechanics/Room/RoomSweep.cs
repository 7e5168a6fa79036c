using Graspwright.Mechanics.Run;

namespace Graspwright.Mechanics.Room;

/// <summary>Sweeps the moving parts through a closing run and finds the smallest gaps and the first clashes.</summary>
/// <remarks>
/// Between recorded states, an output step or an event apart, the coordinates go straight. There a gap g(t) cannot
/// change faster than the two bodies move, L in all, so over a time h it stays above (g₀ + g₁ − L·h)/2; and as the
/// distance of two points that move with speed L and acceleration A curves upward by no more than L²/D + A (D the
/// least distance of the axes), it stays above the chord by no less than −(L²/D + A)·h²/8. The better bound counts.
/// Pieces that cannot hold a smaller gap, or a clash, are left; the others are halved, to a micrometre. Nothing between
/// samples is missed.
/// </remarks>
public sealed class RoomSweep
{
    private const double Exact = 1e-6, ShortestPart = 1e-9; // metres, and of a piece
    private readonly RoomModel _room;
    private readonly MovingBodies _bodies;
    private readonly List<(int First, int Second)> _pairs = [];
    private readonly Capsule[] _at;
    private readonly double[] _x;
    private IReadOnlyList<double[]> _coordinates = [];

    /// <summary>Sets a sweep up.</summary>
    /// <param name="room">Bodies.</param>
    /// <param name="layout">Layout of the states.</param>
    public RoomSweep(RoomModel room, TraceLayout layout)
    {
        ArgumentNullException.ThrowIfNull(room);
        _room = room;
        _bodies = new(room, layout);
        _at = new Capsule[_bodies.Names.Count];
        _x = new double[_bodies.Coordinates];
        Watch();
    }

    /// <summary>Sweeps.</summary>
    /// <param name="states">Recorded states of closing, θ rising.</param>
    public SweepResult Sweep(IReadOnlyList<double[]> states)
    {
        ArgumentNullException.ThrowIfNull(states);
        int rows = states.Count, bodies = _at.Length;
        _coordinates = [.. states.Select(_bodies.Of)];
        Capsule[] placed = new Capsule[rows * bodies];
        MovingBodies.Motion[] motions = new MovingBodies.Motion[rows * bodies];
        for (int r = 0; r < rows; r++)
        {
            _bodies.Place(_coordinates[r], placed.AsSpan(r * bodies, bodies));
            if (r > 0)
            {
                _bodies.Bounds(_coordinates[r - 1], _coordinates[r], motions.AsSpan(r * bodies, bodies));
            }
        }

        List<NearPair> found = [], onPalm = [];
        double[] gaps = new double[rows];
        foreach ((int first, int second) in _pairs)
        {
            for (int r = 0; r < rows; r++)
            {
                gaps[r] = placed[r * bodies + first].GapTo(Other(placed.AsSpan(r * bodies, bodies), second));
            }

            (first >= _bodies.FirstSegment && second >= bodies ? onPalm : found).Add(Nearest(first, second, gaps, motions, bodies));
        }

        (double height, double theta, string part) = Highest(placed, bodies);
        found.Sort((a, b) => a.Gap.CompareTo(b.Gap));
        onPalm.Sort((a, b) => a.Gap.CompareTo(b.Gap));
        return new(found, height, theta, part) { OnPalm = onPalm };
    }

    /// <summary>Gap of a watched pair at a place of the sweep, for tests against sampling [m].</summary>
    internal double GapAt(string first, string second, int piece, double t)
    {
        int one = Index(first), two = Index(second);
        return Gap(one, two, piece, t);
    }

    /// <summary>Names of the watched pairs.</summary>
    internal IEnumerable<(string First, string Second)> WatchedPairs => _pairs.Select(p => (Name(p.First), Name(p.Second)));

    private int Index(string name)
    {
        for (int i = 0; i < _bodies.Names.Count + _room.Still.Count; i++)
        {
            if (Name(i) == name)
            {
                return i;
            }
        }

        throw new ArgumentException($"There is no body '{name}'.", nameof(name));
    }

    private string Name(int body) => body < _at.Length ? _bodies.Names[body] : _room.Still[body - _at.Length].Name;

    /// <summary>Which bodies are watched: links, carriage and bars beside the hand; bars beside each other and the links; fingers beside their neighbours, and past their knuckle beside the hand.</summary>
    private void Watch()
    {
        int bars = MovingBodies.FirstBar, segments = _bodies.FirstSegment;
        for (int body = 0; body < segments; body++)
        {
            for (int still = 0; still < _room.Still.Count; still++)
            {
                _pairs.Add((body, _at.Length + still));
            }
        }

        for (int a = 0; a < _bodies.Bars.Count; a++)
        {
            for (int b = a + 1; b < _bodies.Bars.Count; b++)
            {
                if (_bodies.Bars[b].Parent != a)
                {
                    _pairs.Add((bars + a, bars + b));
                }
            }

            if (_bodies.Bars[a].Parent >= 0)
            {
                _pairs.Add((2, bars + a));
                _pairs.Add((3, bars + a));
            }
        }

        for (int segment = segments; segment < _at.Length; segment++)
        {
            for (int still = 0; still < _room.Still.Count && (segment - segments) % 3 > 0; still++)
            {
                _pairs.Add((segment, _at.Length + still));
            }
        }

        for (int f = 0; f + 1 < _room.Drive.Fingers.Count; f++)
        {
            for (int s = 0; s < 9; s++)
            {
                _pairs.Add((segments + 3 * f + s / 3, segments + 3 * (f + 1) + s % 3));
            }
        }
    }

    private Capsule Other(ReadOnlySpan<Capsule> moving, int body) => body < _at.Length ? moving[body] : _room.Still[body - _at.Length].Body;

    private NearPair Nearest(int first, int second, double[] gaps, MovingBodies.Motion[] motions, int bodies)
    {
        int best = 0;
        for (int r = 1; r < gaps.Length; r++)
        {
            best = gaps[r] < gaps[best] ? r : best;
        }

        double least = gaps[best], bestTheta = _coordinates[best][0], bestTime = 1, radii = RadiusOf(first) + RadiusOf(second);
        int bestPiece = best;
        double? clash = gaps[0] <= 0 ? _coordinates[0][0] : null;
        for (int r = 1; r < gaps.Length; r++)
        {
            MovingBodies.Motion motion = motions[r * bodies + first] + (second < bodies ? motions[r * bodies + second] : default);
            Pair pair = new(first, second, r, motion, radii);
            Part whole = new(0, gaps[r - 1], 1, gaps[r]);
            if (pair.Least(whole) < least - Exact)
            {
                (double gap, double t) = Smallest(pair, whole, least);
                if (gap < least)
                {
                    (least, bestTheta, bestPiece, bestTime) = (gap, Theta(r, t), r, t);
                }
            }

            if (clash is null && Root(pair, whole) is { } time)
            {
                clash = Theta(r, time);
            }
        }

        PlaceAt(bestPiece, bestTime);
        return new(Name(first), Name(second), least, bestTheta, _at[first].MeetingPlace(Other(_at, second)), radii, clash);
    }

    private double RadiusOf(int body) => body >= _at.Length ? _room.Still[body - _at.Length].Body.Radius
        : body < MovingBodies.FirstBar - 1 ? _room.LinkRadius
        : body < _bodies.FirstSegment ? _room.BarRadius
        : _room.Drive.Fingers[(body - _bodies.FirstSegment) / 3].HalfThickness[(body - _bodies.FirstSegment) % 3];

    /// <summary>A part of a piece with the gaps at its ends.</summary>
    private readonly record struct Part(double From, double GapFrom, double To, double GapTo);

    /// <summary>Two bodies in a piece of the sweep, with the bounds of their motion.</summary>
    private readonly record struct Pair(int First, int Second, int Piece, MovingBodies.Motion Motion, double Radii)
    {
        /// <summary>What the gap cannot fall below in a part.</summary>
        public double Least(Part part)
        {
            double time = part.To - part.From, straight = 0.5 * (part.GapFrom + part.GapTo - Motion.Speed * time), axes = straight + Radii;
            if (axes <= 0)
            {
                return straight;
            }

            double curved = Math.Min(part.GapFrom, part.GapTo) - (Motion.Speed * Motion.Speed / axes + Motion.Acceleration) * time * time / 8;
            return Math.Max(straight, curved);
        }
    }

    private (double Gap, double Time) Smallest(Pair pair, Part part, double least)
    {
        (double gap, double time) = part.GapFrom <= part.GapTo ? (part.GapFrom, part.From) : (part.GapTo, part.To);
        if (pair.Least(part) >= Math.Min(least, gap) - Exact || part.To - part.From < ShortestPart)
        {
            return (gap, time);
        }

        double middle = 0.5 * (part.From + part.To), at = Gap(pair.First, pair.Second, pair.Piece, middle);
        (double g1, double t1) = Smallest(pair, new(part.From, part.GapFrom, middle, at), Math.Min(least, gap));
        (double g2, double t2) = Smallest(pair, new(middle, at, part.To, part.GapTo), Math.Min(least, Math.Min(gap, g1)));
        return g1 <= g2 ? (g1, t1) : (g2, t2);
    }

    /// <summary>First time in a part at which the gap is gone; <see langword="null"/> if it never is.</summary>
    private double? Root(Pair pair, Part part)
    {
        if (part.GapFrom <= 0)
        {
            return part.From;
        }

        if (part.GapTo > 0 && pair.Least(part) > 0)
        {
            return null;
        }

        double time = part.To - part.From;
        if (pair.Motion.Speed * time <= Exact || time < ShortestPart)
        {
            return part.GapTo <= 0 ? part.To : null;
        }

        double middle = 0.5 * (part.From + part.To), at = Gap(pair.First, pair.Second, pair.Piece, middle);
        return Root(pair, new(part.From, part.GapFrom, middle, at)) ?? Root(pair, new(middle, at, part.To, part.GapTo));
    }

    private double Gap(int first, int second, int piece, double t)
    {
        Between(piece, t);
        _bodies.Place(first, _x, _at);
        if (second < _at.Length)
        {
            _bodies.Place(second, _x, _at);
        }

        return _at[first].GapTo(Other(_at, second));
    }

    private void PlaceAt(int piece, double t)
    {
        Between(piece, t);
        _bodies.Place(_x, _at);
    }

    /// <summary>Coordinates at a place of the sweep.</summary>
    private void Between(int piece, double t)
    {
        double[] to = _coordinates[piece], from = piece > 0 ? _coordinates[piece - 1] : to;
        for (int i = 0; i < _x.Length; i++)
        {
            _x[i] = from[i] + t * (to[i] - from[i]);
        }
    }

    private double Theta(int piece, double t) => _coordinates[piece - 1][0] + t * (_coordinates[piece][0] - _coordinates[piece - 1][0]);

    /// <summary>Highest part over the back of the shell at the recorded states: links, carriage, bars, segments.</summary>
    private (double Height, double Theta, string Part) Highest(Capsule[] placed, int bodies)
    {
        double height = double.NegativeInfinity, theta = 0;
        int part = 0;
        for (int i = 0; i < placed.Length; i++)
        {
            double top = Math.Max(placed[i].From.Y, placed[i].To.Y) + placed[i].Radius - _room.BackOfShell;
            if (top > height)
            {
                (height, theta, part) = (top, _coordinates[i / bodies][0], i % bodies);
            }
        }

        return (height, theta, _bodies.Names[part]);
    }
}
