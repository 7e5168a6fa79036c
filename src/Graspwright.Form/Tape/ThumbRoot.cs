using Graspwright.Form.Region;
using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Tape;

/// <summary>The line along which the thumb is set on, drawn smooth: the triangles' own sides run to and fro beside it.</summary>
/// <remarks>Radius, place along the thumb's middle line and the way across the root are each a short Fourier series of the angle round that line, fitted to the points of the root.</remarks>
internal sealed class ThumbRoot
{
    private const int Order = 9, Terms = 2 * Order + 1;
    private const double Wide = 0.006, Snapped = 0.15, Stiff = 1e-6; // Stiff holds the high terms down, by the fourth power of their order

    private readonly Vector3D _foot, _along, _outer, _across;
    private readonly double[][] _series; // radius, place along, and the way across in three parts

    /// <summary>Fits the line.</summary>
    /// <param name="points">Points of the root, before its crease is rounded: the rounding goes along the plane that halves the crease, in which the line stays [m].</param>
    /// <param name="limbNormals">Normals of the limb there, as it is without a thumb.</param>
    /// <param name="foot">A point of the thumb's middle line [m].</param>
    /// <param name="along">Direction of that line.</param>
    public ThumbRoot(IReadOnlyList<Vector3D> points, IReadOnlyList<Vector3D> limbNormals, Vector3D foot, Vector3D along)
    {
        (_foot, _along, _outer) = (foot, along, new(along.Z, 0, -along.X));
        _across = along.Cross(_outer);
        double[,] normal = new double[Terms, Terms];
        double whole = 0;
        double[][] right = [.. Enumerable.Range(0, 5).Select(_ => new double[Terms])];
        for (int i = 0; i < points.Count; i++)
        {
            // each point by the length of root that it stands for
            double weight = (points[(i + 1) % points.Count] - points[(i + points.Count - 1) % points.Count]).Length;
            (double angle, double radius, double place) = Of(points[i]);
            Vector3D out0 = (points[i] - foot - place * along).Unit, away = (out0 - out0.Dot(limbNormals[i]) * limbNormals[i]).Unit, across = (along - away).Unit;
            whole += weight;
            double[] basis = Basis(angle), values = [radius, place, across.Dot(along), across.Dot(_outer), across.Dot(_across)];
            for (int a = 0; a < Terms; a++)
            {
                for (int b = 0; b < Terms; b++)
                {
                    normal[a, b] += weight * basis[a] * basis[b];
                }

                for (int k = 0; k < values.Length; k++)
                {
                    right[k][a] += weight * basis[a] * values[k];
                }
            }
        }

        for (int a = 1; a < Terms; a++)
        {
            normal[a, a] += Stiff * whole * Math.Pow((a + 1) / 2, 4);
        }

        _series = [.. right.Select(r => Solved(normal, r))];
    }

    /// <summary>Draws the line into a form whose thumb begins at about the line.</summary>
    /// <param name="mesh">The form.</param>
    /// <param name="isThumb">Whether a triangle belongs to the thumb so far.</param>
    /// <param name="rim">Points at which the thumb begins so far.</param>
    /// <returns>The form, cut along the line, and which triangles lie beyond it.</returns>
    public (Mesh Mesh, bool[] IsThumb) Draw(Mesh mesh, bool[] isThumb, IReadOnlyList<int> rim)
    {
        double[] values = new double[mesh.PointCount];
        bool[] near = new bool[mesh.PointCount];
        for (int v = 0; v < values.Length; v++)
        {
            Vector3D p = mesh.At(v);
            near[v] = rim.Any(r => (mesh.At(r) - p).Length < Wide);
            values[v] = near[v] ? Across(p) : 0;
        }

        bool On(int f) => near[mesh.Corners[3 * f]] && near[mesh.Corners[3 * f + 1]] && near[mesh.Corners[3 * f + 2]];
        Imprinted drawn = Imprint.Zero(Neighbourhood.Of(mesh), values, On, Snapped, slide: true, exact: Across);
        double Value(int v) => v < values.Length ? values[v] : 0; // the line's own points
        return (drawn.Mesh, [.. drawn.OldFace.Select((old, f) => On(old) ? Value(drawn.Mesh.Corners[3 * f]) + Value(drawn.Mesh.Corners[3 * f + 1]) + Value(drawn.Mesh.Corners[3 * f + 2]) > 0 : isThumb[old])]);
    }

    // How far a point lies beyond the line, toward the thumb.
    private double Across(Vector3D p)
    {
        double[] basis = Basis(Of(p).Angle);
        double At(int k) => basis.Zip(_series[k], (b, s) => b * s).Sum();
        (double sin, double cos) = Math.SinCos(Of(p).Angle);
        Vector3D on = _foot + At(1) * _along + At(0) * (cos * _outer + sin * _across), across = At(2) * _along + At(3) * _outer + At(4) * _across;
        return (p - on).Dot(across);
    }

    private (double Angle, double Radius, double Place) Of(Vector3D p)
    {
        Vector3D q = p - _foot;
        double x = q.Dot(_outer), y = q.Dot(_across);
        return (Math.Atan2(y, x), double.Hypot(x, y), q.Dot(_along));
    }

    private static double[] Basis(double angle) => [1, .. Enumerable.Range(1, Order).SelectMany(k => (double[])[Math.Cos(k * angle), Math.Sin(k * angle)])];

    // Cholesky: the sums of a root with points all round are far from singular.
    private static double[] Solved(double[,] normal, double[] right)
    {
        double[,] low = new double[Terms, Terms];
        double[] x = [.. right];
        for (int i = 0; i < Terms; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = normal[i, j];
                for (int k = 0; k < j; k++)
                {
                    sum -= low[i, k] * low[j, k];
                }

                low[i, j] = i == j ? Math.Sqrt(sum) : sum / low[j, j];
            }
        }

        for (int i = 0; i < Terms; i++)
        {
            for (int k = 0; k < i; k++)
            {
                x[i] -= low[i, k] * x[k];
            }

            x[i] /= low[i, i];
        }

        for (int i = Terms - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < Terms; k++)
            {
                x[i] -= low[k, i] * x[k];
            }

            x[i] /= low[i, i];
        }

        return x;
    }
}
