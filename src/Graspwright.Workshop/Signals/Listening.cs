using System.Globalization;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Signals.Thresholds;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Takes samples from a line as they come: records each, runs the switches, judges the contacts.</summary>
/// <remarks>The clock is the caller's; nothing here waits.</remarks>
public sealed class Listening
{
    private const double JudgedSeconds = 6, HeldSeconds = 1;
    private readonly ListeningPlan _plan;
    private readonly LiveLines _lines;
    private readonly SampleClock _clock;
    private readonly RecordWriter? _record;
    private readonly Queue<float>[] _recent;
    private readonly Switch?[] _switches;
    private readonly Filtering?[] _bands;
    private readonly Filtering[] _smooths;
    private readonly double[] _envelope, _greatest;
    private readonly SampleAction _take;
    private double _now, _firstAt = double.NaN, _lastAt;
    private long _atFirst;

    /// <summary>Begins to listen.</summary>
    /// <param name="plan">What is listened to.</param>
    /// <param name="record">Where samples are written as CSV; <see langword="null"/> = nowhere. Not closed here.</param>
    public Listening(ListeningPlan plan, Stream? record)
    {
        ArgumentNullException.ThrowIfNull(plan);
        (_plan, _clock) = (plan, new(plan.RateHertz));
        _record = record is null ? null : new(record, plan.Channels, plan.Cues.Count > 0, _clock);
        int n = plan.Channels.Count;
        _lines = new(n, plan.Counted);
        _recent = [.. Enumerable.Range(0, n).Select(_ => new Queue<float>())];
        _switches = [.. Enumerable.Range(0, n).Select(c => plan.Settings.Count > c && plan.Settings[c] is { } s ? new Switch(s, plan.RateHertz) : null)];
        FrontEnd front = FrontEnd.Usual(plan.RateHertz, plan.Kind != SignalKind.Envelope, plan.MainsHertz);
        _bands = [.. Enumerable.Range(0, n).Select(_ => front.Band is { } band ? new Filtering(band) : null)];
        _smooths = [.. Enumerable.Range(0, n).Select(_ => new Filtering(front.Smooth))];
        (_envelope, _greatest) = (new double[n], new double[n]);
        _take = Take;
    }

    /// <summary>Sound samples so far.</summary>
    public long Samples => _lines.Samples;

    /// <summary>Samples that the running number says were lost.</summary>
    public long Lost => _lines.Lost;

    /// <summary>Lines that could not be used.</summary>
    public long Broken => _lines.Broken;

    /// <summary>Samples a second as they came [1/s]; NaN before there are some.</summary>
    public double MeasuredRate => _lastAt - _firstAt > 0.2 ? (Samples + Lost - _atFirst) / (_lastAt - _firstAt) : double.NaN;

    /// <summary>What is asked for now, if there are cues.</summary>
    public string Cue => _plan.Cues.FirstOrDefault(m => _now >= m.StartSeconds && _now < m.EndSeconds).Label ?? "";

    /// <summary>Activations of a channel so far; <see langword="null"/> without a level.</summary>
    /// <param name="channel">Channel.</param>
    public long? Activations(int channel) => _switches[channel]?.Activations;

    /// <summary>Takes bytes that have come.</summary>
    /// <param name="bytes">Bytes.</param>
    /// <param name="seconds">When, since listening began [s].</param>
    public void Feed(ReadOnlySpan<byte> bytes, double seconds)
    {
        _now = seconds;
        long before = Samples + Lost;
        _lines.Feed(bytes, _take);
        if (Samples + Lost > before)
        {
            // What was waiting on the line comes in one piece: the rate counts from behind it.
            (_firstAt, _atFirst) = double.IsNaN(_firstAt) ? (seconds, Samples + Lost) : (_firstAt, _atFirst);
            _lastAt = seconds;
            _clock.Piece(Samples + Lost - 1, seconds);
        }

        // The first second is held back: only then is it known how fast the board really sends.
        if (_now - _firstAt >= HeldSeconds)
        {
            _record?.Write();
        }
    }

    /// <summary>Writes what is still held back, and how well the times are known.</summary>
    public void Close() => _record?.End(Lost);

