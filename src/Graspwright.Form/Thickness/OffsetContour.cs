using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>The surface where a field is zero, drawn through tetrahedra until it lies as near as asked.</summary>
/// <remarks>
/// In each tetrahedron the surface is one or two triangles with corners on its edges (Doi and Koide 1991). Where that lies off, a line over a face gets a corner more, in
/// the face, and the tetrahedron one inside it, both put where the slopes at the other corners meet (as Kobbelt and others 2001 do on cubes), so that valleys and edges are
/// followed: a fan from a place inside a tetrahedron to a closed line on its faces. No two triangles can cut each other, and the surface is closed unless the form is folded onto itself.
/// What still lies off is bisected.
/// </remarks>
/// <source key="kobbelt-2001">Kobbelt, Botsch, Schwanecke and Seidel 2001, Feature sensitive surface extraction from volume data.</source>
internal sealed class OffsetContour
{
    private const int Most = 3_000_000;

    private readonly CancellationToken _stop;
    private readonly BisectedTetrahedra _space;
    private readonly ContourPlaces _places;
    private readonly Dictionary<long, int> _onEdge = [];
    private readonly Dictionary<(int, int, int), int> _onFace = []; // below 0 = none
    private readonly Dictionary<Tetrahedron, int> _inside = [];

    private readonly int _depth;
    private int _looked;

    /// <summary>Begins with cubes.</summary>
    /// <param name="field">The field.</param>
    /// <param name="cube">Edge of the cubes [m].</param>
    /// <param name="levels">How many times an edge may be halved because triangles lie off.</param>
    /// <param name="more">How many times more on demand.</param>
    /// <param name="tolerance">How far triangles may lie off [m].</param>
    /// <param name="stop">Stops it.</param>
    public OffsetContour(OffsetField field, double cube, int levels, int more, double tolerance, CancellationToken stop)
    {
        _stop = stop;
        _depth = 3 * levels;
        _space = new(field, cube, levels + more, stop);
        _places = new(field, _space, tolerance, _depth);
        Refine();
    }

    /// <summary>There is no surface.</summary>
    public bool Empty => _onEdge.Count == 0;

    /// <summary>A tetrahedron.</summary>
    /// <param name="i">Its place in the list.</param>
    public Tetrahedron Leaf(int i) => _space.Leaves[i];

    /// <summary>Halves the edges of the tetrahedra that hold any of some places, and draws anew there.</summary>
    /// <param name="places">The places [m].</param>
    /// <returns>Whether any of them could be.</returns>
    public bool Finer(IReadOnlyList<Vector3D> places)
    {
        bool any = false;
        for (int third = 0; third < 3 && _space.Leaves.Count <= Most; third++)
        {
            int[] chosen = [.. _space.Holding(places).Where(i => _space.Divides(_space.Leaves[i]))];
            if (chosen.Length == 0)
            {
                break;
            }

            any = true;
            _space.Bisect(chosen);
            _looked = _space.Settled;
            Refine();
        }

        return any;
    }

    private void Refine()
    {
        while (true)
        {
            _stop.ThrowIfCancellationRequested();
            List<int> off = Look(_looked);
            if (off.Count == 0 || _space.Leaves.Count > Most)
            {
                return;
            }

            _space.Bisect(off);
            _looked = _space.Settled;
        }
    }

    // Corners of the leaves from one on, and which of those lie off.
    private List<int> Look(int from)
    {
        List<int> crossed = [];
        List<(int A, int B)> edges = [];
        List<(int A, int B, int C)> faces = [];
        for (int i = from; i < _space.Leaves.Count; i++)
        {
            Tetrahedron t = _space.Leaves[i];
            if (!_space.Straddles(t))
            {
                continue;
            }

            crossed.Add(i);
            for (int a = 0; a < 3; a++)
            {
                for (int b = a + 1; b < 4; b++)
                {
                    if (Parted(t[a], t[b]) && _onEdge.TryAdd(Edge(t[a], t[b]), _places.Count + edges.Count))
                    {
                        edges.Add((t[a], t[b]));
                    }
                }
            }
        }

        _places.OnEdges(edges);
        foreach (int i in crossed)
        {
            Tetrahedron t = _space.Leaves[i];
            for (int left = 0; left < 4; left++)
            {
                (int a, int b, int c) = (t[left == 0 ? 1 : 0], t[left <= 1 ? 2 : 1], t[left <= 2 ? 3 : 2]);
                if ((Parted(a, b) || Parted(b, c)) && _onFace.TryAdd(Face(a, b, c), -1))
                {
                    faces.Add((a, b, c));
                }
            }
        }

        int[] added = _places.OnFaces(faces, f => (_onEdge[Edge(f.Lone, f.One)], _onEdge[Edge(f.Lone, f.Two)]));
        for (int i = 0; i < added.Length; i++)
        {
            _onFace[Face(faces[i].A, faces[i].B, faces[i].C)] = added[i];
        }

        int[] inside = _places.Inside(crossed, i =>
        {
            int[] rim = new int[8];
            Tetrahedron t = _space.Leaves[i];
            int n = Rim(t, rim, out bool folded, out bool off);
            return (off && t.Depth < _depth ? [] : rim[..n], folded, t);
        });
        List<int> off = [];
        for (int i = 0; i < inside.Length; i++)
        {
            if (inside[i] == ContourPlaces.Off)
            {
                off.Add(crossed[i]);
            }
            else if (inside[i] != ContourPlaces.Plain)
            {
                _inside[_space.Leaves[crossed[i]]] = inside[i];
            }
        }

        return off;
    }

