using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tape;

/// <summary>Girths of a form as a tape would read them.</summary>
public static class TapeGirth
{
    /// <summary>Girth at a place: the tape lies straight over what dips in [m]; NaN where there is no form.</summary>
    /// <param name="mesh">The form, z along the limb [m].</param>
    /// <param name="place">Place along the limb [m].</param>
    /// <param name="leftOut">Triangles that the tape does not go round: the thumb.</param>
    public static double Of(Mesh mesh, double place, bool[] leftOut)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(leftOut);
        List<(double X, double Y)> cut = [];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            for (int k = 0; k < 3 && !leftOut[f]; k++)
            {
                Vector3D a = mesh.Corner(f, k), b = mesh.Corner(f, (k + 1) % 3);
                if (a.Z <= place != b.Z <= place)
                {
                    double t = (place - a.Z) / (b.Z - a.Z);
                    cut.Add((a.X + t * (b.X - a.X), a.Y + t * (b.Y - a.Y)));
                }
            }
        }

        return cut.Count < 3 ? double.NaN : Hull(cut);
    }

    // Length of the convex hull (Andrew 1979).
    private static double Hull(List<(double X, double Y)> points)
    {
        points.Sort();
        List<(double X, double Y)> hull = [];
        for (int pass = 0; pass < 2; pass++)
        {
            int from = hull.Count;
            foreach ((double X, double Y) p in points)
            {
                while (hull.Count >= from + 2 && Turn(hull[^2], hull[^1], p) <= 0)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
            points.Reverse();
        }

        double sum = 0;
        for (int i = 0; i < hull.Count; i++)
        {
            (double x, double y) = hull[(i + 1) % hull.Count];
            sum += double.Hypot(x - hull[i].X, y - hull[i].Y);
        }

        return sum;
    }

    private static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) => (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}
