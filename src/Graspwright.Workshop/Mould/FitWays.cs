using Graspwright.Hand;
using Graspwright.Moulding.Cure;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>What would make the work fit, each way alone, on as many batches as now and on one.</summary>
internal static class FitWays
{
    public static Table Table(HandModel hand, WorkPlan plan)
    {
        Liner liner = hand.Liner!;
        List<IReadOnlyList<Cell>> rows = [Row(plan.Batches == 1 ? "as planned" : $"as planned, {plan.Batches} batches", plan)];
        if (plan.Batches > 1)
        {
            rows.Add(Row("one batch", WorkPlan.Of(hand, 1, plan.Sheet)));
        }

        foreach ((string words, Liner changed) in Changes(liner))
        {
            HandModel other = hand with { Liner = changed };
            rows.Add(Row($"{words}, one batch", WorkPlan.Of(other, 1, changed.Thickness == liner.Thickness ? plan.Sheet : MouldMapping.Sheet(other))));
        }

        return new("what would make it fit", [new("way", ""), new("mixed, by", ""), new("shaped, firms", ""), new("done, hands off", ""), new("fits", "")], rows);
    }

    private static IEnumerable<(string Words, Liner Liner)> Changes(Liner liner)
    {
        PuttyBench b = liner.Bench;
        foreach (ChilledAs shape in Enum.GetValues<ChilledAs>())
        {
            if (b.Chill <= 0 || shape != b.ChilledAs)
            {
                double chill = b.Chill > 0 ? b.Chill : 18 * 60;
                yield return ($"{Minutes(chill)} in the freezer as a {shape.ToString().ToLowerInvariant()}", liner with { Bench = b with { Chill = chill, ChilledAs = shape } });
            }
        }

        if (b.Chill > 0)
        {
            yield return ("not chilled", liner with { Bench = b with { Chill = 0 } });
        }

        yield return ($"{(b.Helpers == 0 ? "a" : "one more")} helper", liner with { Bench = b with { Helpers = b.Helpers + 1 } });
        if (b.Room - 5 >= Zero + 5)
        {
            yield return ($"room and mould 5 °C cooler ({Celsius(b.Room - 5)})", liner with { Bench = b with { Room = b.Room - 5, Mould = b.Mould - 5 } });
        }

        yield return ($"{Short(900 * liner.Thickness)} mm thick and hands a quarter faster", liner with { Thickness = 0.9 * liner.Thickness, Work = liner.Work with { Roll = 0.75 * liner.Work.Roll, Drape = 0.75 * liner.Work.Drape, Seams = 0.75 * liner.Work.Seams, Smooth = 0.75 * liner.Work.Smooth } });
    }

    private static IReadOnlyList<Cell> Row(string words, WorkPlan plan)
    {
        string Pair(double end, CureMoment moment) => $"{Clock(end)}, {Clock(plan.Cure[moment].Seconds)}";
        return [words, Pair(plan.MixEnd, CureMoment.MixedBy), Pair(plan.ShapeEnd, CureMoment.Firming), Pair(plan.End, CureMoment.HandsOff), plan.Fits ? $"yes, {Clock(-plan.Late)} to spare" : $"no, {Clock(plan.Late)} late"];
    }
}
