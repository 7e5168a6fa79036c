using System.CommandLine;
using System.Diagnostics;
using System.Threading.Channels;
using Graspwright.Cli.Line;
using Graspwright.Hand;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Signals;

namespace Graspwright.Cli.Verbs;

/// <summary><c>listen HAND</c>: samples from a serial port or standard input, recorded and judged as they come.</summary>
internal sealed class ListenVerb() : Verb("listen", "Take samples from a serial port or standard input: record them, say how each channel is connected and what acts.")
{
    private const string StandardInput = "-";
    private readonly Option<string> _port = new("--port") { Description = "Port of the board, or - for standard input; a line of numbers per sample.", HelpName = "PORT", DefaultValueFactory = _ => StandardInput };
    private readonly Option<double?> _rate = new("--rate") { Description = "Samples a second that the board sends; without it that of the recordings, else 1000.", HelpName = "HERTZ" };
    private readonly Option<string?> _record = new("--record") { Description = "Write every sample to this CSV file; a file that is there is kept.", HelpName = "FILE" };
    private readonly Option<double?> _seconds = new("--seconds") { Description = "Stop after so long; without it, Ctrl-C stops and keeps the recording, as does closing the terminal.", HelpName = "SECONDS" };
    private readonly Option<string?> _cues = new("--cues") { Description = "Say these cues at their times and record them as gestures: start_s, end_s, gesture.", HelpName = "FILE" };
    private readonly Option<bool> _counted = new("--counted") { Description = "A running number stands before the channels, so that lost samples can be counted." };
    private readonly Option<bool> _trace = new("--trace") { Description = "Draw a small bar for each channel." };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_port);
        command.Add(_rate);
        command.Add(_record);
        command.Add(_seconds);
        command.Add(_cues);
        command.Add(_counted);
        command.Add(_trace);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        ListeningPlan plan = Plan(parsed, hand, path, terminal);
        string? file = parsed.GetValue(_record);
        if (file is not null && File.Exists(file))
        {
            throw new BadInputException(new InputError(file, 0, 0, "--record", "the file is there already", "a name that is free", "Give another name, or move the file away: it is not overwritten."));
        }

        using Stream line = OpenLine(parsed.GetRequiredValue(_port), hand.Signals!.LineSpeed);
        using CancellationTokenSource stop = new();
        Interruption.Finish = stop.Cancel; // before anything is recorded, so that no stop can come too early
        terminal.Talk.WriteLine($"Listening to {plan.Channels.Count} channels; Ctrl-C stops{(file is null ? "" : " and keeps the recording")}.");
        string part = $"{file}.{Environment.ProcessId}.part";
        using Stream? record = file is null ? null : OpenRecord(part, file);
        Listening listening = new(plan, record);
        string ending = Listen(listening, line, record, parsed.GetValue(_seconds) ?? double.PositiveInfinity, parsed.GetValue(_trace), terminal, stop.Token);
        bool stopped = stop.IsCancellationRequested;
        if (record is not null)
        {
            listening.Close();
            record.Dispose();
            File.Move(part, file!, overwrite: false);
        }

        Interruption.Finish = null;
        return Reply.Of(listening.Answer(hand.Name, ending, file), stopped ? ExitCode.Stopped : ExitCode.Answered);
    }

    private ListeningPlan Plan(ParseResult parsed, HandModel hand, string path, Terminal terminal)
    {
        if (hand.Signals is not { Channels.Count: > 0 } signals)
        {
            throw new BadInputException(new InputError(path, 0, 0, "signals.channels", "no muscle signals", "a section [signals] with channels", "Add [signals.channels.NAME] with gesture = \"fist\", in the order of the board's columns."));
        }

        double? rate = parsed.GetValue(_rate);
        if (rate is not null && !(rate >= 10 && rate <= 100_000))
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--rate", $"{rate}", "10 to 100000", "Give the samples a second of each channel."));
        }

        IReadOnlyList<Mark> cues = [];
        List<InputError> errors = [];
        if (parsed.GetValue(_cues) is { } file)
        {
            cues = SignalFiles.Trying(file, "--cues", errors, () => CueList.Read(File.ReadAllText(file))) ?? throw new BadInputException(errors);
        }

        // Levels come from the recordings of gestures, where there are any; listening works without.
        ThresholdsResult? found = signals.Recordings.Any(r => !r.IsWear) ? ThresholdsAnswer.Answer(hand, path) : null;
        if (found?.Set is null)
        {
            terminal.Talk.WriteLine("No levels yet: record gestures first. Connection is judged all the same.");
        }

        SignalKind kind = signals.Kind == "envelope" ? SignalKind.Envelope : signals.Kind == "raw" ? SignalKind.Raw : found?.Set?.Kind ?? SignalKind.Unclear;
        return new([.. signals.Channels.Select(c => c.Name)], rate ?? found?.Set?.Recordings[0].Recording.RateHertz ?? 1000, kind, signals.MainsHertz, parsed.GetValue(_counted))
        {
            Settings = [.. found?.Found.Select(f => f?.Settings) ?? []],
            Gains = [.. found?.Set?.Recordings[0].Recording.Channels.Select(c => c.Gain) ?? []],
            Cues = cues,
        };
    }

    private static Stream OpenLine(string port, double speed)
    {
        if (port == StandardInput)
        {
            return Console.OpenStandardInput();
        }

        try
        {
            return SerialLine.Open(port, (uint)speed);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            bool there = File.Exists(port);
            throw new BadInputException(new InputError(port, 0, 0, "--port", there ? $"the port cannot be opened ({refusal.Message.TrimEnd('.')})" : "no such port", "a serial port, or - for standard input",
                there ? "Close other programs that use it, and see that you may read it." : "Plug the board in and look up its name; on Linux it is often /dev/ttyACM0 or /dev/ttyUSB0."));
        }
    }

    private static FileStream OpenRecord(string part, string file)
    {
        try
        {
            return new(part, FileMode.Create, FileAccess.Write, FileShare.Read, 1 << 16);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(file, 0, 0, "--record", $"the file cannot be written ({refusal.Message.TrimEnd('.')})", "a file in a folder you may write to", "Check the folder and its permissions."));
        }
    }

    /// <summary>A thread reads the line and never waits for anything else; this one takes what has come, in order.</summary>
    private static string Listen(Listening listening, Stream line, Stream? record, double seconds, bool trace, Terminal terminal, CancellationToken stop)
    {
        Channel<(byte[] Bytes, double At)> queue = System.Threading.Channels.Channel.CreateUnbounded<(byte[] Bytes, double At)>(new() { SingleReader = true, SingleWriter = true });
        long start = Stopwatch.GetTimestamp();
        string vanished = "";
        Thread reader = new(() => vanished = LineReading.All(line, queue.Writer, () => Stopwatch.GetElapsedTime(start).TotalSeconds)) { IsBackground = true, Name = "line" };
        reader.Start();
        double said = 0;
        string cue = "";
        bool ended = false;
        while (!ended && !stop.IsCancellationRequested && Stopwatch.GetElapsedTime(start).TotalSeconds < seconds)
        {
            ended = Next(queue.Reader, listening, stop);
            double now = Stopwatch.GetElapsedTime(start).TotalSeconds;
            listening.Feed([], now);
            if (listening.Cue != cue)
            {
                cue = listening.Cue;
                terminal.Talk.WriteLine(cue.Length > 0 ? $"Now: {cue}" : "Relax.");
            }

            if (now - said >= 1)
            {
                said = now;
                record?.Flush();
                terminal.Talk.WriteLine(listening.Words(trace));
            }
        }

        while (queue.Reader.TryRead(out (byte[] Bytes, double At) piece))
        {
            listening.Feed(piece.Bytes, piece.At);
        }

        return stop.IsCancellationRequested ? "Stopped by you." : !ended ? "The time asked for is over." : vanished.Length > 0 ? vanished : "The line ended.";
    }

    /// <summary>Waits for the next piece, a tenth of a second at most.</summary>
    /// <returns>Whether the line has ended and everything of it was taken.</returns>
    private static bool Next(ChannelReader<(byte[] Bytes, double At)> queue, Listening listening, CancellationToken stop)
    {
        while (queue.TryRead(out (byte[] Bytes, double At) piece))
        {
            listening.Feed(piece.Bytes, piece.At);
        }

        using CancellationTokenSource brief = CancellationTokenSource.CreateLinkedTokenSource(stop);
        brief.CancelAfter(100);
        try
        {
            return !queue.WaitToReadAsync(brief.Token).AsTask().GetAwaiter().GetResult();
        }
        catch (OperationCanceledException)
        {
            return false; // nothing came meanwhile
        }
    }
}
