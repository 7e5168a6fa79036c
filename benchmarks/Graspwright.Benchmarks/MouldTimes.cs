using Graspwright.Hand;
using Graspwright.Workshop.Mould;

namespace Graspwright.Benchmarks;

/// <summary>Batch, clock, coming off and copies on the demo hand.</summary>
internal static class MouldTimes
{
    private const double Target = 0.1;

    /// <summary>Times the four answers, file read and checked once before.</summary>
    public static Section Measure()
    {
        string file = Path.Combine(Repository.Root, "examples", "boatyard", "hand.toml");
        HandModel hand = HandFile.Read(file).Hand ?? throw new InvalidOperationException("The demo hand cannot be read.");
        List<Row> rows = [];
        foreach ((string words, Func<bool> answer) in (ReadOnlySpan<(string, Func<bool>)>)
            [("`liner`: batch, sheet, fewest batches", () => LinerAnswer.Of(hand, file).Answer is not null), ("`clock`: spread, ways to fit, common practice", () => ClockAnswer.Of(hand, file).Result is not null),
             ("`off`: stretch, cut, pull, undercuts", () => OffAnswer.Of(hand, file).Result is not null), ("`copies`: chain, mixes", () => CopiesAnswer.Of(hand, file).Answer is not null)])
        {
            Timing time = Timing.Of(() => _ = answer() ? 0 : throw new InvalidOperationException($"{words} gave no answer."), 2);
            rows.Add(Row.AtMost(words, time.Median, Target, 1000, "ms"));
        }

        return new("Moulding on the demo", "Each answer of `examples/boatyard/hand.toml`, in a process that has run it before; median of the batches. Reading the file and starting the program are not counted.", rows);
    }
}
