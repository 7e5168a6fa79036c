using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Signals.Quality;
using Graspwright.Signals.Separation;

namespace Graspwright.Workshop.Signals;

/// <summary>Envelopes over time with what was going on: how connected, where the levels lie.</summary>
public static class SignalPictures
{
    private const int Points = 900;

    /// <summary>A picture of each recording: the envelope of every channel, and where it was not usable.</summary>
    /// <param name="result">An answer about contacts.</param>
    public static IEnumerable<(string Name, Picture Picture)> Contacts(ContactsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Set is not { } set)
        {
            yield break;
        }

        IReadOnlyList<Take> takes = result.Takes;
        for (int r = 0; r < takes.Count; r++)
        {
            List<LineChart> charts = [];
            for (int c = 0; c < set.Channels.Count; c++)
            {
                ContactReading reading = result.Readings[r][c];
                charts.Add(Chart(set, takes[r], c, c == 0, Bad(set, takes[r], c, reading)));
            }

            yield return ($"contacts-{set.Recordings[r].Plan.Name}", ChartPicture.Stack(result.Answer!.Sentence, "envelope of each channel over time, accented where it is not usable", charts));
        }
    }

    /// <summary>A picture of each recording: the envelope of every channel with its upper and lower level.</summary>
    /// <param name="result">An answer about thresholds.</param>
    public static IEnumerable<(string Name, Picture Picture)> Thresholds(ThresholdsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Set is not { } set)
        {
            yield break;
        }

        for (int r = 0; r < result.Takes.Count; r++)
        {
            List<LineChart> charts = [];
            for (int c = 0; c < set.Channels.Count; c++)
            {
                List<Series> levels = [];
                if (result.Found[c] is { } found)
                {
                    double end = result.Takes[r].Envelopes[c].Length / result.Takes[r].RateHertz, factor = set.Shown.Factor;
                    levels.Add(new("on", [0, end], [factor * found.Settings.On, factor * found.Settings.On], Dash.Solid, Ink.Accent, 0.25));
                    levels.Add(new("off", [0, end], [factor * found.Settings.Off, factor * found.Settings.Off], Dash.Dashed, Ink.Accent, 0.25));
                }

                charts.Add(Chart(set, result.Takes[r], c, c == 0, levels));
            }

            yield return ($"thresholds-{set.Recordings[r].Plan.Name}", ChartPicture.Stack(result.Answer!.Sentence, "envelope of each channel over time with its levels", charts));
        }
    }

    private static LineChart Chart(SignalSet set, Take take, int channel, bool events, IReadOnlyList<Series> also)
    {
        (string unit, double factor) = set.Shown;
        (double[] x, double[] y) = Thinned(take.Envelopes[channel], take.RateHertz, factor);
        return new()
        {
            XTitle = "time, s",
            YTitle = $"{set.Channels[channel]}, {unit}",
            Series = [new("envelope", x, y, Dash.Solid, Ink.Ink, 0.25), .. also],
            Events = events ? [.. FirstOfEach(take.Marks)] : [],
            PlotHeightMm = 26,
        };
    }

    private static IEnumerable<EventLine> FirstOfEach(IReadOnlyList<Graspwright.Signals.Recordings.Mark> marks) =>
        marks.Where(m => m.Gesture != LabelledWindows.Rest).GroupBy(m => m.Label).Select(g => new EventLine(g.First().StartSeconds, g.Key));

    private static IReadOnlyList<Series> Bad(SignalSet set, Take take, int channel, ContactReading reading)
    {
        (double[] x, double[] y) = Thinned(take.Envelopes[channel], take.RateHertz, set.Shown.Factor);
        double[] bad = [.. x.Select((t, i) => (int)(t / reading.WindowSeconds) is var w && w < reading.States.Count && reading.States[w] != ContactState.Usable ? y[i] : double.NaN)];
        return bad.Any(double.IsFinite) ? [new("not usable", x, bad, Dash.Solid, Ink.Accent, 0.6)] : [];
    }

    private static float Greatest(ReadOnlySpan<float> values)
    {
        float most = values[0];
        foreach (float v in values)
        {
            most = Math.Max(most, v);
        }

        return most;
    }

    /// <summary>Greatest value of each piece, so that no burst is lost.</summary>
    private static (double[] X, double[] Y) Thinned(float[] values, double rate, double factor)
    {
        int step = Math.Max(1, values.Length / Points);
        double[] y = [.. Enumerable.Range(0, values.Length / step).Select(i => factor * Greatest(values.AsSpan(i * step, step)))];
        return ([.. Enumerable.Range(0, y.Length).Select(i => i * step / rate)], y);
    }
}
