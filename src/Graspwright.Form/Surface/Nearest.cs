using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>A place on a surface nearest to a point.</summary>
/// <param name="Face">Its triangle.</param>
/// <param name="Place">The place [m].</param>
/// <param name="Distance">Distance, negative inside a closed surface [m].</param>
public readonly record struct Foot(int Face, Vector3D Place, double Distance);

/// <summary>Tree of boxes round the triangles of a surface: nearest places, and triangles that cut each other.</summary>
public sealed class Nearest
{
    private const int LeafSize = 4, FirstSplits = 8;

    private readonly Mesh _mesh;
    private readonly int[] _faces;
    private readonly double[] _boxes; // six a node: low, high
    private readonly int[] _next; // right child, or −(first + 1) of a leaf
    private readonly int[] _count;
    private readonly double[] _triangles; // nine a triangle in the order of the leaves
    private readonly Vector3D[] _pointNormals;
    private readonly Vector3D[] _sideNormals;
    private int _nodes;

    /// <summary>Builds the tree.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public Nearest(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        _mesh = sides.Mesh;
        int n = _mesh.FaceCount;
        _faces = [.. Enumerable.Range(0, n)];
        int nodes = Math.Max(1, 2 * n);
        (_boxes, _next, _count) = (new double[6 * nodes], new int[nodes], new int[nodes]);
        double[] middles = new double[3 * n];
        for (int f = 0; f < n; f++)
        {
            Vector3D m = _mesh.Middle(f);
            (middles[3 * f], middles[3 * f + 1], middles[3 * f + 2]) = (m.X, m.Y, m.Z);
        }

        if (n > 0)
        {
            Build(0, n, middles);
        }

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
        int face = -1, feature = 6;
        Vector3D place = default;
        Span<int> stack = stackalloc int[64];
        Span<double> away = stackalloc double[64];
        int top = 0;
        if (_faces.Length > 0)
        {
            away[top] = 0;
            stack[top++] = 0;
        }

        while (top > 0)
        {
            int node = stack[--top];
            if (away[top] >= best)
            {
                continue;
            }

            if (_next[node] < 0)
            {
                int first = -_next[node] - 1;
                for (int i = first; i < first + _count[node]; i++)
                {
                    int f = _faces[i];
                    ReadOnlySpan<double> t = _triangles.AsSpan(9 * i, 9);
                    (Vector3D q, int where) = TrianglePlace.Of(p, new(t[0], t[1], t[2]), new(t[3], t[4], t[5]), new(t[6], t[7], t[8]));
                    double d = (p - q).Dot(p - q);
                    if (d < best)
                    {
                        (best, face, place, feature) = (d, f, q, where);
                    }
                }

                continue;
            }

            int left = node + 1, right = _next[node];
            double toLeft = BoxDistance(left, p), toRight = BoxDistance(right, p);
            bool leftFirst = toLeft <= toRight;
            (away[top], stack[top]) = leftFirst ? (toRight, right) : (toLeft, left);
            top++;
            (away[top], stack[top]) = leftFirst ? (toLeft, left) : (toRight, right);
            top++;
        }

        if (face < 0)
        {
            return new(-1, default, double.PositiveInfinity);
        }

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
        // the first splits give enough pairs of boxes for all cores
        List<(int, int)> tasks = _faces.Length > 0 ? [(0, 0)] : [], next = [];
        for (int round = 0; round < FirstSplits; round++)
        {
            foreach ((int a, int b) in tasks.Where(t => Overlap(t.Item1, t.Item2)))
            {
                Halves(a, b, next.Add);
            }

            (tasks, next) = (next, []);
        }

