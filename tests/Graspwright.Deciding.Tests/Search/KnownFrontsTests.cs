using Graspwright.Deciding.Fronts;
using Graspwright.Deciding.Search;

namespace Graspwright.Deciding.Tests.Search;

/// <summary>Hypervolume reached on published test problems against that of their true fronts: the median of eleven seeds.</summary>
public sealed class KnownFrontsTests(ITestOutputHelper output)
{
    private const int Seeds = 11;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void Two_aims_reach_99_percent_of_the_true_volume_in_25_000_evaluations(int zdt) => Reaches($"ZDT{zdt}", KnownFront.Zdt(zdt), 25_000, 200, 0.99);

    [Fact]
    public void Two_aims_with_limits_reach_99_percent() => Reaches("BNH", KnownFront.Bnh(), 25_000, 200, 0.99);

    [Fact]
    public void Three_aims_reach_97_percent_in_50_000_evaluations() => Reaches("DTLZ2", KnownFront.Dtlz2(), 50_000, 1000, 0.97);

    [Fact]
    public void The_true_volumes_are_those_of_the_closed_forms()
    {
        // By hand: 1.21 − ∫f2 over the front: ZDT1 and 4 1.21 − 1/3, ZDT2 1.21 − 2/3.
        Assert.Equal(1.21 - 1 / 3.0, KnownFront.Zdt(1).Volume, 1e-5);
        Assert.Equal(1.21 - 2 / 3.0, KnownFront.Zdt(2).Volume, 1e-9);
        Assert.Equal(1.21 - 1 / 3.0, KnownFront.Zdt(4).Volume, 1e-5);
    }

    private void Reaches(string name, KnownFront problem, int evaluations, int most, double share)
    {
        double[] reached = new double[Seeds];
        int[] points = new int[Seeds];
        Parallel.For(0, Seeds, seed =>
        {
            SearchOptions options = new() { Seed = seed + 1, Evaluations = evaluations };
            SearchState end = EvolutionarySearch.Run(problem.Space, problem.Judge, options);
            IReadOnlyList<double[]> front = [.. EvolutionarySearch.Front(end, options).Select(d => d.Outcome.Aims)];
            points[seed] = front.Count;
            reached[seed] = Hypervolume.Of(front, [.. Enumerable.Repeat(1.1, front[0].Length)]) / problem.Volume;
        });
        Array.Sort(reached);
        output.WriteLine($"{name}: least {reached[0]:P3}, median {reached[Seeds / 2]:P3}, greatest {reached[^1]:P3}; most points {points.Max()}");
        Assert.True(points.Max() <= most, $"{points.Max()} points");
        Assert.True(reached[Seeds / 2] >= share, $"{name}: median {reached[Seeds / 2]:P3} of the true volume");
        Assert.True(reached[^1] <= 1 + 1e-6, $"{name}: {reached[^1]:P4} is more than the true volume");
    }
}
