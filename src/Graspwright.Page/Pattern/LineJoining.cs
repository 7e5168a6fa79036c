using Graspwright.Numerics;

namespace Graspwright.Page.Pattern;

/// <summary>Joins pieces of line that meet end to end, and leaves out the points that a straight line does without: what was drawn triangle by triangle weighs little.</summary>
public static class LineJoining
{
    /// <summary>Joins and thins.</summary>
    /// <param name="pieces">Pieces of line, in any order and direction.</param>
    /// <param name="same">How near two ends lie that are the same point.</param>
    /// <param name="off">How far the thinned line may lie off.</param>
    /// <returns>Lines of at least two points; a closed one ends where it begins.</returns>
    public static IReadOnlyList<IReadOnlyList<Vector3D>> Join(IReadOnlyList<(Vector3D From, Vector3D To)> pieces, double same, double off)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        (long, long, long) Key(Vector3D p) => ((long)Math.Round(p.X / same), (long)Math.Round(p.Y / same), (long)Math.Round(p.Z / same));
        Dictionary<(long, long, long), List<int>> ends = [];
        void Add(Vector3D p, int i)
        {
            if (!ends.TryGetValue(Key(p), out List<int>? at))
            {
                ends[Key(p)] = at = [];
            }

            at.Add(i);
        }

        for (int i = 0; i < pieces.Count; i++)
        {
            Add(pieces[i].From, i);
            Add(pieces[i].To, i);
        }

        bool[] used = new bool[pieces.Count];
        Vector3D? Next(Vector3D at)
        {
            foreach (int i in ends[Key(at)])
            {
                if (!used[i])
                {
                    used[i] = true;
                    return Key(pieces[i].From) == Key(at) ? pieces[i].To : pieces[i].From;
                }
            }

            return null;
        }

        List<IReadOnlyList<Vector3D>> lines = [];
        for (int i = 0; i < pieces.Count; i++)
        {
            if (used[i])
            {
                continue;
            }

            used[i] = true;
            List<Vector3D> forth = [pieces[i].From, pieces[i].To], back = [];
            while (Next(forth[^1]) is { } more)
            {
                forth.Add(more);
            }

            for (Vector3D? at = Next(forth[0]); at is { } more; at = Next(more))
            {
                back.Add(more);
            }

            back.Reverse();
            lines.Add(Thin([.. back, .. forth], off));
        }

        return lines;
    }

    /// <summary>Leaves out the points that lie within a distance of the line without them.</summary>
    /// <param name="line">Points in turn.</param>
    /// <param name="off">The distance.</param>
    /// <remarks>After Douglas and Peucker (1973).</remarks>
    public static IReadOnlyList<Vector3D> Thin(IReadOnlyList<Vector3D> line, double off)
    {
        ArgumentNullException.ThrowIfNull(line);
        bool[] keep = new bool[line.Count];
        keep[0] = keep[^1] = true;
        Stack<(int From, int To)> open = new([(0, line.Count - 1)]);
        while (open.TryPop(out (int From, int To) part))
        {
            int worst = -1;
            double most = off;
            for (int i = part.From + 1; i < part.To; i++)
            {
                double away = Away(line[i], line[part.From], line[part.To]);
                (worst, most) = away > most ? (i, away) : (worst, most);
            }

            if (worst > 0)
            {
                keep[worst] = true;
                open.Push((part.From, worst));
                open.Push((worst, part.To));
            }
        }

        return [.. line.Where((_, i) => keep[i])];
    }

    private static double Away(Vector3D p, Vector3D a, Vector3D b)
    {
        Vector3D along = b - a;
        double square = along.Dot(along), t = square > 0 ? Math.Clamp((p - a).Dot(along) / square, 0, 1) : 0;
        return (p - a - t * along).Length;
    }
}
