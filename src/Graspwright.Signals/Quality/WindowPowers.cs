using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Graspwright.Signals.Filters;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Quality;

/// <summary>Mean squares of a channel in bands, window by window [unit²].</summary>
public sealed class WindowPowers
{
    internal const double MotionTop = 20, BandTop = 450;

    private WindowPowers(int length, int count)
    {
        (Length, Band, Slow, Hum, Low, High) = (length, new double[count], new double[count], new double[count], new float[count], new float[count]);
        Mean = new double[count];
    }

    /// <summary>Samples of a window.</summary>
    public int Length { get; }

    /// <summary>Windows.</summary>
    public int Count => Band.Length;

    /// <summary>20 to 450 Hz without the lines of the mains.</summary>
    public double[] Band { get; }

    /// <summary>Below 20 Hz, without the mean of the window.</summary>
    public double[] Slow { get; }

    /// <summary>At the mains and its harmonics, less the noise round them.</summary>
    public double[] Hum { get; }

    /// <summary>Least count of each window.</summary>
    public float[] Low { get; }

    /// <summary>Greatest count of each window.</summary>
    public float[] High { get; }

    /// <summary>Mean of each window [unit].</summary>
    public double[] Mean { get; }

    /// <summary>Length of a window of about half a second: a power of two.</summary>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    public static int LengthAt(double rateHertz) => Math.Max(8, 1 << (int)Math.Round(Math.Log2(rateHertz / 2)));

    /// <summary>Powers of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <param name="mainsHertz">Mains frequency [1/s].</param>
    public static WindowPowers Of(Channel channel, double rateHertz, double mainsHertz)
    {
        ArgumentNullException.ThrowIfNull(channel);
        int length = LengthAt(rateHertz), count = channel.Counts.Length / length;
        WindowPowers powers = new(length, count);
        Spectrum spectrum = new(length);
        Vector256<double>[] pieces = new Vector256<double>[length], power = new Vector256<double>[length / 2 + 1];
        Bins bins = Bins.At(length, rateHertz, mainsHertz);
        double scale = channel.Gain * channel.Gain / (length * spectrum.WindowPower);
        for (int first = 0; first < count; first += Spectrum.Lanes)
        {
            int used = Math.Min(Spectrum.Lanes, count - first);
            powers.Lay(channel, first, used, pieces);
            spectrum.Power(pieces, power);
            (Vector256<double> slow, Vector256<double> band, Vector256<double> lines) = bins.Sums(power);
            for (int lane = 0; lane < used; lane++)
            {
                int w = first + lane;
                if (powers.Low[w] < powers.High[w])
                {
                    powers.Slow[w] = scale * slow[lane];
                    powers.Band[w] = scale * band[lane] * bins.BandScale;
                    powers.Hum[w] = scale * Math.Max(0, lines[lane] - band[lane] * bins.LinesOfBand);
                }
            }
        }

        return powers;
    }

    /// <summary>Powers of all channels of a recording, on as many cores as there are; the same bits on one.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="mainsHertz">Mains frequency [1/s].</param>
    public static IReadOnlyList<WindowPowers> Of(Recording recording, double mainsHertz)
    {
        ArgumentNullException.ThrowIfNull(recording);
        WindowPowers[] powers = new WindowPowers[recording.Channels.Count];
        Parallel.For(0, powers.Length, c => powers[c] = Of(recording.Channels[c], recording.RateHertz, mainsHertz));
        return powers;
    }

    /// <summary>Lays windows side by side; their extremes and means on the way.</summary>
    private void Lay(Channel channel, int first, int used, Vector256<double>[] pieces)
    {
        Span<double> lanes = MemoryMarshal.Cast<Vector256<double>, double>(pieces.AsSpan());
        for (int lane = 0; lane < used; lane++)
        {
            ReadOnlySpan<float> counts = channel.Counts.AsSpan((first + lane) * Length, Length);
            float low = counts[0], high = counts[0];
            double mean = 0;
            for (int i = 0, at = lane; i < counts.Length && at < lanes.Length; i++, at += Spectrum.Lanes)
            {
                float c = counts[i];
                lanes[at] = c;
                mean += c;
                low = c < low ? c : low;
                high = c > high ? c : high;
            }

            (Low[first + lane], High[first + lane], Mean[first + lane]) = (low, high, channel.Gain * mean / Length + channel.Offset);
        }
    }
}

/// <summary>Which band each bin of a spectrum belongs to.</summary>
internal sealed class Bins
{
    private readonly (int First, int Last, Part Part)[] _runs;
    private readonly int _half;

    private Bins((int First, int Last, Part Part)[] runs, int half) => (_runs, _half) = (runs, half);

    private enum Part
    {
        Slow,
        Band,
        Line,
        Above,
    }

    /// <summary>Band with the bins of the lines in it ÷ band without.</summary>
    public double BandScale { get; private init; }

    /// <summary>Noise to be expected in the bins of the lines ÷ power of the band.</summary>
    public double LinesOfBand { get; private init; }

    public static Bins At(int length, double rate, double mains)
    {
        int half = length / 2, band = 0, lines = 0, linesInBand = 0;
        double step = rate / length;
        List<(int First, int Last, Part Part)> runs = [];
        for (int k = 0; k <= half; k++)
        {
            double f = k * step, nearest = Math.Round(f / mains) * mains;
            bool line = nearest > 0 && Math.Abs(f - nearest) <= 2.6 * step && f > WindowPowers.MotionTop - 1;
            Part part = line ? Part.Line : f < WindowPowers.MotionTop ? Part.Slow : f <= WindowPowers.BandTop ? Part.Band : Part.Above;
            band += part == Part.Band ? 1 : 0;
            lines += line ? 1 : 0;
            linesInBand += line && f <= WindowPowers.BandTop ? 1 : 0;
            if (runs.Count > 0 && runs[^1].Part == part)
            {
                runs[^1] = (runs[^1].First, k, part);
            }
            else
            {
                runs.Add((k, k, part));
            }
        }

        return new([.. runs], half)
        {
            BandScale = band > 0 ? (double)(band + linesInBand) / band : 1,
            LinesOfBand = band > 0 ? (double)lines / band : 0,
        };
    }

    /// <summary>Sums of the powers by band; all bins but the first and the last stand for two.</summary>
    public (Vector256<double> Slow, Vector256<double> Band, Vector256<double> Lines) Sums(ReadOnlySpan<Vector256<double>> power)
    {
        Vector256<double> slow = Vector256<double>.Zero, band = slow, lines = slow;
        foreach ((int first, int last, Part part) in _runs)
        {
            Vector256<double> sum = Vector256<double>.Zero;
            for (int k = first; k <= last; k++)
            {
                sum += (k == 0 || k == _half ? 1.0 : 2.0) * power[k];
            }

            slow += part == Part.Slow ? sum : Vector256<double>.Zero;
            band += part == Part.Band ? sum : Vector256<double>.Zero;
            lines += part == Part.Line ? sum : Vector256<double>.Zero;
        }

        return (slow, band, lines);
    }
}
