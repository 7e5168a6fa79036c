namespace Graspwright.Hand;

/// <summary>A corner of a line drawn on the limb.</summary>
/// <param name="Place">Place along the limb [m].</param>
/// <param name="AngleRadians">Angle round it, from the back of the hand toward the thumb [rad].</param>
public readonly record struct LimbCorner(double Place, double AngleRadians);

/// <summary>A closed line drawn on the limb, its corners joined the shorter way round.</summary>
public sealed class LimbLine
{
    private const double HalfTurn = 179 * Math.PI / 180; // beyond it the shorter way round is no plain choice

    private readonly double[] _places, _angles; // the first corner again at the end, as many turns on as the line goes round

    /// <summary>Unrolls a line.</summary>
    /// <param name="corners">Its corners in turn, three or more.</param>
    public LimbLine(IReadOnlyList<LimbCorner> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        (_places, _angles) = (new double[corners.Count + 1], new double[corners.Count + 1]);
        (_places[0], _angles[0], DoubtfulStep) = (corners[0].Place, corners[0].AngleRadians, -1);
        for (int i = 1; i <= corners.Count; i++)
        {
            LimbCorner next = corners[i % corners.Count];
            double step = Math.IEEERemainder(next.AngleRadians - corners[i - 1].AngleRadians, 2 * Math.PI);
            (_places[i], _angles[i]) = (next.Place, _angles[i - 1] + step);
            DoubtfulStep = Math.Abs(step) > HalfTurn && DoubtfulStep < 0 ? i - 1 : DoubtfulStep;
        }
    }

    /// <summary>How many corners.</summary>
    public int Count => _places.Length - 1;

    /// <summary>First piece that goes half a turn round, so that its way is in doubt; −1 = none.</summary>
    public int DoubtfulStep { get; }

    /// <summary>How often it goes round the limb, below 0 against the angles.</summary>
    public int Turns => (int)Math.Round((_angles[^1] - _angles[0]) / (2 * Math.PI));

    /// <summary>Least and greatest place [m].</summary>
    public (double Low, double High) Places => (_places.Min(), _places.Max());

    /// <summary>Least and greatest angle, unrolled [rad].</summary>
    public (double Low, double High) Angles => (_angles.Min(), _angles.Max());

    /// <summary>Mean of its places over the angle; for a line that goes round [m].</summary>
    public double MeanPlace
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < Count; i++)
            {
                sum += (_places[i] + _places[i + 1]) / 2 * (_angles[i + 1] - _angles[i]);
            }

            return sum / (_angles[^1] - _angles[0]);
        }
    }

    /// <summary>Area within it, places by angles; for a line that does not go round [m·rad].</summary>
    public double Area
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < Count; i++)
            {
                sum += _places[i] * _angles[i + 1] - _places[i + 1] * _angles[i];
            }

            return Math.Abs(sum / 2);
        }
    }

    /// <summary>Two pieces of it that meet where they should not: the first corner of each, from 0; <see langword="null"/> = none.</summary>
    public (int A, int B)? OwnCrossing()
    {
        for (int i = 0; i < Count; i++)
        {
            if (_places[i] == _places[i + 1] && _angles[i] == _angles[i + 1])
            {
                return (i, i);
            }

            for (int j = i + 1; j < Count; j++)
            {
                bool follows = j == i + 1, leads = i == 0 && j == Count - 1;
                for (int turn = -1; turn <= 1; turn++)
                {
                    double shift = 2 * Math.PI * turn;
                    // neighbours share a corner: they may not run back over each other
                    bool joined = (follows && turn == 0) || (leads && turn == -Turns);
                    if (joined ? Back(follows ? i : j, follows ? j : i) : Meet(this, i, this, j, shift))
                    {
                        return (i, j);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Pieces of two lines that meet: the first corner of each, from 0; <see langword="null"/> = none.</summary>
    /// <param name="other">The other line.</param>
    public (int A, int B)? Crossing(LimbLine other)
    {
        ArgumentNullException.ThrowIfNull(other);
        int most = (int)Math.Ceiling((Angles.High - Angles.Low + other.Angles.High - other.Angles.Low + Math.Abs(Angles.Low - other.Angles.Low)) / (2 * Math.PI));
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < other.Count; j++)
            {
                for (int turn = -most; turn <= most; turn++)
                {
                    if (Meet(this, i, other, j, 2 * Math.PI * turn))
                    {
                        return (i, j);
                    }
                }
            }
        }

        return null;
    }

    // Piece b follows piece a: whether it runs straight back.
    private bool Back(int a, int b)
    {
        double ax = _places[a + 1] - _places[a], ay = _angles[a + 1] - _angles[a], bx = _places[b + 1] - _places[b], by = _angles[b + 1] - _angles[b];
        return Math.Abs(ax * by - ay * bx) < 1e-12 && ax * bx + ay * by < 0;
    }

    private static bool Meet(LimbLine a, int i, LimbLine b, int j, double shift)
    {
        (double ax, double ay, double bx, double by) = (a._places[i], a._angles[i], a._places[i + 1], a._angles[i + 1]);
        (double cx, double cy, double dx, double dy) = (b._places[j], b._angles[j] + shift, b._places[j + 1], b._angles[j + 1] + shift);
        if (Math.Max(ax, bx) < Math.Min(cx, dx) || Math.Max(cx, dx) < Math.Min(ax, bx) || Math.Max(ay, by) < Math.Min(cy, dy) || Math.Max(cy, dy) < Math.Min(ay, by))
        {
            return false;
        }

        double c = Side(ax, ay, bx, by, cx, cy), d = Side(ax, ay, bx, by, dx, dy), e = Side(cx, cy, dx, dy, ax, ay), f = Side(cx, cy, dx, dy, bx, by);
        return c * d <= 0 && e * f <= 0;
    }

    private static double Side(double ax, double ay, double bx, double by, double px, double py) => (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}
