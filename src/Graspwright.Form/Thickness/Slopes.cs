using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Planes at places of a surface.</summary>
internal static class Slopes
{
    /// <summary>Where planes meet best: the place of least squares, along a valley the one nearest to a given one.</summary>
    /// <param name="planes">A place of each and the way out of it, of length 1 [m].</param>
    /// <param name="near">The given place [m].</param>
    /// <param name="level">How much staying near it counts beside one plane.</param>
    public static Vector3D Meet(ReadOnlySpan<(Vector3D Place, Vector3D Out)> planes, Vector3D near, double level)
    {
        Vector3D a = new(level, 0, 0), b = new(0, level, 0), c = new(0, 0, level), r = default;
        foreach ((Vector3D place, Vector3D n) in planes)
        {
            a += n.X * n;
            b += n.Y * n;
            c += n.Z * n;
            r += n.Dot(place - near) * n;
        }

        double det = a.Dot(b.Cross(c));
        return near + new Vector3D(r.Dot(b.Cross(c)) / det, a.Dot(r.Cross(c)) / det, a.Dot(b.Cross(r)) / det);
    }
}
