using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Repair;

/// <summary>For each point the sum of squared distances from the planes of the triangles that it stands for, each by its area.</summary>
/// <source key="garland-heckbert-1997">Garland and Heckbert, Surface simplification using quadric error metrics, 1997.</source>
/// <remarks>Ten numbers a point: xx, xy, xz, yy, yz, zz, x, y, z, 1; then the area.</remarks>
internal sealed class Quadrics
{
    private const int Size = 11;
    private const double Middle = 1e-3; // weight of the edge's middle beside the planes: where these leave the place open, it is taken

    private readonly double[] _sums;

    public Quadrics(Mesh mesh)
    {
        _sums = new double[Size * mesh.PointCount];
        for (int f = 0; f < mesh.FaceCount; f++)
        {
            Vector3D cross = mesh.Cross(f), n = cross.Unit;
            double area = cross.Length / 2, d = -n.Dot(mesh.Corner(f, 0));
            for (int k = 0; k < 3; k++)
            {
                Span<double> q = _sums.AsSpan(Size * mesh.Corners[3 * f + k], Size);
                q[0] += area * n.X * n.X;
                q[1] += area * n.X * n.Y;
                q[2] += area * n.X * n.Z;
                q[3] += area * n.Y * n.Y;
                q[4] += area * n.Y * n.Z;
                q[5] += area * n.Z * n.Z;
                q[6] += area * n.X * d;
                q[7] += area * n.Y * d;
                q[8] += area * n.Z * d;
                q[9] += area * d * d;
                q[10] += area;
            }
        }
    }

    /// <summary>Gives what one point stands for to another.</summary>
    public void Add(int to, int from)
    {
        for (int i = 0; i < Size; i++)
        {
            _sums[Size * to + i] += _sums[Size * from + i];
        }
    }

    /// <summary>Area that two points stand for, each triangle as often as it has corners in them [m²].</summary>
    public double Area(int u, int v) => _sums[Size * u + 10] + _sums[Size * v + 10];

    /// <summary>Sum of area times squared distance of a place from the planes of two points [m⁴].</summary>
    public double At(int u, int v, Vector3D p)
    {
        ReadOnlySpan<double> a = _sums.AsSpan(Size * u, Size), b = _sums.AsSpan(Size * v, Size);
        double value = (a[0] + b[0]) * p.X * p.X + (a[3] + b[3]) * p.Y * p.Y + (a[5] + b[5]) * p.Z * p.Z
            + 2 * ((a[1] + b[1]) * p.X * p.Y + (a[2] + b[2]) * p.X * p.Z + (a[4] + b[4]) * p.Y * p.Z + (a[6] + b[6]) * p.X + (a[7] + b[7]) * p.Y + (a[8] + b[8]) * p.Z) + a[9] + b[9];
        return Math.Max(0, value);
    }

    /// <summary>The place that lies best to the planes of two points, and near their middle where these leave it open.</summary>
    public Vector3D Best(int u, int v, Vector3D middle)
    {
        ReadOnlySpan<double> a = _sums.AsSpan(Size * u, Size), b = _sums.AsSpan(Size * v, Size);
        double m = Middle * (a[10] + b[10]);
        double xx = a[0] + b[0] + m, xy = a[1] + b[1], xz = a[2] + b[2], yy = a[3] + b[3] + m, yz = a[4] + b[4], zz = a[5] + b[5] + m;
        double rx = m * middle.X - a[6] - b[6], ry = m * middle.Y - a[7] - b[7], rz = m * middle.Z - a[8] - b[8];
        double l21 = xy / xx, l31 = xz / xx, d2 = yy - l21 * xy, c32 = yz - l31 * xy, l32 = c32 / d2, d3 = zz - l31 * xz - l32 * c32;
        double y2 = ry - l21 * rx, y3 = rz - l31 * rx - l32 * y2;
        double z = y3 / d3, y = y2 / d2 - l32 * z, x = rx / xx - l21 * y - l31 * z;
        return double.IsFinite(x + y + z) ? new(x, y, z) : middle;
    }
}
