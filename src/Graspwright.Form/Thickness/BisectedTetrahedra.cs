using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Corners of a tetrahedron in the order of its bisection, and how often it was bisected.</summary>
internal readonly record struct Tetrahedron(int A, int B, int C, int D, byte Depth)
{
    public int this[int k] => k switch { 0 => A, 1 => B, 2 => C, _ => D };

    /// <summary>The corner that shares with the first the edge that is bisected next.</summary>
    public int Partner => (Depth % 3) switch { 0 => D, 1 => C, _ => B };

    /// <summary>The two halves, given the middle of that edge (Maubach 1995).</summary>
    public (Tetrahedron First, Tetrahedron Second) Halves(int middle)
    {
        byte next = (byte)(Depth + 1);
        return (Depth % 3) switch
        {
            0 => (new(A, B, C, middle, next), new(B, C, D, middle, next)),
            1 => (new(A, B, middle, D, next), new(B, C, middle, D, next)),
            _ => (new(A, middle, C, D, next), new(B, middle, C, D, next)),
        };
    }
}

/// <summary>Space round the zero of a field in tetrahedra that fit each other corner to corner, finer where asked.</summary>
/// <remarks>
/// Cubes in six tetrahedra each about their diagonal (Kuhn), bisected at the edge that Maubach's rule names ("Local bisection refinement for n-simplicial grids generated
/// by reflection", SIAM J. Sci. Comput. 16 (1995)): where an edge has got a middle, every tetrahedron at that edge is bisected until none is left with a middle on an edge.
/// What cannot hold a zero, since the field changes by no more than the way, is dropped at once.
/// </remarks>
internal sealed class BisectedTetrahedra
{
    private static readonly (int First, int Second)[] Paths = [(1, 2), (1, 4), (2, 1), (2, 4), (4, 1), (4, 2)];

    private readonly OffsetField _field;
    private readonly Vector3D _origin;
    private readonly double _unit;
    private readonly int _levels;
    private readonly CancellationToken _stop;
    private readonly Dictionary<long, int> _index = [];
    private readonly List<(int X, int Y, int Z)> _lattice = [];
    private readonly List<double> _value = [];
    private readonly List<int> _touched = []; // sweep in which an edge at the point last got a middle
    private int _sweep;

    /// <summary>Fills the space round the zero with cubes.</summary>
    /// <param name="field">The field.</param>
    /// <param name="cube">Edge of the cubes [m].</param>
    /// <param name="levels">How many times an edge may be halved.</param>
    /// <param name="stop">Stops it.</param>
    public BisectedTetrahedra(OffsetField field, double cube, int levels, CancellationToken stop)
    {
        (_field, _levels, _stop, _unit) = (field, levels, stop, cube / (1 << levels));
        (Vector3D low, Vector3D high) = field.Form.Box();
        double room = Math.Max(0, field.Greatest) + 1.37 * cube; // an odd share, so that flat ends of forms do not lie in faces of cubes
        _origin = low - new Vector3D(room, room, room);
        Vector3D size = high - low + new Vector3D(2 * room, 2 * room, 2 * room);
        int across = 1;
        while (across * cube < Math.Max(size.X, Math.Max(size.Y, size.Z)))
        {
            across *= 2;
        }

        foreach ((int x, int y, int z) in Cubes(across << levels))
        {
            Put(x, y, z);
        }

        for (int v = 0; v < _value.Count; v++)
        {
            _value[v] = Math.Sqrt(3) * cube + field.Step;
        }

        Evaluate(0);
        Leaves.RemoveAll(t => !MayHoldZero(t));
    }

    /// <summary>Tetrahedra that may hold a zero.</summary>
    public List<Tetrahedron> Leaves { get; private set; } = [];

    /// <summary>How many of the leaves have been there since before the last bisection; the others follow.</summary>
    public int Settled { get; private set; }

    /// <summary>A corner's value [m].</summary>
    public double Value(int v) => _value[v];

    /// <summary>A corner's place [m].</summary>
    public Vector3D At(int v)
    {
        (int x, int y, int z) = _lattice[v];
        return _origin + _unit * new Vector3D(x, y, z);
    }

    /// <summary>Whether it can be bisected once more.</summary>
    public bool Divides(Tetrahedron t) => t.Depth < 3 * _levels;

    /// <summary>Whether zero lies between its corners.</summary>
    public bool Straddles(Tetrahedron t)
    {
        bool a = _value[t.A] < 0;
        return _value[t.B] < 0 != a || _value[t.C] < 0 != a || _value[t.D] < 0 != a;
    }

