using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>Draws edges together, cheapest first, as long as every point of the first surface stays near a triangle that stands for it.</summary>
/// <remarks>An edge is drawn together only where the surface stays one (link condition), no triangle turns over and rims keep their line.</remarks>
internal sealed class EdgeCollapse
{
    private const double Shape = 1e-6; // weight of an edge's length beside the planes: on the flat the short ones go first
    private const double LeastTurn = 0.2, LeastShape = 0.15; // cosine of the angle a triangle may turn by; 1 = a triangle of equal sides
    private const double Straight = 1e-9; // how far a rim may move [m]
    private const int BetweenWords = 1 << 14;

    private readonly double[] _before, _points, _allowed; // _before: the points of the first surface, which are the samples
    private readonly Fans _fans;
    private readonly bool[] _fixed, _rim;
    private readonly int[] _version, _owned, _chain; // _owned: first sample of each triangle; _chain: the sample after it
    private readonly double _longest, _widest;
    private readonly Quadrics _quadrics;
    private readonly List<int> _ring = [];
    private readonly List<(int Sample, int Face)> _samples = [];
    private Vector3D[] _new = new Vector3D[96];

    /// <summary>Prepares.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="allowed">How far each point may lie from what is left; 0 = it stays [m].</param>
    /// <param name="longest">Longest edge that may come about [m].</param>
    public EdgeCollapse(Neighbourhood sides, double[] allowed, double longest)
    {
        Mesh mesh = sides.Mesh;
        int n = mesh.PointCount, faces = mesh.FaceCount;
        (_before, _points, _fans, _allowed, _longest, _widest) = (mesh.Points, [.. mesh.Points], new(mesh), allowed, longest, allowed.DefaultIfEmpty(0).Max());
        (_version, _owned, _chain, _fixed, _rim) = (new int[n], new int[faces], new int[n], new bool[n], new bool[n]);
        Array.Fill(_owned, -1);
        for (int h = 0; h < sides.Across.Length; h++)
        {
            if (sides.Across[h] < 0)
            {
                (int a, int b) = (sides.From(h), sides.To(h));
                _rim[a] = _rim[b] = true;
                _fixed[a] |= sides.Across[h] == Neighbourhood.Crowded;
                _fixed[b] |= sides.Across[h] == Neighbourhood.Crowded;
            }
        }

        for (int v = 0; v < n; v++)
        {
            if (_fans.First(v) >= 0)
            {
                Own(_fans.First(v) / 3, v);
                _fixed[v] |= allowed[v] <= 0 || _fans.Pinched(sides, v);
            }
        }

        _quadrics = new(mesh);
    }

    /// <summary>Draws together what can be.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="say">Told now and then what share of the triangles is gone.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>What is left, and the triangle that each of its triangles was.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public (Mesh Mesh, int[] OldFaces) Run(Neighbourhood sides, Action<double>? say, CancellationToken stop)
    {
        EdgeQueue queue = new(_fans.Corners.Length / 2 + 16);
        for (int h = 0; h < _fans.Corners.Length; h++)
        {
            if (sides.Across[h] < h)
            {
                Put(queue, sides.From(h), sides.To(h));
            }
        }

        int drawn = 0;
        for (int tried = 0; queue.Take(out int u, out int v, out int stamp); tried++)
        {
            if (tried % BetweenWords == 0)
            {
                stop.ThrowIfCancellationRequested();
                say?.Invoke(2.0 * drawn / _fans.Gone.Length);
            }

            if (_fans.First(u) < 0 || _fans.First(v) < 0 || _version[u] + _version[v] != stamp || Draw(u, v) is not (>= 0 and int kept))
            {
                continue;
            }

            drawn++;
            foreach (int w in _fans.Around(kept))
            {
                Put(queue, kept, w);
            }
        }

        (Mesh left, _) = new Mesh(_points, _fans.Corners).Keep(f => !_fans.Gone[f]);
        return (left, [.. Enumerable.Range(0, _fans.Gone.Length).Where(f => !_fans.Gone[f])]);
    }

    /// <summary>Points of the first surface that a triangle stands for now.</summary>
    /// <param name="face">The triangle, as it was numbered at first.</param>
    public IReadOnlyList<int> Samples(int face)
    {
        List<int> samples = [];
        for (int s = _owned[face]; s >= 0; s = _chain[s])
        {
            samples.Add(s);
        }

        return samples;
    }

    private void Put(EdgeQueue queue, int u, int v)
    {
        if ((_fixed[u] && _fixed[v]) || (_rim[u] && !_rim[v] && _fixed[v]) || (_rim[v] && !_rim[u] && _fixed[u]))
        {
            return;
        }

        double length = (At(u) - At(v)).Length, area = _quadrics.Area(u, v), off = _quadrics.At(u, v, Place(u, v));
        // no place lies nearer to the planes than the mean does: what is too far for that need not be tried
        if (off <= _widest * _widest * area)
        {
            queue.Put(u, v, _version[u] + _version[v], off + Shape * length * length * area);
        }
    }

    // What is fixed, or lies on a rim, keeps its place.
    private Vector3D Place(int u, int v)
    {
        bool first = _fixed[u] || (_rim[u] && !_fixed[v]);
        return first ? At(u) : _fixed[v] || _rim[v] ? At(v) : _quadrics.Best(u, v, 0.5 * (At(u) + At(v)));
    }

