using Graspwright.Strength.Fatigue;

namespace Graspwright.Strength.Tests.Fatigue;

public sealed class FatigueTests
{
    // Shigley's Mechanical Engineering Design, 9th edition, example 6-2 (page 286): 90 kpsi, limit 45, 0.86 of the strength:
    // 64.6 kpsi at 10⁴ and 7.75·10⁴ cycles at 55 kpsi, there from rounded coefficients.
    [Fact]
    public void Line_agrees_with_shigley()
    {
        FatigueLine line = FatigueLine.Through(90, 0.86, 45, 1e6);
        Assert.Equal(1 / 0.078509482, line.Slope, 1e-6);
        Assert.Equal(64.599845361, line.Amplitude(1e4), 1e-8);
        Assert.Equal(77_614.125, line.Cycles(55), 0.01);
    }

    // Sadhu Singh, Machine Design I, example 4.5 (page 107): 650 and 325 MPa, 395.34 MPa at 10⁵.
    [Fact]
    public void Line_agrees_with_singh() => Assert.Equal(395.343129712, FatigueLine.Through(650, 0.9, 325, 1e6).Amplitude(1e5), 1e-8);

    // Budynas, solutions to Shigley's 8th edition, problem 6-12: 1.06 by Goodman.
    [Fact]
    public void Goodman_agrees_with_budynas()
    {
        Assert.Equal(1.056007066, MeanStress.GoodmanFactor(172, 178.4, 276, 551), 1e-9);
        double amplitude = MeanStress.Goodman(172, 178.4, 551);
        Assert.Equal(172 / (1 - 178.4 / 551), amplitude, 1e-12);
        Assert.Equal(172, MeanStress.Goodman(172, -50, 551));
        Assert.Equal(double.PositiveInfinity, MeanStress.Goodman(172, 551, 551));
    }

    // Shigley, 9th edition, pages 324 and 325: 80 kpsi, limit 40, 0.9; 60 kpsi is stood 8520 times (recomputed 8522.16).
    [Fact]
    public void Miner_agrees_with_shigley() => Assert.Equal(8522.159176, FatigueLine.Through(80, 0.9, 40, 1e6).Cycles(60), 1e-4);

    // Budynas, solutions to the 8th edition, problem 6-30: 4000 at 48, 60 000 at 38, then 209 160 at 32 kpsi (recomputed 209 218.8).
    [Fact]
    public void Miner_agrees_with_budynas()
    {
        FatigueLine line = FatigueLine.Through(76, 0.9, 30, 1e6);
        Assert.Equal(19_461.934, line.Cycles(48), 0.01);
        Assert.Equal(137_893.708, line.Cycles(38), 0.1);
        StressBlock[] blocks = [new(48, -48, 4000), new(38, -38, 60_000), new(32, -32, 209_218.819)];
        Assert.Equal(1, DamageSum.OfDay(blocks, line, 1e9, 1), 1e-7);
    }

    [Fact]
    public void Beyond_the_knee_the_line_is_flatter()
    {
        FatigueLine line = new(100, 1e6, 5);
        Assert.Equal(1e6, line.Cycles(100), 1e-3);
        Assert.Equal(1e6 * Math.Pow(2, 9), line.Cycles(50), 1);
        Assert.Equal(1e6 / Math.Pow(2, 5), line.Cycles(200), 1e-3);
        Assert.Equal(double.PositiveInfinity, line.Cycles(0));
    }

    // ASTM E1049-85, figure 6: the worked sequence of the rainflow method.
    [Fact]
    public void Rainflow_counts_the_standards_sequence()
    {
        IReadOnlyList<CountedCycle> counted = Rainflow.Count([-2, 1, -3, 5, -1, 3, -4, 4, -2]);
        (double Range, double Count)[] sum = [.. counted.GroupBy(c => c.Range).OrderBy(g => g.Key).Select(g => (g.Key, g.Sum(c => c.Count)))];
        Assert.Equal([(3, 0.5), (4, 1.5), (6, 0.5), (8, 1.0), (9, 0.5)], sum);
        Assert.Equal(1, counted.Single(c => c is { Range: 4, Count: 1 }).Mean);
    }

    [Fact]
    public void Rainflow_skips_what_is_no_turn()
    {
        Assert.Empty(Rainflow.Count([2, 2, 2]));
        Assert.Equal([new CountedCycle(3, 1.5, 0.5)], Rainflow.Count([0, 1, 1, 2, 3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rainflow.Count([0, double.NaN]));
    }
}
