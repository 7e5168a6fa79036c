namespace Graspwright.Strength.Lives;

/// <summary>A span of age in which a share of the parts broke.</summary>
/// <param name="Low">Its lower end.</param>
/// <param name="High">Its upper end; infinite for those that outlived the log.</param>
/// <param name="Share">Share that broke in it.</param>
/// <param name="Whole">Share still whole after it.</param>
public readonly record struct SpanStep(double Low, double High, double Share, double Whole);

/// <summary>The share still whole from records that are spans, without any law.</summary>
/// <param name="Steps">Spans that hold any share, rising.</param>
/// <param name="Excess">How far the result is from the best there is: 0 at the best, by the slope condition, in parts.</param>
/// <remarks>Turnbull 1976 (from memory): only the gaps between a lower end and the next upper end can hold a share; their shares are improved in turn.</remarks>
public sealed record SpanSurvivors(IReadOnlyList<SpanStep> Steps, double Excess)
{
    private const int MostRounds = 20_000;
    private const double Near = 1e-7, Nothing = 1e-12;

    /// <summary>Finds the shares.</summary>
    /// <param name="records">Records.</param>
    public static SpanSurvivors Of(IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        List<(double Low, double High)> gaps = Gaps(records);
        double count = records.Sum(r => r.Count), excess = 0;
        double[] share = new double[gaps.Count], slope = new double[gaps.Count];
        Array.Fill(share, 1.0 / Math.Max(1, gaps.Count));
        (int From, int To)[] within = [.. records.Select(r => Within(r, gaps))];
        for (int round = 0; round < MostRounds && gaps.Count > 0; round++)
        {
            Array.Clear(slope);
            for (int i = 0; i < within.Length; i++)
            {
                double sum = 0;
                for (int j = within[i].From; j < within[i].To; j++)
                {
                    sum += share[j];
                }

                for (int j = within[i].From; j < within[i].To; j++)
                {
                    slope[j] += records[i].Count / sum;
                }
            }

            excess = slope.Max() / count - 1;
            if (excess < Near)
            {
                break;
            }

            for (int j = 0; j < share.Length; j++)
            {
                share[j] *= slope[j] / count;
            }
        }

        List<SpanStep> steps = [];
        double whole = 1;
        for (int j = 0; j < share.Length; j++)
        {
            whole -= share[j];
            if (share[j] > Nothing)
            {
                steps.Add(new(gaps[j].Low, gaps[j].High, share[j], Math.Max(0, whole)));
            }
        }

        return new(steps, excess);
    }

    /// <summary>Gaps from a lower end to the next upper end, nothing between.</summary>
    private static List<(double Low, double High)> Gaps(IReadOnlyList<LifeRecord> records)
    {
        // A span is open at its lower end; a break that was seen is closed there, so its lower end comes first.
        List<(double At, int Order, bool Low)> ends = [];
        foreach (LifeRecord r in records)
        {
            ends.Add((r.Low, r.Seen ? 0 : 2, true));
            ends.Add((r.High, 1, false));
        }

        ends.Sort((x, y) => !x.At.Equals(y.At) ? x.At.CompareTo(y.At) : x.Order.CompareTo(y.Order));
        List<(double Low, double High)> gaps = [];
        for (int i = 0; i + 1 < ends.Count; i++)
        {
            if (ends[i].Low && !ends[i + 1].Low)
            {
                gaps.Add((ends[i].At, ends[i + 1].At));
            }
        }

        return gaps;
    }

    private static (int From, int To) Within(LifeRecord r, List<(double Low, double High)> gaps)
    {
        int from = 0;
        while (from < gaps.Count && !(gaps[from].Low >= r.Low && gaps[from].High <= r.High && (r.Seen || gaps[from].High > r.Low)))
        {
            from++;
        }

        int to = from;
        while (to < gaps.Count && gaps[to].High <= r.High)
        {
            to++;
        }

        return (from, to);
    }
}
