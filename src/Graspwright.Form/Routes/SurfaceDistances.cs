using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>Distances over a surface from one of its points.</summary>
/// <param name="From">The point.</param>
/// <param name="Distances">Distance of each point; infinite = not reached or not asked for [m].</param>
/// <param name="Bound">Share by which any of them may be wrong.</param>
/// <param name="Windows">Stretches of edges that were followed.</param>
public sealed record DistanceField(int From, double[] Distances, double Bound, long Windows);

/// <summary>A shortest way over a surface.</summary>
/// <param name="Places">Its corners: the ends, and where it crosses edges [m].</param>
/// <param name="Length">Its length [m].</param>
public sealed record SurfaceRoute(IReadOnlyList<Vector3D> Places, double Length);

/// <summary>Shortest ways over the triangles themselves, not along their edges: exact but for rounding.</summary>
/// <remarks>
/// Stretches of edges that see one source straight are carried over the triangles, nearest first, and dropped where a corner gives a shorter way
/// (Chen and Han 1990, with the filter of Xin and Wang, "Improving Chen and Han's algorithm on the discrete geodesic problem", ACM TOG 28 (2009)).
/// Each distance is a sum of straight lengths in unfolded triangles; nothing is interpolated, so what is left is rounding.
/// </remarks>
public sealed class SurfaceDistances
{
    /// <summary>Share by which rounding may move a distance.</summary>
    public const double Rounding = 1e-9;

    private const double Slack = 1e-12;
    private const long MostWindows = 60_000_000;

    private readonly Neighbourhood _sides;
    private readonly double[] _length;
    private readonly bool[] _turns; // points that a shortest way may turn at: saddles and the rim

    /// <summary>Prepares a surface.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public SurfaceDistances(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        _sides = sides;
        Mesh mesh = sides.Mesh;
        _length = new double[mesh.Corners.Length];
        double[] angle = new double[mesh.PointCount];
        _turns = new bool[mesh.PointCount];
        for (int h = 0; h < _length.Length; h++)
        {
            _length[h] = SurfaceSums.Length(mesh, h);
            angle[mesh.Corners[h]] += SurfaceSums.Angle(mesh, h);
        }

