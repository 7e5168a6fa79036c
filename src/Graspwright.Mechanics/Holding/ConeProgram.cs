namespace Graspwright.Mechanics.Holding;

/// <summary>Greatest value of a linear goal over x ≥ 0 and friction cones, A·x = b.</summary>
/// <remarks>
/// Revised simplex in which the edges of a round cone are columns made on demand: for prices y the best edge of the cone
/// {n + μ·u, |u| ≤ 1} lies along −(y·t). So the cones stay round and the result is the cone program's own, with a bound
/// on what is missing (Dantzig and Wolfe's column generation). Right sides are shifted by some 1e-10 so that no
/// step is degenerate; the last basis is solved for the right sides as given.
/// </remarks>
internal sealed partial class ConeProgram
{
    private const int MostSteps = 600, StepsBetweenInversions = 10;
    private const double Tolerance = 1e-7, SmallestPivot = 1e-10; // of the greatest price; of a direction
    private readonly int _rows;
    private readonly double[] _right, _shift, _price, _direction, _entering;
    private readonly double[] _inverse, _columns;
    private readonly double[] _value, _cost;
    private readonly int[] _owner;
    private readonly List<(double[] Column, double Cost)> _plain = [];
    private readonly List<Cone> _cones = [];

    public ConeProgram(int rows)
    {
        _rows = rows;
        _right = new double[rows];
        _shift = new double[rows];
        _price = new double[rows];
        _direction = new double[rows];
        _entering = new double[rows];
        _inverse = new double[rows * rows];
        _columns = new double[rows * rows];
        _value = new double[rows];
        _cost = new double[rows];
        _owner = new int[rows];
    }

    /// <summary>A cone: edges n + μ·(u₁t₁ + u₂t₂ + u₃s), |u| = 1.</summary>
    internal sealed record Cone(double[] Normal, double[][] Tangents, double Friction);

    /// <summary>Right side of a row.</summary>
    public double[] Right => _right;

    /// <summary>Prices of the rows at the solution: change of the goal for each unit of right side.</summary>
    public ReadOnlySpan<double> Prices => _price;

    /// <summary>Value reached.</summary>
    public double Goal { get; private set; }

    /// <summary>The goal can exceed <see cref="Goal"/> by no more than this, for each unit of normal force.</summary>
    public double Gap { get; private set; }

    /// <summary>Simplex steps taken.</summary>
    public int Steps { get; private set; }

    /// <summary>Adds a variable.</summary>
    public int Add(double[] column, double cost)
    {
        _plain.Add((column, cost));
        return _plain.Count - 1;
    }

    /// <summary>Adds a friction cone.</summary>
    public int Add(Cone cone)
    {
        _cones.Add(cone);
        return _cones.Count - 1;
    }

    /// <summary>Changes the cost of a variable.</summary>
    public void Cost(int plain, double cost) => _plain[plain] = (_plain[plain].Column, cost);

    /// <summary>Changes the column of a variable.</summary>
    public void Replace(int plain, double[] column) => _plain[plain] = (column, _plain[plain].Cost);

    /// <summary>Changes the coefficient of a cone.</summary>
    public void Friction(int cone, double friction) => _cones[cone] = _cones[cone] with { Friction = friction };

    /// <summary>Solves.</summary>
    /// <param name="coneCost">Cost of a unit of normal force of each cone; <see langword="null"/> = none.</param>
    /// <returns>Whether A·x = b has a solution.</returns>
    /// <exception cref="InvalidOperationException">The goal grows without bound.</exception>
    public bool Solve(double[]? coneCost = null)
    {
        double scale = 1;
        foreach (double b in _right)
        {
            scale = Math.Max(scale, Math.Abs(b));
        }

        Array.Clear(_inverse);
        Array.Clear(_columns);
        for (int r = 0; r < _rows; r++)
        {
            double sign = _right[r] < 0 ? -1 : 1;
            _columns[r * _rows + r] = sign;
            _inverse[r * _rows + r] = sign;
            _owner[r] = -1;
            _cost[r] = -1;
            _shift[r] = sign * Shift(r, scale);
            _value[r] = sign * (_right[r] + _shift[r]);
        }

        Steps = 0;
        Run(phaseOne: true, coneCost, scale);
        Invert();
        double left = 0;
        for (int r = 0; r < _rows; r++)
        {
            left += _owner[r] < 0 ? _value[r] : 0;
        }

        if (left > 1e-7 * scale)
        {
            return false;
        }

        for (int r = 0; r < _rows; r++)
        {
            if (_owner[r] >= 0)
            {
                _cost[r] = CostOf(_owner[r], coneCost);
                continue;
            }

            // What still stands in for row r is a hair: the row is shifted by it, and it stands at 0 from here on.
            _cost[r] = 0;
            _shift[r] -= _columns[r * _rows + r] * _value[r];
            _value[r] = 0;
        }

        Run(phaseOne: false, coneCost, scale);
        Invert();
        Unshift();
        return true;
    }

    /// <summary>
    /// Values and goal of the last basis for the right sides as they were given. Its prices bound every solution, shifted
    /// or not; where a value comes out a hair below zero the basis is degenerate, and the value is zero.
    /// </summary>
    private void Unshift()
    {
        Array.Clear(_shift);
        Values();
        Goal = 0;
        for (int r = 0; r < _rows; r++)
        {
            _value[r] = _owner[r] < 0 ? 0 : _value[r];
            Goal += _cost[r] * _value[r];
            _value[r] = Math.Max(0, _value[r]);
        }
    }

