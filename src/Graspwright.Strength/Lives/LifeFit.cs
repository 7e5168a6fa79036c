namespace Graspwright.Strength.Lives;

/// <summary>Whether records allow a fit, and if not, why.</summary>
public enum FitStanding
{
    /// <summary>The best law was found; there is only one.</summary>
    Found,

    /// <summary>There is no record that says anything.</summary>
    NoRecords,

    /// <summary>Nothing broke: any long life fits.</summary>
    NothingBroke,

    /// <summary>Nothing was ever seen whole: any short life fits.</summary>
    NothingSeenWhole,

    /// <summary>One time suits every record, so nothing bounds how small the spread is.</summary>
    NoSpread,

    /// <summary>Breaks and wholes stand the wrong way round, so nothing bounds how great the spread is.</summary>
    NoOrder,
}

/// <summary>A law fitted to records by greatest likelihood.</summary>
/// <param name="Standing">Whether there is one.</param>
/// <param name="Law">The law; not to be read unless <see cref="Standing"/> is <see cref="FitStanding.Found"/>.</param>
/// <param name="LogLikelihood">Logarithm of the likelihood: densities for breaks seen, shares for the rest.</param>
public sealed record LifeFit(FitStanding Standing, LifeLaw Law, double LogLikelihood)
{
    /// <summary>Number of parameters.</summary>
    public int Parameters => Law.Form == LifeForm.Exponential ? 1 : 2;

    /// <summary>Akaike's criterion, less is better.</summary>
    public double Aic => 2 * Parameters - 2 * LogLikelihood;

    /// <summary>Variance of the location.</summary>
    public double LocationVariance { get; init; }

    /// <summary>Variance of the logarithm of the spread.</summary>
    public double LogSpreadVariance { get; init; }

    /// <summary>Covariance of location and logarithm of the spread.</summary>
    public double Covariance { get; init; }

    /// <summary>The likelihood it was fitted to.</summary>
    internal LifeLikelihood? Likelihood { get; init; }

    /// <summary>Where the best lies: 1/spread.</summary>
    internal double A { get; init; }

    /// <summary>Where the best lies: −location/spread about the likelihood's middle.</summary>
    internal double B { get; init; }
}

/// <summary>Fits laws of life by greatest likelihood.</summary>
/// <remarks>
/// Newton's method with halved steps on a concave function, so that it finds the one best point from any start, where there is one.
/// Meeker and Escobar 1998, chapters 7 and 8.
/// </remarks>
public static class LifeFitting
{
    private const int MostSteps = 200;
    private const double Flat = 1e-4, Steep = 1e6; // shapes beyond which the best point runs away

    /// <summary>Fits one law.</summary>
    /// <param name="form">Form.</param>
    /// <param name="records">Records.</param>
    /// <exception cref="ArgumentException">A record is not sound.</exception>
    public static LifeFit Fit(LifeForm form, IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return Fit(new LifeLikelihood(form, records));
    }

    internal static LifeFit Fit(LifeLikelihood likelihood)
    {
        bool one = likelihood.Form == LifeForm.Exponential;
        FitStanding standing = Standing(likelihood.Kept, one);
        if (standing != FitStanding.Found)
        {
            return new(standing, default, double.NaN);
        }

        double a = one ? 1 : 1.3 / likelihood.RoughSpread(), b = 0;
        Slopes s = likelihood.At(a, b);
        for (int i = 0; i < MostSteps; i++)
        {
            (double da, double db) = one ? (0, -s.B / s.BB) : Step(s);
            double gain = s.A * da + s.B * db;
            if (!(gain > 1e-26 * (1 + Math.Abs(s.Value))))
            {
                break;
            }

            double size = a + da > 0.1 * a ? 1 : -0.9 * a / da;
            Slopes next = likelihood.At(a + size * da, b + size * db);
            while (!(next.Value >= s.Value + 1e-4 * size * gain) && size > 1e-12 && gain > 1e-13 * (1 + Math.Abs(s.Value)))
            {
                size *= 0.5;
                next = likelihood.At(a + size * da, b + size * db);
            }

            (a, b, s) = (a + size * da, b + size * db, next);
            if (a is < Flat or > Steep)
            {
                return new(a < Flat ? FitStanding.NoOrder : FitStanding.NoSpread, default, double.NaN);
            }
        }

        return Result(likelihood, one, a, b, s);
    }

    private static LifeFit Result(LifeLikelihood likelihood, bool one, double a, double b, Slopes s)
    {
        LifeLaw law = new(likelihood.Form, likelihood.Centre - b / a, 1 / a);
        LifeFit fit = new(FitStanding.Found, law, s.Value) { Likelihood = likelihood, A = a, B = b };
        if (one)
        {
            return fit with { LocationVariance = -1 / s.BB };
        }

        // Variances in a and b carried over to location −b/a and ln spread = −ln a.
        double det = s.AA * s.BB - s.AB * s.AB, vaa = -s.BB / det, vbb = -s.AA / det, vab = s.AB / det;
        double la = b / (a * a), lb = -1 / a, sa = -1 / a;
        return fit with
        {
            LocationVariance = la * la * vaa + 2 * la * lb * vab + lb * lb * vbb,
            LogSpreadVariance = sa * sa * vaa,
            Covariance = sa * (la * vaa + lb * vab),
        };
    }

    /// <summary>Newton's step uphill; where rounding spoils the curvature, more of its diagonal is taken.</summary>
    private static (double A, double B) Step(in Slopes s)
    {
        double aa = -s.AA, ab = -s.AB, bb = -s.BB;
        for (double more = 0; ; more = more > 0 ? 10 * more : 1e-12)
        {
            double p = aa * (1 + more) + more, q = bb * (1 + more) + more, det = p * q - ab * ab;
            if (p > 0 && det > 1e-14 * p * q)
            {
                return ((q * s.A - ab * s.B) / det, (p * s.B - ab * s.A) / det);
            }
        }
    }

    /// <summary>Finds the records for which no best law exists.</summary>
    private static FitStanding Standing(IReadOnlyList<LifeRecord> records, bool one)
    {
        if (records.Count == 0)
        {
            return FitStanding.NoRecords;
        }

        bool broke = false, whole = false;
        double least = 0, most = double.PositiveInfinity;
        foreach (LifeRecord r in records)
        {
            broke |= r.Broke;
            whole |= r.Low > 0;
            least = Math.Max(least, r.Low);
            most = Math.Min(most, r.High);
        }

        return !broke ? FitStanding.NothingBroke
            : !whole ? FitStanding.NothingSeenWhole
            : !one && least <= most ? FitStanding.NoSpread
            : FitStanding.Found;
    }
}
