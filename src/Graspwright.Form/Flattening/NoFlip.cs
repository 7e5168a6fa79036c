using Graspwright.Numerics;

namespace Graspwright.Form.Flattening;

/// <summary>The way without flips: begin inside a circle, then lower Σ area·(|J|² + |J⁻¹|²) by steps that turn no triangle over.</summary>
/// <remarks>
/// Symmetric Dirichlet energy and longest step: Smith and Schaefer, "Bijective parameterization with free boundaries" (2015).
/// Steps: limited-memory quasi-Newton with the Laplacian's factor as first guess (after Liu, Bouaziz and Kavan 2017).
/// </remarks>
internal static class NoFlip
{
    private const int MostSteps = 90, Memory = 5;
    private const double Enough = 1e-5;

    public static (double[] X, double[] Y, int Steps) Of(DiscGraph disc)
    {
        (double[] x, double[] y) = Circle(disc);
        int n = x.Length;
        if (disc.Factor() is not { } factor)
        {
            return (x, y, 0);
        }

        double[] gx = new double[n], gy = new double[n], nextX = new double[n], nextY = new double[n], dx = new double[n], dy = new double[n];
        List<(double[] Sx, double[] Sy, double[] Yx, double[] Yy, double Rho)> past = [];
        double energy = Gradient(disc, x, y, gx, gy);
        int step = 0;
        int slow = 0;
        for (; step < MostSteps && slow < 3 && double.IsFinite(energy); step++)
        {
            Direction(factor, past, gx, gy, dx, dy);
            double slope = Dot(gx, dx) + Dot(gy, dy);
            if (slope >= 0)
            {
                past.Clear();
                Direction(factor, past, gx, gy, dx, dy);
                slope = Dot(gx, dx) + Dot(gy, dy);
            }

            double t = Math.Min(1, 0.8 * Longest(disc, x, y, dx, dy)), now = double.PositiveInfinity;
            for (int tries = 0; tries < 40; tries++)
            {
                for (int v = 0; v < n; v++)
                {
                    (nextX[v], nextY[v]) = (x[v] + t * dx[v], y[v] + t * dy[v]);
                }

                now = Energy(disc, nextX, nextY);
                if (now <= energy + 1e-4 * t * slope)
                {
                    break;
                }

                t /= 2;
            }

            if (!(now < energy))
            {
                break;
            }

            double[] oldX = gx, oldY = gy;
            (gx, gy) = (new double[n], new double[n]);
            double[] sx = new double[n], sy = new double[n], yx = new double[n], yy = new double[n];
            Gradient(disc, nextX, nextY, gx, gy);
            for (int v = 0; v < n; v++)
            {
                (sx[v], sy[v], yx[v], yy[v]) = (nextX[v] - x[v], nextY[v] - y[v], gx[v] - oldX[v], gy[v] - oldY[v]);
            }

            double curve = Dot(sx, yx) + Dot(sy, yy);
            if (curve > 0)
            {
                past.Add((sx, sy, yx, yy, 1 / curve));
                if (past.Count > Memory)
                {
                    past.RemoveAt(0);
                }
            }

            slow = energy - now < Enough * energy ? slow + 1 : 0;
            (x, nextX, y, nextY, energy) = (nextX, x, nextY, y, now);
        }

        return (x, y, step);
    }

    /// <summary>Inside a circle, the rim on it by its lengths, every inner point among its neighbours: no triangle is turned over.</summary>
    public static (double[] X, double[] Y) Circle(DiscGraph disc)
    {
        int n = disc.Mesh.PointCount;
        double[] x = new double[n], y = new double[n];
        bool[] rim = new bool[n];
        int[] loop = disc.Sides.Loops()[0];
        double length = 0, area = 0;
        foreach (int h in loop)
        {
            length += Surface.SurfaceSums.Length(disc.Mesh, h);
        }

        foreach (double a in disc.Area)
        {
            area += a;
        }

        double radius = Math.Sqrt(area / Math.PI), at = 0;
        foreach (int h in loop)
        {
            int v = disc.Sides.From(h);
            (double sin, double cos) = Math.SinCos(2 * Math.PI * at / length);
            (x[v], y[v], rim[v]) = (radius * cos, radius * sin, true);
            at += Surface.SurfaceSums.Length(disc.Mesh, h);
        }

        // Weights above 0 keep every inner point inside its neighbours.
        double[] values = new double[disc.Neighbours.Length], diagonal = new double[n], bx = (double[])x.Clone(), by = (double[])y.Clone();
        for (int v = 0; v < n; v++)
        {
            diagonal[v] = rim[v] ? 1 : 0;
            for (int k = disc.Start[v]; k < disc.Start[v + 1] && !rim[v]; k++)
            {
                int w = disc.Neighbours[k];
                double weight = Math.Max(-disc.Weights[k], 0.05);
                diagonal[v] += weight;
                if (rim[w])
                {
                    bx[v] += weight * x[w];
                    by[v] += weight * y[w];
                }
                else
                {
                    values[k] = -weight;
                }
            }
        }

        SparseCholesky factor = SparseCholesky.Factorise(disc.Order, diagonal, values) ?? throw new InvalidOperationException("Weights above 0 make a definite matrix.");
        factor.Solve(bx, by);
        return (bx, by);
    }