    /// <summary>Each channel as it is now: how it is connected or that it acts, the height of its envelope from 0 to 1 where 1 is twice its upper level (without one, the most that came), how often it acted.</summary>
    public IReadOnlyList<(string Name, string Words, double Level, long? Activations)> Now()
    {
        IReadOnlyList<ContactState> states = States();
        return [.. _plan.Channels.Select((name, c) => (name, states[c] == ContactState.Usable && _switches[c] is { IsOn: true } ? "tensed" : StateWord(states[c]), Level(c), Activations(c)))];
    }

    /// <summary>A line of words: what each channel does and how it is connected.</summary>
    /// <param name="trace">Whether levels are drawn as little bars.</param>
    public string Words(bool trace)
    {
        IEnumerable<string> parts = Now().Select((now, c) => string.Create(CultureInfo.InvariantCulture, $"{now.Name} {(trace ? Bar(c) + " " : "")}{now.Words}{(now.Activations is { } acted ? $" ({acted})" : "")}"));
        string cue = Cue.Length > 0 ? $"now {Cue}: " : "";
        return string.Create(CultureInfo.InvariantCulture, $"{_now,6:0.0} s  {cue}{string.Join(", ", parts)}; {Samples} samples, {Lost} lost, {Broken} unreadable");
    }

    /// <summary>State of each channel in the last half second.</summary>
    public IReadOnlyList<ContactState> States()
    {
        Channel[] channels = [.. _recent.Select((q, c) => new Channel(_plan.Channels[c], "", [.. q]))];
        int window = (int)(_plan.RateHertz / 2);
        return channels[0].Counts.Length < 2 * window
            ? [.. channels.Select(_ => ContactState.Missing)]
            : [.. ContactJudging.Judge(new(_plan.RateHertz, channels, []), _plan.Kind, _plan.MainsHertz, new()).Select(r => r.States[^1])];
    }

