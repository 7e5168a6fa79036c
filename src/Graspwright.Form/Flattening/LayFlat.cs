using Graspwright.Form.Surface;
using Graspwright.Numerics;

namespace Graspwright.Form.Flattening;

/// <summary>A disc laid flat.</summary>
/// <param name="X">First coordinate of each point [m].</param>
/// <param name="Y">Second coordinate [m].</param>
/// <param name="Most">Greatest stretch of each triangle, length flat ÷ length on the form.</param>
/// <param name="Least">Least stretch of each triangle; below 0 = turned over.</param>
/// <param name="Distortion">Σ area·((most − 1)² + (least − 1)²) [m²].</param>
/// <param name="Flips">Triangles turned over.</param>
/// <param name="Crossings">Places where the rim crosses itself.</param>
/// <param name="Way">Which way was taken, in words.</param>
/// <param name="Rounds">Rounds taken.</param>
public sealed record Flat(double[] X, double[] Y, double[] Most, double[] Least, double Distortion, int Flips, int Crossings, string Way, int Rounds);

/// <summary>Flattens discs with little stretch, the rim free.</summary>
/// <remarks>
/// Directions first (<see cref="Frames"/>), then rounds of best turn of each triangle and best map of all (Liu, Zhang, Xu, Gotsman and Gortler,
/// "A local/global approach to mesh parameterization", 2008). Where that turns a triangle over, the map begins anew inside a circle, where none
/// is turned over (Tutte 1963; Floater 2003), and lowers an energy that no step can carry past a flip (Smith and Schaefer 2015).
/// </remarks>
public static class LayFlat
{
    private const int MostRounds = 20;
    private const double Enough = 5e-6;

    /// <summary>Flattens.</summary>
    /// <param name="sides">A disc: one part, one rim, no handle.</param>
    /// <param name="guaranteed">Take the way without flips at once.</param>
    /// <exception cref="ArgumentException">It is no disc.</exception>
    public static Flat Of(Neighbourhood sides, bool guaranteed = false)
    {
        ArgumentNullException.ThrowIfNull(sides);
        CheckDisc(sides);
        DiscGraph disc = new(sides);
        if (!guaranteed && disc.Factor() is { } factor)
        {
            (double[] x, double[] y, int rounds) = Rounds(disc, factor);
            Flat flat = Measure(disc, x, y, "turned and fitted in rounds", rounds);
            if (flat.Flips == 0)
            {
                return flat;
            }
        }

        (double[] fx, double[] fy, int steps) = NoFlip.Of(disc);
        return Measure(disc, fx, fy, "from a circle, no triangle turned over on the way", steps);
    }

    /// <summary>As-rigid-as-possible rounds from a given map, to compare with.</summary>
    /// <param name="sides">A disc.</param>
    /// <param name="rounds">How many rounds.</param>
    internal static Flat PlainRounds(Neighbourhood sides, int rounds)
    {
        DiscGraph disc = new(sides);
        (double[] x, double[] y) = NoFlip.Circle(disc);
        SparseCholesky factor = disc.Factor()!;
        Stepper stepper = new(disc, factor);
        for (int i = 0; i < rounds; i++)
        {
            stepper.Turn(x, y);
            stepper.Fit(x, y);
        }

        return Measure(disc, x, y, "plain", rounds);
    }

    private static (double[] X, double[] Y, int Rounds) Rounds(DiscGraph disc, SparseCholesky factor)
    {
        int n = disc.Mesh.PointCount;
        double[] x = new double[n], y = new double[n];
        Stepper stepper = new(disc, factor);
        (stepper.Cos, stepper.Sin) = Frames.Turns(disc, factor);
        stepper.Fit(x, y);
        double before = stepper.Turn(x, y);
        double[] oldX = new double[n], oldY = new double[n];
        int round = 1;
        for (int run = 1; round < MostRounds && before > 1e-16; round++, run++)
        {
            Array.Copy(x, oldX, n);
            Array.Copy(y, oldY, n);
            stepper.Fit(x, y);
            double now = stepper.Turn(x, y);
            if (now > before * (1 - Enough))
            {
                break;
            }

            before = now;
            double on = run / (run + 3.0); // Nesterov's momentum: the turns are taken a little farther the way they went
            for (int v = 0; v < n; v++)
            {
                (oldX[v], oldY[v]) = (x[v] + on * (x[v] - oldX[v]), y[v] + on * (y[v] - oldY[v]));
            }

            if (stepper.Turn(oldX, oldY) > before)
            {
                stepper.Turn(x, y);
                run = 0;
            }
        }

        return (x, y, round);
    }

    private static Flat Measure(DiscGraph disc, double[] x, double[] y, string way, int rounds)
    {
        int faces = disc.Mesh.FaceCount, flips = 0;
        double[] most = new double[faces], least = new double[faces];
        double sum = 0;
        for (int f = 0; f < faces; f++)
        {
            (double s, double t) = Stepper.Stretch(disc, f, x, y);
            (most[f], least[f]) = (s + t, s - t);
            sum += disc.Area[f] * 2 * ((s - 1) * (s - 1) + t * t);
            flips += least[f] <= 0 ? 1 : 0;
        }

        int[] rim = [.. disc.Sides.Loops()[0].Select(disc.Sides.From)];
        return new(x, y, most, least, sum, flips, RimCrossings.Count([.. rim.Select(v => (x[v], y[v]))]), way, rounds);
    }

    private static void CheckDisc(Neighbourhood sides)
    {
        int loops = sides.Loops().Count, parts = sides.Parts().Count, euler = SurfaceSums.EulerOf(sides);
        if (loops != 1 || parts != 1 || euler != 1)
        {
            throw new ArgumentException($"No disc: {parts} parts, {loops} rims, Euler number {euler}. Cut it first.", nameof(sides));
        }
    }
}
