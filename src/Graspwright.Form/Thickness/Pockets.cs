using Graspwright.Form.Surface;

namespace Graspwright.Form.Thickness;

/// <summary>Bubbles in valleys too narrow to be drawn whole: parts of a surface that hold next to nothing.</summary>
internal static class Pockets
{
    private const double Least = 1e-12; // a cube of 0.1 mm [m³]

    /// <summary>The surface without them, and what was said of the triangles that stay.</summary>
    /// <param name="mesh">A closed surface.</param>
    /// <param name="of">Something known of each triangle.</param>
    public static (Mesh Mesh, int[] Of) Drop(Mesh mesh, int[] of)
    {
        int[] part = new int[mesh.PointCount];
        for (int v = 0; v < part.Length; v++)
        {
            part[v] = v;
        }

        for (int h = 0; h < mesh.Corners.Length; h += 3)
        {
            int a = Root(mesh.Corners[h]);
            part[Root(mesh.Corners[h + 1])] = a;
            part[Root(mesh.Corners[h + 2])] = a;
        }

        Dictionary<int, double> volume = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            // about a place of the part itself: small numbers stay exact
            int root = Root(mesh.Corners[3 * f]);
            volume[root] = volume.GetValueOrDefault(root) + (mesh.Corner(f, 0) - mesh.At(root)).Dot(mesh.Cross(f)) / 6;
        }

        if (volume.Values.All(v => Math.Abs(v) >= Least))
        {
            return (mesh, of);
        }

        bool Stays(int f) => Math.Abs(volume[Root(mesh.Corners[3 * f])]) >= Least;
        return (mesh.Keep(Stays).Part, [.. of.Where((_, f) => Stays(f))]);

        int Root(int v)
        {
            while (part[v] != v)
            {
                v = part[v] = part[part[v]];
            }

            return v;
        }
    }
}
