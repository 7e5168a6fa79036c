namespace Graspwright.Strength.Lives;

/// <summary>A value with its two-sided bounds; a bound of 0 or infinity says that the records set none.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Low">Lower bound.</param>
/// <param name="High">Upper bound.</param>
public readonly record struct Bounded(double Value, double Low, double High);

/// <summary>Bounds from the profile of the likelihood: values that some law fits nearly as well as the best.</summary>
/// <remarks>
/// A value is inside while twice the loss of log-likelihood, with the other parameter chosen best, stays below the quantile of
/// chi-square of one degree (Meeker and Escobar 1998, section 8.3). The signed root of that loss is nearly straight in the
/// logarithm of the value, so few steps of the secant find its ends.
/// </remarks>
public static class ProfileBounds
{
    private const double Farthest = 600; // in natural logarithms
    private const int MostSteps = 60;

    /// <summary>A line of laws that share the value: where it runs in a and b at a place u, with its slopes.</summary>
    private readonly record struct OnLine(double A, double B, double DA, double DB, double DDA, double DDB);

    /// <summary>Bounds of the time by which a share has broken.</summary>
    /// <param name="fit">A fit that was found.</param>
    /// <param name="share">Share, above 0 and below 1.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    public static Bounded Quantile(LifeFit fit, double share, double confidence = 0.95)
    {
        LifeLikelihood l = Of(fit);
        double z = LifeLaw.Standard(l.Form, share);
        double best = (z - fit.B) / fit.A, slope = Error(fit, -best / fit.A, -1 / fit.A);
        return Times(fit, best, Ends(fit, best, slope, confidence, fit.A, (psi, u) => new(u, z - u * psi, 1, -psi, 0, 0)));
    }

    /// <summary>Bounds of the mean life.</summary>
    /// <param name="fit">A fit that was found.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    public static Bounded Mean(LifeFit fit, double confidence = 0.95)
    {
        LifeLikelihood l = Of(fit);
        (double h, double dh, _) = MeanOver(l.Form, 1 / fit.A);
        double best = h - fit.B / fit.A, slope = Error(fit, -dh / (fit.A * fit.A) + fit.B / (fit.A * fit.A), -1 / fit.A);
        return Times(fit, best, Ends(fit, best, slope, confidence, fit.A, (psi, u) =>
        {
            (double m, double dm, double ddm) = MeanOver(l.Form, 1 / u);
            return new(u, u * (m - psi), 1, m - psi - dm / u, 0, ddm / (u * u * u));
        }));
    }

    /// <summary>Bounds of the shape 1/spread.</summary>
    /// <param name="fit">A fit that was found, not exponential.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    public static Bounded Shape(LifeFit fit, double confidence = 0.95)
    {
        Of(fit);
        double best = Math.Log(fit.A);
        (double low, double high) = Ends(fit, best, Math.Sqrt(fit.LogSpreadVariance), confidence, fit.B, (psi, u) => new(Math.Exp(psi), u, 0, 1, 0, 0));
        return new(fit.A, Math.Exp(low), Math.Exp(high));
    }

    /// <summary>Bounds of the share still whole at a time.</summary>
    /// <param name="fit">A fit that was found.</param>
    /// <param name="time">Time, above 0.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    public static Bounded Whole(LifeFit fit, double time, double confidence = 0.95)
    {
        LifeLikelihood l = Of(fit);
        double y = Math.Log(time) - l.Centre, best = fit.A * y + fit.B;
        (double low, double high) = Ends(fit, best, Error(fit, y, 1), confidence, fit.A, (psi, u) => new(u, psi - u * y, 1, -y, 0, 0));
        return new(fit.Law.Whole(time), Math.Exp(LifeLaw.LogWhole(l.Form, high)), Math.Exp(LifeLaw.LogWhole(l.Form, low)));
    }

    private static (double H, double D, double DD) MeanOver(LifeForm form, double spread) => form == LifeForm.Lognormal
        ? (0.5 * spread * spread, spread, 1)
        : (GammaLaw.LogGamma(1 + spread), GammaLaw.Digamma(1 + spread), GammaLaw.Trigamma(1 + spread));

    private static LifeLikelihood Of(LifeFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return fit.Likelihood ?? throw new ArgumentException("Without a fit there is no profile.", nameof(fit));
    }

