using Graspwright.Form.Surface;

namespace Graspwright.Form.Repair;

/// <summary>The triangles round each point while edges are drawn together: corners at a point as a chain.</summary>
internal sealed class Fans
{
    private readonly int[] _first, _next, _mark;
    private readonly List<int> _around = [];
    private int _stamp;

    public Fans(Mesh mesh)
    {
        (Corners, _first, _next, _mark, Gone) = ([.. mesh.Corners], new int[mesh.PointCount], new int[mesh.Corners.Length], new int[mesh.PointCount], new bool[mesh.FaceCount]);
        Array.Fill(_first, -1);
        for (int h = Corners.Length - 1; h >= 0; h--)
        {
            (_next[h], _first[Corners[h]]) = (_first[Corners[h]], h);
        }
    }

    /// <summary>Points of the triangles as they are now.</summary>
    public int[] Corners { get; }

    /// <summary>Triangles that are no more.</summary>
    public bool[] Gone { get; }

    /// <summary>First corner at a point; −1 = the point is no more.</summary>
    public int First(int v) => _first[v];

    /// <summary>The corner after one at the same point; −1 = none.</summary>
    public int After(int corner) => _next[corner];

    /// <summary>Whether a triangle has a point.</summary>
    public bool Has(int f, int v) => Corners[3 * f] == v || Corners[3 * f + 1] == v || Corners[3 * f + 2] == v;

    /// <summary>How many triangles have both points.</summary>
    public int Both(int v, int w)
    {
        int count = 0;
        for (int h = _first[v]; h >= 0; h = _next[h])
        {
            count += Has(h / 3, w) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Points beside a point. The list is used again at the next call.</summary>
    public IReadOnlyList<int> Around(int v)
    {
        _stamp++;
        _around.Clear();
        for (int h = _first[v]; h >= 0; h = _next[h])
        {
            Add(Corners[Neighbourhood.Next(h)]);
            Add(Corners[Neighbourhood.Previous(h)]);
        }

        return _around;

        void Add(int w)
        {
            if (_mark[w] != _stamp)
            {
                _mark[w] = _stamp;
                _around.Add(w);
            }
        }
    }

    /// <summary>How many points lie beside both; of a sound edge only those across it.</summary>
    public int Common(int u, int v)
    {
        _stamp++;
        for (int h = _first[u]; h >= 0; h = _next[h])
        {
            _mark[Corners[Neighbourhood.Next(h)]] = _mark[Corners[Neighbourhood.Previous(h)]] = _stamp;
        }

        int common = 0;
        for (int h = _first[v]; h >= 0; h = _next[h])
        {
            common += Take(Corners[Neighbourhood.Next(h)]) + Take(Corners[Neighbourhood.Previous(h)]);
        }

        return common;

        int Take(int w)
        {
            bool both = w != u && _mark[w] == _stamp;
            _mark[w] = both ? 0 : _mark[w];
            return both ? 1 : 0;
        }
    }

    /// <summary>Makes one point of two: the triangles with both go, the others of the second get the first.</summary>
    public void Merge(int u, int v)
    {
        for (int h = _first[v], after; h >= 0; h = after)
        {
            after = _next[h];
            int f = h / 3;
            if (Has(f, u))
            {
                Gone[f] = true;
                for (int k = 3 * f; k < 3 * f + 3; k++)
                {
                    Unlink(k);
                }
            }
        }

        for (int h = _first[v], after; h >= 0; h = after)
        {
            after = _next[h];
            Corners[h] = u;
            (_next[h], _first[u]) = (_first[u], h);
        }

        _first[v] = -1;
    }

    /// <summary>Whether the triangles at a point are more than one fan, nothing having been drawn together yet.</summary>
    public bool Pinched(Neighbourhood sides, int v)
    {
        int all = 0, fan = 1;
        for (int h = _first[v]; h >= 0; h = _next[h])
        {
            all++;
        }

        int g = sides.Across[Neighbourhood.Previous(_first[v])];
        for (; g >= 0 && g != _first[v] && fan <= all; g = sides.Across[Neighbourhood.Previous(g)])
        {
            fan++;
        }

        if (g != _first[v])
        {
            for (g = sides.Across[_first[v]]; g >= 0 && fan <= all; g = sides.Across[Neighbourhood.Next(g)])
            {
                fan++;
            }
        }

        return fan != all;
    }

    private void Unlink(int side)
    {
        int v = Corners[side];
        if (_first[v] == side)
        {
            _first[v] = _next[side];
            return;
        }

        int h = _first[v];
        while (_next[h] != side)
        {
            h = _next[h];
        }

        _next[h] = _next[side];
    }
}