    /// <summary>Value of a variable.</summary>
    public double ValueOf(int plain)
    {
        double value = 0;
        for (int r = 0; r < _rows; r++)
        {
            value += _owner[r] == plain ? _value[r] : 0;
        }

        return value;
    }

    /// <summary>Adds what a cone contributes to the rows, A·x of that cone.</summary>
    public void Contribution(int cone, double[] into)
    {
        Array.Clear(into);
        for (int r = 0; r < _rows; r++)
        {
            if (_owner[r] == _plain.Count + cone)
            {
                for (int i = 0; i < _rows; i++)
                {
                    into[i] += _value[r] * _columns[r * _rows + i];
                }
            }
        }
    }

    private static double Shift(int row, double scale) => 1e-10 * scale * (1 + 0.37 * ((row * 7) % 11));

    private double CostOf(int owner, double[]? coneCost) =>
        owner < _plain.Count ? _plain[owner].Cost : coneCost?[owner - _plain.Count] ?? 0;

    private void Run(bool phaseOne, double[]? coneCost, double scale)
    {
        int sinceInversion = 0;
        for (; Steps < MostSteps; Steps++)
        {
            Prices1();
            double best = Choose(phaseOne, coneCost, out int owner);
            Gap = best;
            if (best <= Tolerance * Size(_price))
            {
                return;
            }

            Direction();
            int leaves = Leaving(phaseOne, scale);
            if (leaves < 0)
            {
                throw new InvalidOperationException("The load grows without bound.");
            }

            Pivot(leaves, owner, phaseOne ? 0 : CostOf(owner, coneCost));
            if (++sinceInversion >= StepsBetweenInversions)
            {
                Invert();
                sinceInversion = 0;
            }
        }
    }

    private void Prices1()
    {
        Array.Clear(_price);
        for (int r = 0; r < _rows; r++)
        {
            double c = _cost[r];
            if (c == 0)
            {
                continue;
            }

            for (int i = 0; i < _rows; i++)
            {
                _price[i] += c * _inverse[r * _rows + i];
            }
        }
    }

    /// <summary>The column that gains most for each unit; it is left in <see cref="_entering"/>.</summary>
    private double Choose(bool phaseOne, double[]? coneCost, out int owner)
    {
        double best = 0;
        owner = -1;
        for (int j = 0; j < _plain.Count; j++)
        {
            double gain = (phaseOne ? 0 : _plain[j].Cost) - Dot(_price, _plain[j].Column);
            if (gain > best)
            {
                best = gain;
                owner = j;
            }
        }

        for (int k = 0; k < _cones.Count; k++)
        {
            Cone cone = _cones[k];
            double square = 0;
            foreach (double[] t in cone.Tangents)
            {
                double along = Dot(_price, t);
                square += along * along;
            }

            double gain = (phaseOne ? 0 : coneCost?[k] ?? 0) - Dot(_price, cone.Normal) + cone.Friction * Math.Sqrt(square);
            if (gain > best)
            {
                best = gain;
                owner = _plain.Count + k;
            }
        }

        if (owner >= 0)
        {
            Take(owner);
        }

        return best;
    }

    private void Take(int owner)
    {
        if (owner < _plain.Count)
        {
            _plain[owner].Column.CopyTo(_entering, 0);
            return;
        }

        Cone cone = _cones[owner - _plain.Count];
        cone.Normal.CopyTo(_entering, 0);
        double square = 0;
        foreach (double[] t in cone.Tangents)
        {
            double along = Dot(_price, t);
            square += along * along;
        }

        if (square == 0)
        {
            return;
        }

        double factor = cone.Friction / Math.Sqrt(square);
        foreach (double[] t in cone.Tangents)
        {
            double along = factor * Dot(_price, t);
            for (int i = 0; i < _rows; i++)
            {
                _entering[i] -= along * t[i];
            }
        }
    }

    private void Direction()
    {
        for (int r = 0; r < _rows; r++)
        {
            double sum = 0;
            for (int i = 0; i < _rows; i++)
            {
                sum += _inverse[r * _rows + i] * _entering[i];
            }

            _direction[r] = sum;
        }
    }

    /// <summary>The row that leaves: of those that reach zero first, give or take a hair, the one with the largest pivot (P. M. J. Harris 1973, from memory).</summary>
    private int Leaving(bool phaseOne, double scale)
    {
        double hair = 1e-11 * scale, least = double.PositiveInfinity;
        for (int r = 0; r < _rows; r++)
        {
            double d = Falls(r, phaseOne);
            if (d > SmallestPivot)
            {
                least = Math.Min(least, (Math.Max(0, _value[r]) + hair) / d);
            }
        }

        int leaves = -1;
        double pivot = 0;
        for (int r = 0; r < _rows; r++)
        {
            double d = Falls(r, phaseOne);
            if (d > SmallestPivot && d > pivot && Math.Max(0, _value[r]) / d <= least)
            {
                (leaves, pivot) = (r, d);
            }
        }

        return leaves;
    }

    /// <summary>How fast the value of a row falls; what stands in for a row that others fill may not grow again.</summary>
    private double Falls(int row, bool phaseOne) => !phaseOne && _owner[row] < 0 ? Math.Abs(_direction[row]) : _direction[row];

    private static double Size(double[] a)
    {
        double size = 0;
        foreach (double entry in a)
        {
            size = Math.Max(size, Math.Abs(entry));
        }

        return size;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
