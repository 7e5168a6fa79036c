using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Room;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Jobs;

namespace Graspwright.Benchmarks;

/// <summary>The day's jobs and the sweep for clashes on the demo, after their closing runs.</summary>
internal static class JobTimes
{
    private const double Seconds = 2;

    /// <summary>Measures both.</summary>
    public static Section Measure()
    {
        HandModel hand = HandFile.Read(Path.Combine(Repository.Root, "examples", "boatyard", "hand.toml")).Hand ?? throw new InvalidOperationException("The demo hand does not read.");
        Dictionary<RunKey, Ran> runs = JobRuns.Runs(hand, hand.Jobs, ClosingRun.Solve);
        Timing jobs = Timing.Of(() =>
        {
            foreach (Job job in hand.Jobs)
            {
                JobRuns.Outcome(hand, job, runs[RunKey.Of(job)]);
            }
        }, Seconds);
        DriveModel drive = DriveMapping.ToDrive(hand);
        RoomModel room = RoomMapping.ToRoom(hand, drive) ?? throw new InvalidOperationException("The demo hand gives no room.");
        RunResult free = ClosingRun.Solve(drive, HeldObject.None, new() { EffortFraction = null, Opening = false });
        RoomSweep sweep = new(room, free.Layout);
        Timing swept = Timing.Of(() => sweep.Sweep(free.Closing), Seconds);
        return new("Jobs and room on the demo", $"The {hand.Jobs.Count} jobs of the boatyard hand, each in its own attitude with everything that is said of it and its load in all five attitudes, on one core, after the {runs.Count} closing runs they need; and one sweep of all moving parts over the travel, {sweep.Sweep(free.Closing).Pairs.Count + sweep.Sweep(free.Closing).OnPalm.Count} pairs.",
        [
            Row.AtMost("all jobs, best batch", jobs.Best, 0.060, 1e3, "ms"),
            new("all jobs, median batch", $"{Row.Number(jobs.Median * 1e3)} ms"),
            Row.AtMost("one sweep, best batch", swept.Best, 0.030, 1e3, "ms"),
            new("one sweep, median batch", $"{Row.Number(swept.Median * 1e3)} ms"),
        ]);
    }
}
