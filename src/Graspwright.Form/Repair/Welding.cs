using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>Joins points of open edges that lie a hair apart.</summary>
internal static class Welding
{
    public static (Mesh Mesh, int Joined, Vector3D Place) Near(Neighbourhood sides, double within)
    {
        Mesh mesh = sides.Mesh;
        int[] index = new int[mesh.PointCount];
        for (int v = 0; v < index.Length; v++)
        {
            index[v] = v;
        }

        bool[] open = new bool[index.Length];
        for (int h = 0; h < sides.Across.Length; h++)
        {
            if (sides.Across[h] == Neighbourhood.Open)
            {
                open[sides.From(h)] = open[sides.To(h)] = true;
            }
        }

        Dictionary<(long, long, long), List<int>> cells = [];
        int joined = 0;
        Vector3D place = default;
        for (int v = 0; v < index.Length; v++)
        {
            if (!open[v] || !(within > 0))
            {
                continue;
            }

            Vector3D p = mesh.At(v);
            (long x, long y, long z) = ((long)Math.Floor(p.X / within), (long)Math.Floor(p.Y / within), (long)Math.Floor(p.Z / within));
            int found = -1;
            for (int k = 0; k < 27 && found < 0; k++)
            {
                if (cells.TryGetValue((x + k % 3 - 1, y + k / 3 % 3 - 1, z + k / 9 - 1), out List<int>? near))
                {
                    found = near.Find(w => (mesh.At(w) - p).Length <= within) is var w && near.Contains(w) && (mesh.At(w) - p).Length <= within ? w : -1;
                }
            }

            if (found >= 0)
            {
                index[v] = found;
                place = joined++ == 0 ? p : place;
                continue;
            }

            if (!cells.TryGetValue((x, y, z), out List<int>? own))
            {
                cells[(x, y, z)] = own = [];
            }

            own.Add(v);
        }

        return joined == 0 ? (mesh, 0, default) : (mesh with { Corners = [.. mesh.Corners.Select(c => index[c])] }, joined, place);
    }
}