    /// <summary>The answer at the end.</summary>
    /// <param name="hand">Name of the hand.</param>
    /// <param name="ending">How it ended, in words.</param>
    /// <param name="file">File of the recording; <see langword="null"/> = none.</param>
    public Answer Answer(string hand, string ending, string? file)
    {
        double rate = MeasuredRate;
        IReadOnlyList<ContactState> states = States();
        List<Finding> findings = [];
        if (Samples == 0)
        {
            findings.Add(new("samples", "line", Verdict.Fails, Broken > 0 ? $"No line could be read as {_plan.Channels.Count} numbers; {Broken} were unreadable." : "Nothing came.", "Check port, speed and how many columns the board sends."));
        }
        else
        {
            findings.Add(SignalWords.Judged("lost_samples", "line", 100.0 * Lost / (Samples + Lost), 0.1, most: true, "%", $"{Lost} samples were lost and {Broken} lines unreadable, of {Samples + Lost}{(_plan.Counted ? "" : " (without a running number losses do not show)")}.", "A faster line, or fewer channels."));
            if (double.IsFinite(rate))
            {
                findings.Add(new("arrival_scatter", "line", Verdict.Good, $"{Scatter()}.", "Nothing need change; a time written by the board itself would be exact."));
                findings.Add(new("measured_rate", "line", Math.Abs(rate / _plan.RateHertz - 1) < 0.05 ? Verdict.Good : Verdict.Tight, string.Create(CultureInfo.InvariantCulture, $"{rate:0.#} samples a second came; {_plan.RateHertz:0.#} were expected."), "Give --rate as it was measured, and rate in the hand file too."));
            }
        }

        string came = string.Create(CultureInfo.InvariantCulture, $"{Samples} samples of {_plan.Channels.Count} channels came in {_now:0.0} s{(double.IsFinite(rate) ? $", {rate:0.#} a second" : "")}; {Lost} were lost. {ending}");
        return new()
        {
            Verb = "listen",
            Hand = hand,
            Sentence = file is null ? came : $"{came} The recording is in {file}.",
            Figures =
            [
                new("samples", "samples that came", "") { Value = Samples, Working = new("sound_lines", [new("sound_lines", Samples, "")], "signal-windows") },
                new("arrival_scatter", "how far arrivals scatter round the times that are written, standard deviation", "ms")
                {
                    Value = double.IsFinite(_clock.JitterSeconds) ? 1e3 * _clock.JitterSeconds : null,
                    Why = double.IsFinite(_clock.JitterSeconds) ? null : "too few came, or faster than a board sends",
                    Working = double.IsFinite(_clock.JitterSeconds) ? new("1000·scatter", [new("scatter", _clock.JitterSeconds, "s")], "signal-windows") : null,
                },
                new("measured_rate", "samples a second as they came", "Hz")
                {
                    Value = double.IsFinite(rate) ? rate : null,
                    Why = double.IsFinite(rate) ? null : "too few came",
                    Working = double.IsFinite(rate) ? new("samples/seconds", [new("samples", Samples + Lost - _atFirst, ""), new("seconds", _lastAt - _firstAt, "s")], "signal-windows") : null,
                },
            ],
            Findings = findings,
            Tables = [new("channels", [new("channel", ""), new("last half second", ""), new("acted", "")], [.. _plan.Channels.Select((c, i) => (IReadOnlyList<Cell>)[c, StateWord(states[i]), (Cell)(double?)Activations(i)])])],
            Cautions = SignalWords.Cautions,
        };
    }

    private string Scatter()
    {
        string pauses = _clock.Pauses == 0 ? "" : $"; the board was silent {_clock.Pauses} {(_clock.Pauses == 1 ? "time" : "times")}, and the times jump there";
        return double.IsFinite(_clock.JitterSeconds)
            ? string.Create(CultureInfo.InvariantCulture, $"Times are by this computer's clock, smoothed: lines arrived within {1e3 * _clock.JitterSeconds:0.##} ms of them (standard deviation){pauses}")
            : $"Too few samples came, or faster than a board sends: their times are by the stated rate{pauses}";
    }

    private static string StateWord(ContactState state) => state switch { ContactState.Usable => "connected", ContactState.Lifted => "lifted off", ContactState.Saturated => "at its end", ContactState.Flat => "flat", ContactState.Moving => "shaken", _ => "waiting" };

    private void Take(ReadOnlySpan<double> values)
    {
        for (int c = 0; c < values.Length; c++)
        {
            double gain = _plan.Gains.Count > c ? _plan.Gains[c] : 1, x = values[c] * gain;
            x = _bands[c] is { } band ? Math.Abs(band.Step(System.Runtime.Intrinsics.Vector256.CreateScalar(x))[0]) : x;
            _envelope[c] = _smooths[c].Step(System.Runtime.Intrinsics.Vector256.CreateScalar(x))[0];
            _greatest[c] = Math.Max(_greatest[c], _envelope[c]);
            _switches[c]?.Step(_envelope[c]);
            Queue<float> recent = _recent[c];
            recent.Enqueue((float)values[c]);
            if (recent.Count > JudgedSeconds * _plan.RateHertz)
            {
                recent.Dequeue();
            }
        }

        _record?.Hold(Samples + Lost - 1, values, _plan.Cues.Count > 0 ? Cue : "");
    }

    private char Bar(int channel)
    {
        const string bars = "▁▂▃▄▅▆▇█";
        return bars[(int)Math.Min(bars.Length * Level(channel), bars.Length - 1)];
    }

    private double Level(int channel)
    {
        double top = _plan.Settings.Count > channel && _plan.Settings[channel] is { } s ? 2 * s.On : _greatest[channel];
        return top > 0 ? Math.Clamp(_envelope[channel] / top, 0, 1) : 0;
    }
}

/// <summary>What is listened to.</summary>
/// <param name="Channels">Names of the channels, in the order of the line.</param>
/// <param name="RateHertz">Samples a second as expected [1/s].</param>
/// <param name="Kind">Raw or envelope.</param>
/// <param name="MainsHertz">Mains [1/s].</param>
/// <param name="Counted">Whether a running number stands before the channels.</param>
public sealed record ListeningPlan(IReadOnlyList<string> Channels, double RateHertz, SignalKind Kind, double MainsHertz, bool Counted)
{
    /// <summary>Settings of the switches; <see langword="null"/> entries have none.</summary>
    public IReadOnlyList<SwitchSettings?> Settings { get; init; } = [];

    /// <summary>Unit per count of each channel, as in the recordings that the settings come from.</summary>
    public IReadOnlyList<double> Gains { get; init; } = [];

    /// <summary>What is asked for when.</summary>
    public IReadOnlyList<Mark> Cues { get; init; } = [];
}
