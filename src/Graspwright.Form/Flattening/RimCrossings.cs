namespace Graspwright.Form.Flattening;

/// <summary>Where an outline crosses itself.</summary>
public static class RimCrossings
{
    /// <summary>How often the sides of a closed outline cross each other.</summary>
    /// <param name="outline">Corners in turn.</param>
    public static int Count(IReadOnlyList<(double X, double Y)> outline) => Find(outline).Count;

    /// <summary>Pairs of sides of a closed outline that cross, by the index of their first corner.</summary>
    /// <param name="outline">Corners in turn.</param>
    public static IReadOnlyList<(int A, int B)> Find(IReadOnlyList<(double X, double Y)> outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        int n = outline.Count;
        double perimeter = 0;
        for (int i = 0; i < n; i++)
        {
            (double ax, double ay) = outline[i];
            (double bx, double by) = outline[(i + 1) % n];
            perimeter += double.Hypot(bx - ax, by - ay);
        }

        // Cells about as wide as a side: each side meets few others.
        double cell = Math.Max(2 * perimeter / Math.Max(1, n), 1e-12);
        Dictionary<(int, int), List<int>> cells = [];
        HashSet<(int, int)> found = [];
        for (int i = 0; i < n; i++)
        {
            (double ax, double ay) = outline[i];
            (double bx, double by) = outline[(i + 1) % n];
            int steps = 1 + (int)(double.Hypot(bx - ax, by - ay) / cell);
            HashSet<(int, int)> here = [];
            for (int s = 0; s <= steps; s++)
            {
                double px = ax + (bx - ax) * s / steps, py = ay + (by - ay) * s / steps;
                for (int k = 0; k < 9; k++)
                {
                    here.Add(((int)Math.Floor(px / cell) + k % 3 - 1, (int)Math.Floor(py / cell) + k / 3 - 1));
                }
            }

            foreach ((int, int) c in here)
            {
                if (!cells.TryGetValue(c, out List<int>? list))
                {
                    cells[c] = list = [];
                }

                foreach (int j in list)
                {
                    if (i - j > 1 && !(j == 0 && i == n - 1) && Cross(outline[i], outline[(i + 1) % n], outline[j], outline[(j + 1) % n]))
                    {
                        found.Add((j, i));
                    }
                }

                list.Add(i);
            }
        }

        return [.. found.Order()];
    }

    private static bool Cross((double X, double Y) a, (double X, double Y) b, (double X, double Y) c, (double X, double Y) d) =>
        Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

    private static double Side((double X, double Y) a, (double X, double Y) b, (double X, double Y) p) => (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);
}
