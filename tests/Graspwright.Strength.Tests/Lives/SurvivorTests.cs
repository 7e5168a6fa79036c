using CsCheck;
using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Tests.Lives;

public sealed class SurvivorTests
{
    [Fact]
    public void Steps_as_printed_for_the_remissions_of_miller()
    {
        // R's survfit on the set credited to Miller 1981: shares and Greenwood's errors.
        IReadOnlyList<SurvivorStep> steps = Survivors.Steps(PublishedLives.Maintained);
        Near([0.909091, 0.818182, 0.715909, 0.613636, 0.490909, 0.368182, 0.184091], [.. steps.Select(s => s.Whole)]);
        Near([0.0866784, 0.1162913, 0.1396650, 0.1526323, 0.1641933, 0.1626689, 0.1534927], [.. steps.Select(s => s.Error)]);
        Near([0.8333333, 0.6666667, 0.5833333, 0.4861111, 0.3888889, 0.2916667, 0.1944444, 0.0972222, 0], [.. Survivors.Steps(PublishedLives.NotMaintained).Select(s => s.Whole)]);
    }

    [Fact]
    public void Steps_as_printed_in_the_documents_of_an_open_reliability_library()
    {
        LifeRecord[] records =
        [
            .. ((double[])[5248, 7454, 16890, 17200, 38700, 45000, 49390, 69040, 72280, 131900]).Select(t => LifeRecord.BrokeAt(t)),
            .. ((double[])[3961, 4007, 4734, 6054, 7298, 10190, 23060, 27160, 28690, 37100, 40060, 45670, 53000, 67000, 69630, 77350, 78470, 91680, 105700, 106300, 150400]).Select(t => LifeRecord.WholeAt(t)),
        ];
        Near([0.964286, 0.925714, 0.885466, 0.845217, 0.795499, 0.742465, 0.685353, 0.616817, 0.539715, 0.269858], [.. Survivors.Steps(records).Select(s => s.Whole)]);
        LifeFit fit = LifeFitting.Fit(LifeForm.Weibull, records); // R: 134651.0374, 1.154426671, −128.9738323
        Assert.Equal(134651.0374, fit.Law.Scale, 0.1);
        Assert.Equal(1.154426671, fit.Law.Shape, 1e-6);
        Assert.Equal(-128.9738323, fit.LogLikelihood, 1e-6);
    }

    [Fact]
    public void Bounds_the_share_on_the_log_minus_log_scale()
    {
        // First step of eleven: S = 10/11, error of ln(−ln S) = 0.0866784/(S·|ln S|); the bound by its definition.
        SurvivorStep first = Survivors.Steps(PublishedLives.Maintained)[0];
        double s = 10.0 / 11, spread = Math.Sqrt(1.0 / 110) / -Math.Log(s);
        Assert.Equal(Math.Exp(Math.Log(s) * Math.Exp(1.959963984540054 * spread)), first.Low, 1e-12);
        Assert.Equal(Math.Exp(Math.Log(s) * Math.Exp(-1.959963984540054 * spread)), first.High, 1e-12);
    }

    [Fact]
    public void Counts_shares_as_the_shock_absorbers_of_meeker_and_escobar()
    {
        IReadOnlyList<SurvivorStep> steps = Survivors.Steps(LifeFittingTests.ShockAbsorbers().Records);
        Near([0.973684, 0.945046, 0.908698, 0.870836, 0.827294, 0.783752, 0.718440, 0.628635, 0.538830, 0.431064, 0.287376], [.. steps.Select(s => s.Whole)]);
    }

