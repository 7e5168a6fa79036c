using Graspwright.Strength.Life;
using Graspwright.Strength.Lives;

namespace Graspwright.Benchmarks;

/// <summary>Fits of lives with the bounds of their profile.</summary>
internal static class LifeFits
{
    /// <summary>Few records and many.</summary>
    public static Section Measure() => new("Lives from a log",
        "A Weibull law fitted to records of which about a third are still whole and a quarter are spans, with profile bounds of shape, of the lives by which a tenth and half have broken, and of the mean; ages all unlike each other, so that nothing can be gathered. The same for lognormal, which has no target of its own.",
        [
            Row.AtMost("Weibull, 10000 records, best batch", Time(LifeForm.Weibull, 10_000), 0.150, 1e3, "ms"),
            Row.AtMost("Weibull, 40 records, best batch", Time(LifeForm.Weibull, 40), 0.001, 1e3, "ms"),
            new("lognormal, 10000 records, best batch", $"{Row.Number(1e3 * Time(LifeForm.Lognormal, 10_000))} ms"),
            new("lognormal, 40 records, best batch", $"{Row.Number(1e3 * Time(LifeForm.Lognormal, 40))} ms"),
        ]);

    private static double Time(LifeForm form, int count)
    {
        LifeRecord[] records = Records(count);
        double sum = 0;
        double best = Timing.Of(() =>
        {
            LifeFit fit = LifeFitting.Fit(form, records);
            sum += ProfileBounds.Shape(fit).Low + ProfileBounds.Quantile(fit, 0.1).High + ProfileBounds.Quantile(fit, 0.5).Low + ProfileBounds.Mean(fit).High;
        }, seconds: 2).Best;
        return double.IsFinite(sum) ? best : throw new InvalidOperationException("The bounds are not finite.");
    }

    private static LifeRecord[] Records(int count)
    {
        Chance chance = new(11);
        LifeLaw law = LifeLaw.Weibull(30, 1.8);
        LifeRecord[] records = new LifeRecord[count];
        for (int i = 0; i < count; i++)
        {
            double life = law.Quantile(chance.Next()), watched = 70 * chance.Next(), late = 3 * chance.Next();
            records[i] = life > watched ? LifeRecord.WholeAt(watched) : i % 3 == 0 && life > late ? new(life - late, life + 1) : LifeRecord.BrokeAt(life);
        }

        return records;
    }
}
