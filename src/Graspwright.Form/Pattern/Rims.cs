using Graspwright.Form.Flattening;
using Graspwright.Form.Region;

namespace Graspwright.Form.Pattern;

/// <summary>Sorts the rims of pieces into seams and free edges, sets notches and adds the allowance.</summary>
public static class Rims
{
    /// <summary>Makes pattern pieces.</summary>
    /// <param name="pieces">Pieces and how they lie flat.</param>
    /// <param name="allowance">Allowance beside seams [m].</param>
    /// <param name="bothSides">On both sides of each seam; else on its first side only.</param>
    /// <param name="spacing">Distance of notches along seams [m].</param>
    public static IReadOnlyList<PatternPiece> Of(IReadOnlyList<(Piece Piece, Flat Flat)> pieces, double allowance, bool bothSides, double spacing)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        // Every rim side by the edge of the whole surface that it was: a seam's edges come twice.
        Dictionary<(int, int), int> times = [];
        foreach ((Piece piece, _) in pieces)
        {
            foreach (int h in piece.Sides.Loops()[0])
            {
                (int, int) key = Key(piece, h);
                times[key] = times.GetValueOrDefault(key) + 1;
            }
        }

        Dictionary<(int, int), int> seamOf = Seams(pieces, times);
        Dictionary<(int Seam, int Point), string> letters = Letters(pieces, seamOf, spacing);
        Dictionary<(int, int), int> met = [];
        List<PatternPiece> done = [];
        foreach ((Piece piece, Flat flat) in pieces)
        {
            List<RimRun> runs = Runs(piece, seamOf, met);
            List<Notch> notches = [];
            foreach (RimRun run in runs.Where(r => r.Seam >= 0))
            {
                for (int i = 1; i + 1 < run.Points.Count; i++)
                {
                    if (letters.TryGetValue((run.Seam, piece.OldPoints[run.Points[i]]), out string? letter))
                    {
                        int a = run.Points[i - 1], b = run.Points[i + 1], v = run.Points[i];
                        double dx = flat.X[b] - flat.X[a], dy = flat.Y[b] - flat.Y[a], l = double.Hypot(dx, dy);
                        notches.Add(new(flat.X[v], flat.Y[v], dy / l, -dx / l, letter));
                    }
                }
            }

            done.Add(new(piece, flat, runs, notches, Allowance.Add(flat, runs, r => r.Seam >= 0 && (bothSides || r.Side == 0) ? allowance : 0)));
        }

        return done;
    }

    private static (int, int) Key(Piece piece, int h) => Imprint.Pair(piece.OldPoints[piece.Sides.From(h)], piece.OldPoints[piece.Sides.To(h)]);

    // Edges that hang together, ends where three or more meet or a rim begins.
    private static Dictionary<(int, int), int> Seams(IReadOnlyList<(Piece Piece, Flat Flat)> pieces, Dictionary<(int, int), int> times)
    {
        Dictionary<int, List<(int, int)>> at = [];
        HashSet<int> free = [];
        foreach (((int a, int b) edge, int count) in times)
        {
            foreach (int v in (int[])[edge.a, edge.b])
            {
                if (count < 2)
                {
                    free.Add(v);
                    continue;
                }

                if (!at.TryGetValue(v, out List<(int, int)>? list))
                {
                    at[v] = list = [];
                }

                list.Add(edge);
            }
        }

        Dictionary<(int, int), int> seam = [];
        int seams = 0;
        foreach ((Piece piece, _) in pieces)
        {
            foreach (int h in piece.Sides.Loops()[0])
            {
                if (times[Key(piece, h)] < 2 || seam.ContainsKey(Key(piece, h)))
                {
                    continue;
                }

                Stack<(int, int)> todo = new([Key(piece, h)]);
                while (todo.Count > 0)
                {
                    (int a, int b) = todo.Pop();
                    if (!seam.TryAdd((a, b), seams))
                    {
                        continue;
                    }

                    foreach (int v in (int[])[a, b])
                    {
                        if (at[v].Count == 2 && !free.Contains(v))
                        {
                            foreach ((int, int) next in at[v])
                            {
                                todo.Push(next);
                            }
                        }
                    }
                }

                seams++;
            }
        }

        return seam;
    }

    private static Dictionary<(int Seam, int Point), string> Letters(IReadOnlyList<(Piece Piece, Flat Flat)> pieces, Dictionary<(int, int), int> seamOf, double spacing)
    {
        Dictionary<(int, int), string> letters = [];
        HashSet<int> done = [];
        int letter = 0;
        foreach ((Piece piece, _) in pieces)
        {
            foreach (RimRun run in Runs(piece, seamOf, []))
            {
                if (run.Seam < 0 || !done.Add(run.Seam))
                {
                    continue;
                }

                double length = 0;
                for (int i = 1; i < run.Points.Count; i++)
                {
                    length += (piece.Sides.Mesh.At(run.Points[i]) - piece.Sides.Mesh.At(run.Points[i - 1])).Length;
                }

                // Notches share the seam evenly, but not in its middle, so that a piece cannot be laid the wrong way round.
                int count = Math.Max(1, (int)(length / spacing));
                double next = 0.45 * length / count, along = 0;
                for (int i = 1; i + 1 < run.Points.Count; i++)
                {
                    along += (piece.Sides.Mesh.At(run.Points[i]) - piece.Sides.Mesh.At(run.Points[i - 1])).Length;
                    if (along >= next)
                    {
                        letters[(run.Seam, piece.OldPoints[run.Points[i]])] = Name(letter++);
                        next += length / count;
                    }
                }
            }
        }

        return letters;
    }

    private static string Name(int i) => i < 26 ? $"{(char)('a' + i)}" : $"{(char)('a' + i / 26 - 1)}{(char)('a' + i % 26)}";

    private static List<RimRun> Runs(Piece piece, Dictionary<(int, int), int> seamOf, Dictionary<(int, int), int> met)
    {
        int[] loop = piece.Sides.Loops()[0];
        int n = loop.Length;
        (int Seam, int Side)[] kind = new (int, int)[n];
        for (int i = 0; i < n; i++)
        {
            (int, int) key = Key(piece, loop[i]);
            int seam = seamOf.GetValueOrDefault(key, -1);
            kind[i] = (seam, seam < 0 ? 0 : met.GetValueOrDefault(key));
        }

        foreach (int h in loop)
        {
            met[Key(piece, h)] = met.GetValueOrDefault(Key(piece, h)) + 1;
        }

        // Within one piece both sides of a seam come: the later one is its second side.
        Dictionary<(int, int), int> here = [];
        for (int i = 0; i < n; i++)
        {
            (int, int) key = Key(piece, loop[i]);
            kind[i].Side += here.GetValueOrDefault(key);
            here[key] = here.GetValueOrDefault(key) + 1;
        }

        int first = Enumerable.Range(0, n).FirstOrDefault(i => kind[i] != kind[(i + n - 1) % n]);
        List<RimRun> runs = [];
        for (int i = 0; i < n;)
        {
            List<int> points = [piece.Sides.From(loop[(first + i) % n])];
            (int, int) of = kind[(first + i) % n];
            while (i < n && kind[(first + i) % n] == of)
            {
                points.Add(piece.Sides.To(loop[(first + i) % n]));
                i++;
            }

            runs.Add(new(of.Item1, of.Item2, points));
        }

        return runs;
    }
}