    /// <summary>Whether its corners in order run right-handed; exact.</summary>
    public bool RightHanded(Tetrahedron t)
    {
        (int X, int Y, int Z) a = _lattice[t.A], b = _lattice[t.B], c = _lattice[t.C], d = _lattice[t.D];
        (long bx, long by, long bz) = (b.X - a.X, b.Y - a.Y, b.Z - a.Z);
        (long cx, long cy, long cz) = (c.X - a.X, c.Y - a.Y, c.Z - a.Z);
        (long dx, long dy, long dz) = (d.X - a.X, d.Y - a.Y, d.Z - a.Z);
        return bx * (cy * dz - cz * dy) + by * (cz * dx - cx * dz) + bz * (cx * dy - cy * dx) > 0;
    }

    /// <summary>Bisects leaves, and what has to follow so that all fit again.</summary>
    /// <param name="chosen">Places in <see cref="Leaves"/>.</param>
    public void Bisect(IEnumerable<int> chosen)
    {
        bool[] gone = new bool[Leaves.Count];
        List<Tetrahedron> fresh = [];
        List<int> old = [.. chosen];
        List<Tetrahedron> young = [];
        while (old.Count + young.Count > 0)
        {
            _stop.ThrowIfCancellationRequested();
            _sweep++;
            int first = _lattice.Count;
            List<Tetrahedron> halves = [];
            foreach (int i in old)
            {
                gone[i] = true;
                Halve(Leaves[i], halves);
            }

            foreach (Tetrahedron t in young)
            {
                Halve(t, halves);
            }

            Evaluate(first);
            fresh.AddRange(halves.Where(MayHoldZero));
            old.Clear();
            young.Clear();
            for (int i = 0; i < gone.Length; i++)
            {
                if (!gone[i] && HasMiddle(Leaves[i], _sweep))
                {
                    old.Add(i);
                }
            }

            List<Tetrahedron> kept = [];
            foreach (Tetrahedron t in fresh)
            {
                (HasMiddle(t, 1) ? young : kept).Add(t);
            }

            fresh = kept;
        }

        List<Tetrahedron> leaves = new(Leaves.Count + fresh.Count);
        for (int i = 0; i < gone.Length; i++)
        {
            if (!gone[i])
            {
                leaves.Add(Leaves[i]);
            }
        }

        Settled = leaves.Count;
        leaves.AddRange(fresh);
        Leaves = leaves;
    }

    /// <summary>Leaves that hold any of some places.</summary>
    /// <param name="places">The places [m].</param>
    public IReadOnlyList<int> Holding(IReadOnlyList<Vector3D> places)
    {
        // a tetrahedron bisected 3k times and up to twice more lies in one cell of a k-th of the halvings
        ILookup<(int, int, int, int), Vector3D> byCell = Enumerable.Range(0, _levels + 1).SelectMany(k => places.Select(p => (Cell(k, p), p))).ToLookup(p => p.Item1, p => p.p);
        (int, int, int, int) Cell(int k, Vector3D p)
        {
            Vector3D at = 1 / (_unit * (1 << _levels - k)) * (p - _origin);
            return (k, (int)Math.Floor(at.X), (int)Math.Floor(at.Y), (int)Math.Floor(at.Z));
        }

        List<int> found = [];
        for (int i = 0; i < Leaves.Count; i++)
        {
            Tetrahedron t = Leaves[i];
            if (byCell[Cell(t.Depth / 3, 0.25 * (At(t.A) + At(t.B) + At(t.C) + At(t.D)))].Any(p => Holds(t, p)))
            {
                found.Add(i);
            }
        }

        return found;
    }

    private bool Holds(Tetrahedron t, Vector3D p)
    {
        Vector3D a = At(t.A) - p, b = At(t.B) - p, c = At(t.C) - p, d = At(t.D) - p;
        double all = (b - a).Dot((c - a).Cross(d - a)), sign = Math.Sign(all), slack = -1e-9 * Math.Abs(all);
        return sign * b.Dot(c.Cross(d)) >= slack && -sign * a.Dot(c.Cross(d)) >= slack && sign * a.Dot(b.Cross(d)) >= slack && -sign * a.Dot(b.Cross(c)) >= slack;
    }

