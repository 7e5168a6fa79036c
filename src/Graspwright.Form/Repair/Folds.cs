using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>Triangles folded back onto their neighbours, as covers that were laid over bent rims have: inside and outside cannot be told there.</summary>
internal static class Folds
{
    private const double Back = -0.999; // cosine between the normals of two neighbours from which one lies on the other: 177.4°
    private const int Rounds = 6;

    /// <summary>Takes folded triangles of a closed surface away and covers what they leave with the least area.</summary>
    /// <returns>The surface; as it was where that brings no fewer folds.</returns>
    public static (Mesh Mesh, Neighbourhood Sides) Undo(Neighbourhood sides, List<Mend> mends, List<Leftover> left)
    {
        List<int> folds = Of(sides);
        if (folds.Count == 0 || Array.Exists(sides.Across, a => a < 0))
        {
            return (sides.Mesh, sides);
        }

        Neighbourhood best = sides;
        int fewest = folds.Count;
        HashSet<int> gone = Flat(sides, folds);

        for (int round = 0; round < Rounds && fewest > 0; round++)
        {
            Mesh rest = sides.Mesh.Keep(f => !gone.Contains(f)).Part;
            (_, Neighbourhood closed) = Holes.Close(Neighbourhood.Of(rest), double.PositiveInfinity, [], []);
            if (!Array.Exists(closed.Across, a => a < 0) && Of(closed).Count < fewest)
            {
                (best, fewest) = (closed, Of(closed).Count);
            }

            // what lies beside them too, next time
            foreach (int f in gone.ToArray())
            {
                for (int k = 0; k < 3; k++)
                {
                    gone.Add(sides.Across[3 * f + k] / 3);
                }
            }
        }

        Vector3D place = sides.Mesh.Middle(folds[0] / 3);
        if (fewest < folds.Count)
        {
            mends.Add(new("folded places covered anew", folds.Count - fewest, place));
        }

        if (fewest > 0)
        {
            left.Add(new("edges where the surface is folded back onto itself", fewest, place));
        }

        return (best.Mesh, best);
    }

    // The folded triangles and all that lie in one plane with them.
    private static HashSet<int> Flat(Neighbourhood sides, List<int> folds)
    {
        HashSet<int> flat = [];
        foreach (int h in folds)
        {
            Vector3D normal = sides.Mesh.Cross(h / 3).Unit;
            Stack<int> todo = new([h / 3, sides.Across[h] / 3]);
            while (todo.TryPop(out int f))
            {
                if (flat.Add(f))
                {
                    for (int k = 0; k < 3; k++)
                    {
                        int g = sides.Across[3 * f + k] / 3;
                        if (Math.Abs(sides.Mesh.Cross(g).Unit.Dot(normal)) > -Back)
                        {
                            todo.Push(g);
                        }
                    }
                }
            }
        }

        return flat;
    }

    // One side of each edge at which the surface lies back on itself.
    private static List<int> Of(Neighbourhood sides)
    {
        List<int> folds = [];
        for (int h = 0; h < sides.Across.Length; h++)
        {
            int g = sides.Across[h];
            if (g > h)
            {
                Vector3D a = sides.Mesh.Cross(h / 3), b = sides.Mesh.Cross(g / 3);
                if (a.Dot(b) < Back * a.Length * b.Length)
                {
                    folds.Add(h);
                }
            }
        }

        return folds;
    }
}
