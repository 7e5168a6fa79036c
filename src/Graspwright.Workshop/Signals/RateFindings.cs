using System.Globalization;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Recordings;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Signals;

/// <summary>Whether rate, line and timing of the recordings do.</summary>
internal static class RateFindings
{
    private const int BitsPerByte = 10, BytesPerValue = 6;
    private const double WantedRaw = 900, WantedSmooth = 100;

    public static IEnumerable<Finding> Of(SignalSet set, List<Figure> figures)
    {
        double rate = set.Recordings.Min(r => r.Recording.RateHertz), wanted = set.Kind == SignalKind.Envelope ? WantedSmooth : WantedRaw;
        if (set.Kind != SignalKind.Envelope)
        {
            figures.Add(new("band_top", "highest frequency that the rate lets through", "Hz")
            {
                Value = Math.Min(0.45 * rate, FrontEnd.HighHertz),
                Working = 0.45 * rate < FrontEnd.HighHertz
                    ? new("0.45·rate", [new("rate", rate, "Hz")], "signal-windows")
                    : new("band_edge", [new("band_edge", FrontEnd.HighHertz, "Hz")], "signal-windows"),
            });
        }

        yield return SignalWords.Judged("sampling_rate", "recordings", rate, wanted, most: false, "Hz",
            string.Create(CultureInfo.InvariantCulture, $"{rate:0.#} samples a second; {(set.Kind == SignalKind.Envelope ? "an envelope needs about 100" : "a raw signal needs 900, twice the 450 Hz up to which muscles are heard")}."), "Sample faster, with fewer channels if need be.");
        yield return Line(set, rate, figures);
        foreach (LoadedRecording r in set.Recordings)
        {
            foreach (Finding finding in Timing(r))
            {
                yield return finding;
            }
        }
    }

    private static Finding Line(SignalSet set, double rate, List<Figure> figures)
    {
        int values = set.Channels.Count;
        double bits = rate * values * BytesPerValue * BitsPerByte, share = bits / set.Plan.LineSpeed;
        figures.Add(new("line_share", "share of the serial line that the samples fill, as lines of text", "%")
        {
            Value = 100 * share,
            Working = new("100·rate·channels·bytes_of_a_value·bits_of_a_byte/line_speed",
                [new("rate", rate, "Hz"), new("channels", values, ""), new("bytes_of_a_value", BytesPerValue, ""), new("bits_of_a_byte", BitsPerByte, ""), new("line_speed", set.Plan.LineSpeed, "")], "signal-windows"),
        });
        return SignalWords.Judged("line_speed", "serial line", 100 * share, 100, most: true, "%",
            string.Create(CultureInfo.InvariantCulture, $"Sent live as text, {values} channels at {rate:0.#} a second fill {100 * share:0} % of a line of {set.Plan.LineSpeed:0} bits a second."),
            "Raise the line's speed on both ends, send whole numbers without spaces, or send fewer samples.");
    }

    private static IEnumerable<Finding> Timing(LoadedRecording loaded)
    {
        Recording r = loaded.Recording;
        string name = loaded.Plan.Name;
        int lost = r.Gaps.Sum(g => g.Count);
        if (lost > 0)
        {
            yield return SignalWords.Judged("lost_samples", name, 100.0 * lost / r.Length, 1, most: true, "%",
                $"'{name}' lacks {lost} samples in {r.Gaps.Count} {(r.Gaps.Count == 1 ? "place" : "places")}; the last value before stands in, and the windows there do not count.", "Use a faster line, or write to the card of the board and copy it.");
        }

        if (r.Broken > 0)
        {
            yield return new("broken_lines", name, Verdict.Tight, $"{r.Broken} {(r.Broken == 1 ? "line" : "lines")} of '{name}' could not be read and {(r.Broken == 1 ? "was" : "were")} left out.", "Look at plug and speed of the line.");
        }

        if (r.JitterSeconds > 0.1 / r.RateHertz)
        {
            yield return new("jitter", name, Verdict.Tight, string.Create(CultureInfo.InvariantCulture, $"The times of '{name}' scatter by {1e3 * r.JitterSeconds:0.##} ms round their step of {1e3 / r.RateHertz:0.##} ms; the samples are taken as even."),
                "Take samples by a timer of the board, not in its loop, and let the board write the time.");
        }

        foreach (string note in r.Notes)
        {
            yield return new("recording_note", name, Verdict.Tight, $"'{name}': {note}.", "Check how it was recorded.");
        }
    }
}
