using System.Text.Json;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Tests.Filters;

/// <summary>Against values that SciPy printed; the command stands in benchmarks/peers/signals_golden.py.</summary>
public sealed class GoldenTests
{
    private const double Tolerance = 1e-9, Rate = 1000;
    private static readonly JsonElement Golden = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Filters", "Files", "scipy.json"))).RootElement;

    public static TheoryData<string> Names => [.. Golden.GetProperty("filters").EnumerateObject().Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Butterworth_filters_do_what_those_of_SciPy_do(string name)
    {
        JsonElement one = Golden.GetProperty("filters").GetProperty(name);
        SectionChain chain = Chain(one);
        double[] x = Known(), causal = [.. x];
        new Filtering(chain).Run([causal]);
        Near(Numbers(one.GetProperty("causal")), causal);
        double[] zero = ZeroPhase.Filter(chain, x);
        Near(Numbers(one.GetProperty("zero_phase")), [.. Enumerable.Range(0, x.Length / 4).Select(i => zero[4 * i])]);
        foreach (double edge in Numbers(one.GetProperty("edges")))
        {
            Assert.Equal(Math.Sqrt(0.5), chain.Response(edge, Rate).Magnitude, 1e-9); // every edge is -3.0103 dB
        }
    }

    [Fact]
    public void A_single_channel_and_four_side_by_side_give_the_same_bits()
    {
        SectionChain chain = Butterworth.BandPass(4, 20, 450, Rate);
        double[][] four = [Known(), [.. Known().Select(v => -v)], [.. Known().Reverse()], Known()];
        double[] alone = Known();
        new Filtering(chain).Run(alone.AsSpan());
        new Filtering(chain).Run(four);
        Assert.Equal(alone, four[0]);
        Assert.Equal(alone.Select(v => -v), four[1]);
    }

    [Fact]
    public void The_notch_is_that_of_SciPy()
    {
        JsonElement notch = Golden.GetProperty("notch");
        SectionChain chain = Butterworth.Notch(50, 30, Rate);
        Section s = chain.Sections[0];
        Near(Numbers(notch.GetProperty("b")), [s.B0, s.B1, s.B2]);
        Near(Numbers(notch.GetProperty("a")), [1, s.A1, s.A2]);
        double[] x = Known();
        new Filtering(chain).Run(x.AsSpan());
        Near(Numbers(notch.GetProperty("causal")), x);
        Assert.Equal(0, chain.Response(50, Rate).Magnitude, 1e-10);
    }

    [Fact]
    public void Spectral_density_and_features_are_those_of_SciPy_and_NumPy()
    {
        Near(Numbers(Golden.GetProperty("welch")), new Spectrum(256).Density(Known(), Rate));
        Assert.Equal(Golden.GetProperty("rms").GetDouble(), Features.RootMeanSquare(Known()), Tolerance);
        Assert.Equal(Golden.GetProperty("mav").GetDouble(), Features.MeanAbsolute(Known()), Tolerance);
        Assert.Equal(Golden.GetProperty("waveform_length").GetDouble(), Features.WaveformLength(Known()), Tolerance);
    }

    /// <summary>Closed forms of the textbooks, cut-off at half the highest frequency.</summary>
    [Fact]
    public void Textbook_filters_come_out()
    {
        Section first = Butterworth.LowPass(1, 250, Rate).Sections[0], second = Butterworth.LowPass(2, 250, Rate).Sections[0];
        Near([0.5, 0.5, 0, 0, 0], [first.B0, first.B1, first.B2, first.A1, first.A2]);
        Near([0.292893218813, 0.585786437627, 0.292893218813, 0, 0.171572875254], [second.B0, second.B1, second.B2, second.A1, second.A2]);
        double[] impulse = new double[7];
        impulse[0] = 1;
        new Filtering(Butterworth.LowPass(3, 250, Rate)).Run(impulse.AsSpan());
        Near([1.0 / 6, 1.0 / 2, 4.0 / 9, 0, -4.0 / 27, 0, 4.0 / 81], impulse);
    }

    [Fact]
    public void Refuses_edges_that_the_rate_cannot_carry()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.LowPass(2, 500, Rate));
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.HighPass(2, 0, Rate));
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.BandPass(2, 100, 50, Rate));
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.LowPass(0, 50, Rate));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spectrum(100));
    }

    [Fact]
    public void Whole_numbers_follow_floating_point_within_a_count_and_count_their_work()
    {
        FrontEnd front = FrontEnd.Usual(Rate, isRaw: true, notchHertz: 50);
        FixedChain chain = new(front);
        double[] x = [.. Known().Select(v => Math.Round(20000 * v))];
        double[] exact = [.. x]; // from rest, as the controller begins
        new Filtering(front.Band!).Run(exact.AsSpan());
        exact = [.. exact.Select(Math.Abs)];
        new Filtering(front.Smooth).Run(exact.AsSpan());
        double worst = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double envelope = chain.Step((int)x[i]) / (double)(1 << FixedChain.SampleBits);
            worst = Math.Max(worst, Math.Abs(envelope - exact[i]));
        }

        Assert.InRange(worst, 0, 0.5);
        Assert.Equal(1024, chain.Samples);
        Assert.Equal(1024 * 4 * 5, chain.Work.Multiplications); // two of band, one notch, one of smoothing
        Assert.True(ControllerKind.All[0].Cycles(chain.Work) > ControllerKind.All[2].Cycles(chain.Work));
    }

    [Fact]
    public void The_delay_of_the_smoothing_is_the_slope_of_its_phase()
    {
        // Second-order Butterworth: group delay at 0 is sqrt 2 over the edge's angular frequency.
        Assert.Equal(Math.Sqrt(2) / (2 * Math.PI * 6), FrontEnd.Usual(Rate, isRaw: true).DelaySeconds, 2e-4);
    }

    private static SectionChain Chain(JsonElement one)
    {
        int order = one.GetProperty("order").GetInt32();
        double[] edges = Numbers(one.GetProperty("edges"));
        return one.GetProperty("kind").GetString() switch
        {
            "bandpass" => Butterworth.BandPass(order, edges[0], edges[1], Rate),
            "highpass" => Butterworth.HighPass(order, edges[0], Rate),
            _ => Butterworth.LowPass(order, edges[0], Rate),
        };
    }

    internal static double[] Known()
    {
        long state = 12345;
        double[] x = new double[1024];
        for (int i = 0; i < x.Length; i++)
        {
            state = (1103515245 * state + 12345) % 2147483648;
            x[i] = (state / 65536 % 2001 - 1000) / 1000.0;
        }

        return x;
    }

    private static double[] Numbers(JsonElement list) => [.. list.EnumerateArray().Select(v => v.GetDouble())];

    private static void Near(double[] expected, double[] actual) => Assert.All(Enumerable.Range(0, expected.Length), i => Assert.Equal(expected[i], actual[i], Tolerance));
}
