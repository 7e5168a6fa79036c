namespace Graspwright.Strength.Lives;

/// <summary>Share of the parts that one cause has broken by a time, the other causes being there as well.</summary>
/// <param name="Time">Time of the step.</param>
/// <param name="Share">Share broken by this cause.</param>
/// <param name="Error">Standard error of the share.</param>
public readonly record struct CauseStep(double Time, double Share, double Error);

/// <summary>Breaks by causes that compete: what one breaks, another cannot break any more.</summary>
public static class Causes
{
    /// <summary>Share broken by one cause against time, by Aalen and Johansen's sum.</summary>
    /// <param name="records">Records; spans stand at their middles.</param>
    /// <param name="cause">Cause of each record's break, by number; not read for what is whole.</param>
    /// <param name="which">The cause asked about.</param>
    /// <remarks>Aalen and Johansen 1978; the error by the delta method, as in Marubini and Valsecchi 1995 (both from memory).</remarks>
    public static IReadOnlyList<CauseStep> Share(IReadOnlyList<LifeRecord> records, IReadOnlyList<int> cause, int which)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(cause);
        int[] order = [.. Enumerable.Range(0, records.Count).OrderBy(i => records[i].Middle)];
        double risk = records.Sum(r => r.Count), whole = 1, share = 0;
        List<(double Share, double WholeBefore, double Risk, double All, double Mine)> past = [];
        List<CauseStep> steps = [];
        for (int at = 0; at < order.Length;)
        {
            double time = records[order[at]].Middle, all = 0, mine = 0, gone = 0;
            for (; at < order.Length && records[order[at]].Middle.Equals(time); at++)
            {
                LifeRecord r = records[order[at]];
                gone += r.Count;
                all += r.Broke ? r.Count : 0;
                mine += r.Broke && cause[order[at]] == which ? r.Count : 0;
            }

            if (all > 0)
            {
                share += whole * mine / risk;
                past.Add((share, whole, risk, all, mine));
                whole *= 1 - all / risk;
                if (mine > 0)
                {
                    steps.Add(new(time, share, Math.Sqrt(Math.Max(0, Variance(past, share)))));
                }
            }

            risk -= gone;
        }

        return steps;
    }

    /// <summary>Records for the law of one cause alone: what another cause broke was whole, for this one, until then.</summary>
    /// <param name="records">Records.</param>
    /// <param name="cause">Cause of each record's break.</param>
    /// <param name="which">The cause asked about.</param>
    public static IReadOnlyList<LifeRecord> Alone(IReadOnlyList<LifeRecord> records, IReadOnlyList<int> cause, int which)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(cause);
        LifeRecord[] alone = new LifeRecord[records.Count];
        for (int i = 0; i < alone.Length; i++)
        {
            LifeRecord r = records[i];
            alone[i] = r.Broke && cause[i] != which ? LifeRecord.WholeAt(r.Seen ? r.Low : r.Middle, r.Count) : r;
        }

        return alone;
    }

    private static double Variance(List<(double Share, double WholeBefore, double Risk, double All, double Mine)> past, double now)
    {
        double sum = 0;
        foreach ((double share, double whole, double n, double d, double m) in past)
        {
            double left = now - share;
            if (n > d)
            {
                sum += left * left * d / (n * (n - d));
            }

            sum += whole * whole * m * (n - m) / (n * n * n) - (n > 0 ? 2 * left * whole * m / (n * n) : 0);
        }

        return sum;
    }
}
