using Graspwright.Form.Surface;

namespace Graspwright.Form.Region;

/// <summary>Shortest ways along the edges of a surface: where to cut, not how far it is.</summary>
internal sealed class EdgePaths
{
    private readonly Neighbourhood _sides;
    private readonly int[] _start, _around;
    private readonly Func<int, double> _dear;

    /// <summary>Prepares a surface.</summary>
    /// <param name="sides">The surface.</param>
    /// <param name="dear">How many times dearer a way past a point is; 1 = plain.</param>
    public EdgePaths(Neighbourhood sides, Func<int, double>? dear = null)
    {
        _sides = sides;
        _dear = dear ?? (_ => 1);
        int[] corners = sides.Mesh.Corners;
        _start = new int[sides.Mesh.PointCount + 1];
        foreach (int c in corners)
        {
            _start[c + 1]++;
        }

        for (int v = 0; v + 1 < _start.Length; v++)
        {
            _start[v + 1] += _start[v];
        }

        int[] at = _start[..^1];
        _around = new int[corners.Length];
        for (int h = 0; h < corners.Length; h++)
        {
            _around[at[corners[h]]++] = h;
        }
    }

    /// <summary>Points that an edge joins to a point; those of inner edges come twice.</summary>
    public IEnumerable<int> Around(int v)
    {
        for (int i = _start[v]; i < _start[v + 1]; i++)
        {
            yield return _sides.To(_around[i]);
            yield return _sides.From(Neighbourhood.Previous(_around[i]));
        }
    }

    /// <summary>The way from any of some points to the nearest that is wanted; empty = there is none.</summary>
    public int[] Between(IEnumerable<int> from, Func<int, bool> wanted)
    {
        (double[] far, int[] before) = Spread(from, wanted, out int reached);
        _ = far;
        List<int> way = [];
        for (int v = reached; v >= 0; v = before[v])
        {
            way.Add(v);
        }

        way.Reverse();
        return [.. way];
    }

    /// <summary>The point farthest from some points.</summary>
    public int Farthest(IEnumerable<int> from)
    {
        (double[] far, _) = Spread(from, _ => false, out _);
        int best = 0;
        for (int v = 0; v < far.Length; v++)
        {
            best = double.IsFinite(far[v]) && far[v] > far[best] ? v : best;
        }

        return best;
    }

    public (double[] Far, int[] Before) Spread(IEnumerable<int> from, Func<int, bool> wanted, out int reached)
    {
        int n = _sides.Mesh.PointCount;
        double[] far = new double[n];
        int[] before = new int[n];
        bool[] done = new bool[n];
        Array.Fill(far, double.PositiveInfinity);
        Array.Fill(before, -1);
        PriorityQueue<int, double> queue = new();
        foreach (int v in from)
        {
            far[v] = 0;
            queue.Enqueue(v, 0);
        }

        reached = -1;
        while (queue.TryDequeue(out int v, out _))
        {
            if (done[v])
            {
                continue;
            }

            done[v] = true;
            if (wanted(v) && before[v] >= 0)
            {
                reached = v;
                break;
            }

            for (int i = _start[v]; i < _start[v + 1]; i++)
            {
                Reach(v, _sides.To(_around[i]));
                Reach(v, _sides.From(Neighbourhood.Previous(_around[i])));
            }
        }

        return (far, before);

        void Reach(int v, int w)
        {
            double d = far[v] + (_sides.Mesh.At(v) - _sides.Mesh.At(w)).Length * (_dear(v) + _dear(w)) / 2;
            if (d < far[w])
            {
                (far[w], before[w]) = (d, v);
                queue.Enqueue(w, d);
            }
        }
    }
}
