using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Sparse grid of distances round one distance from a form.</summary>
internal sealed class OffsetGrid
{
    private const int OntoRounds = 12;
    private const double Crease = 0.97; // cosine of the angle between normals, or ways out, from which a cell holds a crease and a line may span a valley

    private static readonly (int A, int B)[] Edges = [(0, 1), (2, 3), (4, 5), (6, 7), (0, 2), (1, 3), (4, 6), (5, 7), (0, 4), (1, 5), (2, 6), (3, 7)];
    private static readonly int[][] Faces = [[0, 4, 1, 5], [2, 6, 3, 7], [0, 8, 2, 9], [1, 10, 3, 11], [4, 8, 6, 10], [5, 9, 7, 11]];

    private readonly Nearest _form;
    private readonly double _distance;
    private readonly bool _valleys;
    private readonly Vector3D _origin, _size;
    private readonly Dictionary<long, double> _nodes = [];
    private readonly Dictionary<long, int[]> _cells = []; // point of each of the 12 edges' sheets, −1 = none
    private readonly List<((int X, int Y, int Z) Cell, double[] D)> _found = [];
    private readonly List<double> _points = [];

    /// <summary>A grid round the offset by a distance.</summary>
    /// <param name="form">The form.</param>
    /// <param name="distance">The distance [m].</param>
    /// <param name="cell">Its cells [m].</param>
    /// <param name="valleys">Points are put into valleys where the planes of their cell meet: true to the places, though triangles there may cut each other.</param>
    public OffsetGrid(Nearest form, double distance, double cell, bool valleys)
    {
        (_form, _distance, Cell, _valleys) = (form, distance, cell, valleys);
        (Vector3D low, Vector3D high) = form.Mesh.Box();
        double room = Math.Max(0, distance) + 3.37 * cell;
        _origin = low - new Vector3D(room, room, room);
        _size = 1 / cell * (high - low + new Vector3D(2 * room, 2 * room, 2 * room));
    }

    public double Cell { get; }

    /// <summary>How far a point is from the offset, positive beyond it [m].</summary>
    public double Miss(Vector3D p) => _form.To(p).Distance - _distance;

    /// <summary>A point brought onto the offset along the line to its foot.</summary>
    public Vector3D Onto(Vector3D p)
    {
        for (int i = 0; i < OntoRounds; i++)
        {
            Foot foot = _form.To(p);
            if (Math.Abs(foot.Distance) < 1e-12 || Math.Abs(foot.Distance - _distance) < 1e-9)
            {
                return p;
            }

            p = foot.Place + _distance / foot.Distance * (p - foot.Place);
        }

        return p;
    }

    /// <summary>Whether the straight line between two points of the offset spans a valley: the form is met from two sides there.</summary>
    public bool SpansValley(Vector3D a, Vector3D b) => Out(a).Dot(Out(b)) < Crease && Miss(0.5 * (a + b)) > 0;

    private Vector3D Out(Vector3D p) => _form.To(p) is var foot ? (1 / foot.Distance * (p - foot.Place)).Unit : default;

