using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>The place of a triangle nearest to a point.</summary>
/// <source key="ericson-2005">Ericson, Real-Time Collision Detection, 2005.</source>
internal static class TrianglePlace
{
    /// <summary>The place, and what of the triangle it lies on: 0 to 2 corners, 3 to 5 sides, 6 inside.</summary>
    public static (Vector3D Place, int Feature) Of(Vector3D p, Vector3D a, Vector3D b, Vector3D c)
    {
        Vector3D ab = b - a, ac = c - a, ap = p - a;
        double d1 = ab.Dot(ap), d2 = ac.Dot(ap);
        if (d1 <= 0 && d2 <= 0)
        {
            return (a, 0);
        }

        Vector3D bp = p - b;
        double d3 = ab.Dot(bp), d4 = ac.Dot(bp);
        if (d3 >= 0 && d4 <= d3)
        {
            return (b, 1);
        }

        double vc = d1 * d4 - d3 * d2;
        if (vc <= 0 && d1 >= 0 && d3 <= 0)
        {
            return (a + d1 / (d1 - d3) * ab, 3);
        }

        Vector3D cp = p - c;
        double d5 = ab.Dot(cp), d6 = ac.Dot(cp);
        if (d6 >= 0 && d5 <= d6)
        {
            return (c, 2);
        }

        double vb = d5 * d2 - d1 * d6;
        if (vb <= 0 && d2 >= 0 && d6 <= 0)
        {
            return (a + d2 / (d2 - d6) * ac, 5);
        }

        double va = d3 * d6 - d5 * d4;
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
        {
            return (b + (d4 - d3) / (d4 - d3 + (d5 - d6)) * (c - b), 4);
        }

        double scale = 1 / (va + vb + vc);
        return (a + vb * scale * ab + vc * scale * ac, 6);
    }
}
