using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>Closes holes with short rims; the others are told.</summary>
internal static class Holes
{
    private const int ByArea = 400; // longer rims get a fan from their middle: the search for the least area takes the cube of the corners

    public static (Mesh Mesh, Neighbourhood Sides) Close(Neighbourhood sides, double longest, List<Mend> mends, List<Leftover> left)
    {
        Mesh mesh = sides.Mesh;
        List<double> points = [.. mesh.Points];
        List<int> corners = [.. mesh.Corners];
        int closed = 0, open = 0;
        double worst = 0;
        Vector3D place = default, worstPlace = default;
        foreach (int[] loop in sides.Loops())
        {
            double rim = loop.Sum(h => SurfaceSums.Length(mesh, h));
            int[] points0 = [.. loop.Select(sides.From)];
            bool simple = sides.To(loop[^1]) == points0[0] && points0.Distinct().Count() == points0.Length && !loop.Any(h => sides.Across[h] == Neighbourhood.Crowded);
            if (rim > longest || !simple || loop.Length < 3)
            {
                open++;
                (worst, worstPlace) = rim > worst ? (rim, mesh.At(points0[0])) : (worst, worstPlace);
                continue;
            }

            Fill(mesh, points0, points, corners);
            place = closed++ == 0 ? mesh.At(points0[0]) : place;
        }

        if (closed > 0)
        {
            mends.Add(new("small holes closed", closed, place));
            mesh = new([.. points], [.. corners]);
            sides = Neighbourhood.Of(mesh);
        }

        if (open > 0)
        {
            left.Add(new($"open rims, the longest {1000 * worst:0} mm round", open, worstPlace));
        }

        return (mesh, sides);
    }

    // The rim runs with the surface; the cover runs against it.
    private static void Fill(Mesh mesh, int[] rim, List<double> points, List<int> corners)
    {
        if (rim.Length <= ByArea)
        {
            LeastArea(mesh, rim, corners);
            return;
        }

        Vector3D middle = default;
        foreach (int v in rim)
        {
            middle += 1.0 / rim.Length * mesh.At(v);
        }

        int centre = points.Count / 3;
        points.AddRange([middle.X, middle.Y, middle.Z]);
        for (int i = 0; i < rim.Length; i++)
        {
            corners.AddRange([rim[(i + 1) % rim.Length], rim[i], centre]);
        }
    }

    // Least area over all triangulations of the rim (Barequet and Sharir 1995).
    private static void LeastArea(Mesh mesh, int[] rim, List<int> corners)
    {
        int n = rim.Length;
        double[,] cost = new double[n, n];
        int[,] choice = new int[n, n];
        for (int span = 2; span < n; span++)
        {
            for (int i = 0; i + span < n; i++)
            {
                int j = i + span;
                cost[i, j] = double.PositiveInfinity;
                for (int m = i + 1; m < j; m++)
                {
                    double area = (mesh.At(rim[m]) - mesh.At(rim[i])).Cross(mesh.At(rim[j]) - mesh.At(rim[i])).Length;
                    double sum = cost[i, m] + cost[m, j] + area;
                    if (sum < cost[i, j])
                    {
                        (cost[i, j], choice[i, j]) = (sum, m);
                    }
                }
            }
        }

        Stack<(int, int)> todo = new([(0, n - 1)]);
        while (todo.Count > 0)
        {
            (int i, int j) = todo.Pop();
            if (j - i < 2)
            {
                continue;
            }

            int m = choice[i, j];
            corners.AddRange([rim[i], rim[j], rim[m]]);
            todo.Push((i, m));
            todo.Push((m, j));
        }
    }
}
