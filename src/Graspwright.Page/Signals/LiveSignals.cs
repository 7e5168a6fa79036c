using System.Globalization;
using System.Threading.Channels;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Page.Works;
using Graspwright.Signals.Quality;
using Graspwright.Workshop.Signals;

namespace Graspwright.Page.Signals;

/// <summary>The board listened to from the page: begun, watched, recorded, stopped.</summary>
/// <param name="open">The open hand.</param>
/// <param name="answers">What the verbs answer about it.</param>
public sealed class LiveSignals(OpenHand open, HandAnswers answers)
{
    private const string Key = "listen";
    private const int TellEveryMilliseconds = 100;

    private readonly TimeProvider _time = answers.Works.Time;

    /// <summary>The listening that goes on, or the last.</summary>
    public LongWork? Work => answers.Works.Find(Key);

    /// <summary>Begins to listen.</summary>
    /// <param name="lines">The ports.</param>
    /// <param name="port">Which.</param>
    /// <param name="rate">Samples a second, as typed; empty = that of the recordings, else 1000.</param>
    /// <param name="counted">Whether a running number stands before the channels.</param>
    /// <param name="record">Whether it is recorded.</param>
    public Outcome Begin(BoardLines lines, string port, string rate, bool counted, bool record)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(rate);
        if (Work is { Goes: true })
        {
            return Outcome.Done; // a second touch does not begin again
        }

        if (open.State.Reading.Hand is not { Signals: { Channels.Count: > 0 } signals } hand)
        {
            return Wrong("signals.channels", "no muscle signals", "a section [signals] with channels", "add [signals.channels.NAME], in the order of the board's columns");
        }

        if (!lines.Names().Contains(port, StringComparer.Ordinal))
        {
            return Wrong("port", $"'{port}', which is not there", lines.Names().Count == 0 ? "a port with a board" : string.Join(", ", lines.Names()), "plug the board in, and look at the page again");
        }

        double hertz = 0;
        if (rate.Trim().Length > 0 && !(double.TryParse(rate, NumberStyles.Float, CultureInfo.InvariantCulture, out hertz) && hertz is >= 10 and <= 100_000))
        {
            return Wrong("samples a second", $"'{rate}'", "10 to 100000", "give the samples a second of each channel, or leave it empty");
        }

        Stream line;
        try
        {
            line = lines.Open(port, signals.LineSpeed);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return Wrong("port", $"the port cannot be opened ({refusal.Message.TrimEnd('.')})", "a port that is free", "close other programs that use it, and see that you may read it");
        }

        ListeningPlan plan = Plan(hand, signals, hertz > 0 ? hertz : null, counted);
        string? file = record ? FreeName() : null;
        answers.Works.Begin(new(Key, "Listening", "samples", "signals"), work => Listen(work, line, plan, file));
        open.Tell();
        return Outcome.Done;
    }

    private ListeningPlan Plan(HandModel hand, MuscleSignals signals, double? rate, bool counted)
    {
        // Levels come from the recordings of gestures, where there are any; listening works without.
        ThresholdsResult? found = signals.Recordings.Any(r => !r.IsWear) ? ThresholdsAnswer.Answer(hand, open.Path) : null;
        SignalKind kind = signals.Kind == "envelope" ? SignalKind.Envelope : signals.Kind == "raw" ? SignalKind.Raw : found?.Set?.Kind ?? SignalKind.Unclear;
        return new([.. signals.Channels.Select(c => c.Name)], rate ?? found?.Set?.Recordings[0].Recording.RateHertz ?? 1000, kind, signals.MainsHertz, counted)
        {
            Settings = [.. found?.Found.Select(f => f?.Settings) ?? []],
            Gains = [.. found?.Set?.Recordings[0].Recording.Channels.Select(c => c.Gain) ?? []],
        };
    }

    private Told Listen(LongWork work, Stream line, ListeningPlan plan, string? file)
    {
        string hand = open.State.Hand!.Name;
        using (line)
        {
            string part = file + ".part";
            using FileStream? record = file is null ? null : new(part, FileMode.Create, FileAccess.Write, FileShare.Read, 1 << 16);
            Listening listening = new(plan, record);
            string ending = Take(work, line, listening);
            listening.Close();
            record?.Dispose();
            if (file is not null)
            {
                File.Move(part, file);
            }

            return new(Key, listening.Answer(hand, ending, file is null ? null : Path.GetFileName(file)), []);
        }
    }

    /// <summary>A thread reads the port and waits for nothing else; this one takes what has come, in order.</summary>
    private string Take(LongWork work, Stream line, Listening listening)
    {
        Channel<(byte[] Bytes, double At)> queue = System.Threading.Channels.Channel.CreateUnbounded<(byte[] Bytes, double At)>(new() { SingleReader = true, SingleWriter = true });
        long start = _time.GetTimestamp();
        string vanished = "";
        Thread reader = new(() => vanished = LineReading.All(line, queue.Writer, () => _time.GetElapsedTime(start).TotalSeconds)) { IsBackground = true, Name = "board" };
        reader.Start();
        bool ended = false;
        while (!ended && !work.Stop.IsCancellationRequested)
        {
            ended = Next(queue.Reader, listening, work.Stop);
            listening.Feed([], _time.GetElapsedTime(start).TotalSeconds);
            work.SoFar = LiveState.Of(listening);
            work.Count(0, 0, string.Create(CultureInfo.InvariantCulture, $"{listening.Samples} samples, {listening.Lost} lost, {listening.Broken} unreadable"));
        }

        while (queue.Reader.TryRead(out (byte[] Bytes, double At) piece))
        {
            listening.Feed(piece.Bytes, piece.At);
        }

        return work.Stop.IsCancellationRequested ? "Stopped by you." : vanished.Length > 0 ? vanished : "The line ended.";
    }

    /// <summary>Takes what has come, and waits a tenth of a second at most for more.</summary>
    /// <returns>Whether the line has ended and everything of it was taken.</returns>
    private static bool Next(ChannelReader<(byte[] Bytes, double At)> queue, Listening listening, CancellationToken stop)
    {
        using CancellationTokenSource brief = CancellationTokenSource.CreateLinkedTokenSource(stop);
        brief.CancelAfter(TellEveryMilliseconds);
        try
        {
            while (queue.WaitToReadAsync(brief.Token).AsTask().GetAwaiter().GetResult())
            {
                while (queue.TryRead(out (byte[] Bytes, double At) piece))
                {
                    listening.Feed(piece.Bytes, piece.At);
                }
            }

            return true;
        }
        catch (OperationCanceledException)
        {
            return false; // the tenth of a second is over
        }
    }

    /// <summary>A name beside the hand file that no file has.</summary>
    private string FreeName()
    {
        string day = _time.GetLocalNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        string Name(int n) => Path.Combine(open.Folder, $"{Path.GetFileNameWithoutExtension(open.FullPath)}.heard-{day}{(n == 0 ? "" : $"-{n}")}.csv");
        return Enumerable.Range(0, int.MaxValue).Select(Name).First(n => !File.Exists(n) && !File.Exists(n + ".part"));
    }

    private Outcome Wrong(string key, string found, string allowed, string fix) => new([new(open.Path, 0, 0, key, found, allowed, fix)]);
}
