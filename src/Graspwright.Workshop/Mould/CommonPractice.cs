using Graspwright.Hand;
using Graspwright.Moulding.Cure;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>The prediction beside what makers say to each other. Nothing is fitted to it; a miss is said.</summary>
internal static class CommonPractice
{
    // Common practice, no source: mixed in 2 minutes, firms at 5, not worked after 8, off the mould at 12, best left for hours
    // (two hours are taken), and 15 to 20 minutes in a freezer buy a couple of minutes (18 and 2 are taken).
    private static readonly double[] Said = [120, 300, 480, 720, 7200];
    private const double SaidChill = 18 * 60, SaidGain = 120, Near = 0.5;

    public static IEnumerable<Table> Tables(HandModel hand, WorkPlan plan)
    {
        CureInputs warm = plan.Inputs with { Chill = 0, Carry = 0, DewPoint = null };
        CureInputs cold = plan.Inputs with { Chill = SaidChill, Carry = hand.Liner!.Bench.Carry, DewPoint = null };
        IReadOnlyList<ClockRange> ranges = ClockRanges.Of(hand, warm), chilled = ClockRanges.Of(hand, cold);
        Func<double[], double[]> model = ClockRanges.Model(ranges, warm);
        Func<double[], double[]> gain = values => [Gain(values, chilled, cold, warm)];
        StatedRange[] stated = [.. ranges.Select(r => r.Range)], statedCold = [.. chilled.Select(r => r.Range)];
        IReadOnlyList<SpreadOutput> spread = Ranges.Spread(model, stated);
        SpreadOutput won = Ranges.Spread(gain, statedCold)[0];
        List<IReadOnlyList<Cell>> rows = [];
        for (int i = 0; i < Said.Length; i++)
        {
            rows.Add(Row(ClockAnswer.MomentWords[i] + ", not chilled", Said[i], i == Said.Length - 1 ? "hours" : Minutes(Said[i]), spread[i], ranges, j => Ranges.Meeting(model, stated, j, i, Said[i], spread[i], Near)));
        }

        rows.Add(Row($"won by {Minutes(SaidChill)} in the freezer as a {hand.Liner!.Bench.ChilledAs.ToString().ToLowerInvariant()}", SaidGain, "2 min", won, chilled, j => Ranges.Meeting(gain, statedCold, j, 0, SaidGain, won, Near)));
        yield return new("beside common practice (no source; nothing is fitted to it)", [new("moment", ""), new("predicted", ""), new("said", ""), new("gap", ""), new("what alone, within its range, closes it", "")], rows);
        yield return new("the other rule of temperature", [new("moment", ""), new("ten degrees", "min"), new("Arrhenius", "min")], OtherRule(plan.Inputs));
    }

    private static double Gain(double[] values, IReadOnlyList<ClockRange> ranges, CureInputs cold, CureInputs warm)
    {
        CureInputs changed = cold;
        for (int i = 0; i < values.Length; i++)
        {
            changed = values[i] == ranges[i].Range.Value ? changed : ranges[i].Set(changed, values[i]);
        }

        if (changed.SetTime <= changed.WorkTime)
        {
            changed = changed with { SetTime = changed.WorkTime * 1.001 };
        }

        double later = CureClock.Run(changed)[CureMoment.Firming].Seconds;
        return later - CureClock.Run(changed with { Chill = 0, Carry = warm.Carry })[CureMoment.Firming].Seconds;
    }

    private static IReadOnlyList<Cell> Row(string words, double said, string saidWords, SpreadOutput o, IReadOnlyList<ClockRange> ranges, Func<int, double?> meeting)
    {
        double gap = o.Value - said;
        string predicted = Minutes(o.Value, o.Low, o.High);
        string off = Math.Abs(gap) < 0.05 * said ? "none to speak of" : $"{Minutes(Math.Abs(gap))} {(gap > 0 ? "later" : "earlier")}";
        List<string> closes = [];
        if (Math.Abs(gap) >= 0.05 * said)
        {
            for (int j = 0; j < ranges.Count; j++)
            {
                if (meeting(j) is { } value)
                {
                    closes.Add($"{ranges[j].Words} at {ranges[j].Show(value)}");
                }
            }
        }

        string closed = off.StartsWith("none", StringComparison.Ordinal) ? "" : closes.Count > 0 ? Row(closes)
            : said >= o.Low && said <= o.High ? "none alone; several together" : "nothing: a miss";
        return [words, predicted, saidWords, off, closed];
    }

    private static string Row(List<string> words) => words.Count == 1 ? words[0] : string.Join("; or ", words);

    private static IReadOnlyList<IReadOnlyList<Cell>> OtherRule(CureInputs x)
    {
        CureResult ten = CureClock.Run(x with { Rule = CureRule.TenDegrees }), law = CureClock.Run(x with { Rule = CureRule.Arrhenius });
        return [.. ClockAnswer.MomentWords.Select((w, i) => (IReadOnlyList<Cell>)[w, ten.Moments[i].Seconds / 60, law.Moments[i].Seconds / 60])];
    }
}
