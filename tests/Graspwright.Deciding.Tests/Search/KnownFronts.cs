using Graspwright.Deciding.Search;

namespace Graspwright.Deciding.Tests.Search;

/// <summary>A published test problem with its true front, both scaled so that the front spans 0 to 1 in every aim.</summary>
/// <param name="Space">Its parameters.</param>
/// <param name="Judge">Its aims and limits.</param>
/// <param name="Volume">Hypervolume of the true front up to 1.1 in every aim.</param>
internal sealed record KnownFront(DesignSpace Space, Judge Judge, double Volume)
{
    private const double Reference = 1.1;

    // ZDT1 to 4 and 6: Zitzler, Deb, Thiele 2000. ZDT fronts: 1−√f, 1−f², 1−√f−f·sin 10πf, 1−√f, 1−f² from f = 0.2807753191.
    public static KnownFront Zdt(int number)
    {
        int n = number is 4 or 6 ? 10 : 30;
        FreeParameter[] free = [.. Enumerable.Range(0, n).Select(i => number == 4 && i > 0 ? new FreeParameter(-5, 5) : new FreeParameter(0, 1))];
        double low = number == 3 ? -0.7733690123 : 0, f1Low = number == 6 ? 0.2807753191 : 0, f1High = number == 3 ? 0.8518328654 : 1;
        double f2High = number == 6 ? 1 - f1Low * f1Low : 1;
        double[] Aims(double[] x)
        {
            double f1 = number == 6 ? 1 - Math.Exp(-4 * x[0]) * Math.Pow(Math.Sin(6 * Math.PI * x[0]), 6) : x[0];
            double rest = x.Skip(1).Sum();
            double g = number switch
            {
                4 => 1 + 10 * (n - 1) + x.Skip(1).Sum(v => v * v - 10 * Math.Cos(4 * Math.PI * v)),
                6 => 1 + 9 * Math.Pow(rest / (n - 1), 0.25),
                _ => 1 + 9 * rest / (n - 1),
            };
            return [(f1 - f1Low) / (f1High - f1Low), (g * Front(number, f1, g) - low) / (f2High - low)];
        }

        double TrueAt(double scaled) => (Front(number, f1Low + scaled * (f1High - f1Low), 1) - low) / (f2High - low);
        return new(new(free), x => new(Aims(x), []), Area(TrueAt));
    }

    /// <summary>BNH: Binh and Korn 1997. The optimum has x1 = x2 up to 3, then x2 = 3.</summary>
    public static KnownFront Bnh()
    {
        const double F1 = 136, F2Low = 4, F2 = 46;
        Outcome Judged(double[] x)
        {
            double f1 = 4 * x[0] * x[0] + 4 * x[1] * x[1], f2 = (x[0] - 5) * (x[0] - 5) + (x[1] - 5) * (x[1] - 5);
            double c1 = ((x[0] - 5) * (x[0] - 5) + x[1] * x[1] - 25) / 25, c2 = (7.7 - (x[0] - 8) * (x[0] - 8) - (x[1] + 3) * (x[1] + 3)) / 7.7;
            return new([f1 / F1, (f2 - F2Low) / F2], [c1, c2]);
        }

        double TrueAt(double scaled)
        {
            double f1 = scaled * F1, x1 = f1 <= 72 ? Math.Sqrt(f1 / 8) : Math.Sqrt(f1 / 4 - 9), x2 = Math.Min(x1, 3);
            return ((x1 - 5) * (x1 - 5) + (x2 - 5) * (x2 - 5) - F2Low) / F2;
        }

        return new(new([new(0, 5), new(0, 3)]), Judged, Area(TrueAt));
    }

    /// <summary>DTLZ2 with three aims: Deb, Thiele, Laumanns, Zitzler 2002. The front is an eighth of the unit sphere.</summary>
    public static KnownFront Dtlz2()
    {
        double[] Aims(double[] x)
        {
            double g = 1 + x.Skip(2).Sum(v => (v - 0.5) * (v - 0.5));
            (double s1, double c1) = Math.SinCos(x[0] * Math.PI / 2);
            (double s2, double c2) = Math.SinCos(x[1] * Math.PI / 2);
            return [g * c1 * c2, g * c1 * s2, g * s1];
        }

        return new(new([.. Enumerable.Repeat(new FreeParameter(0, 1), 12)]), x => new(Aims(x), []), Math.Pow(Reference, 3) - Math.PI / 6);
    }

    private static double Front(int number, double f, double g) => number switch
    {
        2 or 6 => 1 - f / g * (f / g),
        3 => 1 - Math.Sqrt(f / g) - f / g * Math.Sin(10 * Math.PI * f),
        _ => 1 - Math.Sqrt(f / g),
    };

    /// <summary>Area that a falling curve over 0 to 1 beats, up to the reference point; what rises again beats nothing more.</summary>
    private static double Area(Func<double, double> curve)
    {
        const int Pieces = 2_000_000;
        double area = 0, height = Math.Min(curve(0), Reference);
        for (int i = 0; i < Pieces; i++)
        {
            double next = Math.Min(height, curve((i + 1.0) / Pieces));
            area += (Reference - 0.5 * (height + next)) / Pieces;
            height = next;
        }

        return area + (Reference - 1) * (Reference - height);
    }
}
