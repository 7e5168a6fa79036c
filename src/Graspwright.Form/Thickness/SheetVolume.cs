using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Thickness;

/// <summary>Volume of a sheet that lies on a part of a form.</summary>
/// <param name="Volume">Volume, added up in prisms along the normals [m³].</param>
/// <param name="Steiner">The same by Steiner's formula [m³].</param>
/// <param name="Flat">Area × thickness, as if it lay flat [m³].</param>
/// <param name="Area">Area of the form under it [m²].</param>
/// <param name="MeanCurvature">Mean curvature summed [m].</param>
/// <param name="GaussCurvature">Gauss curvature summed [rad].</param>
public sealed record SheetVolume(double Volume, double Steiner, double Flat, double Area, double MeanCurvature, double GaussCurvature)
{
    /// <summary>Adds up.</summary>
    /// <param name="sides">The part of the form.</param>
    /// <param name="normals">Normals at its points, as the whole form has them.</param>
    /// <param name="thickness">Thickness at each point [m].</param>
    /// <param name="plain">Thickness for Steiner's formula [m].</param>
    /// <source key="steiner-1840">A·t + t²·∫H + t³/3·∫K.</source>
    public static SheetVolume Of(Neighbourhood sides, Vector3D[] normals, Func<int, double> thickness, double plain)
    {
        ArgumentNullException.ThrowIfNull(sides);
        ArgumentNullException.ThrowIfNull(normals);
        ArgumentNullException.ThrowIfNull(thickness);
        SurfaceSums sums = SurfaceSums.Of(sides);
        Mesh mesh = sides.Mesh;
        double volume = 0;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D cross = mesh.Cross(f), unit = cross.Unit;
            Vector3D[] low = new Vector3D[3], high = new Vector3D[3];
            for (int k = 0; k < 3; k++)
            {
                int v = mesh.Corners[3 * f + k];
                low[k] = mesh.At(v);
                // lifted so far that the faces beside it lie the thickness away
                double lean = Math.Max(0.5, normals[v].Dot(unit));
                high[k] = low[k] + thickness(v) / lean * normals[v];
            }

            volume += Prism(low, high);
        }

        double steiner = sums.Area * plain + sums.MeanCurvature * plain * plain + sums.GaussCurvature * plain * plain * plain / 3;
        return new(volume, steiner, sums.Area * plain, sums.Area, sums.MeanCurvature, sums.GaussCurvature);
    }

    // Volume between a triangle and its lifted one, straight lines between: three tetrahedra, the mean of both ways to cut its sides.
    private static double Prism(Vector3D[] a, Vector3D[] b)
    {
        double sum = Tetrahedron(a[0], a[1], a[2], b[0]) + Tetrahedron(a[1], a[2], b[0], b[1], true) + Tetrahedron(a[2], b[0], b[1], b[2], true);
        double other = Tetrahedron(a[0], a[1], a[2], b[2]) + Tetrahedron(a[0], a[1], b[2], b[1], true) + Tetrahedron(a[0], b[0], b[1], b[2], true);
        return (sum + other) / 2;
    }

    private static double Tetrahedron(Vector3D p, Vector3D q, Vector3D r, Vector3D s, bool absolute = false)
    {
        double volume = (q - p).Cross(r - p).Dot(s - p) / 6;
        return absolute ? Math.Abs(volume) : volume;
    }
}
