using System.Runtime.Intrinsics;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Filters;

/// <summary>The causal front end of a controller: band-pass, rectify, low-pass. What the thresholds see.</summary>
/// <param name="RateHertz">Sampling rate [1/s].</param>
/// <param name="Band">Band-pass with notch, if any; <see langword="null"/> where the amplifier gives an envelope already.</param>
/// <param name="Smooth">Low-pass behind the rectifier.</param>
public sealed record FrontEnd(double RateHertz, SectionChain? Band, SectionChain Smooth)
{
    /// <summary>Lower edge of the band [1/s].</summary>
    public const double LowHertz = 20;

    /// <summary>Upper edge of the band, where the rate allows it [1/s].</summary>
    public const double HighHertz = 450;

    /// <summary>Edge of the smoothing [1/s].</summary>
    public const double SmoothHertz = 6;

    private const double NotchQuality = 30;

    /// <summary>The usual front end for a rate.</summary>
    /// <remarks>20 to 450 Hz, or 0.45 of the rate where that is less; second order; low-pass of second order at 6 Hz.</remarks>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <param name="isRaw">Whether the signal is raw.</param>
    /// <param name="notchHertz">Mains to be notched out [1/s]; <see langword="null"/> = none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is too low.</exception>
    public static FrontEnd Usual(double rateHertz, bool isRaw, double? notchHertz = null)
    {
        SectionChain smooth = Butterworth.LowPass(2, Math.Min(SmoothHertz, 0.2 * rateHertz), rateHertz);
        if (!isRaw)
        {
            return new(rateHertz, null, smooth);
        }

        double high = Math.Min(HighHertz, 0.45 * rateHertz), low = Math.Min(LowHertz, high / 3);
        SectionChain band = Butterworth.BandPass(2, low, high, rateHertz);
        return new(rateHertz, notchHertz is { } hum && hum < high ? band.Then(Butterworth.Notch(hum, NotchQuality, rateHertz)) : band, smooth);
    }

    /// <summary>Delay of the smoothing for slow changes [s], which the wearer feels.</summary>
    public double DelaySeconds => Smooth.DelaySeconds(0, RateHertz);

    /// <summary>Envelopes of up to four channels at a time, in place.</summary>
    /// <param name="channels">Values of the channels; envelopes on return.</param>
    public void Run(IReadOnlyList<double[]> channels)
    {
        ArgumentNullException.ThrowIfNull(channels);
        for (int first = 0; first < channels.Count; first += Filtering.Lanes)
        {
            double[][] four = [.. channels.Skip(first).Take(Filtering.Lanes)];
            Run(four[0].Length, (start, part) => Filtering.Lay(four, start, part), (start, part) => Filtering.Take(part, four, start));
        }
    }

    /// <summary>Envelopes of the channels of a recording, kept to 24 bits, as the samples are.</summary>
    /// <param name="channels">Channels, all of one length.</param>
    public float[][] Envelopes(IReadOnlyList<Channel> channels)
    {
        ArgumentNullException.ThrowIfNull(channels);
        float[][] envelopes = [.. channels.Select(c => new float[c.Counts.Length])];
        for (int first = 0; first < channels.Count; first += Filtering.Lanes)
        {
            Channel[] from = [.. channels.Skip(first).Take(Filtering.Lanes)];
            float[][] to = envelopes[first..(first + from.Length)];
            Run(from[0].Counts.Length, (start, part) => Filtering.Lay(from, start, part), (start, part) => Filtering.Take(part, to, start));
        }

        return envelopes;
    }

    private void Run(int count, BlockAction lay, BlockAction take)
    {
        const int length = 512;
        Vector256<double>[] block = new Vector256<double>[length];
        Filtering? band = Band is null ? null : new(Band);
        Filtering smooth = new(Smooth);
        for (int start = 0; start < count; start += length)
        {
            Span<Vector256<double>> part = block.AsSpan(0, Math.Min(length, count - start));
            lay(start, part);
            if (start == 0)
            {
                band?.Settle(part[0]);
                smooth.Settle(band is null ? part[0] : Vector256<double>.Zero);
            }

            if (band is not null)
            {
                band.Run(part);
                for (int i = 0; i < part.Length; i++)
                {
                    part[i] = Vector256.Abs(part[i]);
                }
            }

            smooth.Run(part);
            take(start, part);
        }
    }

    private delegate void BlockAction(int start, Span<Vector256<double>> block);
}
