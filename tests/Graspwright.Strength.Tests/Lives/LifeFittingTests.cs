using CsCheck;
using Graspwright.Strength.Life;
using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Tests.Lives;

public sealed class LifeFittingTests
{
    private const double Six = 1e-6;

    [Fact]
    public void Fits_the_handbook_of_engineering_statistics()
    {
        // NIST 8.4.1.3 prints 606.5280, 1.7208, −75.135, AIC 154.27 and 154.39, mean 540.737, sd 323.806; R's survreg gives the further digits.
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, PublishedLives.Handbook);
        Near(606.527558, fit.Law.Scale, Six);
        Near(1.720797261, fit.Law.Shape, Six);
        Near(-75.13461816, fit.LogLikelihood, 1e-9);
        Near(154.2692363, fit.Aic, 1e-9);
        Near(540.7373646, fit.Law.Mean, Six);
        Near(323.8055590, fit.Law.Deviation, Six);
        Near(0.205943909, Math.Sqrt(fit.LocationVariance), Six);
        Near(0.2918127631, Math.Sqrt(fit.LogSpreadVariance), Six);
        Near(0.0271278424, fit.Covariance, Six);
        Near(164.0224387, fit.Law.Quantile(0.1), Six);
        Near(154.3925416, LifeFitting.Fit(LifeForm.Lognormal, PublishedLives.Handbook).Aic, 1e-9);
        Near(777.1, LifeFitting.Fit(LifeForm.Exponential, PublishedLives.Handbook).Law.Mean, 1e-12);
    }

    [Fact]
    public void Bounds_the_handbook_by_its_profile()
    {
        // Ends recomputed from the likelihood alone, to the digits given.
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, PublishedLives.Handbook);
        Bounded tenth = ProfileBounds.Quantile(fit, 0.1), shape = ProfileBounds.Shape(fit);
        Near(59.85455, tenth.Low, 1e-6);
        Near(271.94952, tenth.High, 1e-6);
        Near(0.90564536, shape.Low, 1e-7);
        Near(2.88573787, shape.High, 1e-7);
    }

    [Fact]
    public void Fits_the_ball_bearings_as_survreg_does()
    {
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, PublishedLives.BallBearings);
        Near(81.87833405, fit.Law.Scale, Six);
        Near(2.102058875, fit.Law.Shape, Six);
        Near(-113.6912909, fit.LogLikelihood, 1e-9);
    }

    [Fact]
    public void Fits_the_bearings_beside_the_repository()
    {
        LifeRecord[] records = [.. PublishedLives.Beside("lzbearing.csv").Select(c => LifeRecord.BrokeAt(PublishedLives.Number(c[0])))];
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, records), lognormal = LifeFitting.Fit(LifeForm.Lognormal, records);
        Near(81.87455872, fit.Law.Scale, Six);
        Near(2.101846864, fit.Law.Shape, Six);
        Near(-113.6919591, fit.LogLikelihood, 1e-9);
        Near(4.150382688, lognormal.Law.Location, Six);
        Near(0.5216865113, lognormal.Law.Spread, Six);
        Bounded tenth = ProfileBounds.Quantile(fit, 0.1), shape = ProfileBounds.Shape(fit);
        Near(16.28493, tenth.Low, 1e-6);
        Near(40.75998, tenth.High, 1e-6);
        Near(1.50399, shape.Low, 1e-5);
        Near(2.79127, shape.High, 1e-5);
    }

    [Fact]
    public void Fits_the_shock_absorbers_and_their_two_causes()
    {
        (LifeRecord[] records, int[] cause) = ShockAbsorbers();
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, records), lognormal = LifeFitting.Fit(LifeForm.Lognormal, records);
        Near(27718.71813, fit.Law.Scale, Six);
        Near(3.160470315, fit.Law.Shape, Six);
        Near(-123.9953612, fit.LogLikelihood, 1e-9);
        Near(10.144771, lognormal.Law.Location, Six);
        Near(0.530068, lognormal.Law.Spread, 2e-6); // six printed digits
        Bounded tenth = ProfileBounds.Quantile(fit, 0.1);
        Near(9371.202394, tenth.Low, 1e-6);
        Near(17291.23794, tenth.High, 1e-6);
        LifeFit one = LifeFitting.Fit(LifeForm.Weibull, Causes.Alone(records, cause, 1)), two = LifeFitting.Fit(LifeForm.Weibull, Causes.Alone(records, cause, 2));
        Near(31205.79793, one.Law.Scale, Six);
        Near(3.383946233, one.Law.Shape, Six);
        Near(40865.86122, two.Law.Scale, Six);
        Near(2.822211029, two.Law.Shape, Six);
    }

    [Fact]
    public void Fits_the_bearing_cages_with_counts()
    {
        LifeRecord[] records = [.. PublishedLives.Beside("bearingcage.csv").Select(c => c[1] == "Failed"
            ? LifeRecord.BrokeAt(PublishedLives.Number(c[0]), PublishedLives.Number(c[2]))
            : LifeRecord.WholeAt(PublishedLives.Number(c[0]), PublishedLives.Number(c[2])))];
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, records);
        Near(11792.17817, fit.Law.Scale, Six);
        Near(2.03531861, fit.Law.Shape, Six);
        Near(-76.43689636, fit.LogLikelihood, 1e-9);
        Near(28982.15674, LowerBound.BestScale(records, 1.5), 1e-9);
        Near(12320.33662, LowerBound.BestScale(records, 2), 1e-9);
        Near(5408.950505, LowerBound.BestScale(records, 3), 1e-9);
    }

    [Fact]
    public void Finds_the_greatest_likelihood_of_random_records_of_every_kind() =>
        Gen.Select(SomeRecords, Gen.Enum<LifeForm>()).Sample((records, form) =>
        {
            LifeFit fit = LifeFitting.Fit(form, records);
            if (fit.Standing != FitStanding.Found)
            {
                return;
            }

            LifeLikelihood likelihood = new(form, records);
            Slopes best = likelihood.At(fit.A, fit.B);
            foreach ((double da, double db) in ((double, double)[])[(1e-4, 0), (-1e-4, 0), (0, 1e-4), (0, -1e-4), (1e-4, 1e-4), (-1e-4, -1e-4)])
            {
                double a = form == LifeForm.Exponential ? 1 : fit.A * (1 + da);
                Assert.True(likelihood.At(a, fit.B + db).Value <= best.Value + 1e-11 * (1 + Math.Abs(best.Value)));
            }
        }, iter: 300);

    [Fact]
    public void Has_the_slopes_of_its_likelihood() =>
        Gen.Select(SomeRecords, Gen.Enum<LifeForm>(), Gen.Double[0.3, 4], Gen.Double[-1, 1]).Sample((records, form, a, b) =>
        {
            const double H = 1e-6;
            LifeLikelihood l = new(form, records);
            Slopes s = l.At(a, b), right = l.At(a + H, b), left = l.At(a - H, b), up = l.At(a, b + H), down = l.At(a, b - H);
            double size = 1 + Math.Abs(s.A) + Math.Abs(s.B) + Math.Abs(s.AA) + Math.Abs(s.BB) + Math.Abs(s.Value);
            Assert.Equal((right.Value - left.Value) / (2 * H), s.A, 1e-7 * size);
            Assert.Equal((up.Value - down.Value) / (2 * H), s.B, 1e-7 * size);
            Assert.Equal((right.A - left.A) / (2 * H), s.AA, 1e-6 * size);
            Assert.Equal((up.A - down.A) / (2 * H), s.AB, 1e-6 * size);
            Assert.Equal((up.B - down.B) / (2 * H), s.BB, 1e-6 * size);
        }, iter: 300);

    [Fact]
    public void Puts_bounds_where_the_likelihood_ratio_says()
    {
        // Held to a plain search of the profile on a fine grid, for every bounded quantity and both laws of two parameters.
        foreach (LifeForm form in (LifeForm[])[LifeForm.Weibull, LifeForm.Lognormal])
        {
            LifeFit fit = LifeFitting.Fit(form, PublishedLives.Maintained);
            Bounded mean = ProfileBounds.Mean(fit), whole = ProfileBounds.Whole(fit, 20), median = ProfileBounds.Quantile(fit, 0.5);
            foreach ((double value, Func<LifeLaw, double> of) in ((double, Func<LifeLaw, double>)[])[(mean.Low, l => l.Mean), (whole.Low, l => l.Whole(20)), (whole.High, l => l.Whole(20)), (median.High, l => l.Quantile(0.5))])
            {
                Assert.Equal(3.841458820694124, 2 * (fit.LogLikelihood - Searched(form, value, of)), 2e-5);
            }
        }
    }

    [Fact]
    public void Bounds_an_exponential_life_by_its_one_parameter()
    {
        LifeFit fit = LifeFitting.Fit(LifeForm.Exponential, PublishedLives.Handbook);
        Bounded mean = ProfileBounds.Mean(fit);
        foreach (double end in (double[])[mean.Low, mean.High])
        {
            double r = fit.Law.Mean / end;
            Assert.Equal(3.841458820694124, 2 * 10 * (r - 1 - Math.Log(r)), 1e-8); // 2·[ℓ(θ̂) − ℓ(θ)] for ten breaks
        }
    }

    [Fact]
    public void Says_why_there_is_no_fit()
    {
        Assert.Equal(FitStanding.NoRecords, Standing([]));
        Assert.Equal(FitStanding.NoRecords, Standing([LifeRecord.WholeAt(0)]));
        Assert.Equal(FitStanding.NothingBroke, Standing([LifeRecord.WholeAt(10), LifeRecord.WholeAt(20)]));
        Assert.Equal(FitStanding.NothingSeenWhole, Standing([new(0, 4), new(0, 9)]));
        Assert.Equal(FitStanding.NoSpread, Standing([LifeRecord.BrokeAt(10), LifeRecord.BrokeAt(10), LifeRecord.WholeAt(9)]));
        Assert.Equal(FitStanding.NoSpread, Standing([LifeRecord.BrokeAt(10)]));
        Assert.Equal(FitStanding.NoSpread, Standing([new(5, 12), new(8, 20), LifeRecord.WholeAt(7)]));
        Assert.Equal(FitStanding.NoOrder, Standing([new(0, 5, 10), LifeRecord.WholeAt(5, 10), new(0, 10, 1), LifeRecord.WholeAt(10, 20)]));
        Assert.Equal(FitStanding.Found, Standing([LifeRecord.BrokeAt(10), LifeRecord.WholeAt(20)]));
        Assert.Throws<ArgumentException>(() => Standing([new(-1, 5)]));
    }

    [Fact]
    public void Bounds_widely_what_one_break_says()
    {
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, [LifeRecord.BrokeAt(10), LifeRecord.WholeAt(12, 3)]);
        Bounded median = ProfileBounds.Quantile(fit, 0.5);
        Assert.InRange(median.Low, 1, 12);
        Assert.True(median.High > 2 * median.Value);
        Bounded late = ProfileBounds.Whole(fit, 30);
        Assert.InRange(late.Low, 0, 0.5);
        Assert.InRange(late.High, 0.5, 1);
    }

    [Fact]
    public void Recovers_the_law_that_many_lives_were_drawn_from()
    {
        LifeLaw law = LifeLaw.Weibull(30, 1.8);
        Chance chance = new(7);
        List<LifeRecord> records = [];
        for (int i = 0; i < 20_000; i++)
        {
            double life = law.Quantile(chance.Next()), watched = 60 * chance.Next(), check = 5;
            records.Add(life > watched ? LifeRecord.WholeAt(watched) : i % 2 == 0 ? LifeRecord.BrokeAt(life) : new(check * Math.Floor(life / check), check * Math.Ceiling(life / check)));
        }

        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, records);
        Assert.InRange(fit.Law.Scale, 30 - 4 * 30 * Math.Sqrt(fit.LocationVariance), 30 + 4 * 30 * Math.Sqrt(fit.LocationVariance));
        Assert.InRange(fit.Law.Shape, 1.8 * (1 - 4 * Math.Sqrt(fit.LogSpreadVariance)), 1.8 * (1 + 4 * Math.Sqrt(fit.LogSpreadVariance)));
    }

    internal static (LifeRecord[] Records, int[] Cause) ShockAbsorbers()
    {
        string[][] lines = PublishedLives.Beside("shockabsorber.csv");
        return ([.. lines.Select(c => c[2] == "Failure" ? LifeRecord.BrokeAt(PublishedLives.Number(c[0])) : LifeRecord.WholeAt(PublishedLives.Number(c[0])))],
            [.. lines.Select(c => c[1] switch { "Mode1" => 1, "Mode2" => 2, _ => 0 })]);
    }

    private static double Searched(LifeForm form, double value, Func<LifeLaw, double> of)
    {
        LifeLikelihood l = new(form, PublishedLives.Maintained);
        double best = double.NegativeInfinity;
        for (int i = 0; i <= 40_000; i++)
        {
            double spread = 0.2 * Math.Pow(25, i / 40_000.0), low = -10, high = 15;
            for (int k = 0; k < 60; k++)
            {
                double middle = 0.5 * (low + high);
                (low, high) = of(new(form, middle, spread)) < value ? (middle, high) : (low, middle);
            }

            best = Math.Max(best, l.At(1 / spread, -(low - l.Centre) / spread).Value);
        }

        return best;
    }

    private static FitStanding Standing(LifeRecord[] records) => LifeFitting.Fit(LifeForm.Weibull, records).Standing;

    private static Gen<LifeRecord[]> SomeRecords =>
        Gen.Select(Gen.Double[0.2, 9], Gen.Double[0.1, 9], Gen.Int[0, 3]).Select((t, more, kind) => kind switch
        {
            0 => LifeRecord.BrokeAt(t),
            1 => LifeRecord.WholeAt(t),
            2 => new LifeRecord(0, t),
            _ => new LifeRecord(t, t + more),
        }).Array[3, 15];

    private static void Near(double expected, double actual, double relative) => Assert.Equal(expected, actual, relative * Math.Abs(expected));
}
