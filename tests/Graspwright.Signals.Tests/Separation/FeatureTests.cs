using Graspwright.Signals.Separation;

namespace Graspwright.Signals.Tests.Separation;

/// <summary>Worked values of the tests of tsfresh and TSFEL, and of a hand sum.</summary>
public sealed class FeatureTests
{
    [Fact]
    public void Features_are_those_of_the_published_tests()
    {
        Assert.Equal(2, Features.WaveformLength([1, 1, 1, 1, 2, 1]));
        Assert.Equal(6, Features.WaveformLength([1, -1, 1, -1]));
        Assert.Equal(3, Features.ZeroCrossings([10, -10, 10, -10]));
        Assert.Equal(1.4832396974191326, Features.RootMeanSquare([1, 1, 1, 2, 2]), 1e-13);
        double[] line = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        Assert.Equal(11.113055385446435, Features.RootMeanSquare(line), 1e-12);
        Assert.Equal(19, Features.WaveformLength(line));
        double[] sine = [.. Enumerable.Range(0, 1000).Select(i => Math.Sin(2 * Math.PI * 5 * i / 1000))];
        Assert.Equal(0.7071067811865476, Features.RootMeanSquare(sine), 1e-12);
        Assert.Equal(0.636567412, Features.MeanAbsolute(sine), 1e-8);
        Assert.Equal(19.968589241, Features.WaveformLength(sine), 1e-8);
        Assert.Equal(10, Features.SlopeChanges(sine));
    }

    [Fact]
    public void Features_of_ten_samples_are_those_of_the_sum_by_hand()
    {
        double[] x = [0.10, -0.20, 0.35, -0.05, -0.15, 0.25, 0.30, -0.40, 0.05, -0.10];
        Assert.Equal(0.195, Features.MeanAbsolute(x), 1e-12);
        Assert.Equal(0.228582589, Features.RootMeanSquare(x), 1e-9);
        Assert.Equal(3.10, Features.WaveformLength(x), 1e-12);
        Assert.Equal((7, 6), (Features.ZeroCrossings(x), Features.ZeroCrossings(x, 0.25)));
        Assert.Equal((6, 4), (Features.SlopeChanges(x), Features.SlopeChanges(x, 0.05)));
    }
}
