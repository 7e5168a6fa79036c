using System.Diagnostics;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Run;
using Graspwright.Numerics;

namespace Graspwright.Benchmarks;

/// <summary>Many different hands on every core against the same hands on one.</summary>
internal static class ManyHands
{
    private const int Seed = 20260;
    private const int Batch = 250;
    private const int Rounds = 3;
    private const ulong FnvOffset = 14695981039346656037, FnvPrime = 1099511628211;

    /// <summary>Measures both.</summary>
    /// <param name="hands">How many hands.</param>
    public static Section Measure(int hands)
    {
        DriveCase plain = Repository.Case("07a");
        Slot slot = Repository.Case("05a").Drive.Crank.Slot!;
        DriveModel[] drives = [.. Enumerable.Range(0, hands).Select(i => Vary(plain.Drive, slot, i))];
        ulong[] alone = new ulong[hands], together = new ulong[hands];
        int cores = Environment.ProcessorCount, lost = 0;
        double one = 0, many = 0;
        Solve(plain, drives, together, 0, Math.Min(Batch, hands), cores);
        for (int from = 0; from < hands; from += Batch)
        {
            int to = Math.Min(from + Batch, hands);
            double bestOne = double.PositiveInfinity, bestMany = double.PositiveInfinity;
            for (int round = 0; round < Rounds; round++)
            {
                bestOne = Math.Min(bestOne, Solve(plain, drives, alone, from, to, 1));
                bestMany = Math.Min(bestMany, Solve(plain, drives, together, from, to, cores));
            }

            one += bestOne;
            many += bestMany;
        }

        lost = alone.Count(sum => sum == 0);
        bool same = alone.AsSpan().SequenceEqual(together);
        int different = alone.Where(sum => sum != 0).Distinct().Count();
        return new($"Many hands on {cores} cores", $"Reference case 07a with another fulcrum, crank arms and slot for each hand (seed {Seed}), closing and opening, set-up of each hand and its recorded states included. Batches of {Batch} hands run on one core and on all in turn; the best of {Rounds} rounds counts for each.",
        [
            new("hands", Row.Number(hands)),
            new("all on one core", $"{Row.Number(one)} s, {Row.Number(one / hands * 1e3)} ms a hand"),
            new($"all on {cores} cores", $"{Row.Number(many)} s, {Row.Number(hands / many)} hands a second"),
            Row.AtLeast($"one core ÷ {cores} cores", one / many, 1.8, "×"),
            new("every number of every hand the same, bit for bit", same ? "yes" : "no", "yes", same),
            new("hands with results of their own", Row.Number(different)),
            new("hands whose path was lost", Row.Number(lost)),
        ]);
    }

    private static double Solve(DriveCase plain, DriveModel[] drives, ulong[] sums, int from, int to, int threads)
    {
        RunOptions options = plain.Options with { Opening = true };
        long start = Stopwatch.GetTimestamp();
        if (threads == 1)
        {
            for (int i = from; i < to; i++)
            {
                sums[i] = Sum(ClosingRun.Solve(drives[i], plain.Held, options));
            }
        }
        else
        {
            Parallel.For(from, to, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => sums[i] = Sum(ClosingRun.Solve(drives[i], plain.Held, options)));
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    /// <summary>FNV-1a over the bits of every recorded number, 64 at a time; 0 where the path was lost.</summary>
    private static ulong Sum(RunResult run)
    {
        if (run.Failure is not null)
        {
            return 0;
        }

        ulong sum = FnvOffset;
        foreach (double[] row in run.Closing)
        {
            sum = Sum(sum, row);
        }

        foreach (double[] row in run.Opening)
        {
            sum = Sum(sum, row);
        }

        return sum;
    }

    private static ulong Sum(ulong sum, double[] row)
    {
        foreach (double value in row)
        {
            sum = (sum ^ BitConverter.DoubleToUInt64Bits(value)) * FnvPrime;
        }

        return sum;
    }

    private static DriveModel Vary(DriveModel drive, Slot slot, int index)
    {
        Random random = new(Seed + index);
        double Within(double low, double high) => low + (high - low) * random.NextDouble();
        BellCrank crank = drive.Crank;
        return drive with
        {
            Crank = crank with
            {
                Fulcrum = crank.Fulcrum + new Vector2D(Within(-2e-3, 2e-3), Within(-2e-3, 2e-3)),
                Input = Within(0.9, 1.1) * crank.Input,
                Output = Within(0.9, 1.1) * crank.Output,
                Slot = slot with { Length = Within(3e-3, 8e-3), Preload = Within(0.8, 1.4) * slot.Preload, Rate = Within(0.8, 1.3) * slot.Rate },
            },
        };
    }
}