    public Mesh Surface()
    {
        Vector3D[] normals = SurfaceSums.Normals(_form.Mesh);
        Queue<(int, int, int)> queue = new();
        HashSet<long> seen = [];
        for (int v = 0; v < normals.Length; v++)
        {
            Vector3D p = _form.Mesh.At(v) + _distance * normals[v] - _origin;
            Enqueue((int)Math.Floor(p.X / Cell), (int)Math.Floor(p.Y / Cell), (int)Math.Floor(p.Z / Cell));
        }

        double[] d = new double[8];
        while (queue.Count > 0)
        {
            (int X, int Y, int Z)[] wave = [.. queue];
            queue.Clear();
            Fill(wave);
            foreach ((int X, int Y, int Z) cell in wave)
            {
                int inside = 0;
                for (int k = 0; k < 8; k++)
                {
                    d[k] = _nodes[Key(cell.X + (k & 1), cell.Y + (k >> 1 & 1), cell.Z + (k >> 2))];
                    inside |= d[k] < 0 ? 1 << k : 0;
                }

                if (inside is 0 or 255)
                {
                    continue;
                }

                _found.Add((cell, (double[])d.Clone()));
                for (int f = 0; f < 6; f++)
                {
                    int axis = f < 2 ? 4 : f < 4 ? 2 : 1, step = (f & 1) == 1 ? 1 : -1;
                    bool cut = false;
                    foreach (int e in Faces[f])
                    {
                        cut |= d[Edges[e].A] < 0 != d[Edges[e].B] < 0;
                    }

                    if (cut)
                    {
                        Enqueue(cell.X + (axis == 1 ? step : 0), cell.Y + (axis == 2 ? step : 0), cell.Z + (axis == 4 ? step : 0));
                    }
                }
            }
        }

        PlaceAll();
        return Quads();

        void Enqueue(int x, int y, int z)
        {
            // an open form has no inside: what leaks out of it ends at the box
            if (x >= 0 && y >= 0 && z >= 0 && x <= _size.X && y <= _size.Y && z <= _size.Z && seen.Add(Key(x, y, z)))
            {
                queue.Enqueue((x, y, z));
            }
        }
    }

    // Distances at the corners of cells that are not known yet, side by side.
    private void Fill((int X, int Y, int Z)[] wave)
    {
        List<(int X, int Y, int Z)> fresh = [];
        foreach ((int x, int y, int z) in wave)
        {
            for (int k = 0; k < 8; k++)
            {
                (int X, int Y, int Z) node = (x + (k & 1), y + (k >> 1 & 1), z + (k >> 2));
                if (_nodes.TryAdd(Key(node.X, node.Y, node.Z), 0))
                {
                    fresh.Add(node);
                }
            }
        }

        double[] miss = new double[fresh.Count];
        Parallel.For(0, miss.Length, i => miss[i] = Miss(At(fresh[i].X, fresh[i].Y, fresh[i].Z)));
        for (int i = 0; i < miss.Length; i++)
        {
            _nodes[Key(fresh[i].X, fresh[i].Y, fresh[i].Z)] = miss[i];
        }
    }

    // Points of all cells, side by side; numbered in the order in which the cells were found.
    private void PlaceAll()
    {
        (int[] Sheet, Vector3D[] Points)[] placed = new (int[], Vector3D[])[_found.Count];
        Parallel.For(0, placed.Length, i => placed[i] = Sheets(_found[i].Cell, _found[i].D));
        for (int i = 0; i < placed.Length; i++)
        {
            int first = _points.Count / 3;
            foreach (Vector3D p in placed[i].Points)
            {
                _points.AddRange([p.X, p.Y, p.Z]);
            }

            ((int x, int y, int z), _) = _found[i];
            _cells[Key(x, y, z)] = [.. placed[i].Sheet.Select(s => s < 0 ? -1 : first + s)];
        }
    }

    private static long Key(int x, int y, int z) => ((long)(x + 0x80000) << 42) | ((long)(y + 0x80000) << 21) | (uint)(z + 0x80000);

    private double Node(int x, int y, int z) => _nodes[Key(x, y, z)];

    private Vector3D At(int x, int y, int z) => _origin + Cell * new Vector3D(x, y, z);

