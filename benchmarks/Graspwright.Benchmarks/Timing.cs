using System.Diagnostics;

namespace Graspwright.Benchmarks;

/// <summary>Times of short work on a machine that does other things as well.</summary>
/// <param name="Best">Shortest mean time of a batch [s]: the work without the disturbance.</param>
/// <param name="Median">Median of the batches [s].</param>
internal readonly record struct Timing(double Best, double Median)
{
    private const double BatchSeconds = 0.004; // shorter than a slice of the scheduler, so that some batches run undisturbed

    /// <summary>Runs some work over and over.</summary>
    /// <param name="work">The work.</param>
    /// <param name="seconds">Time to spend [s], warm-up not counted.</param>
    public static Timing Of(Action work, double seconds)
    {
        int runs = WarmUp(work, seconds / 2);
        List<double> times = [];
        Stopwatch all = Stopwatch.StartNew();
        while (all.Elapsed.TotalSeconds < seconds || times.Count < 25)
        {
            long start = Stopwatch.GetTimestamp();
            for (int i = 0; i < runs; i++)
            {
                work();
            }

            times.Add(Stopwatch.GetElapsedTime(start).TotalSeconds / runs);
        }

        return Over(times);
    }

    /// <summary>Best and median of times.</summary>
    /// <param name="times">Times [s].</param>
    public static Timing Over(List<double> times)
    {
        times.Sort();
        return new(times[0], times[times.Count / 2]);
    }

    /// <summary>Runs until the compiler has done its best; returns the runs of a batch.</summary>
    private static int WarmUp(Action work, double seconds)
    {
        double best = double.PositiveInfinity;
        Stopwatch all = Stopwatch.StartNew();
        for (int i = 0; i < 200 || all.Elapsed.TotalSeconds < seconds; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return Math.Max(1, (int)(BatchSeconds / best));
    }
}
