using System.Diagnostics;
using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Search;

namespace Graspwright.Benchmarks;

/// <summary>Designs a second of a search, and a list of ten changes, on the demo.</summary>
internal static class DecidingTimes
{
    private const int Designs = 3000, Rounds = 2, Slice = 160;
    private const string Free = """

        [search.timed.free."crank.fulcrum.x"]
        from = "19 mm"
        to = "24 mm"
        [search.timed.free."crank.fulcrum.y"]
        from = "18 mm"
        to = "21 mm"
        [search.timed.free."crank.input_arm"]
        from = "16 mm"
        to = "20 mm"
        [search.timed.free."crank.slot.length"]
        from = "1 mm"
        to = "4 mm"
        [search.timed.aims]
        "grip_force@mug" = "more"
        "work_in@rail" = "less"
        [search.timed.at_least]
        "grip_force@tin" = "1 N"

        """;

    private const string Opens = """
        [search.timed.at_most]
        "reopening_left@mug" = "90 deg"
        "reopening_left@rail" = "90 deg"
        "reopening_left@tin" = "90 deg"

        """;

    /// <summary>Measures them.</summary>
    public static Section Measure()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "examples", "boatyard", "hand.toml"));
        string adaptive = text.Replace("joints = \"coupled\"\npip_ratio = 0.66\ndip_ratio = 0.56\narm = \"9.5 mm\"", "joints = \"adaptive\"\narms = [\"9.5 mm\", \"6.5 mm\", \"4.5 mm\"]", StringComparison.Ordinal)
            .Replace("spring_rate = [\"15 N·mm/rad\", \"0 N·mm/rad\", \"0 N·mm/rad\"]", "spring_rate = [\"15 N·mm/rad\", \"12 N·mm/rad\", \"9 N·mm/rad\"]", StringComparison.Ordinal);
        Rate coupled = Searched(text, Free), bent = Searched(adaptive, Free), opening = Searched(text, Free + Opens), alone = Searched(text, Free, threads: 1);
        (double first, double best, int sets) = Changed(text);
        return new("Searching and weighing changes on the demo", $"Searches over four free values of the boatyard hand, each design closed on three objects, on every core; slices of {Slice} designs, {Rounds} rounds of {Designs} in one process, making ready not counted. Solver: the share of the cores' time inside closing runs; on a busy machine a thread that another program holds up keeps the batch waiting, so the share of one thread alone stands beside it. By processor time: designs for each second that the process itself had of every core, whatever else ran. Then ten changes with all their sets and pairs, six measures, jobs and knocks among them.",
        [
            Row.AtLeast("coupled fingers, closing only, best slice", coupled.PerSecond, 1000, "designs a second"),
            new("coupled fingers, closing only, median slice", $"{Row.Number(coupled.Median)} designs a second"),
            new("coupled fingers, closing only, by processor time", $"{Row.Number(coupled.ByProcessor)} designs a second"),
            Row.AtLeast("of it in the solver", 100 * coupled.Solver, 90, "%"),
            new("of it in the solver, one thread", $"{Row.Number(100 * alone.Solver)} %"),
            Row.AtLeast("adaptive fingers, closing only, best slice", bent.PerSecond, 500, "designs a second"),
            new("adaptive fingers, closing only, median slice", $"{Row.Number(bent.Median)} designs a second"),
            new("adaptive fingers, closing only, by processor time", $"{Row.Number(bent.ByProcessor)} designs a second"),
            Row.AtLeast("of it in the solver", 100 * bent.Solver, 90, "%"),
            Row.AtLeast("coupled fingers, with opening, best slice", opening.PerSecond, 300, "designs a second"),
            new("coupled fingers, with opening, median slice", $"{Row.Number(opening.Median)} designs a second"),
            new("coupled fingers, with opening, by processor time", $"{Row.Number(opening.ByProcessor)} designs a second"),
            Row.AtLeast("of it in the solver", 100 * opening.Solver, 90, "%"),
            new("live memory after the second round less that after the first", $"{Row.Number(coupled.Growth / 1e3)} kB"),
            Row.AtMost($"ten changes, {sets} sets, best", best, 1, 1, "s"),
            new("ten changes, first time in the process", $"{Row.Number(first)} s"),
        ]);
    }

    private static Rate Searched(string hand, string search, int threads = 0)
    {
        string whole = hand + search;
        HandReading reading = HandFile.Parse(whole, "hand.toml");
        if (reading.Hand is null || HandEditor.Open(reading) is not { } editor)
        {
            throw new InvalidOperationException(string.Join('\n', reading.Errors));
        }

        long inSolver = 0;
        RunResult Timed(Mechanics.Drive.DriveModel drive, Mechanics.Objects.HeldObject held, RunOptions options)
        {
            long start = Stopwatch.GetTimestamp();
            RunResult run = ClosingRun.Solve(drive, held, options);
            Interlocked.Add(ref inSolver, Stopwatch.GetTimestamp() - start);
            return run;
        }

        int cores = threads > 0 ? threads : Environment.ProcessorCount;
        double best = 0, share = 0, processor = 0;
        using Process own = Process.GetCurrentProcess();
        List<long> memory = [];
        List<double> rates = [];
        for (int round = 0; round < Rounds; round++)
        {
            long sliceFrom = -1, sliceStart = 0, begun = 0;
            TimeSpan used = default;
            SearchResult result = Searching.Answer(new(editor)
            {
                Name = "timed",
                Evaluations = Designs,
                Seed = 7,
                Threads = threads,
                Solver = Timed,
                Watch = s =>
                {
                    if (sliceFrom >= 0 && s.Judged - sliceFrom < Slice)
                    {
                        return;
                    }

                    long now = Stopwatch.GetTimestamp();
                    double seconds = (now - sliceStart) / (double)Stopwatch.Frequency, rate = (s.Judged - sliceFrom) / seconds;
                    own.Refresh();
                    if (sliceFrom < 0)
                    {
                        (begun, used) = (s.Judged, own.TotalProcessorTime);
                    }
                    else
                    {
                        processor = (s.Judged - begun) * cores / (own.TotalProcessorTime - used).TotalSeconds;
                        rates.Add(rate);
                        (best, share) = rate > best ? (rate, Interlocked.Read(ref inSolver) / (double)Stopwatch.Frequency / seconds / cores) : (best, share);
                    }

                    (sliceFrom, sliceStart) = (s.Judged, now);
                    Interlocked.Exchange(ref inSolver, 0);
                },
            });
            if (result.Errors.Count > 0)
            {
                throw new InvalidOperationException(result.Errors[0].Text);
            }

            memory.Add(GC.GetTotalMemory(forceFullCollection: true));
        }

        rates.Sort();
        return new(best, rates[rates.Count / 2], share, memory[1] - memory[0], processor);
    }

    private static (double First, double Best, int Sets) Changed(string hand)
    {
        string ten = hand + """

            [changes."softer slot pin".edits]
            "friction.slot" = 0.02
            [changes."shorter arm".edits]
            "crank.output" = ["2.5 mm", "12.5 mm"]
            [changes."longer rail".edits]
            "rail.travel" = "26 mm"

            """;
        HandEditor editor = HandEditor.Open(HandFile.Parse(ten, "hand.toml")) ?? throw new InvalidOperationException("The demo hand does not read.");
        double first = 0, best = double.PositiveInfinity;
        int sets = 0;
        for (int round = 0; round < 4; round++)
        {
            long start = Stopwatch.GetTimestamp();
            ChangesResult result = Changing.Answer(new(editor));
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            if (result.Study is null || result.Study.Items.Count != 10)
            {
                throw new InvalidOperationException($"{result.Study?.Items.Count} changes where ten were wanted.");
            }

            sets = result.Study.Values.Count;
            first = round == 0 ? seconds : first;
            best = Math.Min(best, seconds);
        }

        return (first, best, sets);
    }

    private sealed record Rate(double PerSecond, double Median, double Solver, long Growth, double ByProcessor);
}