    // Cubes that the zero may pass, found from the whole box down.
    private List<(int X, int Y, int Z)> Cubes(int across)
    {
        List<(int X, int Y, int Z)> cubes = [(0, 0, 0)];
        for (int size = across; ; size /= 2)
        {
            _stop.ThrowIfCancellationRequested();
            double half = Math.Sqrt(3) / 2 * size * _unit;
            bool[] keep = new bool[cubes.Count];
            Parallel.For(0, keep.Length, i =>
            {
                (int x, int y, int z) = cubes[i];
                Vector3D middle = _origin + _unit * new Vector3D(x + size / 2.0, y + size / 2.0, z + size / 2.0);
                keep[i] = Math.Abs(_field.At(middle, half).Miss) <= half;
            });
            List<(int X, int Y, int Z)> kept = [.. cubes.Where((_, i) => keep[i])];
            if (size == 1 << _levels)
            {
                return kept;
            }

            int h = size / 2;
            cubes = [.. kept.SelectMany(c => Enumerable.Range(0, 8).Select(k => (c.X + (k & 1) * h, c.Y + (k >> 1 & 1) * h, c.Z + (k >> 2) * h)))];
        }
    }

    private void Put(int x, int y, int z)
    {
        int s = 1 << _levels;
        int Corner(int k) => Point(x + (k & 1) * s, y + (k >> 1 & 1) * s, z + (k >> 2) * s);
        int from = Corner(0), to = Corner(7);
        foreach ((int first, int second) in Paths)
        {
            Leaves.Add(new(from, Corner(first), Corner(first | second), to, 0));
        }
    }

    private void Halve(Tetrahedron t, List<Tetrahedron> halves)
    {
        int a = t.A, b = t.Partner;
        (int X, int Y, int Z) p = _lattice[a], q = _lattice[b];
        int before = _lattice.Count, middle = Point((p.X + q.X) / 2, (p.Y + q.Y) / 2, (p.Z + q.Z) / 2);
        if (middle == before)
        {
            // until it is looked at: the most that its value can be
            _value[middle] = Math.Min(Math.Abs(_value[a]), Math.Abs(_value[b])) + Way(p, q) / 2 + _field.Step;
            _touched[a] = _touched[b] = _sweep;
        }

        (Tetrahedron first, Tetrahedron second) = t.Halves(middle);
        halves.Add(first);
        halves.Add(second);
    }

    private int Point(int x, int y, int z)
    {
        long key = Key(x, y, z);
        if (!_index.TryGetValue(key, out int v))
        {
            v = _index[key] = _lattice.Count;
            _lattice.Add((x, y, z));
            _value.Add(double.PositiveInfinity);
            _touched.Add(0);
        }

        return v;
    }

    // Values of new points, which are no greater than what stands there.
    private void Evaluate(int first)
    {
        double[] found = new double[_lattice.Count - first];
        Parallel.For(0, found.Length, i => found[i] = _field.At(At(first + i), _value[first + i]).Miss);
        for (int i = 0; i < found.Length; i++)
        {
            _value[first + i] = found[i];
        }
    }

    // Whether an edge that may have got a middle since a sweep has one.
    private bool HasMiddle(Tetrahedron t, int since)
    {
        for (int i = 0; i < 3; i++)
        {
            for (int j = i + 1; j < 4; j++)
            {
                int a = t[i], b = t[j];
                if (_touched[a] >= since && _touched[b] >= since && HasMiddle(a, b))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private bool HasMiddle(int a, int b)
    {
        (int X, int Y, int Z) p = _lattice[a], q = _lattice[b];
        return ((p.X ^ q.X) & 1) == 0 && ((p.Y ^ q.Y) & 1) == 0 && ((p.Z ^ q.Z) & 1) == 0 && _index.ContainsKey(Key((p.X + q.X) / 2, (p.Y + q.Y) / 2, (p.Z + q.Z) / 2));
    }

    private bool MayHoldZero(Tetrahedron t)
    {
        for (int i = 0; i < 4; i++)
        {
            double far = 0;
            for (int j = 0; j < 4; j++)
            {
                far = Math.Max(far, Way(_lattice[t[i]], _lattice[t[j]]));
            }

            if (Math.Abs(_value[t[i]]) > far)
            {
                return false;
            }
        }

        return true;
    }

    private double Way((int X, int Y, int Z) p, (int X, int Y, int Z) q)
    {
        double x = p.X - q.X, y = p.Y - q.Y, z = p.Z - q.Z;
        return _unit * Math.Sqrt(x * x + y * y + z * z);
    }

    private static long Key(int x, int y, int z) => ((long)x << 42) | ((long)y << 21) | (uint)z;
}
