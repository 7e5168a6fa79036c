using Graspwright.Form.Flattening;

namespace Graspwright.Form.Pattern;

/// <summary>Adds the allowance outside a rim.</summary>
internal static class Allowance
{
    private const double LongestMitre = 2;

    public static IReadOnlyList<(double X, double Y)> Add(Flat flat, IReadOnlyList<RimRun> runs, Func<RimRun, double> width)
    {
        List<(double X, double Y)> line = [];
        foreach (RimRun run in runs)
        {
            double w = width(run);
            if (w <= 0)
            {
                foreach (int v in run.Points)
                {
                    Put(line, flat.X[v], flat.Y[v]);
                }

                continue;
            }

            for (int i = 0; i < run.Points.Count; i++)
            {
                int v = run.Points[i], a = run.Points[Math.Max(0, i - 1)], b = run.Points[Math.Min(run.Points.Count - 1, i + 1)];
                (double ax, double ay) = a == v ? Out(flat, v, b) : Out(flat, a, v);
                (double bx, double by) = b == v ? Out(flat, a, v) : Out(flat, v, b);
                double mx = ax + bx, my = ay + by, l2 = mx * mx + my * my;
                double scale = l2 > 1e-12 ? 2 / l2 : 0; // (a + b) · 2 ÷ |a + b|² reaches both offset lines
                double reach = Math.Min(scale * Math.Sqrt(l2), LongestMitre), length = Math.Sqrt(Math.Max(l2, 1e-24));
                Put(line, flat.X[v] + w * reach * mx / length, flat.Y[v] + w * reach * my / length);
            }
        }

        return Untangled(line);
    }

    // Outward normal of a piece of rim; the surface lies to its left.
    private static (double X, double Y) Out(Flat flat, int from, int to)
    {
        double dx = flat.X[to] - flat.X[from], dy = flat.Y[to] - flat.Y[from], l = double.Hypot(dx, dy);
        return l > 0 ? (dy / l, -dx / l) : (0, 0);
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
