using Graspwright.Signals.Filters;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Quality;

/// <summary>Mean squares of a channel in bands, window by window [unit²].</summary>
internal sealed class WindowPowers
{
    public const double MotionTop = 20, BandTop = 450, WanderTop = 1;

    private WindowPowers(int length, int count)
    {
        (Length, Band, Slow, Hum, Low, High) = (length, new double[count], new double[count], new double[count], new float[count], new float[count]);
        Mean = new double[count];
    }

    /// <summary>Samples of a window.</summary>
    public int Length { get; }

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
    public static int LengthAt(double rateHertz) => Math.Max(8, 1 << (int)Math.Round(Math.Log2(rateHertz / 2)));

    public static WindowPowers Of(Channel channel, double rateHertz, double mainsHertz)
    {
        int length = LengthAt(rateHertz), count = channel.Counts.Length / length;
        WindowPowers powers = new(length, count);
        Spectrum spectrum = new(length);
        double[] piece = new double[length], power = new double[length / 2 + 1];
        (int[] kind, double[] weight, double bandScale) = Bins(length, rateHertz, mainsHertz);
        double scale = channel.Gain * channel.Gain / (length * spectrum.WindowPower);
        for (int w = 0; w < count; w++)
        {
            ReadOnlySpan<float> counts = channel.Counts.AsSpan(w * length, length);
            float low = counts[0], high = counts[0];
            double mean = 0;
            for (int i = 0; i < length; i++)
            {
                float c = counts[i];
                piece[i] = c;
                mean += c;
                low = c < low ? c : low;
                high = c > high ? c : high;
            }

            (powers.Low[w], powers.High[w], powers.Mean[w]) = (low, high, channel.Gain * mean / length + channel.Offset);
            if (low == high)
            {
                continue;
            }

            spectrum.Power(piece, power);
            double band = 0, slow = 0, lines = 0;
            int bandBins = 0, lineBins = 0;
            for (int k = 0; k < power.Length; k++)
            {
                double p = weight[k] * power[k];
                switch (kind[k])
                {
                    case 0:
                        slow += p;
                        break;
                    case 1:
                        band += p;
                        bandBins++;
                        break;
                    case 2:
                        lines += p;
                        lineBins++;
                        break;
                }
            }

            powers.Slow[w] = scale * slow;
            powers.Band[w] = scale * band * bandScale;
            powers.Hum[w] = scale * Math.Max(0, lines - (bandBins > 0 ? band / bandBins * lineBins : 0));
        }

        return powers;
    }

    /// <summary>Which band each bin belongs to: 0 below 20 Hz, 1 the band, 2 a line of the mains, 3 above.</summary>
    private static (int[] Kind, double[] Weight, double BandScale) Bins(int length, double rate, double mains)
    {
        int half = length / 2;
        int[] kind = new int[half + 1];
        double[] weight = new double[half + 1];
        int band = 0, lines = 0;
        double step = rate / length;
        for (int k = 0; k <= half; k++)
        {
            double f = k * step, nearest = Math.Round(f / mains) * mains;
            bool line = nearest > 0 && Math.Abs(f - nearest) <= 2.6 * step && f > MotionTop - 1;
            kind[k] = line ? 2 : f < MotionTop ? 0 : f <= BandTop ? 1 : 3;
            weight[k] = k == 0 || k == half ? 1 : 2;
            band += kind[k] == 1 ? 1 : 0;
            lines += line && f <= BandTop ? 1 : 0;
        }

        return (kind, weight, band > 0 ? (double)(band + lines) / band : 1);
    }
}