    // The point that is left; −1 = the edge stays.
    private int Draw(int u, int v)
    {
        (u, v) = _fixed[v] || (_rim[v] && !_rim[u]) ? (v, u) : (u, v);
        bool edge = _rim[u] && _rim[v];
        int shared = Ring(u, v), left = _ring.Count;
        if (shared != (edge ? 1 : 2) || left < (edge ? 1 : 3) || _fans.Common(u, v) != shared)
        {
            return -1;
        }

        if (edge && !OnRim(v, u))
        {
            (u, v) = (v, u);
            if (_fixed[v] || !OnRim(v, u))
            {
                return -1;
            }
        }

        Vector3D place = edge ? At(u) : Place(u, v);
        if (!Sound(u, v, place) || !Near())
        {
            return -1;
        }

        Move(u, v, place);
        return u;
    }

    // Gathers the triangles that are left round both points, and the samples of all; how many triangles have both points.
    private int Ring(int u, int v)
    {
        _ring.Clear();
        _samples.Clear();
        int shared = 0;
        for (int h = _fans.First(u); h >= 0; h = _fans.After(h))
        {
            bool both = _fans.Has(h / 3, v);
            shared += both ? 1 : 0;
            Gather(h / 3, !both);
        }

        for (int h = _fans.First(v); h >= 0; h = _fans.After(h))
        {
            if (!_fans.Has(h / 3, u))
            {
                Gather(h / 3, true);
            }
        }

        return shared;
    }

    private void Gather(int face, bool stays)
    {
        int place = stays ? _ring.Count : -1;
        if (stays)
        {
            _ring.Add(face);
        }

        for (int s = _owned[face]; s >= 0; s = _chain[s])
        {
            _samples.Add((s, place));
        }
    }

    // Whether a point of a rim lies in line between its neighbours on it.
    private bool OnRim(int goes, int stays)
    {
        int other = -1;
        foreach (int w in _fans.Around(goes))
        {
            other = w != stays && _rim[w] && _fans.Both(goes, w) == 1 ? w : other;
        }

        if (other < 0)
        {
            return false;
        }

        Vector3D line = At(other) - At(stays), way = line.Unit, p = At(goes) - At(stays);
        double along = p.Dot(way);
        return along > 0 && along < line.Length && (p - along * way).Length <= Straight;
    }

    // Nothing turns over, nothing gets thinner than it may, no edge too long; the triangles as they would lie are kept in _new.
    private bool Sound(int u, int v, Vector3D place)
    {
        if (3 * _ring.Count > _new.Length)
        {
            _new = new Vector3D[6 * _ring.Count];
        }

        double before = 1, after = 1;
        for (int i = 0; i < _ring.Count; i++)
        {
            int f = 3 * _ring[i];
            Vector3D a = At(_fans.Corners[f]), b = At(_fans.Corners[f + 1]), c = At(_fans.Corners[f + 2]), old = (b - a).Cross(c - a);
            before = Math.Min(before, ShapeOf(a, b, c, old));
            (a, b, c) = (Moves(f) ? place : a, Moves(f + 1) ? place : b, Moves(f + 2) ? place : c);
            (_new[3 * i], _new[3 * i + 1], _new[3 * i + 2]) = (a, b, c);
            Vector3D turned = (b - a).Cross(c - a);
            if (turned.Dot(old) <= LeastTurn * turned.Length * old.Length || Math.Max((b - a).Length, Math.Max((c - b).Length, (a - c).Length)) > _longest)
            {
                return false;
            }

            after = Math.Min(after, ShapeOf(a, b, c, turned));
        }

        return after >= Math.Min(LeastShape, before);

        bool Moves(int h) => _fans.Corners[h] == u || _fans.Corners[h] == v;
    }

    private static double ShapeOf(Vector3D a, Vector3D b, Vector3D c, Vector3D cross)
    {
        Vector3D ab = b - a, bc = c - b, ca = a - c;
        return 2 * Math.Sqrt(3) * cross.Length / (ab.Dot(ab) + bc.Dot(bc) + ca.Dot(ca));
    }

    // Every sample finds a triangle that is near enough, its own first.
    private bool Near()
    {
        for (int i = 0; i < _samples.Count; i++)
        {
            (int s, int own) = _samples[i];
            Vector3D p = new(_before[3 * s], _before[3 * s + 1], _before[3 * s + 2]);
            double allowed = _allowed[s] * _allowed[s];
            int face = own >= 0 && Away(p, own) <= allowed ? own : -1;
            for (int j = 0; j < _ring.Count && face < 0; j++)
            {
                face = j != own && Away(p, j) <= allowed ? j : -1;
            }

            if (face < 0)
            {
                return false;
            }

            _samples[i] = (s, face);
        }

        return true;
    }

    private double Away(Vector3D p, int place)
    {
        Vector3D d = p - TrianglePlace.Of(p, _new[3 * place], _new[3 * place + 1], _new[3 * place + 2]).Place;
        return d.Dot(d);
    }

    private void Move(int u, int v, Vector3D place)
    {
        (_points[3 * u], _points[3 * u + 1], _points[3 * u + 2]) = (place.X, place.Y, place.Z);
        _fans.Merge(u, v);
        foreach (int f in _ring)
        {
            _owned[f] = -1;
        }

        foreach ((int s, int face) in _samples)
        {
            Own(_ring[face], s);
        }

        _quadrics.Add(u, v);
        _version[u]++;
    }

    private void Own(int face, int sample) => (_chain[sample], _owned[face]) = (_owned[face], sample);

    private Vector3D At(int v) => new(_points[3 * v], _points[3 * v + 1], _points[3 * v + 2]);
}
