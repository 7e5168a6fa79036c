using System.Runtime.Intrinsics;
using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>A place on a surface nearest to a point.</summary>
/// <param name="Face">Its triangle.</param>
/// <param name="Place">The place [m].</param>
/// <param name="Distance">Distance, negative inside a closed surface [m].</param>
public readonly record struct Foot(int Face, Vector3D Place, double Distance);

/// <summary>Tree of boxes round the triangles of a surface: nearest places, and triangles that cut each other.</summary>
/// <remarks>Four boxes a node, looked at in one go; the last boxes hold one triangle each.</remarks>
public sealed class Nearest
{
    private const int Wide = 4, Sides = 6, None = int.MinValue, Deep = 128, FirstSteps = 4;

    private readonly Mesh _mesh;
    private readonly int[] _faces;
    private readonly List<Vector256<double>> _growing = [];
    private readonly Vector256<double>[] _boxes; // six a node: least x, y, z of its four, greatest x, y, z
    private readonly List<int> _children = []; // four a node: a node, or ~place of a triangle in the order of the leaves
    private readonly int[] _child;
    private readonly double[] _triangles; // nine a triangle in the order of the leaves
    private readonly Vector3D[] _pointNormals;
    private readonly Vector3D[] _sideNormals;

    /// <summary>Builds the tree.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public Nearest(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        _mesh = sides.Mesh;
        int n = _mesh.FaceCount;
        _faces = [.. Enumerable.Range(0, n)];
        double[] middles = new double[3 * n];
        for (int f = 0; f < n; f++)
        {
            Vector3D m = _mesh.Middle(f);
            (middles[3 * f], middles[3 * f + 1], middles[3 * f + 2]) = (m.X, m.Y, m.Z);
        }

        if (n > 0)
        {
            Span<double> box = stackalloc double[Sides];
            Build(0, n, middles, box);
        }

