using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Routes;

/// <summary>Makes a place on a triangle a point of its surface.</summary>
internal static class StationPoint
{
    private const double Least = 1e-3; // share of the triangle by which a new point keeps from its sides

    /// <summary>Puts a point on a triangle, which falls into three; at a corner nothing is put.</summary>
    /// <param name="mesh">The surface.</param>
    /// <param name="face">The triangle.</param>
    /// <param name="place">The place on it [m].</param>
    /// <returns>The surface, and the point at most a thousandth of the triangle's size from the place.</returns>
    public static (Mesh Mesh, int Point) Put(Mesh mesh, int face, Vector3D place)
    {
        Vector3D a = mesh.Corner(face, 0), b = mesh.Corner(face, 1), c = mesh.Corner(face, 2), n = mesh.Cross(face);
        double whole = n.Dot(n), u = (c - b).Cross(place - b).Dot(n) / whole, v = (a - c).Cross(place - c).Dot(n) / whole, w = 1 - u - v;
        double most = Math.Max(u, Math.Max(v, w));
        if (most > 1 - 2 * Least)
        {
            return (mesh, mesh.Corners[3 * face + (most == u ? 0 : most == v ? 1 : 2)]);
        }

        (u, v, w) = (Math.Max(u, Least), Math.Max(v, Least), Math.Max(w, Least));
        Vector3D p = 1 / (u + v + w) * (u * a + v * b + w * c);
        int point = mesh.PointCount, i = mesh.Corners[3 * face], j = mesh.Corners[3 * face + 1], k = mesh.Corners[3 * face + 2];
        List<int> corners = [.. mesh.Corners];
        corners[3 * face + 2] = point;
        corners.AddRange([j, k, point, k, i, point]);
        return (new([.. mesh.Points, p.X, p.Y, p.Z], [.. corners]), point);
    }
}
