using System.Numerics;

namespace Graspwright.Moulding.ComingOff;

/// <summary>Faces that hold a rigid mould back.</summary>
/// <param name="Area">Area of those faces [m²].</param>
/// <param name="Share">That area ÷ the whole area.</param>
/// <param name="WorstAngle">Angle by which the worst face leans back against the pull [rad]; 0 or below = none does.</param>
/// <param name="Worst">Index of that face; −1 = none leans back.</param>
public readonly record struct UndercutSum(double Area, double Share, double WorstAngle, int Worst);

/// <summary>Undercuts of a form that is drawn out of, or has a rigid shell drawn off, in one direction. Takes any surface as plain arrays.</summary>
public static class Undercuts
{
    private const double Level = 1e-6; // normals carry seven digits

    /// <summary>Looks at every face.</summary>
    /// <param name="normals">Outward normals, unit length.</param>
    /// <param name="areas">Areas [m²].</param>
    /// <param name="pull">Direction in which the shell is drawn off, unit length.</param>
    /// <remarks>A face holds the shell back where its outward normal leans against the pull: normal · pull below 0.</remarks>
    public static UndercutSum Of(IReadOnlyList<Vector3> normals, IReadOnlyList<double> areas, Vector3 pull)
    {
        ArgumentNullException.ThrowIfNull(normals);
        ArgumentNullException.ThrowIfNull(areas);
        double area = 0, whole = 0, lowest = -Level;
        int worst = -1;
        for (int i = 0; i < normals.Count; i++)
        {
            double along = Vector3.Dot(normals[i], pull);
            whole += areas[i];
            area += along < -Level ? areas[i] : 0;
            if (along < lowest)
            {
                (lowest, worst) = (along, i);
            }
        }

        return new(area, whole > 0 ? area / whole : 0, worst < 0 ? 0 : Math.Asin(Math.Clamp(-lowest, -1, 1)), worst);
    }

    /// <summary>The direction with the smallest undercut area: the best of evenly spread ones, then of ever nearer ones round it.</summary>
    /// <param name="normals">Outward normals, unit length.</param>
    /// <param name="areas">Areas [m²].</param>
    /// <param name="directions">How many directions to try.</param>
    public static (Vector3 Pull, UndercutSum Sum) Best(IReadOnlyList<Vector3> normals, IReadOnlyList<double> areas, int directions = 200)
    {
        (Vector3, UndercutSum) best = (default, new(double.PositiveInfinity, 1, 0, -1));
        double golden = Math.PI * (3 - Math.Sqrt(5)); // spiral of the golden angle: evenly spread points on a sphere
        for (int i = 0; i < directions; i++)
        {
            double z = 1 - 2 * (i + 0.5) / directions, r = Math.Sqrt(1 - z * z);
            (double sin, double cos) = Math.SinCos(golden * i);
            Vector3 pull = new((float)(r * cos), (float)(r * sin), (float)z);
            UndercutSum sum = Of(normals, areas, pull);
            if (sum.Area < best.Item2.Area)
            {
                best = (pull, sum);
            }
        }

        for (double reach = 0.3; reach > 0.005; reach /= 2)
        {
            Vector3 centre = best.Item1, side = Vector3.Normalize(Vector3.Cross(centre, Math.Abs(centre.X) < 0.9 ? Vector3.UnitX : Vector3.UnitY)), other = Vector3.Cross(centre, side);
            for (int i = 0; i < 8; i++)
            {
                (double sin, double cos) = Math.SinCos(Math.PI / 4 * i);
                Vector3 pull = Vector3.Normalize(centre + (float)(reach * cos) * side + (float)(reach * sin) * other);
                UndercutSum sum = Of(normals, areas, pull);
                if (sum.Area < best.Item2.Area)
                {
                    best = (pull, sum);
                }
            }
        }

        return best;
    }
}