        (_boxes, _child) = ([.. _growing], [.. _children]);
        _growing.Clear();
        _children.Clear();
        _triangles = new double[9 * n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                Array.Copy(_mesh.Points, 3 * _mesh.Corners[3 * _faces[i] + k], _triangles, 9 * i + 3 * k, 3);
            }
        }

        // Pseudonormals tell in from out at points and sides as well (Baerentzen and Aanaes 2005).
        _pointNormals = SurfaceSums.Normals(_mesh);
        _sideNormals = new Vector3D[3 * n];
        for (int h = 0; h < 3 * n; h++)
        {
            Vector3D own = _mesh.Cross(h / 3).Unit;
            _sideNormals[h] = sides.Across[h] >= 0 ? own + _mesh.Cross(sides.Across[h] / 3).Unit : own;
        }
    }

    /// <summary>The surface.</summary>
    public Mesh Mesh => _mesh;

    /// <summary>The place of the surface nearest to a point.</summary>
    /// <param name="p">The point [m].</param>
    /// <param name="within">Farther places need not be found [m].</param>
    /// <returns>The place; face −1 = none within.</returns>
    public Foot To(Vector3D p, double within = double.PositiveInfinity)
    {
        double best = within * within;
        int at = -1, feature = 6, top = 0;
        Vector3D place = default;
        Span<int> stack = stackalloc int[Deep];
        Span<double> away = stackalloc double[Deep];
        Span<double> four = stackalloc double[Wide];
        if (_child.Length > 0)
        {
            (stack[0], away[0], top) = (0, 0, 1);
        }

        Vector256<double> x = Vector256.Create(p.X), y = Vector256.Create(p.Y), z = Vector256.Create(p.Z), nought = Vector256<double>.Zero;
        while (top > 0)
        {
            int node = stack[--top];
            if (away[top] >= best)
            {
                continue;
            }

            if (node < 0)
            {
                ReadOnlySpan<double> t = _triangles.AsSpan(9 * ~node, 9);
                (Vector3D q, int where) = TrianglePlace.Of(p, new(t[0], t[1], t[2]), new(t[3], t[4], t[5]), new(t[6], t[7], t[8]));
                double d = (p - q).Dot(p - q);
                if (d < best)
                {
                    (best, at, place, feature) = (d, ~node, q, where);
                }

                continue;
            }

            ReadOnlySpan<Vector256<double>> box = _boxes.AsSpan(Sides * node, Sides);
            Vector256<double> dx = Vector256.Max(nought, Vector256.Max(box[0] - x, x - box[3]));
            Vector256<double> dy = Vector256.Max(nought, Vector256.Max(box[1] - y, y - box[4]));
            Vector256<double> dz = Vector256.Max(nought, Vector256.Max(box[2] - z, z - box[5]));
            (dx * dx + dy * dy + dz * dz).CopyTo(four);
            int first = top;
            for (int k = 0; k < Wide; k++)
            {
                // the nearest ends on top
                if (four[k] < best)
                {
                    int i = top++;
                    for (; i > first && away[i - 1] < four[k]; i--)
                    {
                        (stack[i], away[i]) = (stack[i - 1], away[i - 1]);
                    }

                    (stack[i], away[i]) = (_child[Wide * node + k], four[k]);
                }
            }
        }

        if (at < 0)
        {
            return new(-1, default, double.PositiveInfinity);
        }

        int face = _faces[at];
        Vector3D normal = feature switch
        {
            < 3 => _pointNormals[_mesh.Corners[3 * face + feature]],
            < 6 => _sideNormals[3 * face + feature - 3],
            _ => _mesh.Cross(face),
        };
        return new(face, place, Math.CopySign(Math.Sqrt(best), (p - place).Dot(normal) < 0 ? -1 : 1));
    }

    /// <summary>Pairs of triangles without a common point that cut each other.</summary>
    /// <param name="most">How many pairs to stop at.</param>
    public IReadOnlyList<(int A, int B)> Crossings(int most = 1000)
    {
        // the first steps give enough pairs of boxes for all cores
        List<(int A, int B)> pairs = _child.Length > 0 ? [(0, 0)] : [];
        for (int step = 0; step < FirstSteps; step++)
        {
            Stack<(int, int)> next = new();
            pairs.ForEach(p => Inside(p.A, p.B, next));
            pairs = [.. next];
        }

        List<(int, int)> found = [];
        Lock gate = new();
        Parallel.ForEach(pairs, () => (Found: new List<(int, int)>(), Stack: new Stack<(int A, int B)>()), (pair, _, own) =>
        {
            own.Stack.Push(pair);
            while (own.Stack.TryPop(out (int A, int B) p) && own.Found.Count < most)
            {
                if (p.A >= 0 || p.B >= 0)
                {
                    Inside(p.A, p.B, own.Stack);
                }
                else if (Crossing.Cut(_mesh, _faces[~p.A], _faces[~p.B]))
                {
                    own.Found.Add((Math.Min(_faces[~p.A], _faces[~p.B]), Math.Max(_faces[~p.A], _faces[~p.B])));
                }
            }

            return own;
        }, own =>
        {
            lock (gate)
            {
                found.AddRange(own.Found);
            }
        });
        found.Sort();
        return found.Count > most ? found[..most] : found;
    }

    // Pairs of boxes that meet inside a pair; two triangles stay as they are.
    private void Inside(int a, int b, Stack<(int, int)> into)
    {
        if (a < 0 && b < 0)
        {
            into.Push((a, b));
            return;
        }

        (a, b) = a < 0 ? (b, a) : (a, b); // the first is a node
        for (int i = 0; i < Wide && _child[Wide * a + i] != None; i++)
        {
            Box own = Of(a, i);
            if (b < 0)
            {
                if (own.Meets(Of(b)))
                {
                    into.Push((_child[Wide * a + i], b));
                }

                continue;
            }

            for (int j = a == b ? i : 0; j < Wide && _child[Wide * b + j] != None; j++)
            {
                // a box with itself: the pairs inside it, none in one triangle
                if (a == b && i == j ? _child[Wide * a + i] >= 0 : own.Meets(Of(b, j)))
                {
                    into.Push((_child[Wide * a + i], _child[Wide * b + j]));
                }
            }
        }
    }

    private readonly record struct Box(Vector3D Low, Vector3D High)
    {
        public bool Meets(Box o) => Low.X <= o.High.X && o.Low.X <= High.X && Low.Y <= o.High.Y && o.Low.Y <= High.Y && Low.Z <= o.High.Z && o.Low.Z <= High.Z;
    }

    private Box Of(int node, int k)
    {
        ReadOnlySpan<Vector256<double>> b = _boxes.AsSpan(Sides * node, Sides);
        return new(new(b[0][k], b[1][k], b[2][k]), new(b[3][k], b[4][k], b[5][k]));
    }

    private Box Of(int triangle)
    {
        ReadOnlySpan<double> t = _triangles.AsSpan(9 * ~triangle, 9);
        return new(
            new(Math.Min(t[0], Math.Min(t[3], t[6])), Math.Min(t[1], Math.Min(t[4], t[7])), Math.Min(t[2], Math.Min(t[5], t[8]))),
            new(Math.Max(t[0], Math.Max(t[3], t[6])), Math.Max(t[1], Math.Max(t[4], t[7])), Math.Max(t[2], Math.Max(t[5], t[8]))));
    }

    // A node over some of the triangles, and the box round them.
    private int Build(int low, int high, double[] middles, Span<double> box)
    {
        int node = _children.Count / Wide;
        _children.AddRange([None, None, None, None]);
        for (int i = 0; i < Sides; i++)
        {
            _growing.Add(Vector256.Create(i < 3 ? double.PositiveInfinity : double.NegativeInfinity));
        }

        Span<int> cut = stackalloc int[Wide + 1];
        int parts = Math.Min(Wide, high - low);
        (cut[0], cut[parts]) = (low, high);
        if (parts < Wide || high - low == Wide)
        {
            for (int k = 1; k < parts; k++)
            {
                cut[k] = low + k;
            }
        }
        else
        {
            cut[2] = Halve(low, high, middles);
            cut[1] = Halve(low, cut[2], middles);
            cut[3] = Halve(cut[2], high, middles);
        }

        Span<double> one = stackalloc double[Sides];
        box[..3].Fill(double.PositiveInfinity);
        box[3..].Fill(double.NegativeInfinity);
        for (int k = 0; k < parts; k++)
        {
            if (cut[k + 1] - cut[k] == 1)
            {
                Around(_faces[cut[k]], one);
                _children[Wide * node + k] = ~cut[k];
            }
            else
            {
                _children[Wide * node + k] = Build(cut[k], cut[k + 1], middles, one);
            }

            for (int i = 0; i < Sides; i++)
            {
                _growing[Sides * node + i] = _growing[Sides * node + i].WithElement(k, one[i]);
                box[i] = i < 3 ? Math.Min(box[i], one[i]) : Math.Max(box[i], one[i]);
            }
        }

        return node;
    }

    private void Around(int face, Span<double> box)
    {
        for (int d = 0; d < 3; d++)
        {
            double a = _mesh.Points[3 * _mesh.Corners[3 * face] + d], b = _mesh.Points[3 * _mesh.Corners[3 * face + 1] + d], c = _mesh.Points[3 * _mesh.Corners[3 * face + 2] + d];
            (box[d], box[3 + d]) = (Math.Min(a, Math.Min(b, c)), Math.Max(a, Math.Max(b, c)));
        }
    }

    // Parts triangles in two halves along the longest side of the box round their middles.
    private int Halve(int low, int high, double[] middles)
    {
        Span<double> from = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity], to = [double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity];
        for (int i = low; i < high; i++)
        {
            for (int d = 0; d < 3; d++)
            {
                double m = middles[3 * _faces[i] + d];
                from[d] = Math.Min(from[d], m);
                to[d] = Math.Max(to[d], m);
            }
        }

        int axis = 0;
        for (int d = 1; d < 3; d++)
        {
            axis = to[d] - from[d] > to[axis] - from[axis] ? d : axis;
        }

        int middle = (low + high) / 2;
        Select(low, high - 1, middle, middles, axis);
        return middle;
    }

    private void Select(int a, int b, int target, double[] keys, int axis)
    {
        while (a < b)
        {
            double pivot = keys[3 * _faces[a + (b - a) / 2] + axis];
            int i = a, j = b;
            while (i <= j)
            {
                while (keys[3 * _faces[i] + axis] < pivot)
                {
                    i++;
                }

                while (keys[3 * _faces[j] + axis] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (_faces[i], _faces[j]) = (_faces[j], _faces[i]);
                    i++;
                    j--;
                }
            }

            if (target <= j)
            {
                b = j;
            }
            else if (target >= i)
            {
                a = i;
            }
            else
            {
                return;
            }
        }
    }
}