    private bool Parted(int a, int b) => _space.Value(a) < 0 != _space.Value(b) < 0;

    // Corners of the surface round the faces of a tetrahedron, anticlockwise seen from outside: how many.
    private int Rim(Tetrahedron t, Span<int> rim, out bool folded, out bool off)
    {
        Span<int> inner = stackalloc int[4], outer = stackalloc int[4];
        int ins = 0, outs = 0, n = 0;
        for (int k = 0; k < 4; k++)
        {
            if (_space.Value(t[k]) < 0)
            {
                inner[ins++] = k;
            }
            else
            {
                outer[outs++] = k;
            }
        }

        bool right = _space.RightHanded(t), any = false, bad = false;
        if (ins == 2)
        {
            // whether inner and then outer is an even permutation of the corners
            bool even = (inner[0], inner[1]) is (0, 1) or (0, 3) or (1, 2) or (2, 3);
            (int a, int b, int c, int d) = even == right ? (inner[0], inner[1], outer[0], outer[1]) : (inner[1], inner[0], outer[0], outer[1]);
            Add(rim, a, c, d);
            Add(rim, d, a, b);
            Add(rim, b, d, c);
            Add(rim, c, b, a);
        }
        else
        {
            int lone = ins == 1 ? inner[0] : outer[0], x = lone == 0 ? 1 : 0, y = lone <= 1 ? 2 : 1, z = lone <= 2 ? 3 : 2;
            if (((lone & 1) == 0) != right != (ins == 3))
            {
                (y, z) = (z, y);
            }

            Add(rim, lone, x, y);
            Add(rim, lone, y, z);
            Add(rim, lone, z, x);
        }

        (folded, off) = (any, bad);
        return n;

        // the corner on the edge from the lone corner of a face to one, and the one in the face beyond it
        void Add(Span<int> to, int lone, int one, int two)
        {
            to[n++] = _onEdge[Edge(t[lone], t[one])];
            int extra = _onFace[Face(t[lone], t[one], t[two])];
            bad |= extra == ContourPlaces.Off;
            if (extra >= 0)
            {
                to[n++] = extra;
                any = true;
            }
        }
    }

    /// <summary>The surface, and the tetrahedron of each triangle.</summary>
    public (Mesh Mesh, int[] Of) Triangles()
    {
        int[] number = new int[_places.Count];
        Array.Fill(number, -1);
        List<double> points = [];
        List<int> corners = [], of = [];
        void Add(int v)
        {
            if (number[v] < 0)
            {
                number[v] = points.Count / 3;
                Vector3D p = _places.At(v);
                points.AddRange([p.X, p.Y, p.Z]);
            }

            corners.Add(number[v]);
        }

        Span<int> rim = stackalloc int[8], fan = stackalloc int[24];
        for (int i = 0; i < _space.Leaves.Count; i++)
        {
            Tetrahedron t = _space.Leaves[i];
            if (!_space.Straddles(t))
            {
                continue;
            }

            int n = Rim(t, rim, out bool folded, out _);
            if (!_inside.TryGetValue(t, out int middle))
            {
                // folded only where nothing may be bisected any more
                middle = folded ? _places.Between(rim[..n]) : -1;
                if (folded)
                {
                    Array.Resize(ref number, _places.Count);
                    number[^1] = -1;
                }
            }

            foreach (int v in fan[.._places.Fan(rim[..n], middle, fan)])
            {
                Add(v);
            }

            while (of.Count < corners.Count / 3)
            {
                of.Add(i);
            }
        }

        return (new([.. points], [.. corners]), [.. of]);
    }

    private static long Edge(int a, int b) => ((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b);

    private static (int, int, int) Face(int a, int b, int c)
    {
        int low = Math.Min(a, Math.Min(b, c)), high = Math.Max(a, Math.Max(b, c));
        return (low, a + b + c - low - high, high);
    }
}
