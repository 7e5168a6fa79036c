using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Form;

/// <summary>Compares an outline traced from a piece that was pressed, cut and laid flat with the one that was predicted.</summary>
internal static class OutlineComparison
{
    private const double Limit = 0.003;
    private const int Samples = 400;

    public static void Add(IReadOnlyList<PaperPiece> pieces, IReadOnlyList<(double X, double Y)> traced, List<Figure> figures, List<Finding> findings, List<Table> tables)
    {
        (double X, double Y)[] own = Even(traced);
        (PaperPiece piece, double mean, double worst, bool mirrored, (double X, double Y) at) = pieces.Select(p => Best(p, own)).MinBy(b => b.Mean);
        figures.Add(new("outline_mean", $"traced outline beside {piece.Name}: mean distance", "mm") { Value = 1000 * mean, Working = new("added_up", [new("added_up", 1000 * mean, "mm")], FormSources.Surface) });
        figures.Add(new("outline_worst", $"traced outline beside {piece.Name}: greatest distance", "mm") { Value = 1000 * worst, Working = new("added_up", [new("added_up", 1000 * worst, "mm")], FormSources.Surface) });
        string side = mirrored ? " It was traced from its other side." : "";
        findings.Add(new("outline", piece.Name, Verdicts.Of((Limit - worst) / Limit), $"The traced outline lies {Number(1000 * mean)} mm beside the predicted one on the mean, {Number(1000 * worst)} mm at most, where the piece is {Number(1000 * at.X, 0)} mm to the right and {Number(1000 * at.Y, 0)} mm up.{side}",
            worst > Limit ? "Where it bulges out, the sheet was stretched on the form: lay it on without pulling, or add a dart there." : "Nothing need change.")
        { Figure = 1000 * worst, Limit = 1000 * Limit, Unit = "mm" });
        double traced0 = Area(own), predicted = Area(Sew(piece));
        tables.Add(new("traced beside predicted", [new("", ""), new("traced", ""), new("predicted", "")], [["area, cm²", 1e4 * Math.Abs(traced0), 1e4 * Math.Abs(predicted)], ["round, mm", 1000 * Length(traced), 1000 * Length(Sew(piece))]]));
    }

    private static (double X, double Y)[] Sew(PaperPiece piece) => [.. piece.Pattern.SewLine.Select(p => piece.Place(p.X, p.Y))];

    // The best of many starts of turning and moving, either side up; each fit by nearest points.
    private static (PaperPiece Piece, double Mean, double Worst, bool Mirrored, (double X, double Y) At) Best(PaperPiece piece, (double X, double Y)[] traced)
    {
        (double X, double Y)[] goal = Even(Sew(piece));
        (PaperPiece, double, double, bool, (double, double)) best = (piece, double.PositiveInfinity, 0, false, default);
        foreach (bool mirror in (bool[])[false, true])
        {
            for (int start = 0; start < 12; start++)
            {
                (double X, double Y)[] moved = Turned(traced, mirror, 2 * Math.PI * start / 12, goal);
                for (int round = 0; round < 40; round++)
                {
                    moved = Fitted(moved, goal);
                }

                double[] away = [.. moved.Select(p => Distance(p, goal)), .. goal.Select(p => Distance(p, moved))];
                double mean = away.Average();
                if (mean < best.Item2)
                {
                    int at = Array.IndexOf(away, away.Max());
                    best = (piece, mean, away[at], mirror, at < moved.Length ? moved[at] : goal[at - moved.Length]);
                }
            }
        }

        return best;
    }

    private static (double X, double Y)[] Turned((double X, double Y)[] line, bool mirror, double angle, (double X, double Y)[] goal)
    {
        (double sin, double cos) = Math.SinCos(angle);
        (double cx, double cy) = (line.Average(p => p.X), line.Average(p => p.Y));
        (double gx, double gy) = (goal.Average(p => p.X), goal.Average(p => p.Y));
        return [.. line.Select(p => (X: (mirror ? -1 : 1) * (p.X - cx), Y: p.Y - cy)).Select(p => (gx + cos * p.X - sin * p.Y, gy + sin * p.X + cos * p.Y))];
    }

    // One step of the best turn and shift onto the nearest corners (Besl and McKay 1992).
    private static (double X, double Y)[] Fitted((double X, double Y)[] line, (double X, double Y)[] goal)
    {
        (double X, double Y)[] near = [.. line.Select(p => Foot(p, goal))];
        (double cx, double cy) = (line.Average(p => p.X), line.Average(p => p.Y));
        (double gx, double gy) = (near.Average(p => p.X), near.Average(p => p.Y));
        double c = 0, s = 0;
        for (int i = 0; i < line.Length; i++)
        {
            double x = line[i].X - cx, y = line[i].Y - cy, u = near[i].X - gx, v = near[i].Y - gy;
            c += x * u + y * v;
            s += x * v - y * u;
        }

        double l = double.Hypot(c, s);
        (c, s) = l > 0 ? (c / l, s / l) : (1, 0);
        return [.. line.Select(p => (gx + c * (p.X - cx) - s * (p.Y - cy), gy + s * (p.X - cx) + c * (p.Y - cy)))];
    }

    private static double Distance((double X, double Y) p, (double X, double Y)[] line) => Foot(p, line) is var f ? double.Hypot(f.X - p.X, f.Y - p.Y) : 0;

    private static (double X, double Y) Foot((double X, double Y) p, (double X, double Y)[] line)
    {
        (double X, double Y) best = line[0];
        double least = double.PositiveInfinity;
        for (int i = 0, j = line.Length - 1; i < line.Length; j = i++)
        {
            double dx = line[i].X - line[j].X, dy = line[i].Y - line[j].Y, t = Math.Clamp(((p.X - line[j].X) * dx + (p.Y - line[j].Y) * dy) / Math.Max(dx * dx + dy * dy, 1e-30), 0, 1);
            (double X, double Y) q = (line[j].X + t * dx, line[j].Y + t * dy);
            double d = double.Hypot(q.X - p.X, q.Y - p.Y);
            (best, least) = d < least ? (q, d) : (best, least);
        }

        return best;
    }

    private static (double X, double Y)[] Even(IReadOnlyList<(double X, double Y)> line)
    {
        double step = Length(line) / Samples, next = 0, along = 0;
        List<(double, double)> even = [];
        for (int i = 0; i < line.Count; i++)
        {
            (double bx, double by) = line[(i + 1) % line.Count];
            double l = double.Hypot(bx - line[i].X, by - line[i].Y);
            for (; next <= along + l && l > 0 && even.Count < Samples; next += step)
            {
                double t = (next - along) / l;
                even.Add((line[i].X + t * (bx - line[i].X), line[i].Y + t * (by - line[i].Y)));
            }

            along += l;
        }

        return [.. even];
    }

    private static double Length(IReadOnlyList<(double X, double Y)> line)
    {
        double sum = 0;
        for (int i = 0; i < line.Count; i++)
        {
            (double x, double y) = line[(i + 1) % line.Count];
            sum += double.Hypot(x - line[i].X, y - line[i].Y);
        }

        return sum;
    }

    private static double Area(IReadOnlyList<(double X, double Y)> line)
    {
        double sum = 0;
        for (int i = 0; i < line.Count; i++)
        {
            (double x, double y) = line[(i + 1) % line.Count];
            sum += line[i].X * y - x * line[i].Y;
        }

        return sum / 2;
    }
}
