using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Numerics;
using Nearest = Graspwright.Form.Surface.Nearest;

namespace Graspwright.Workshop.Form;

/// <summary>Places on a sheet by place along the limb and angle, and shares of the corners of their triangle.</summary>
internal static class SheetPlaces
{
    private const int MostSteps = 60;
    private const double Close = 2e-4, LeastStep = 1e-5, Damping = 0.3;

    /// <summary>Straight out from the middle of a section until it meets the surface; where it meets none, the last place tried [m].</summary>
    public static Vector3D Outward(LimbFrame frame, Nearest tree, double place, double angle)
    {
        (double mx, double my) = frame.Middle(place);
        (double sin, double cos) = Math.SinCos(angle);
        Vector3D p = new(mx, my, place), dir = new(sin, cos, 0);
        for (int i = 0; i < MostSteps; i++)
        {
            double d = Math.Abs(tree.To(p).Distance);
            p += Math.Max(Damping * d, LeastStep) * dir;
            if (d < Close)
            {
                break;
            }
        }

        return p;
    }

    /// <summary>Shares of the three corners of the triangle that a foot lies on; they add up to 1.</summary>
    public static (double A, double B, double C) Shares(Mesh mesh, Foot foot)
    {
        Vector3D a = mesh.Corner(foot.Face, 0), ab = mesh.Corner(foot.Face, 1) - a, ac = mesh.Corner(foot.Face, 2) - a, n = ab.Cross(ac), ap = foot.Place - a;
        double u = ap.Cross(ac).Dot(n) / n.Dot(n), w = ab.Cross(ap).Dot(n) / n.Dot(n);
        return (1 - u - w, u, w);
    }
}