    // Sheets of the surface in a cell: crossings that hang together round its faces; at a face with four crossings, those beside one inner corner.
    private (int[] Sheet, Vector3D[] Points) Sheets((int X, int Y, int Z) cell, double[] d)
    {
        int[] sheet = new int[12];
        bool[] crossed = new bool[12];
        for (int e = 0; e < 12; e++)
        {
            sheet[e] = e;
            crossed[e] = d[Edges[e].A] < 0 != d[Edges[e].B] < 0;
        }

        foreach (int[] face in Faces)
        {
            int[] on = [.. face.Where(e => crossed[e])];
            for (int i = 0; i < on.Length; i++)
            {
                for (int j = i + 1; j < on.Length; j++)
                {
                    if (on.Length == 2 || Inner(on[i], d) == Inner(on[j], d))
                    {
                        (int low, int high) = (Math.Min(sheet[on[i]], sheet[on[j]]), Math.Max(sheet[on[i]], sheet[on[j]]));
                        for (int e = 0; e < 12; e++)
                        {
                            sheet[e] = sheet[e] == high ? low : sheet[e];
                        }
                    }
                }
            }
        }

        int[] point = new int[12];
        List<Vector3D> points = [];
        Array.Fill(point, -1);
        for (int e = 0; e < 12; e++)
        {
            if (!crossed[e])
            {
                continue;
            }

            if (sheet[e] != e)
            {
                point[e] = point[sheet[e]];
                continue;
            }

            point[e] = points.Count;
            points.Add(Place(cell, d, [.. Enumerable.Range(0, 12).Where(i => crossed[i] && sheet[i] == e)]));
        }

        return (point, [.. points]);
    }

    private static int Inner(int e, double[] d) => d[Edges[e].A] < 0 ? Edges[e].A : Edges[e].B;

    private Vector3D Place((int X, int Y, int Z) cell, double[] d, int[] edges)
    {
        Vector3D middle = default;
        Vector3D[] p = new Vector3D[edges.Length], n = new Vector3D[edges.Length];
        for (int i = 0; i < edges.Length; i++)
        {
            (int a, int b) = Edges[edges[i]];
            double t = d[a] / (d[a] - d[b]);
            Vector3D from = Corner(cell, a), to = Corner(cell, b);
            p[i] = from + t * (to - from);
            middle += 1.0 / edges.Length * p[i];
            n[i] = Gradient(d, 1 / Cell * (p[i] - Corner(cell, 0)));
        }

        double least = n.Min(g => g.Length) < 0.98 * Cell ? -1 : 1;
        for (int i = 0; i < n.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                least = Math.Min(least, n[i].Unit.Dot(n[j].Unit));
            }
        }

        Vector3D x = Onto(middle);
        if (_valleys && least < Crease && Sharp(cell, middle, p) is { } sharp && Math.Abs(Miss(sharp)) <= Math.Abs(Miss(middle)))
        {
            x = sharp;
        }

