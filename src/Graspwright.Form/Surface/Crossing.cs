using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>Do two triangles cut each other?</summary>
internal static class Crossing
{
    /// <summary>Whether two triangles without a common corner cut each other: a side of one passes through the other. Triangles that share a corner count where the side opposite to it passes through.</summary>
    public static bool Cut(Mesh mesh, int f, int g)
    {
        int shared = 0;
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                shared += mesh.Corners[3 * f + i] == mesh.Corners[3 * g + j] ? 1 : 0;
            }
        }

        return shared < 2 && (Sides(mesh, f, g) || Sides(mesh, g, f));
    }

    private static bool Sides(Mesh mesh, int f, int g)
    {
        Vector3D a = mesh.Corner(g, 0), b = mesh.Corner(g, 1), c = mesh.Corner(g, 2), n = (b - a).Cross(c - a);
        for (int k = 0; k < 3; k++)
        {
            int from = mesh.Corners[3 * f + k], to = mesh.Corners[3 * f + (k + 1) % 3];
            if (Has(mesh, g, from) || Has(mesh, g, to))
            {
                continue;
            }

            Vector3D p = mesh.At(from), q = mesh.At(to);
            double dp = (p - a).Dot(n), dq = (q - a).Dot(n);
            if (dp * dq >= 0)
            {
                continue;
            }

            Vector3D x = p + dp / (dp - dq) * (q - p);
            if ((b - a).Cross(x - a).Dot(n) > 0 && (c - b).Cross(x - b).Dot(n) > 0 && (a - c).Cross(x - c).Dot(n) > 0)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Has(Mesh mesh, int g, int v) => mesh.Corners[3 * g] == v || mesh.Corners[3 * g + 1] == v || mesh.Corners[3 * g + 2] == v;
}
