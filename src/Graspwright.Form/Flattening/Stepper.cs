using Graspwright.Numerics;

namespace Graspwright.Form.Flattening;

/// <summary>The two halves of a round: the best turn of each triangle, and the best map for the turns.</summary>
internal sealed class Stepper(DiscGraph disc, SparseCholesky factor)
{
    private const int Chunk = 8192;

    private readonly double[] _pull = new double[6 * disc.Mesh.FaceCount];
    private readonly double[] _energy = new double[disc.Mesh.FaceCount / Chunk + 1];

    public double[] Cos { get; set; } = new double[disc.Mesh.FaceCount];

    public double[] Sin { get; set; } = new double[disc.Mesh.FaceCount];

    /// <summary>Half sum and half difference of the two stretches of a triangle; the second is the first where it is turned over.</summary>
    public static (double S, double T) Stretch(DiscGraph disc, int f, double[] x, double[] y)
    {
        (double a, double b, double c, double d) = Jacobian(disc, f, x, y);
        return (double.Hypot(a + d, b - c) / 2, double.Hypot(a - d, b + c) / 2);
    }

    /// <summary>The map of a triangle: columns (a, b) and (c, d).</summary>
    public static (double A, double B, double C, double D) Jacobian(DiscGraph disc, int f, double[] x, double[] y)
    {
        int[] corners = disc.Mesh.Corners;
        int i = corners[3 * f], j = corners[3 * f + 1], k = corners[3 * f + 2];
        double l = disc.Local[3 * f], px = disc.Local[3 * f + 1], py = disc.Local[3 * f + 2];
        double a = (x[j] - x[i]) / l, b = (y[j] - y[i]) / l;
        return (a, b, (x[k] - x[i] - px * a) / py, (y[k] - y[i] - px * b) / py);
    }

    /// <summary>Finds the best turns for a map.</summary>
    /// <returns>Σ area·((most − 1)² + (least − 1)²) of the map.</returns>
    public double Turn(double[] x, double[] y)
    {
        int faces = Cos.Length;
        Parallel.For(0, _energy.Length, chunk =>
        {
            double sum = 0;
            int end = Math.Min(faces, (chunk + 1) * Chunk);
            for (int f = chunk * Chunk; f < end; f++)
            {
                (double a, double b, double c, double d) = Jacobian(disc, f, x, y);
                double p = a + d, q = b - c, r = Math.Sqrt(p * p + q * q), u = a - d, v = b + c;
                (Cos[f], Sin[f]) = r > 1e-300 ? (p / r, q / r) : (1, 0);
                double s = r / 2 - 1;
                sum += disc.Area[f] * 2 * (s * s + (u * u + v * v) / 4);
            }

            _energy[chunk] = sum;
        });
        double all = 0;
        foreach (double e in _energy)
        {
            all += e;
        }

        return all;
    }

    /// <summary>Finds the best map for the turns.</summary>
    public void Fit(double[] x, double[] y)
    {
        int faces = Cos.Length, points = x.Length;
        Parallel.For(0, faces / Chunk + 1, chunk =>
        {
            int end = Math.Min(faces, (chunk + 1) * Chunk);
            for (int f = chunk * Chunk; f < end; f++)
            {
                double l = disc.Local[3 * f], px = disc.Local[3 * f + 1], py = disc.Local[3 * f + 2], c = Cos[f], s = Sin[f];
                double w0 = disc.Cotangents[3 * f] / 2, w1 = disc.Cotangents[3 * f + 1] / 2, w2 = disc.Cotangents[3 * f + 2] / 2;
                double e0x = w0 * l * c, e0y = w0 * l * s;
                double dx = px - l, e1x = w1 * (dx * c - py * s), e1y = w1 * (dx * s + py * c);
                double e2x = w2 * (-px * c + py * s), e2y = w2 * (-px * s - py * c);
                int o = 6 * f;
                (_pull[o], _pull[o + 1]) = (e2x - e0x, e2y - e0y);
                (_pull[o + 2], _pull[o + 3]) = (e0x - e1x, e0y - e1y);
                (_pull[o + 4], _pull[o + 5]) = (e1x - e2x, e1y - e2y);
            }
        });
        Parallel.For(0, points / Chunk + 1, chunk =>
        {
            int end = Math.Min(points, (chunk + 1) * Chunk);
            for (int v = chunk * Chunk; v < end; v++)
            {
                double sx = 0, sy = 0;
                for (int i = disc.PointStart[v]; i < disc.PointStart[v + 1]; i++)
                {
                    int h = disc.AtPoint[i];
                    sx += _pull[2 * h];
                    sy += _pull[2 * h + 1];
                }

                (x[v], y[v]) = (sx, sy);
            }
        });
        factor.Solve(x, y);
    }
}
