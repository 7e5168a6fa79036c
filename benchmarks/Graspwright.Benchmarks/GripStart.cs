using System.Diagnostics;
using System.Globalization;

namespace Graspwright.Benchmarks;

/// <summary><c>grip</c> on the demo hand, from the start of the process to its end.</summary>
internal static class GripStart
{
    private const int Runs = 9;

    /// <summary>Publishes the program compiled ahead of time and runs it.</summary>
    public static Section Measure()
    {
        string folder = Path.Combine(Repository.Root, "out", "grip"), program = Path.Combine(folder, "graspwright");
        Run("dotnet", "publish", Path.Combine("src", "Graspwright.Cli"), "-c", "Release", "-r", "linux-x64", "--self-contained", "false", "-o", folder);
        List<double> times = [];
        string hand = Path.Combine("examples", "boatyard", "hand.toml");
        Run(program, "grip", hand);
        for (int i = 0; i < Runs; i++)
        {
            times.Add(Run(program, "grip", hand));
        }

        Timing time = Timing.Over(times);
        return new("`grip` on the demo", $"`graspwright grip {hand.Replace('\\', '/')}`, published for linux-x64 and compiled ahead of time (ReadyToRun), from process start to exit: every object, both efforts, closing and opening.",
        [
            Row.AtMost($"median of {Runs.ToString(CultureInfo.InvariantCulture)} runs", time.Median, 0.25, 1, "s"),
            new("shortest of them", $"{Row.Number(time.Best)} s"),
        ]);
    }

    private static double Run(string program, params string[] arguments)
    {
        long start = Stopwatch.GetTimestamp();
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = Repository.Root, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> talk = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        return process.ExitCode == 0 && output.Length > 0
            ? seconds
            : throw new InvalidOperationException($"{program} ended with {process.ExitCode.ToString(CultureInfo.InvariantCulture)}: {output}{talk.GetAwaiter().GetResult()}");
    }
}