        List<(int, int)> found = [];
        Lock gate = new();
        Parallel.For(0, tasks.Count, () => new List<(int, int)>(), (i, _, own) =>
        {
            if (found.Count < most)
            {
                Pairs(tasks[i].Item1, tasks[i].Item2, own, most);
            }

            return own;
        }, own =>
        {
            lock (gate)
            {
                found.AddRange(own);
            }
        });
        found.Sort();
        return found.Count > most ? found[..most] : found;
    }

    private void Pairs(int a, int b, List<(int, int)> found, int most)
    {
        Stack<(int, int)> stack = new();
        Action<(int, int)> push = stack.Push;
        push((a, b));
        while (stack.Count > 0 && found.Count < most)
        {
            (a, b) = stack.Pop();
            if (!Overlap(a, b))
            {
                continue;
            }

            if (_next[a] < 0 && _next[b] < 0)
            {
                Leaves(a, b, found);
            }
            else
            {
                Halves(a, b, push);
            }
        }
    }

    // What a pair of boxes falls into; two leaves stay as they are.
    private void Halves(int a, int b, Action<(int, int)> into)
    {
        bool leafA = _next[a] < 0, leafB = _next[b] < 0;
        if (leafA && leafB)
        {
            into((a, b));
        }
        else if (a == b)
        {
            into((a + 1, a + 1));
            into((_next[a], _next[a]));
            into((a + 1, _next[a]));
        }
        else if (leafB || (!leafA && _count[a] >= _count[b]))
        {
            into((a + 1, b));
            into((_next[a], b));
        }
        else
        {
            into((a, b + 1));
            into((a, _next[b]));
        }
    }

    private void Leaves(int a, int b, List<(int, int)> found)
    {
        int fa = -_next[a] - 1, fb = -_next[b] - 1;
        for (int i = fa; i < fa + _count[a]; i++)
        {
            for (int j = a == b ? i + 1 : fb; j < fb + _count[b]; j++)
            {
                int f = _faces[i], g = _faces[j];
                if (Beside(i, j) && Crossing.Cut(_mesh, f, g))
                {
                    found.Add((Math.Min(f, g), Math.Max(f, g)));
                }
            }
        }
    }

    // Whether the boxes round two triangles, by their order in the leaves, overlap.
    private bool Beside(int i, int j)
    {
        ReadOnlySpan<double> s = _triangles.AsSpan(9 * i, 9), t = _triangles.AsSpan(9 * j, 9);
        for (int d = 0; d < 3; d++)
        {
            if (Math.Min(s[d], Math.Min(s[3 + d], s[6 + d])) > Math.Max(t[d], Math.Max(t[3 + d], t[6 + d])) || Math.Min(t[d], Math.Min(t[3 + d], t[6 + d])) > Math.Max(s[d], Math.Max(s[3 + d], s[6 + d])))
            {
                return false;
            }
        }

        return true;
    }

    private int Build(int low, int high, double[] middles)
    {
        int node = _nodes++;
        Span<double> box = _boxes.AsSpan(6 * node, 6);
        box[..3].Fill(double.PositiveInfinity);
        box[3..].Fill(double.NegativeInfinity);
        for (int i = low; i < high; i++)
        {
            for (int k = 0; k < 3; k++)
            {
                int v = _mesh.Corners[3 * _faces[i] + k];
                for (int d = 0; d < 3; d++)
                {
                    box[d] = Math.Min(box[d], _mesh.Points[3 * v + d]);
                    box[3 + d] = Math.Max(box[3 + d], _mesh.Points[3 * v + d]);
                }
            }
        }

        _count[node] = high - low;
        if (high - low <= LeafSize)
        {
            _next[node] = -(low + 1);
            return node;
        }

        int axis = 0;
        for (int d = 1; d < 3; d++)
        {
            axis = box[3 + d] - box[d] > box[3 + axis] - box[axis] ? d : axis;
        }

        int middle = (low + high) / 2;
        Select(low, high - 1, middle, middles, axis);
        Build(low, middle, middles);
        _next[node] = Build(middle, high, middles);
        return node;
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

    private double BoxDistance(int node, Vector3D p)
    {
        int i = 6 * node;
        double x = Math.Max(0, Math.Max(_boxes[i] - p.X, p.X - _boxes[i + 3]));
        double y = Math.Max(0, Math.Max(_boxes[i + 1] - p.Y, p.Y - _boxes[i + 4]));
        double z = Math.Max(0, Math.Max(_boxes[i + 2] - p.Z, p.Z - _boxes[i + 5]));
        return x * x + y * y + z * z;
    }

    private bool Overlap(int a, int b)
    {
        for (int d = 0; d < 3; d++)
        {
            if (_boxes[6 * a + d] > _boxes[6 * b + 3 + d] || _boxes[6 * b + d] > _boxes[6 * a + 3 + d])
            {
                return false;
            }
        }

        return true;
    }
}
