namespace Graspwright.Strength.Fatigue;

/// <summary>One counted cycle.</summary>
/// <param name="Range">Highest less lowest, in the unit of the history.</param>
/// <param name="Mean">Middle of both.</param>
/// <param name="Count">1 for a whole cycle, 0.5 for a half.</param>
public readonly record struct CountedCycle(double Range, double Mean, double Count);

/// <summary>Counts the cycles of a load history by the rainflow method.</summary>
/// <source key="astm-e1049">Section 5.4.4: three points at a time, half cycles at the start and for what is left.</source>
public static class Rainflow
{
    /// <summary>Counts.</summary>
    /// <param name="history">Loads in the order of time, finite.</param>
    /// <returns>Whole and half cycles in the order in which they close; none where nothing changes.</returns>
    public static IReadOnlyList<CountedCycle> Count(IEnumerable<double> history)
    {
        ArgumentNullException.ThrowIfNull(history);
        List<CountedCycle> counted = [];
        List<double> open = [];
        foreach (double turn in Turns(history))
        {
            open.Add(turn);
            while (open.Count >= 3)
            {
                double newest = Math.Abs(open[^1] - open[^2]), before = Math.Abs(open[^2] - open[^3]);
                if (newest < before)
                {
                    break;
                }

                if (open.Count == 3)
                {
                    counted.Add(Cycle(open[0], open[1], 0.5));
                    open.RemoveAt(0);
                }
                else
                {
                    counted.Add(Cycle(open[^3], open[^2], 1));
                    open.RemoveRange(open.Count - 3, 2);
                }
            }
        }

        for (int i = 0; i + 1 < open.Count; i++)
        {
            counted.Add(Cycle(open[i], open[i + 1], 0.5));
        }

        return counted;
    }

    private static CountedCycle Cycle(double a, double b, double count) => new(Math.Abs(a - b), (a + b) / 2, count);

    private static List<double> Turns(IEnumerable<double> history)
    {
        List<double> turns = [];
        foreach (double value in history)
        {
            if (!double.IsFinite(value))
            {
                throw new ArgumentOutOfRangeException(nameof(history), value, "A load must be finite.");
            }

            if (turns.Count > 0 && value.Equals(turns[^1]))
            {
                continue;
            }

            if (turns.Count > 1 && value > turns[^1] == turns[^1] > turns[^2])
            {
                turns[^1] = value;
            }
            else
            {
                turns.Add(value);
            }
        }

        return turns;
    }
}
