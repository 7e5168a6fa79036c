using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Spares;

/// <summary>How often a part breaks over a period when each broken one is replaced at once by a new one.</summary>
/// <remarks>
/// The chance of at least n breaks by t is the chance of at least n − 1 folded with the law of life (Cox 1962, Renewal Theory, from memory).
/// The folding is a sum over even steps with the other factor at the middle of each step, of second order; two step lengths are combined
/// to the fourth order. The part that is fitted now follows what is left of its life.
/// </remarks>
public static class Renewals
{
    /// <summary>Steps of the finer of the two sums.</summary>
    private const int Steps = 512;

    private const double Never = 1e-13;

    /// <summary>Chances of 0, 1, 2, … breaks over a period.</summary>
    /// <param name="law">Law of life.</param>
    /// <param name="age">Age of the part fitted now, 0 or more.</param>
    /// <param name="period">Period, above 0, in the unit of the law.</param>
    /// <param name="most">Greatest number looked at.</param>
    /// <returns>Chances of the numbers 0 to <paramref name="most"/>; the last holds all that are more.</returns>
    public static double[] Counts(in LifeLaw law, double age, double period, int most)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(period);
        ArgumentOutOfRangeException.ThrowIfNegative(age);
        double[] coarse = AtLeast(law, age, period, most, Steps / 2), fine = AtLeast(law, age, period, most, Steps);
        double[] chance = new double[most + 1];
        double above = 1;
        for (int n = 0; n < most; n++)
        {
            double more = Math.Clamp((4 * fine[n + 1] - coarse[n + 1]) / 3, 0, above);
            chance[n] = above - more;
            above = more;
        }

        chance[most] = above;
        return chance;
    }

    /// <summary>Chances of sums of independent counts.</summary>
    /// <param name="counts">Chances of each, as of <see cref="Counts"/> with one greatest number.</param>
    public static double[] Together(IReadOnlyList<double[]> counts)
    {
        ArgumentNullException.ThrowIfNull(counts);
        double[] sum = [1];
        foreach (double[] one in counts)
        {
            double[] next = new double[sum.Length + one.Length - 1];
            for (int i = 0; i < sum.Length; i++)
            {
                for (int j = 0; j < one.Length; j++)
                {
                    next[i + j] += sum[i] * one[j];
                }
            }

            sum = next;
        }

        return sum;
    }

    /// <summary>Chance of at least 0, 1, … breaks by the end of the period.</summary>
    private static double[] AtLeast(in LifeLaw law, double age, double period, int most, int steps)
    {
        double h = period / steps;
        double[] mass = new double[steps + 1], now = new double[steps + 1], next = new double[steps + 1], ends = new double[most + 1];
        double wholeNow = law.LogWhole(age);
        for (int i = 1; i <= steps; i++)
        {
            mass[i] = law.Broken(i * h) - law.Broken((i - 1) * h);
            now[i] = -NormalLaw.ExpLessOne(law.LogWhole(age + i * h) - wholeNow);
        }

        ends[0] = 1;
        for (int n = 1; n <= most; n++)
        {
            ends[n] = now[steps];
            if (ends[n] < Never)
            {
                break;
            }

            for (int i = 1; i <= steps; i++)
            {
                double sum = 0;
                for (int j = 1; j <= i; j++)
                {
                    sum += mass[j] * (now[i - j] + now[i - j + 1]);
                }

                next[i] = 0.5 * sum;
            }

            (now, next) = (next, now);
            now[0] = 0;
        }

        return ends;
    }
}
