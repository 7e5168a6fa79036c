using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Graspwright.Mechanics.Run;
using Graspwright.Mechanics.Tests.Run;

namespace Graspwright.Benchmarks;

/// <summary>One adaptive finger, wrist angle by wrist angle: our solver beside SciPy's SLSQP, in one run.</summary>
internal static class FingerBesideScipy
{
    private const string Title = "One adaptive finger beside SciPy";
    private const double LengthScale = 0.01; // m that count as 1 rad, as in the SciPy program

    /// <summary>Measures both.</summary>
    public static Section Measure()
    {
        string program = Path.Combine(Repository.Root, "benchmarks", "peers", "finger_slsqp.py"), file = Repository.CaseFile("12a");
        if (!File.Exists(program))
        {
            return new(Title, "Not measured: benchmarks/peers/finger_slsqp.py is not there.", []);
        }

        if (Python() is null)
        {
            return new(Title, "Not measured: no python3 on the search path has SciPy.", []);
        }

        DriveCase c = Repository.Case("12a");
        PathFollower follower = new(c.Drive, c.Held, c.Options);
        Timing before = Timing.Of(follower.Run, 1);
        using JsonDocument peer = JsonDocument.Parse(Output(program, file, "--repeats", "5"));
        Timing after = Timing.Of(follower.Run, 1);
        double best = Math.Min(before.Best, after.Best), median = 0.5 * (before.Median + after.Median);
        RunResult run = follower.Result();
        JsonElement root = peer.RootElement;
        int angles = root.GetProperty("slsqp").GetProperty("angles").GetArrayLength();
        List<Row> rows =
        [
            new("our run ÷ angles, best batch", $"{Row.Number(best / angles * 1e6)} µs an angle"),
            new("our run ÷ angles, median batch", $"{Row.Number(median / angles * 1e6)} µs an angle"),
        ];
        Add(rows, run, root.GetProperty("slsqp"), "SLSQP alone", median, false);
        Add(rows, run, root.GetProperty("slsqp_polished"), "SLSQP, then Newton", median, true);
        string words = $"Reference case 12a, its {angles} wrist angles; our run also finds its events. SciPy {root.GetProperty("scipy").GetString()}, NumPy {root.GetProperty("numpy").GetString()}, Python {root.GetProperty("python").GetString()}, analytic gradient, each angle from the one before, medians of 5 runs against our median. States are compared at the whole degrees; 10 mm of carriage count as 1 rad. SLSQP alone stops at about the square root of machine precision, so the states are compared behind a few Newton steps too.";
        return new(Title, words, rows);
    }

    private static void Add(List<Row> rows, RunResult run, JsonElement peer, string name, double ours, bool polished)
    {
        double theirs = peer.GetProperty("seconds_for_all_angles").GetDouble();
        rows.Add(new($"{name}", $"{Row.Number(theirs / peer.GetProperty("angles").GetArrayLength() * 1e6)} µs an angle"));
        rows.Add(polished ? new($"{name} ÷ ours", $"{Row.Number(theirs / ours)} ×") : Row.AtLeast($"{name} ÷ ours", theirs / ours, 200, "×"));
        double apart = Apart(run, peer);
        string what = $"greatest difference of state, {name}";
        rows.Add(polished ? Row.AtMost(what, apart, 1e-8, 1, "rad") : new(what, $"{Row.Number(apart)} rad"));
    }

    private static double Apart(RunResult run, JsonElement peer)
    {
        const double Degree = Math.PI / 180;
        double worst = 0;
        int common = 0;
        foreach (JsonElement at in peer.GetProperty("angles").EnumerateArray())
        {
            double theta = at.GetProperty("theta_deg").GetDouble() * Degree;
            double[]? row = run.Closing.FirstOrDefault(r => r[TraceLayout.OutputStep] != 0 && Math.Abs(r[TraceLayout.Theta] - theta) < 1e-10);
            if (row is null)
            {
                continue;
            }

            common++;
            worst = Math.Max(worst, Math.Abs(row[TraceLayout.Phi] - at.GetProperty("crank_deg").GetDouble() * Degree));
            worst = Math.Max(worst, Math.Abs(row[TraceLayout.Carriage] - at.GetProperty("carriage_mm").GetDouble() * 1e-3) / LengthScale);
            int joint = 0;
            foreach (JsonElement q in at.GetProperty("joints_deg").EnumerateArray())
            {
                worst = Math.Max(worst, Math.Abs(row[run.Layout.Joint(0, joint++)] - q.GetDouble() * Degree));
            }
        }

        return common >= 30 ? worst : throw new InvalidOperationException($"Only {common.ToString(CultureInfo.InvariantCulture)} angles are common to both.");
    }

    // Debian's own Python: the one that the package python3-scipy serves.
    private const string SystemPython = "/usr/bin/python3";

    private static string? Python() => File.Exists(SystemPython) && Start(["-c", "import scipy"]).Code == 0 ? SystemPython : null;

    private static string Output(params string[] arguments)
    {
        (int code, string output, string talk) = Start(arguments);
        return code == 0 ? output : throw new InvalidOperationException($"The SciPy program ended with {code.ToString(CultureInfo.InvariantCulture)}: {talk}");
    }

    private static (int Code, string Output, string Talk) Start(string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(SystemPython, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> talk = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, talk.GetAwaiter().GetResult());
    }
}
