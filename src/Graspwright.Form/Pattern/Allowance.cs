using Graspwright.Form.Flattening;

namespace Graspwright.Form.Pattern;

/// <summary>Adds the allowance outside a rim.</summary>
internal static class Allowance
{
    private const double LongestMitre = 2, Look = 0.002;

    public static IReadOnlyList<(double X, double Y)> Add(Flat flat, IReadOnlyList<RimRun> runs, Func<RimRun, double> width)
    {
        List<(double X, double Y)> line = [];
        for (int r = 0; r < runs.Count; r++)
        {
            RimRun run = runs[r], before = runs[(r + runs.Count - 1) % runs.Count];
            double w = width(run);
            if (w <= 0)
            {
                foreach (int v in run.Points)
                {
                    Put(line, flat.X[v], flat.Y[v]);
                }

                continue;
            }

            if (width(before) > 0)
            {
                Corner(line, flat, run.Points[0], Way(flat, before.Points, before.Points.Count - 1, -1), Way(flat, run.Points, 0, 1), w);
            }

            for (int i = 0; i < run.Points.Count; i++)
            {
                bool first = i == 0, last = i == run.Points.Count - 1;
                (double X, double Y) into = Way(flat, run.Points, i, -1), on = Way(flat, run.Points, i, 1);
                Offset(line, flat, run.Points[i], first ? on : into, last ? into : on, w);
            }
        }

        return Untangled(line);
    }

    // Two runs that meet in an outer corner: their offset lines are carried on until they meet, as a cutter squares a corner.
    private static void Corner(List<(double X, double Y)> line, Flat flat, int v, (double X, double Y) into, (double X, double Y) on, double w)
    {
        if (into.X * on.Y - into.Y * on.X > 0)
        {
            Offset(line, flat, v, into, on, w);
        }
    }

    private static void Offset(List<(double X, double Y)> line, Flat flat, int v, (double X, double Y) into, (double X, double Y) on, double w)
    {
        // outward normals; the surface lies to the left
        double mx = into.Y + on.Y, my = -into.X - on.X, l2 = mx * mx + my * my;
        double scale = l2 > 1e-12 ? 2 / l2 : 0; // (a + b) · 2 ÷ |a + b|² reaches both offset lines
        double reach = Math.Min(scale * Math.Sqrt(l2), LongestMitre), length = Math.Sqrt(Math.Max(l2, 1e-24));
        Put(line, flat.X[v] + w * reach * mx / length, flat.Y[v] + w * reach * my / length);
    }

    // Direction of a rim at one of its points, backward (−1) or forward (1), over a length at which a last sliver of a triangle does not count.
    private static (double X, double Y) Way(Flat flat, IReadOnlyList<int> points, int i, int step)
    {
        int v = points[i];
        double dx = 0, dy = 0, length = 0;
        for (int j = i + step; j >= 0 && j < points.Count && length < Look; j += step)
        {
            (dx, dy) = (step * (flat.X[points[j]] - flat.X[v]), step * (flat.Y[points[j]] - flat.Y[v]));
            length = double.Hypot(dx, dy);
        }

        return length > 0 ? (dx / length, dy / length) : (0, 0);
    }

    private static void Put(List<(double X, double Y)> line, double x, double y)
    {
        if (line.Count == 0 || double.Hypot(line[^1].X - x, line[^1].Y - y) > 1e-7)
        {
            line.Add((x, y));
        }
    }

    // Where the line crosses itself, the smaller loop is left out.
    private static List<(double X, double Y)> Untangled(List<(double X, double Y)> line)
    {
        for (int round = 0; round < 50 && RimCrossings.Find(line) is { Count: > 0 } crossings; round++)
        {
            (int i, int j) = crossings.MinBy(c => Math.Min(c.B - c.A, line.Count - c.B + c.A));
            (double X, double Y) at = Meet(line[i], line[i + 1], line[j], line[(j + 1) % line.Count]);
            line = j - i <= line.Count - j + i ? [.. line[..(i + 1)], at, .. line[(j + 1)..]] : [at, .. line[(i + 1)..(j + 1)]];
        }

        return line;
    }

    private static (double X, double Y) Meet((double X, double Y) a, (double X, double Y) b, (double X, double Y) c, (double X, double Y) d)
    {
        double rx = b.X - a.X, ry = b.Y - a.Y, sx = d.X - c.X, sy = d.Y - c.Y, t = ((c.X - a.X) * sy - (c.Y - a.Y) * sx) / (rx * sy - ry * sx);
        return (a.X + t * rx, a.Y + t * ry);
    }
}