    private static void Direction(SparseCholesky factor, List<(double[] Sx, double[] Sy, double[] Yx, double[] Yy, double Rho)> past, double[] gx, double[] gy, double[] dx, double[] dy)
    {
        int n = gx.Length;
        double mean = 0, meanY = 0;
        for (int v = 0; v < n; v++)
        {
            (dx[v], dy[v]) = (-gx[v], -gy[v]);
        }

        double[] alpha = new double[past.Count];
        for (int i = past.Count - 1; i >= 0; i--)
        {
            alpha[i] = past[i].Rho * (Dot(past[i].Sx, dx) + Dot(past[i].Sy, dy));
            Add(dx, -alpha[i], past[i].Yx);
            Add(dy, -alpha[i], past[i].Yy);
        }

        for (int v = 0; v < n; v++)
        {
            mean += dx[v] / n;
            meanY += dy[v] / n;
        }

        for (int v = 0; v < n; v++)
        {
            (dx[v], dy[v]) = ((dx[v] - mean) / 4, (dy[v] - meanY) / 4); // near no stretch the energy bends four times as much as the Laplacian
        }

        factor.Solve(dx, dy);
        for (int i = 0; i < past.Count; i++)
        {
            double beta = past[i].Rho * (Dot(past[i].Yx, dx) + Dot(past[i].Yy, dy));
            Add(dx, alpha[i] - beta, past[i].Sx);
            Add(dy, alpha[i] - beta, past[i].Sy);
        }
    }

    private static double Energy(DiscGraph disc, double[] x, double[] y)
    {
        double sum = 0;
        for (int f = 0; f < disc.Area.Length; f++)
        {
            (double a, double b, double c, double d) = Stepper.Jacobian(disc, f, x, y);
            double det = a * d - b * c;
            if (!(det > 0))
            {
                return double.PositiveInfinity;
            }

            sum += disc.Area[f] * (a * a + b * b + c * c + d * d) * (1 + 1 / (det * det));
        }

        return sum;
    }

    private static double Gradient(DiscGraph disc, double[] x, double[] y, double[] gx, double[] gy)
    {
        double sum = 0;
        int[] corners = disc.Mesh.Corners;
        for (int f = 0; f < disc.Area.Length; f++)
        {
            (double a, double b, double c, double d) = Stepper.Jacobian(disc, f, x, y);
            double det = a * d - b * c, square = a * a + b * b + c * c + d * d, inverse = 1 + 1 / (det * det), area = disc.Area[f];
            if (!(det > 0))
            {
                sum = double.PositiveInfinity;
                continue;
            }

            sum += area * square * inverse;
            double down = -2 * square / (det * det * det);
            double da = area * (2 * a * inverse + down * d), db = area * (2 * b * inverse - down * c), dc = area * (2 * c * inverse - down * b), dd = area * (2 * d * inverse + down * a);
            double l = disc.Local[3 * f], px = disc.Local[3 * f + 1], py = disc.Local[3 * f + 2];
            // a = (xj − xi)/l, c = (xk − xi − px·a)/py
            double jx = (da - dc * px / py) / l, jy = (db - dd * px / py) / l, kx = dc / py, ky = dd / py;
            int i = corners[3 * f], j = corners[3 * f + 1], k = corners[3 * f + 2];
            gx[j] += jx;
            gy[j] += jy;
            gx[k] += kx;
            gy[k] += ky;
            gx[i] -= jx + kx;
            gy[i] -= jy + ky;
        }

        return sum;
    }

    // Length of the step at which the first triangle loses its area: the least root above 0 of its determinant.
    private static double Longest(DiscGraph disc, double[] x, double[] y, double[] dx, double[] dy)
    {
        double longest = double.PositiveInfinity;
        int[] corners = disc.Mesh.Corners;
        for (int f = 0; f < disc.Area.Length; f++)
        {
            int i = corners[3 * f], j = corners[3 * f + 1], k = corners[3 * f + 2];
            double ax = x[j] - x[i], ay = y[j] - y[i], bx = x[k] - x[i], by = y[k] - y[i];
            double cx = dx[j] - dx[i], cy = dy[j] - dy[i], ex = dx[k] - dx[i], ey = dy[k] - dy[i];
            double c = ax * by - ay * bx, b = cx * by - cy * bx + ax * ey - ay * ex, a = cx * ey - cy * ex;
            double root = Root(a, b, c);
            longest = root < longest ? root : longest;
        }

        return longest;
    }

    private static double Root(double a, double b, double c)
    {
        double disc = b * b - 4 * a * c;
        if (disc < 0)
        {
            return double.PositiveInfinity;
        }

        double q = -(b + Math.CopySign(Math.Sqrt(disc), b)) / 2, r = a != 0 ? q / a : double.PositiveInfinity, s = q != 0 ? c / q : double.PositiveInfinity;
        double low = Math.Min(r, s), high = Math.Max(r, s);
        return low > 0 ? low : high > 0 ? high : double.PositiveInfinity;
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    private static void Add(double[] to, double factor, double[] from)
    {
        for (int i = 0; i < to.Length; i++)
        {
            to[i] += factor * from[i];
        }
    }
}