        return x;
    }

    private Vector3D Corner((int X, int Y, int Z) cell, int k) => At(cell.X + (k & 1), cell.Y + (k >> 1 & 1), cell.Z + (k >> 2));

    // Gradient of the distances in a cell, straight between its corners, times the cell.
    private static Vector3D Gradient(double[] d, Vector3D at)
    {
        double x = at.X, y = at.Y, z = at.Z;
        double Mix(double a, double b, double c, double e, double s, double t) => (1 - s) * (1 - t) * a + s * (1 - t) * b + (1 - s) * t * c + s * t * e;
        return new(Mix(d[1] - d[0], d[3] - d[2], d[5] - d[4], d[7] - d[6], y, z), Mix(d[2] - d[0], d[3] - d[1], d[6] - d[4], d[7] - d[5], x, z), Mix(d[4] - d[0], d[5] - d[1], d[6] - d[2], d[7] - d[3], x, y));
    }

    // Where the planes of the offset at the crossings meet, looked at ever nearer to where they do.
    private Vector3D? Sharp((int X, int Y, int Z) cell, Vector3D middle, Vector3D[] p)
    {
        Vector3D x = middle, low = Corner(cell, 0), high = Corner(cell, 7);
        for (int round = 0; round < 4; round++)
        {
            double[] m = new double[9], r = new double[3];
            for (int i = 0; i < p.Length; i++)
            {
                Vector3D from = round == 0 ? p[i] : x + 0.3 * (p[i] - x);
                Foot foot = _form.To(from);
                Vector3D n = (1 / foot.Distance * (from - foot.Place)).Unit;
                double miss = n.Dot(foot.Place + _distance * n - x);
                (double, double, double) v = (n.X, n.Y, n.Z);
                double[] q = [v.Item1, v.Item2, v.Item3];
                for (int a = 0; a < 3; a++)
                {
                    r[a] += q[a] * miss;
                    for (int b = 0; b < 3; b++)
                    {
                        m[3 * a + b] += q[a] * q[b];
                    }
                }
            }

            for (int a = 0; a < 3; a++)
            {
                m[4 * a] += 1e-3; // along the crease it stays where it is
            }

            x += Solve(m, r);
            if (x.X < low.X - 0.2 * Cell || x.Y < low.Y - 0.2 * Cell || x.Z < low.Z - 0.2 * Cell || x.X > high.X + 0.2 * Cell || x.Y > high.Y + 0.2 * Cell || x.Z > high.Z + 0.2 * Cell)
            {
                return null;
            }
        }

        return x;
    }

    private static Vector3D Solve(double[] m, double[] r)
    {
        Vector3D a = new(m[0], m[3], m[6]), b = new(m[1], m[4], m[7]), c = new(m[2], m[5], m[8]), v = new(r[0], r[1], r[2]);
        double det = a.Dot(b.Cross(c));
        return new(v.Dot(b.Cross(c)) / det, a.Dot(v.Cross(c)) / det, a.Dot(b.Cross(v)) / det);
    }

    // Round each grid edge that the surface crosses lie four cells: their points make two triangles.
    private Mesh Quads()
    {
        List<int> corners = [];
        Vector3D Point(int v) => new(_points[3 * v], _points[3 * v + 1], _points[3 * v + 2]);
        foreach ((long key, int[] sheets) in _cells.OrderBy(c => c.Key))
        {
            int x = (int)(key >> 42) - 0x80000, y = (int)(key >> 21 & 0x1FFFFF) - 0x80000, z = (int)(key & 0x1FFFFF) - 0x80000;
            for (int axis = 0; axis < 3; axis++)
            {
                int e = axis == 0 ? 3 : axis == 1 ? 7 : 11; // the edge at the high corner of the two other axes
                if (sheets[e] < 0)
                {
                    continue;
                }

                int own = sheets[e], right, across, up;
                (right, across, up) = axis switch
                {
                    0 => (At4(x, y + 1, z, 2), At4(x, y + 1, z + 1, 0), At4(x, y, z + 1, 1)),
                    1 => (At4(x, y, z + 1, 5), At4(x + 1, y, z + 1, 4), At4(x + 1, y, z, 6)),
                    _ => (At4(x + 1, y, z, 10), At4(x + 1, y + 1, z, 8), At4(x, y + 1, z, 9)),
                };
                bool inFirst = Node(x + (Edges[e].A & 1), y + (Edges[e].A >> 1 & 1), z + (Edges[e].A >> 2)) < 0;
                int[] quad = inFirst ? [own, right, across, up] : [own, up, across, right];
                if (quad.Any(q => q < 0))
                {
                    continue;
                }

                Vector3D first = 0.5 * (Point(quad[0]) + Point(quad[2])), second = 0.5 * (Point(quad[1]) + Point(quad[3]));
                (double one, double two) = (first - second).Length > 0.03 * Cell ? (Math.Abs(Miss(first)), Math.Abs(Miss(second))) : (0, 0);
                int[] order = one <= two ? [0, 1, 2, 0, 2, 3] : [1, 2, 3, 1, 3, 0];
                for (int k = 0; k < 6; k += 3)
                {
                    (int a, int b, int c) = (quad[order[k]], quad[order[k + 1]], quad[order[k + 2]]);
                    if (a != b && b != c && a != c)
                    {
                        corners.AddRange([a, b, c]);
                    }
                }
            }
        }

        return new([.. _points], [.. corners]);
    }

    private int At4(int x, int y, int z, int edge) => _cells.TryGetValue(Key(x, y, z), out int[]? sheets) ? sheets[edge] : -1;
}
