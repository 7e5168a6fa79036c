using System.Diagnostics;
using Graspwright.Hand;
using Graspwright.Workshop.Strength;

namespace Graspwright.Benchmarks;

/// <summary>Lives of all hinges of the demo hand in two materials.</summary>
internal static class HandLives
{
    private const int Samples = 1000;
    private const int WarmUps = 6;
    private const int Rounds = 25;

    /// <summary>Measures.</summary>
    public static Section Measure()
    {
        HandModel hand = HandFile.Read(Path.Combine(Repository.Root, "examples", "boatyard", "hand.toml")).Hand!;
        GripLoads loads = GripLoads.Of(hand);
        HandModel print = Lasting.InMaterial(hand, "pla-along");
        Timing lives = Times(() =>
        {
            Lasting.Sample(hand, loads, Samples, 1);
            Lasting.Sample(print, loads, Samples, 1);
        });
        Timing order = Times(() => FailureOrder.All(hand));
        Timing grips = Times(() => GripLoads.Of(hand));
        return new("Lives of the demo hand", "Twelve hinges, each with ears, pin, tongue and phalanx, in two materials, 1,000 scatter samples each: damage tables and samples, grips already run.",
        [
            Row.AtMost("whole hand, all hinges, two materials, 1,000 samples, shortest", lives.Best, 0.2, 1000, "ms"),
            Row.AtMost("the same, median", lives.Median, 0.2, 1000, "ms"),
            new("order of failure of four fingers, shortest", $"{Row.Number(order.Best * 1000)} ms"),
            new("running the grips of the day: four objects, three efforts, closing and opening", $"{Row.Number(grips.Best * 1000)} ms"),
        ]);
    }

    private static Timing Times(Action work)
    {
        List<double> times = [];
        for (int i = -WarmUps; i < Rounds; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            if (i >= 0)
            {
                times.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
            }
        }

        return Timing.Over(times);
    }
}