    private static Bounded Times(LifeFit fit, double best, (double Low, double High) ends)
    {
        double centre = fit.Likelihood!.Centre;
        return new(Math.Exp(best + centre), Math.Exp(ends.Low + centre), Math.Exp(ends.High + centre));
    }

    /// <summary>Standard error of a value from its slopes along a and b.</summary>
    private static double Error(LifeFit fit, double alongA, double alongB)
    {
        Slopes s = fit.Likelihood!.At(fit.A, fit.B);
        if (fit.Law.Form == LifeForm.Exponential)
        {
            return Math.Abs(alongB) / Math.Sqrt(-s.BB);
        }

        double det = s.AA * s.BB - s.AB * s.AB;
        return Math.Sqrt((-s.BB * alongA * alongA + 2 * s.AB * alongA * alongB - s.AA * alongB * alongB) / det);
    }

    private static (double Low, double High) Ends(LifeFit fit, double best, double error, double confidence, double start, Func<double, double, OnLine> line)
    {
        double wanted = NormalLaw.Quantile(0.5 + 0.5 * confidence);
        return (End(-1), End(1));

        double End(int way)
        {
            double near = 0, nearRoot = 0, far = double.PositiveInfinity, farRoot = double.PositiveInfinity, u = start;
            double away = wanted * error;
            for (int i = 0; i < MostSteps; i++)
            {
                if (away > Farthest)
                {
                    return way * double.PositiveInfinity;
                }

                double root = Math.Sqrt(Math.Max(0, 2 * (fit.LogLikelihood - Best(fit, best + way * away, ref u, line))));
                if (Math.Abs(root - wanted) < 1e-10 * wanted)
                {
                    break;
                }

                if (root < wanted)
                {
                    (near, nearRoot) = (away, root);
                }
                else
                {
                    (far, farRoot) = (away, root);
                }

                if (double.IsPositiveInfinity(far))
                {
                    away *= Math.Clamp(1.02 * wanted / Math.Max(root, 1e-9), 1.05, 4);
                    continue;
                }

                if (far - near < 1e-13 * far)
                {
                    break;
                }

                // Secant on the bracket; near an end of it, halving keeps both ends moving.
                double next = near + (far - near) * (wanted - nearRoot) / (farRoot - nearRoot), edge = 1e-3 * (far - near);
                away = i % 8 == 7 || !double.IsFinite(next) ? 0.5 * (near + far) : Math.Clamp(next, near + Math.Min(edge, 1e-12 * far), far - Math.Min(edge, 1e-12 * far));
            }

            return best + way * away;
        }
    }

    /// <summary>The greatest log-likelihood along a line, from where the last line had it.</summary>
    private static double Best(LifeFit fit, double psi, ref double u, Func<double, double, OnLine> line)
    {
        LifeLikelihood likelihood = fit.Likelihood!;
        if (likelihood.Form == LifeForm.Exponential)
        {
            OnLine only = line(psi, 1);
            return likelihood.At(1, only.B).Value;
        }

        OnLine at = line(psi, u);
        Slopes s = likelihood.At(at.A, at.B);
        for (int i = 0; double.IsNegativeInfinity(s.Value) && i < 200; i++)
        {
            u *= 0.7;
            at = line(psi, u);
            s = likelihood.At(at.A, at.B);
        }

        for (int i = 0; i < MostSteps; i++)
        {
            double slope = s.A * at.DA + s.B * at.DB + 0;
            double curve = s.AA * at.DA * at.DA + 2 * s.AB * at.DA * at.DB + s.BB * at.DB * at.DB + s.A * at.DDA + s.B * at.DDB;
            double step = curve < 0 ? -slope / curve : Math.Sign(slope) * 0.5 * Math.Max(Math.Abs(u), 0.1);
            if (!(slope * step > 1e-13 * (1 + Math.Abs(s.Value))))
            {
                break;
            }

            double size = at.DA > 0 && u + step < 0.1 * u ? -0.9 * u / step : 1;
            OnLine next = line(psi, u + size * step);
            Slopes there = likelihood.At(next.A, next.B);
            while (!(there.Value >= s.Value) && size > 1e-10)
            {
                size *= 0.5;
                next = line(psi, u + size * step);
                there = likelihood.At(next.A, next.B);
            }

            if (!(there.Value >= s.Value))
            {
                break;
            }

            (u, at, s) = (u + size * step, next, there);
        }

        return s.Value;
    }
}