    [Fact]
    public void Takes_spans_to_the_same_steps_where_every_break_was_seen() =>
        Gen.Select(Gen.Int[1, 12], Gen.Bool).Select((t, broke) => broke ? LifeRecord.BrokeAt(t) : LifeRecord.WholeAt(t)).Array[2, 20].Sample(records =>
        {
            SpanSurvivors spans = SpanSurvivors.Of(records);
            SurvivorStep[] steps = [.. Survivors.Steps(records)];
            SpanStep[] seen = [.. spans.Steps.Where(s => double.IsFinite(s.High))];
            Assert.Equal(steps.Select(s => s.Time), seen.Select(s => s.High));
            for (int i = 0; i < steps.Length; i++)
            {
                Assert.Equal(steps[i].Whole, seen[i].Whole, 1e-5);
            }
        }, iter: 100);

    [Fact]
    public void Gives_spans_the_greatest_likelihood()
    {
        // A hand-made case: (0,1], (1,3], (2,4], still whole at 2 and 3. Shares by maximising p1·(p2)·(p2+p3)·(p2+p3)... on its gaps, below.
        LifeRecord[] records = [new(0, 1), new(1, 3), new(2, 4), LifeRecord.WholeAt(2), LifeRecord.WholeAt(3)];
        SpanSurvivors spans = SpanSurvivors.Of(records);
        Assert.InRange(spans.Excess, -1e-9, 1e-7);
        Assert.Equal(1, spans.Steps.Sum(s => s.Share), 1e-9);
        double found = Log([.. spans.Steps.Select(s => (s.Low, s.High, s.Share))], records);
        Gen.Double[0.001, 1].Array[spans.Steps.Count].Sample(weights =>
        {
            double sum = weights.Sum();
            Assert.True(Log([.. spans.Steps.Select((s, i) => (s.Low, s.High, weights[i] / sum))], records) <= found + 1e-9);
        }, iter: 500);
    }

    [Fact]
    public void Ranks_as_the_beta_law_does()
    {
        // Exact beta quantiles, n = 10 and 5; the 95 % rank of the first of ten.
        double[] ten = [0.06696700846, 0.1622627282, 0.2585747233, 0.3550999679, 0.4516941562];
        for (int i = 0; i < ten.Length; i++)
        {
            Assert.Equal(ten[i], GammaLaw.Rank(i + 1, 10, 0.5), 1e-9);
            Assert.Equal(1 - ten[i], GammaLaw.Rank(10 - i, 10, 0.5), 1e-9);
        }

        Assert.Equal(0.1294494367, GammaLaw.Rank(1, 5, 0.5), 1e-9);
        Assert.Equal(0.2588655509, GammaLaw.Rank(1, 10, 0.95), 1e-9);
        Assert.Equal(0.005116196892, GammaLaw.Rank(1, 10, 0.05), 1e-11);
    }

    [Fact]
    public void Knows_the_normal_and_gamma_laws()
    {
        Assert.Equal(1.959963984540054, NormalLaw.Quantile(0.975), 1e-14); // tables of the normal law
        Assert.Equal(-3.090232306167813, NormalLaw.Quantile(0.001), 1e-13);
        Assert.Equal(7.619853024160527e-24, NormalLaw.Above(10), 7.6e-36);
        Assert.Equal(0.8413447460685429, NormalLaw.Below(1), 1e-15);
        Assert.Equal(-804.6084420137538, NormalLaw.LogAbove(40), 1e-10);
        Assert.Equal(3.841458820694124, GammaLaw.ChiSquareQuantile(1, 0.95), 1e-12);
        Assert.Equal(Math.Log(24), GammaLaw.LogGamma(5), 1e-13);
        Assert.Equal(-0.5772156649015329, GammaLaw.Digamma(1), 1e-12);
        Assert.Equal(Math.PI * Math.PI / 6, GammaLaw.Trigamma(1), 1e-11);
        Assert.Equal(Math.Exp(-2) * (1 + 2 + 2), GammaLaw.PoissonAtMost(2, 2), 1e-14);
    }

    private static double Log((double Low, double High, double Share)[] shares, LifeRecord[] records) =>
        records.Sum(r => Math.Log(shares.Where(s => s.Low >= r.Low && s.High <= r.High && s.High > r.Low).Sum(s => s.Share)));

    private static void Near(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], 5.5e-7); // six printed digits
        }
    }
}
