using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Separation;
using Graspwright.Signals.Thresholds;
using Graspwright.Workshop.Signals;

namespace Graspwright.Benchmarks;

/// <summary>One hour of four signals at 2 kHz: reading, filtering beside SciPy, judging; and live lines.</summary>
internal static class SignalTimes
{
    private const int Rate = 2000, Channels = 4, Hour = 3600;
    /// <summary>Asks the program to read and judge one recording, so that its memory can be measured.</summary>
    public const string OfOneHour = "signals-hour";

    private const string SystemPython = "/usr/bin/python3";

    /// <summary>Measures all of it.</summary>
    public static Section Measure()
    {
        string folder = Directory.CreateTempSubdirectory("graspwright").FullName;
        try
        {
            return Measure(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static Section Measure(string folder)
    {
        string csv = Path.Combine(folder, "hour.csv"), edf = Path.Combine(folder, "hour.edf");
        WriteFiles(csv, edf);
        List<Row> rows = [];
        rows.Add(Row.AtMost("CSV read, an hour of 4 × 2 kHz", Read(csv), 3, 1, "s"));
        (double edfSeconds, Recording recording) = Best(() => SignalFiles.Read(edf, new()), 3);
        rows.Add(Row.AtMost("EDF read, the same", edfSeconds, 0.5, 1, "s"));
        Filter(recording, rows);
        Judge(recording, rows);
        Live(rows);
        rows.Add(Row.AtMost("most memory of a process that reads the hour from CSV and judges it", Memory(csv), 500, 1, "MB"));
        rows.Add(Row.AtMost("the same from EDF", Memory(edf), 500, 1, "MB"));
        return new("Muscle signals", "An hour of four channels at 2 kHz, made of repeated noise and bursts. Filtering: band-pass of order 4 from 20 to 450 Hz, four sections, in place; SciPy's `sosfilt` on the same, channel after channel, as it takes an array. Best of a few runs each, in one run of this program.", rows);
    }

    /// <summary>Reads and judges a recording.</summary>
    /// <param name="file">The recording.</param>
    /// <returns>Most memory of this process so far [MB].</returns>
    public static double MemoryOfOneHour(string file)
    {
        Recording recording = SignalFiles.Read(file, new());
        _ = Judged(recording);
        using Process self = Process.GetCurrentProcess();
        return self.PeakWorkingSet64 / 1e6;
    }

    private static double Memory(string file)
    {
        string output = PrintedBy("dotnet", Environment.GetCommandLineArgs()[0], OfOneHour, file) ?? throw new InvalidOperationException("The process of one hour failed.");
        return double.Parse(output, CultureInfo.InvariantCulture);
    }

    private static double Read(string csv)
    {
        (double seconds, Recording read) = Best(() => SignalFiles.Read(csv, new()), 2);
        return read.Length == Rate * Hour ? seconds : throw new InvalidOperationException($"{read.Length} samples were read.");
    }

    private static void Filter(Recording recording, List<Row> rows)
    {
        SectionChain chain = Butterworth.BandPass(4, 20, 450, Rate);
        double[][] values = [.. recording.Channels.Select(c => c.Values())];
        (double ours, _) = Best(() =>
        {
            new Filtering(chain).Run([.. values]);
            return values;
        }, 3);
        rows.Add(new("filtering, ours", $"{Row.Number(ours)} s"));
        const string program = "import json,time,numpy as np\nfrom scipy import signal\nsos=signal.butter(4,[20,450],'bandpass',fs=2000,output='sos')\nx=np.random.default_rng(1).standard_normal((4,7200000))\nb=9e9\nfor _ in range(3):\n t=time.perf_counter(); signal.sosfilt(sos,x); b=min(b,time.perf_counter()-t)\nprint(json.dumps(b))";
        if (!File.Exists(SystemPython) || PrintedBy(SystemPython, "-c", "import scipy") is null || PrintedBy(SystemPython, "-c", program) is not { } output)
        {
            rows.Add(new("filtering, SciPy ÷ ours", "not measured: no SciPy here"));
            return;
        }

        double theirs = JsonSerializer.Deserialize<double>(output);
        rows.Add(new("filtering, SciPy", $"{Row.Number(theirs)} s"));
        rows.Add(Row.AtLeast("filtering, SciPy ÷ ours", theirs / ours, 2, "×"));
    }

    private static void Judge(Recording recording, List<Row> rows)
    {
        (double seconds, _) = Best(() => Judged(recording), 3);
        rows.Add(Row.AtMost("kind, contacts, envelopes, features and thresholds of the hour, beside reading", seconds, 2, 1, "s"));
    }

    private static (IReadOnlyList<ContactReading> Contacts, LabelledWindows Windows, ThresholdResult?[] Found) Judged(Recording recording)
    {
        IReadOnlyList<WindowPowers> powers = WindowPowers.Of(recording, 50);
        SignalKind kind = KindOfSignal.Of(powers[0], Rate).Kind;
        IReadOnlyList<ContactReading> contacts = ContactJudging.Judge(recording, powers, kind, new());
        FrontEnd front = FrontEnd.Usual(Rate, isRaw: true, 50);
        Take take = new(Rate, front.Envelopes(recording.Channels), recording.Marks, 1);
        LabelledWindows windows = LabelledWindows.Cut(["a", "b", "c", "d"], ["rest", "fist"], [take], 0.2, 0.1);
        ThresholdResult?[] found = new ThresholdResult?[Channels];
        Parallel.For(0, Channels, c => found[c] = ThresholdSearch.Find([take], c, "fist", front.DelaySeconds, new(0.125)));
        return (contacts, windows, found);
    }

    /// <summary>Lines through a pipe at 2 kHz: from writing a line to the verdict of its switch.</summary>
    private static void Live(List<Row> rows)
    {
        const int lines = 6000;
        using System.IO.Pipes.AnonymousPipeServerStream far = new(System.IO.Pipes.PipeDirection.Out);
        using System.IO.Pipes.AnonymousPipeClientStream near = new(System.IO.Pipes.PipeDirection.In, far.ClientSafePipeHandle);
        long[] written = new long[lines];
        Thread board = new(() =>
        {
            long start = Stopwatch.GetTimestamp();
            for (int i = 0; i < lines; i++)
            {
                while (Stopwatch.GetElapsedTime(start).TotalSeconds < (double)i / Rate)
                {
                    Thread.Yield();
                }

                written[i] = Stopwatch.GetTimestamp();
                far.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{i % 256},{i % 100},{i % 90},{i % 80},{i % 70}\n")));
            }

            far.Dispose();
        });
        Listening listening = new(new(["a", "b", "c", "d"], Rate, SignalKind.Raw, 50, Counted: true) { Settings = [new(50, 20, 0.05, 0.2), null, null, null] }, Stream.Null);
        List<double> late = [];
        board.Start();
        byte[] buffer = new byte[1 << 14];
        for (int n = near.Read(buffer); n > 0; n = near.Read(buffer))
        {
            long before = listening.Samples;
            listening.Feed(buffer.AsSpan(0, n), 0);
            long now = Stopwatch.GetTimestamp();
            for (long i = before; i < listening.Samples; i++)
            {
                late.Add(Stopwatch.GetElapsedTime(written[i], now).TotalSeconds);
            }
        }

        board.Join();
        late.Sort();
        rows.Add(new("live samples lost of 6000, 4 × 2 kHz", $"{lines - listening.Samples}", "0", listening.Samples == lines));
        rows.Add(Row.AtMost("live, line written to verdict, 99 of 100", late[(int)(0.99 * late.Count)], 0.02, 1e3, "ms"));
    }

    private static void WriteFiles(string csv, string edf)
    {
        Random chance = new(7);
        float[][] second = [.. Enumerable.Range(0, Channels * 8).Select(k => Enumerable.Range(0, Rate).Select(_ => (float)Math.Round((k >= Channels * 4 ? 400 : 20) * (chance.NextDouble() + chance.NextDouble() - 1))).ToArray())];
        float[] Part(int c, int s) => second[Channels * (s % 4 == 3 ? 4 + s / 4 % 4 : s % 4) + c];
        using (StreamWriter text = new(csv, append: false, new UTF8Encoding(false), 1 << 16))
        {
            text.Write("time_s,a [uV],b [uV],c [uV],d [uV],gesture\n");
            for (int s = 0; s < Hour; s++)
            {
                for (int i = 0; i < Rate; i++)
                {
                    text.Write(string.Create(CultureInfo.InvariantCulture, $"{s + i / (double)Rate:0.0000},{Part(0, s)[i]},{Part(1, s)[i]},{Part(2, s)[i]},{Part(3, s)[i]},{(s % 4 == 3 ? "fist" : "rest")}\n"));
                }
            }
        }

        Channel[] channels = [.. Enumerable.Range(0, Channels).Select(c =>
        {
            float[] counts = new float[Rate * Hour];
            for (int s = 0; s < Hour; s++)
            {
                Part(c, s).CopyTo(counts, s * Rate);
            }

            return new Channel($"{(char)('a' + c)}", "V", counts, 1e-6);
        })];
        File.WriteAllBytes(edf, EdfWriter.Write(new(Rate, channels, [.. Enumerable.Range(0, Hour).Select(s => new Mark(s, s + 1, s % 4 == 3 ? "fist" : "rest"))])));
    }

    private static (double Seconds, T Result) Best<T>(Func<T> work, int runs)
    {
        double best = double.PositiveInfinity;
        T result = default!;
        for (int i = 0; i < runs; i++)
        {
            result = default!;
            GC.Collect();
            long start = Stopwatch.GetTimestamp();
            result = work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return (best, result);
    }

    private static string? PrintedBy(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> talk = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        talk.Wait();
        return process.ExitCode == 0 ? output : null;
    }
}