        for (int h = 0; h < _length.Length; h++)
        {
            _turns[mesh.Corners[h]] |= angle[mesh.Corners[h]] > 2 * Math.PI - 1e-9 || sides.Across[h] < 0;
            _turns[sides.To(h)] |= sides.Across[h] < 0;
        }
    }

    /// <summary>Distances of all points from one.</summary>
    /// <param name="from">The point.</param>
    public DistanceField Field(int from)
    {
        Run run = new(this, from, -1);
        run.Go();
        return new(from, run.Far, Rounding, run.Count);
    }

    /// <summary>The shortest way from one point to another.</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <returns>The way; <see langword="null"/> = the two lie on different parts.</returns>
    public SurfaceRoute? Route(int from, int to)
    {
        if (from == to)
        {
            return new([_sides.Mesh.At(from)], 0);
        }

        Run run = new(this, from, to);
        run.Go();
        return double.IsFinite(run.Far[to]) ? run.Trace(to) : null;
    }

    /// <summary>A stretch [Low, High] of a side that sees the source at (X, Y) across it; the triangle of the side lies at y above 0.</summary>
    private readonly record struct Window(int Side, double Low, double High, double X, double Y, double Before, int Root, int Parent);

    private sealed class Run(SurfaceDistances on, int from, int target)
    {
        private readonly PriorityQueue<Window, double> _queue = new();
        private readonly List<Window> _kept = [];
        private readonly int[] _by = new int[on._sides.Mesh.PointCount]; // window that gave a point its distance; −1 = an edge from Root
        private readonly int[] _root = new int[on._sides.Mesh.PointCount];
        private readonly double[] _nearest = new double[on._length.Length]; // the shortest way to the tip across each side, and where it crosses the side
        private readonly double[] _entry = new double[on._length.Length];
        private double _limit = double.PositiveInfinity;

        public double[] Far { get; } = new double[on._sides.Mesh.PointCount];

        public long Count { get; private set; }

        private Mesh Mesh => on._sides.Mesh;

        public void Go()
        {
            Array.Fill(Far, double.PositiveInfinity);
            Array.Fill(_by, -1);
            Array.Fill(_root, -1);
            Array.Fill(_nearest, double.PositiveInfinity);
            if (target >= 0)
            {
                // the way along edges is a way: nothing longer is followed
                (double[] along, _) = new Region.EdgePaths(on._sides).Spread([from], v => v == target, out _);
                _limit = along[target] * (1 + Slack);
            }

            Far[from] = 0;
            PriorityQueue<int, double> sources = new();
            int[][] leaving = Around();
            Turn(from, leaving, sources);
            while (_queue.Count > 0 || sources.Count > 0)
            {
                bool corner = sources.TryPeek(out int v, out double near) && (!_queue.TryPeek(out _, out double next) || near <= next);
                if (corner)
                {
                    sources.Dequeue();
                    if (near <= Far[v])
                    {
                        Turn(v, leaving, sources);
                    }

                    continue;
                }

                Window w = _queue.Dequeue();
                if (++Count > MostWindows)
                {
                    throw new InvalidOperationException("The surface is too crumpled for exact distances: smooth or thin it first.");
                }

                if (!Dropped(w))
                {
                    Carry(w, sources);
                }
            }
        }

        private int[][] Around()
        {
            int[] c = Mesh.Corners;
            List<int>[] lists = new List<int>[Mesh.PointCount];
            for (int h = 0; h < c.Length; h++)
            {
                (lists[c[h]] ??= []).Add(h);
            }

            return [.. lists.Select(l => l?.ToArray() ?? [])];
        }

        // A way turns at a point: its edges, and the far sides of its triangles.
        private void Turn(int v, int[][] leaving, PriorityQueue<int, double> sources)
        {
            foreach (int h in leaving[v])
            {
                int next = Neighbourhood.Next(h), back = Neighbourhood.Previous(h);
                Reach(on._sides.To(h), Far[v] + on._length[h], -1, v, sources);
                Reach(on._sides.From(back), Far[v] + on._length[back], -1, v, sources);
                int across = on._sides.Across[next];
                if (across < 0)
                {
                    continue;
                }

                // seen from the other triangle, the source lies below the side; the side there runs the other way
                double l = on._length[next], dEnd = on._length[h], dStart = on._length[back];
                double x = (l * l + dStart * dStart - dEnd * dEnd) / (2 * l), y = -Math.Sqrt(Math.Max(0, dStart * dStart - x * x));
                Put(new(across, 0, l, x, y, Far[v], v, -1));
            }
        }

        private void Reach(int v, double d, int by, int root, PriorityQueue<int, double> sources)
        {
            if (d < Far[v] * (1 - Slack))
            {
                (Far[v], _by[v], _root[v]) = (d, by, root);
                if (on._turns[v])
                {
                    sources.Enqueue(v, d);
                }
            }
        }

        private void Put(Window w)
        {
            double x = Math.Clamp(w.X, w.Low, w.High), near = w.Before + double.Hypot(x - w.X, w.Y);
            if (target >= 0)
            {
                Vector3D a = Mesh.At(on._sides.From(w.Side)), b = Mesh.At(on._sides.To(w.Side)), t = Mesh.At(target);
                double straight = Math.Max(0, Math.Min((a - t).Length, (b - t).Length) - on._length[w.Side]);
                if (near + straight > Math.Min(_limit, Far[target]))
                {
                    return;
                }
            }

            _queue.Enqueue(w, near);
        }

        // A corner of the side, or of the triangle before it, gives a shorter way to everything that the stretch sees.
        private bool Dropped(Window w)
        {
            double l = on._length[w.Side];
            double toLow = w.Before + double.Hypot(w.Low - w.X, w.Y), toHigh = w.Before + double.Hypot(w.High - w.X, w.Y);
            double atStart = Far[on._sides.From(w.Side)], atEnd = Far[on._sides.To(w.Side)];
            if (atStart + w.High < toHigh * (1 - Slack) || atEnd + l - w.Low < toLow * (1 - Slack))
            {
                return true;
            }

            int before = on._sides.Across[w.Side];
            int tip = on._sides.From(Neighbourhood.Previous(before));
            double left = on._length[Neighbourhood.Next(before)], right = on._length[Neighbourhood.Previous(before)]; // from our start to the tip, from the tip to our end
            double x = (l * l + left * left - right * right) / (2 * l), y = -Math.Sqrt(Math.Max(0, left * left - x * x));
            double viaTip = Far[tip];
            // from a tip outside the wedge, the line to the far end of the stretch crosses every line from the source
            return (viaTip + double.Hypot(w.High - x, y) < toHigh * (1 - Slack) && Beyond(w, x, y, low: true))
                || (viaTip + double.Hypot(w.Low - x, y) < toLow * (1 - Slack) && Beyond(w, x, y, low: false));
        }

        // The tip lies outside the wedge, beyond its lower or its higher line.
        private static bool Beyond(Window w, double x, double y, bool low)
        {
            double end = low ? w.Low : w.High, cross = (end - w.X) * (y - w.Y) + w.Y * (x - w.X);
            return low ? cross >= 0 : cross <= 0;
        }

        private void Carry(Window w, PriorityQueue<int, double> sources)
        {
            int h = w.Side, next = Neighbourhood.Next(h), back = Neighbourhood.Previous(h);
            double l = on._length[h], lb = on._length[back], ln = on._length[next];
            double cx = (l * l + lb * lb - ln * ln) / (2 * l), cy = Math.Sqrt(Math.Max(0, lb * lb - cx * cx));
            double left = (w.Low - w.X) * (cy - w.Y) + w.Y * (cx - w.X), right = (w.High - w.X) * (cy - w.Y) + w.Y * (cx - w.X);
            int parent = -1;
            if (target >= 0)
            {
                parent = _kept.Count;
                _kept.Add(w);
            }

            bool onRight = left > 0, onLeft = right < 0;
            int tip = on._sides.From(back);
            bool toRight = !onLeft, toLeft = !onRight;
            if (!onRight && !onLeft)
            {
                double far = w.Before + double.Hypot(cx - w.X, cy - w.Y), entry = w.X + (cx - w.X) * w.Y / (w.Y - cy);
                Reach(tip, far, parent, w.Root, sources);

                // one angle, one split: of all stretches of a side that see the tip, only the nearest serves both sides beyond it
                if (far < _nearest[h])
                {
                    (_nearest[h], _entry[h]) = (far, entry);
                }
                else
                {
                    (toRight, toLeft) = (entry >= _entry[h], entry < _entry[h]);
                }
            }

            if (toRight)
            {
                // the side from the end of h to the tip
                double a = onRight ? Meet(w, w.Low, l, 0, cx, cy) : 1, b = Meet(w, w.High, l, 0, cx, cy);
                Child(w, next, ln, b * ln, a * ln, parent, l, 0, cx, cy);
            }

            if (toLeft)
            {
                double a = Meet(w, w.Low, cx, cy, 0, 0), b = onLeft ? Meet(w, w.High, cx, cy, 0, 0) : 0;
                Child(w, back, lb, b * lb, a * lb, parent, cx, cy, 0, 0);
            }
        }

        // Where the line from the source through a place of the side meets another side: share along it.
        private static double Meet(Window w, double place, double ax, double ay, double bx, double by)
        {
            double dx = place - w.X, dy = -w.Y, ex = bx - ax, ey = by - ay, cross = ex * dy - ey * dx;
            double t = ((w.X - ax) * dy - (w.Y - ay) * dx) / cross;
            return double.IsNaN(t) ? 0 : Math.Clamp(t, 0, 1);
        }

        private void Child(Window w, int side, double length, double low, double high, int parent, double ax, double ay, double bx, double by)
        {
            int across = on._sides.Across[side];
            if (across < 0 || high - low < 1e-12 * length)
            {
                return;
            }

            // the frame of the side across: from b to a, its triangle on the other side
            double ux = (ax - bx) / length, uy = (ay - by) / length, px = w.X - bx, py = w.Y - by;
            double x = px * ux + py * uy, y = -Math.Abs(ux * py - uy * px);
            Put(new(across, length - high, length - low, x, y, w.Before, w.Root, parent));
        }

        /// <summary>The way back from a point, edge by edge.</summary>
        public SurfaceRoute Trace(int to)
        {
            List<Vector3D> places = [Mesh.At(to)];
            for (int v = to; v != from;)
            {
                int root = _root[v];
                if (_by[v] >= 0)
                {
                    Back(_kept[_by[v]], places);
                }

                places.Add(Mesh.At(root));
                v = root;
            }

            places.Reverse();
            double length = 0;
            for (int i = 1; i < places.Count; i++)
            {
                length += (places[i] - places[i - 1]).Length;
            }

            return new(places, length);
        }

        // Crossings of the straight line from the tip of the window's triangle to its source.
        private void Back(Window w, List<Vector3D> places)
        {
            double l = on._length[w.Side], lb = on._length[Neighbourhood.Previous(w.Side)], ln = on._length[Neighbourhood.Next(w.Side)];
            double px = (l * l + lb * lb - ln * ln) / (2 * l), py = Math.Sqrt(Math.Max(0, lb * lb - px * px));
            while (true)
            {
                double t = py == w.Y ? 0 : py / (py - w.Y), x = Math.Clamp(px + t * (w.X - px), w.Low, w.High);
                l = on._length[w.Side];
                Vector3D a = Mesh.At(on._sides.From(w.Side)), b = Mesh.At(on._sides.To(w.Side));
                places.Add(a + x / l * (b - a));
                if (w.Parent < 0)
                {
                    return;
                }

                // the same place in the frame of the window before
                Window before = _kept[w.Parent];
                int side = on._sides.Across[w.Side];
                double pl = on._length[before.Side], plb = on._length[Neighbourhood.Previous(before.Side)], pln = on._length[Neighbourhood.Next(before.Side)];
                double cx = (pl * pl + plb * plb - pln * pln) / (2 * pl), cy = Math.Sqrt(Math.Max(0, plb * plb - cx * cx)), share = 1 - x / l;
                bool onNext = side == Neighbourhood.Next(before.Side);
                (px, py) = onNext ? (pl + share * (cx - pl), share * cy) : (cx - share * cx, cy - share * cy);
                w = before;
            }
        }
    }
}
