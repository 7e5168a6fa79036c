using CsCheck;
using Graspwright.Workshop.Bench;

namespace Graspwright.Workshop.Tests.Bench;

public sealed class DesignOfReadingsTests
{
    // A straight line y = a + b·x on [−1, 1]: the best design puts half of the readings at each end (textbook, e.g. Atkinson and Donev).
    [Fact]
    public void A_straight_line_is_read_at_its_ends()
    {
        double[] x = [.. Enumerable.Range(0, 41).SelectMany(i => Enumerable.Repeat(-1 + i / 20.0, 4))];
        BenchReading[] candidates = [.. x.Select(v => Reading(100, 100 * v))];
        double[] chosen = [.. DesignOfReadings.Choose(candidates, 8).Select(i => x[i]).Order()];
        Assert.Equal([-1, -1, -1, -1, 1, 1, 1, 1], chosen);
    }

    // A parabola on [−1, 1]: a third of the readings at each end and a third in the middle (textbook).
    [Fact]
    public void A_parabola_is_read_at_its_ends_and_in_the_middle()
    {
        double[] x = [.. Enumerable.Range(0, 41).SelectMany(i => Enumerable.Repeat(-1 + i / 20.0, 4))];
        BenchReading[] candidates = [.. x.Select(v => Reading(100, 100 * v, 100 * v * v))];
        double[] chosen = [.. DesignOfReadings.Choose(candidates, 9).Select(i => Math.Round(x[i], 9)).Order()];
        Assert.Equal([-1, -1, -1, 0, 0, 0, 1, 1, 1], chosen);
    }

    [Fact]
    public void No_single_exchange_makes_a_choice_better_and_spreads_are_those_of_the_inverse() =>
        Gen.Double[-3, 3].Array[3].Array[12].Sample(rows =>
        {
            BenchReading[] candidates = [.. rows.Select(r => Reading(r))];
            IReadOnlyList<int> chosen = DesignOfReadings.Choose(candidates, 5);
            double best = Determinant(chosen.Select(i => rows[i]));
            foreach (int old in chosen)
            {
                foreach (int other in Enumerable.Range(0, rows.Length).Except(chosen))
                {
                    double exchanged = Determinant(chosen.Select(i => rows[i == old ? other : i]));
                    if (exchanged > best * (1 + 1e-6))
                    {
                        return false;
                    }
                }
            }

            ReadingPlan plan = DesignOfReadings.Plan([.. chosen.Select(i => candidates[i])], 3);
            double[,] m = Information(chosen.Select(i => rows[i]));
            double cofactor = m[1, 1] * m[2, 2] - m[1, 2] * m[2, 1];
            return Math.Abs(plan.Spread[0] - Math.Sqrt(cofactor / best)) < 1e-6 && Math.Abs(plan.Correlation[1, 1] - 1) < 1e-9;
        });

    [Fact]
    public void What_no_reading_tells_stays_as_it_was()
    {
        ReadingPlan plan = DesignOfReadings.Plan([Reading(10, 0), Reading(20, 0)], 2);
        Assert.Equal(DesignOfReadings.PriorSpread, plan.Spread[1], 1e-12);
        Assert.True(plan.Spread[0] < 0.05);
        Assert.Equal([0, 0], plan.ToldBy);
    }

    private static BenchReading Reading(params double[] sensitivity) => new("x", Opening: false, 0, "y", "N", 0, 1, sensitivity);

    private static double[,] Information(IEnumerable<double[]> rows)
    {
        double[,] m = new double[3, 3];
        for (int i = 0; i < 3; i++)
        {
            m[i, i] = 1 / (DesignOfReadings.PriorSpread * DesignOfReadings.PriorSpread);
        }

        foreach (double[] g in rows)
        {
            for (int i = 0; i < 3; i++)
            {
                for (int k = 0; k < 3; k++)
                {
                    m[i, k] += g[i] * g[k];
                }
            }
        }

        return m;
    }

    private static double Determinant(IEnumerable<double[]> rows)
    {
        double[,] m = Information(rows);
        return m[0, 0] * (m[1, 1] * m[2, 2] - m[1, 2] * m[2, 1]) - m[0, 1] * (m[1, 0] * m[2, 2] - m[1, 2] * m[2, 0]) + m[0, 2] * (m[1, 0] * m[2, 1] - m[1, 1] * m[2, 0]);
    }
}
