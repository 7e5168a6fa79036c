using Graspwright.Strength.Lives;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Lives;

/// <summary>Figures of one part's lives, each with its working.</summary>
internal static class LifeFigures
{
    private const string Source = "meeker-escobar-1998";

    /// <summary>The figures; those that the log does not allow say why.</summary>
    /// <param name="study">The part.</param>
    public static IReadOnlyList<Figure> Of(PartStudy study)
    {
        if (study.Best.Standing != FitStanding.Found)
        {
            string why = Why(study.Best.Standing);
            return
            [
                new("life_median", "life that half outlive", "days") { Why = why },
                new("life_tenth", "life by which a tenth have broken", "days") { Why = why },
                new("life_mean", "mean life", "days") { Why = why },
                new("life_shape", "shape of the law of life", "1") { Why = why },
                AtLeast(study),
            ];
        }

        LifeFit fit = study.Best;
        List<Figure> figures = [Time("life_median", "life that half outlive", fit, 0.5), Time("life_tenth", "life by which a tenth have broken", fit, 0.1), Mean(fit)];
        if (fit.Law.Form == LifeForm.Exponential)
        {
            figures.Add(new("life_shape", "shape of the law of life", "1") { Why = study.Fitted ? "a constant hazard has none" : Why(study.Fit(LifeForm.Weibull).Standing) });
        }
        else
        {
            Bounded shape = ProfileBounds.Shape(fit);
            Terms terms = new();
            figures.Add(Bound(new("life_shape", "shape of the law of life", "1"), shape, terms.Working($"1/{terms.Input("spread", fit.Law.Spread, "1")}", Source)));
        }

        if (study.Broke == 0)
        {
            figures.Add(AtLeast(study));
        }

        return figures;
    }

    /// <summary>Why records allow no fit, in plain words.</summary>
    /// <param name="standing">Standing of the fit.</param>
    public static string Why(FitStanding standing) => standing switch
    {
        FitStanding.NothingBroke => "nothing broke yet, so only a bound from below can be said",
        FitStanding.NothingSeenWhole => "none was ever seen whole after it was fitted, so only a bound from above could be said",
        FitStanding.NoSpread => "one and the same life suits every line of the log, so the spread cannot be told",
        FitStanding.NoOrder => "early breaks and late wholes leave the spread without a bound",
        _ => "the log holds no life longer than nothing",
    };

    private static Figure Time(string key, string words, LifeFit fit, double share)
    {
        Terms terms = new();
        string formula = $"{terms.Input("scale", fit.Law.Scale, "days")}·exp({terms.Input("spread", fit.Law.Spread, "1")}·{terms.Input("standard", LifeLaw.Standard(fit.Law.Form, share), "1")})";
        return Bound(new(key, words, "days"), ProfileBounds.Quantile(fit, share), terms.Working(formula, Source));
    }

    private static Figure Mean(LifeFit fit)
    {
        Terms terms = new();
        string formula = $"{terms.Input("scale", fit.Law.Scale, "days")}·{terms.Input("mean_over_scale", Math.Exp(LifeLaw.LogMeanOver(fit.Law.Form, fit.Law.Spread)), "1")}";
        return Bound(new("life_mean", "mean life", "days"), ProfileBounds.Mean(fit), terms.Working(formula, Source));
    }

    private static Figure AtLeast(PartStudy study)
    {
        Figure figure = new("life_median_at_least", "life that at least half outlive, with 95 % confidence", "days");
        if (study.Broke > 0 || !study.Records.Any(r => r.Low > 0))
        {
            return figure with { Why = study.Broke > 0 ? "some broke: the bounds of life_median say it" : "no part was seen whole after the day it was fitted" };
        }

        // The least over the shapes; none broken leaves −ln 0.05 expected breaks.
        double least = study.MedianAtLeast, shape = PartStudy.Shapes.Low, best = double.PositiveInfinity;
        for (int i = 0; i <= 60; i++)
        {
            double b = PartStudy.Shapes.Low * Math.Pow(PartStudy.Shapes.High / PartStudy.Shapes.Low, i / 60.0);
            double value = LifeLaw.Weibull(LowerBound.ScaleAtLeast(study.Records, b, 0.95), b).Quantile(0.5);
            (shape, best) = value < best ? (b, value) : (shape, best);
        }

        Terms terms = new();
        string sum = terms.Input("sum_of_powers", study.Records.Sum(r => r.Count * Math.Pow(r.Low, shape)), "days^shape");
        string formula = $"({sum}·{terms.Input("ln_2", Math.Log(2), "1")}/{terms.Input("minus_ln_of_5_percent", -Math.Log(0.05), "1")})^(1/{terms.Input("shape", shape, "1")})";
        return figure with { Value = least, Working = terms.Working(formula, Source) };
    }

    private static Figure Bound(Figure figure, Bounded b, Working working) => figure with
    {
        Value = b.Value,
        Low = b.Low,
        High = double.IsFinite(b.High) ? b.High : null,
        Working = working,
    };
}
