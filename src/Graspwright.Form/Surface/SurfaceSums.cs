using Graspwright.Numerics;

namespace Graspwright.Form.Surface;

/// <summary>Sums over a surface.</summary>
/// <param name="Area">Area [m²].</param>
/// <param name="Volume">Enclosed volume, negative where it is inside out; without meaning where it is open [m³].</param>
/// <param name="MeanCurvature">Mean curvature summed over the surface: half of Σ edge length × angle between the faces ÷ 1, over 2 [m].</param>
/// <param name="GaussCurvature">Gauss curvature summed over the inner points: Σ (2π − angles) [rad].</param>
/// <param name="RimTurning">Turning summed over the points of the rim: Σ (π − angles) [rad].</param>
/// <param name="Euler">Points − edges + triangles.</param>
public sealed record SurfaceSums(double Area, double Volume, double MeanCurvature, double GaussCurvature, double RimTurning, int Euler)
{
    /// <summary>Adds up a surface.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    /// <remarks>Gauss–Bonnet: GaussCurvature + RimTurning = 2π·Euler on every sound surface.</remarks>
    public static SurfaceSums Of(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        Mesh mesh = sides.Mesh;
        double area = 0, volume = 0, mean = 0;
        int edges = 0;
        double[] angle = new double[mesh.PointCount];
        bool[] rim = new bool[mesh.PointCount], used = new bool[mesh.PointCount];
        Vector3D origin = mesh.PointCount > 0 ? mesh.At(0) : default;
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D cross = mesh.Cross(f);
            area += cross.Length / 2;
            volume += (mesh.Corner(f, 0) - origin).Dot(cross) / 6;
            for (int k = 0; k < 3; k++)
            {
                int h = 3 * f + k, v = mesh.Corners[h], other = sides.Across[h];
                used[v] = true;
                angle[v] += Angle(mesh, h);
                edges += other < h ? 1 : 0;
                if (other < 0)
                {
                    rim[v] = true;
                    rim[sides.To(h)] = true;
                }
                else if (other < h)
                {
                    mean += Length(mesh, h) * Fold(sides, h) / 2;
                }
            }
        }

        double gauss = 0, turning = 0;
        int points = 0;
        for (int v = 0; v < mesh.PointCount; v++)
        {
            points += used[v] ? 1 : 0;
            gauss += used[v] && !rim[v] ? 2 * Math.PI - angle[v] : 0;
            turning += rim[v] ? Math.PI - angle[v] : 0;
        }

        return new(area, volume, mean, gauss, turning, points - edges + mesh.FaceCount);
    }

    /// <summary>Points − edges + triangles.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    public static int EulerOf(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        bool[] used = new bool[sides.Mesh.PointCount];
        int edges = 0, points = 0;
        for (int h = 0; h < sides.Across.Length; h++)
        {
            used[sides.From(h)] = true;
            edges += sides.Across[h] < h ? 1 : 0;
        }

        foreach (bool u in used)
        {
            points += u ? 1 : 0;
        }

        return points - edges + sides.Mesh.FaceCount;
    }

    /// <summary>Gauss and mean curvature at each point, over its share of the area (Meyer, Desbrun, Schröder and Barr 2003); NaN on the rim.</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    /// <returns>Gauss curvature [1/m²], mean curvature, positive on a ball [1/m], area shares [m²].</returns>
    public static (double[] Gauss, double[] Mean, double[] Area) Curvatures(Neighbourhood sides)
    {
        ArgumentNullException.ThrowIfNull(sides);
        Mesh mesh = sides.Mesh;
        int n = mesh.PointCount;
        double[] gauss = new double[n], mean = new double[n], area = new double[n];
        Vector3D[] laplace = new Vector3D[n], normal = new Vector3D[n];
        Array.Fill(gauss, 2 * Math.PI);
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D cross = mesh.Cross(f);
            double whole = cross.Length / 2;
            bool blunt = Math.Max(Angle(mesh, 3 * f), Math.Max(Angle(mesh, 3 * f + 1), Angle(mesh, 3 * f + 2))) > Math.PI / 2;
            for (int k = 0; k < 3; k++)
            {
                int h = 3 * f + k, v = mesh.Corners[h], a = sides.To(h), b = mesh.Corners[Neighbourhood.Previous(h)];
                double here = Angle(mesh, h), cotA = 1 / Math.Tan(Angle(mesh, Neighbourhood.Next(h))), cotB = 1 / Math.Tan(Angle(mesh, Neighbourhood.Previous(h)));
                Vector3D toA = mesh.At(a) - mesh.At(v), toB = mesh.At(b) - mesh.At(v);
                gauss[v] -= here;
                normal[v] += cross;
                laplace[v] += 0.5 * (cotB * toA + cotA * toB);
                area[v] += blunt ? whole / (here > Math.PI / 2 ? 2 : 4) : (cotB * toA.Dot(toA) + cotA * toB.Dot(toB)) / 8;
                if (sides.Across[h] < 0)
                {
                    mean[v] = mean[a] = double.NaN;
                }
            }
        }

        for (int v = 0; v < n; v++)
        {
            bool rim = double.IsNaN(mean[v]);
            (gauss[v], mean[v]) = rim ? (double.NaN, double.NaN) : (gauss[v] / area[v], -Math.CopySign(laplace[v].Length, laplace[v].Dot(normal[v])) / (2 * area[v]));
        }

        return (gauss, mean, area);
    }

    /// <summary>Outward normals at the points, weighted by the angles of the triangles.</summary>
    /// <param name="mesh">The surface.</param>
    public static Vector3D[] Normals(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        Vector3D[] normals = new Vector3D[mesh.PointCount];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D unit = mesh.Cross(f).Unit;
            for (int k = 0; k < 3; k++)
            {
                normals[mesh.Corners[3 * f + k]] += Angle(mesh, 3 * f + k) * unit;
            }
        }

        for (int v = 0; v < normals.Length; v++)
        {
            normals[v] = normals[v].Unit;
        }

        return normals;
    }

    /// <summary>Length of a side [m].</summary>
    /// <param name="mesh">The surface.</param>
    /// <param name="h">The side.</param>
    public static double Length(Mesh mesh, int h)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        return (mesh.At(mesh.Corners[Neighbourhood.Next(h)]) - mesh.At(mesh.Corners[h])).Length;
    }

    /// <summary>Angle of the triangle at the start of a side [rad].</summary>
    /// <param name="mesh">The surface.</param>
    /// <param name="h">The side.</param>
    public static double Angle(Mesh mesh, int h)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        Vector3D v = mesh.At(mesh.Corners[h]), a = mesh.At(mesh.Corners[Neighbourhood.Next(h)]) - v, b = mesh.At(mesh.Corners[Neighbourhood.Previous(h)]) - v;
        return Math.Atan2(a.Cross(b).Length, a.Dot(b));
    }

    /// <summary>Angle by which the surface folds at an inner side, positive where it bulges out [rad].</summary>
    /// <param name="sides">The surface with its neighbours.</param>
    /// <param name="h">The side.</param>
    public static double Fold(Neighbourhood sides, int h)
    {
        ArgumentNullException.ThrowIfNull(sides);
        Vector3D n = sides.Mesh.Cross(h / 3).Unit, m = sides.Mesh.Cross(sides.Across[h] / 3).Unit, along = (sides.Mesh.At(sides.To(h)) - sides.Mesh.At(sides.From(h))).Unit;
        return Math.Atan2(n.Cross(m).Dot(along), n.Dot(m));
    }
}
