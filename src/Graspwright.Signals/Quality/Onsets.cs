namespace Graspwright.Signals.Quality;

/// <summary>Where a signal is at or above a level.</summary>
public static class Onsets
{
    /// <summary>Stretches of at least so many samples at or above a level; shorter pauses between them are bridged first.</summary>
    /// <remarks>The rule of threshold and least time; with mean + 3 standard deviations of rest and 25 to 50 ms it is common practice (Hodges and Bui 1996 compare 27 such rules).</remarks>
    /// <param name="values">Signal; NaN is below any level.</param>
    /// <param name="level">Level.</param>
    /// <param name="least">Samples at least, from 1.</param>
    /// <param name="bridge">Pauses up to so many samples do not part two stretches.</param>
    /// <returns>First and last sample of each.</returns>
    public static IReadOnlyList<(int First, int Last)> Above(ReadOnlySpan<double> values, double level, int least = 1, int bridge = 0)
    {
        List<(int First, int Last)> found = [];
        for (int i = 0; i < values.Length; i++)
        {
            if (!(values[i] >= level))
            {
                continue;
            }

            if (found.Count > 0 && i - found[^1].Last - 1 <= bridge)
            {
                found[^1] = (found[^1].First, i);
            }
            else
            {
                found.Add((i, i));
            }
        }

        found.RemoveAll(s => s.Last - s.First + 1 < least);
        return found;
    }

    /// <summary>Level of rest: its mean and so many standard deviations.</summary>
    /// <param name="rest">Samples of rest.</param>
    /// <param name="deviations">How many.</param>
    public static double Level(ReadOnlySpan<double> rest, double deviations)
    {
        double mean = 0, square = 0;
        foreach (double v in rest)
        {
            mean += v / rest.Length;
        }

        foreach (double v in rest)
        {
            square += (v - mean) * (v - mean);
        }

        return mean + deviations * Math.Sqrt(square / Math.Max(1, rest.Length - 1));
    }
}
