using System.Globalization;
using System.Text;
using System.Text.Json;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Thresholds;

namespace Graspwright.Workshop.Signals;

/// <summary>Thresholds and coefficients as files that a controller's program can take.</summary>
public static class SettingsFile
{
    /// <summary>As JSON: levels in volts or counts, times in seconds, coefficients in floating point and in whole numbers.</summary>
    /// <param name="result">An answer about thresholds.</param>
    public static string Json(ThresholdsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        SignalSet set = result.Set ?? throw new ArgumentException("An answer without recordings.", nameof(result));
        FrontEnd front = set.FrontEnd(set.Recordings[0].Recording.RateHertz);
        FixedChain chain = new(front);
        return JsonSerializer.Serialize(new
        {
            rate_hz = front.RateHertz,
            unit = set.Recordings[0].Recording.Channels[0].Unit is { Length: > 0 } unit ? unit : "counts",
            band = (front.Band?.Sections ?? []).Select(Five),
            rectify = front.Band is not null,
            smoothing = front.Smooth.Sections.Select(Five),
            fixed_point = new { bits_behind_the_point = FixedChain.CoefficientBits, samples_shifted_up = FixedChain.SampleBits, sections = chain.Coefficients },
            channels = set.Plan.Channels.Select((c, i) => new
            {
                name = c.Name,
                gesture = c.Gesture,
                locks = c.Locks,
                volts_per_count = set.Recordings[0].Recording.Channels[i].Gain,
                on = result.Found[i]?.Settings.On,
                off = result.Found[i]?.Settings.Off,
                hold_s = result.Found[i]?.Settings.HoldSeconds,
                refractory_s = result.Found[i]?.Settings.RefractorySeconds,
            }),
        }, Options) + "\n";
    }

    /// <summary>As a C header of whole numbers: coefficients, and levels in counts with the samples' shift.</summary>
    /// <param name="result">An answer about thresholds.</param>
    public static string Header(ThresholdsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        SignalSet set = result.Set ?? throw new ArgumentException("An answer without recordings.", nameof(result));
        FrontEnd front = set.FrontEnd(set.Recordings[0].Recording.RateHertz);
        int[][] sections = [.. new FixedChain(front).Coefficients];
        StringBuilder text = new("/* Levels and filters of the muscle signals. b0 b1 b2 a1 a2, 28 bits behind the point; samples shifted up by 8. */\n#include <stdint.h>\n");
        text.Append(CultureInfo.InvariantCulture, $"#define SIGNAL_RATE_HZ {front.RateHertz:0}\n#define SIGNAL_CHANNELS {set.Channels.Count}\n#define BAND_SECTIONS {front.Band?.Sections.Count ?? 0}\n#define SMOOTHING_SECTIONS {front.Smooth.Sections.Count}\n");
        text.Append(CultureInfo.InvariantCulture, $"static const int32_t signal_sections[{sections.Length}][5] = {{\n");
        foreach (int[] section in sections)
        {
            text.Append(CultureInfo.InvariantCulture, $"    {{ {string.Join(", ", section)} }},\n");
        }

        text.Append("};\n/* on, off (shifted counts), hold, refractory (samples); 0 = no level found */\n");
        text.Append(CultureInfo.InvariantCulture, $"static const int32_t signal_levels[{set.Channels.Count}][4] = {{\n");
        for (int c = 0; c < set.Channels.Count; c++)
        {
            double gain = set.Recordings[0].Recording.Channels[c].Gain;
            int[] row = result.Found[c]?.Settings is { } s
                ? [Shifted(s.On / gain), Shifted(s.Off / gain), Switch.SamplesOf(s.HoldSeconds, front.RateHertz), (int)Math.Ceiling(s.RefractorySeconds * front.RateHertz)]
                : [0, 0, 0, 0];
            text.Append(CultureInfo.InvariantCulture, $"    {{ {string.Join(", ", row)} }}, /* {set.Channels[c].Replace("*/", "", StringComparison.Ordinal)} */\n");
        }

        return text.Append("};\n").ToString();
    }

    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static double[] Five(Section s) => [s.B0, s.B1, s.B2, s.A1, s.A2];

    private static int Shifted(double counts) => (int)Math.Round(Math.Clamp(counts * (1 << FixedChain.SampleBits), 0, int.MaxValue));
}
