using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Graspwright.Signals.Recordings;

namespace Graspwright.Signals.Filters;

/// <summary>A chain at work on up to four channels at once, sample by sample, its state kept from piece to piece (transposed direct form II).</summary>
/// <remarks>Four lanes whatever the processor, the same order of sums: the same bits everywhere the arithmetic is that of IEEE 754.</remarks>
public sealed class Filtering
{
    /// <summary>Channels side by side.</summary>
    public const int Lanes = 4;

    private const int BlockLength = 512;

    private readonly Vector256<double>[] _coefficients;
    private readonly Vector256<double>[] _state;
    private readonly int _sections;

    /// <summary>A chain at rest.</summary>
    /// <param name="chain">The chain.</param>
    public Filtering(SectionChain chain)
    {
        ArgumentNullException.ThrowIfNull(chain);
        _sections = chain.Sections.Count;
        _state = new Vector256<double>[2 * _sections];
        _coefficients = new Vector256<double>[5 * _sections];
        for (int s = 0; s < _sections; s++)
        {
            Section section = chain.Sections[s];
            double[] five = [section.B0, section.B1, section.B2, section.A1, section.A2];
            for (int i = 0; i < 5; i++)
            {
                _coefficients[5 * s + i] = Vector256.Create(five[i]);
            }
        }
    }

    /// <summary>Sets the state as if a steady input had gone on for ever, so that a steady signal passes without a start.</summary>
    /// <param name="values">The steady input of each lane.</param>
    public void Settle(Vector256<double> values)
    {
        for (int s = 0; s < _sections; s++)
        {
            (Vector256<double> b0, Vector256<double> b1, Vector256<double> b2, Vector256<double> a1, Vector256<double> a2) = Of(s);
            Vector256<double> output = values * ((b0 + b1 + b2) / (Vector256.Create(1.0) + a1 + a2));
            _state[2 * s + 1] = b2 * values - a2 * output;
            _state[2 * s] = b1 * values - a1 * output + _state[2 * s + 1];
            values = output;
        }
    }

    /// <summary>Filters one sample of four channels.</summary>
    /// <param name="x">Samples.</param>
    public Vector256<double> Step(Vector256<double> x)
    {
        Span<Vector256<double>> state = _state;
        ReadOnlySpan<Vector256<double>> c = _coefficients;
        for (int s = 0; s < _sections; s++)
        {
            Vector256<double> y = c[5 * s] * x + state[2 * s];
            state[2 * s] = c[5 * s + 1] * x + state[2 * s + 1] - c[5 * s + 3] * y;
            state[2 * s + 1] = c[5 * s + 2] * x - c[5 * s + 4] * y;
            x = y;
        }

        return x;
    }

    /// <summary>Filters a block of four channels side by side, in place.</summary>
    /// <param name="block">Samples, a lane for each channel.</param>
    public void Run(Span<Vector256<double>> block)
    {
        for (int s = 0; s < _sections;)
        {
            ReadOnlySpan<Vector256<double>> c = _coefficients.AsSpan(5 * s);
            Span<Vector256<double>> state = _state.AsSpan(2 * s);
            int together = Math.Min(4, _sections - s);
            switch (together)
            {
                case 4:
                    SectionLoops.Four(c, state, block);
                    break;
                case 3:
                    SectionLoops.Three(c, state, block);
                    break;
                case 2:
                    SectionLoops.Two(c, state, block);
                    break;
                default:
                    SectionLoops.One(c, state, block);
                    break;
            }

            s += together;
        }
    }

    /// <summary>Filters one channel in place; the other lanes are idle.</summary>
    /// <param name="values">Samples.</param>
    public void Run(Span<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Step(Vector256.CreateScalar(values[i])).ToScalar();
        }
    }

    /// <summary>Filters up to four channels in place, all of one length.</summary>
    /// <param name="channels">The channels.</param>
    public void Run(IReadOnlyList<double[]> channels)
    {
        ArgumentNullException.ThrowIfNull(channels);
        Vector256<double>[] block = new Vector256<double>[BlockLength];
        for (int start = 0; start < channels[0].Length; start += BlockLength)
        {
            Span<Vector256<double>> part = block.AsSpan(0, Math.Min(BlockLength, channels[0].Length - start));
            Lay(channels, start, part);
            Run(part);
            Take(part, channels, start);
        }
    }

    /// <summary>Lays up to four channels side by side.</summary>
    /// <param name="channels">The channels.</param>
    /// <param name="start">First sample.</param>
    /// <param name="block">Where they go.</param>
    public static void Lay(IReadOnlyList<double[]> channels, int start, Span<Vector256<double>> block)
    {
        ArgumentNullException.ThrowIfNull(channels);
        ReadOnlySpan<double> a = channels[0].AsSpan(start, block.Length), b = Of(channels, 1).AsSpan(start, block.Length),
            c = Of(channels, 2).AsSpan(start, block.Length), d = Of(channels, 3).AsSpan(start, block.Length);
        for (int i = 0; i < block.Length; i++)
        {
            block[i] = Vector256.Create(a[i], b[i], c[i], d[i]);
        }
    }

    internal static void Take(ReadOnlySpan<Vector256<double>> block, IReadOnlyList<double[]> channels, int start)
    {
        ReadOnlySpan<double> lanes = MemoryMarshal.Cast<Vector256<double>, double>(block);
        for (int lane = 0; lane < Math.Min(Lanes, channels.Count); lane++)
        {
            Span<double> values = channels[lane].AsSpan(start, block.Length);
            for (int i = 0, at = lane; i < values.Length && at < lanes.Length; i++, at += Lanes)
            {
                values[i] = lanes[at];
            }
        }
    }

    /// <summary>Lays values of up to four channels side by side, straight from their counts.</summary>
    internal static void Lay(ReadOnlySpan<Channel> channels, int start, Span<Vector256<double>> block)
    {
        (Channel p, Channel q, Channel r, Channel s) = (channels[0], channels[Math.Min(1, channels.Length - 1)], channels[Math.Min(2, channels.Length - 1)], channels[Math.Min(3, channels.Length - 1)]);
        ReadOnlySpan<float> a = p.Counts.AsSpan(start, block.Length), b = q.Counts.AsSpan(start, block.Length), c = r.Counts.AsSpan(start, block.Length), d = s.Counts.AsSpan(start, block.Length);
        Vector256<double> gain = Vector256.Create(p.Gain, q.Gain, r.Gain, s.Gain), offset = Vector256.Create(p.Offset, q.Offset, r.Offset, s.Offset);
        for (int i = 0; i < block.Length; i++)
        {
            block[i] = gain * Vector256.Create((double)a[i], b[i], c[i], d[i]) + offset;
        }
    }

    internal static void Take(ReadOnlySpan<Vector256<double>> block, ReadOnlySpan<float[]> channels, int start)
    {
        ReadOnlySpan<double> lanes = MemoryMarshal.Cast<Vector256<double>, double>(block);
        for (int lane = 0; lane < Math.Min(Lanes, channels.Length); lane++)
        {
            Span<float> values = channels[lane].AsSpan(start, block.Length);
            for (int i = 0, at = lane; i < values.Length && at < lanes.Length; i++, at += Lanes)
            {
                values[i] = (float)lanes[at];
            }
        }
    }

    /// <summary>The channel of a lane; an idle lane follows the first.</summary>
    private static double[] Of(IReadOnlyList<double[]> channels, int lane) => channels[lane < channels.Count ? lane : 0];

    private (Vector256<double> B0, Vector256<double> B1, Vector256<double> B2, Vector256<double> A1, Vector256<double> A2) Of(int s) =>
        (_coefficients[5 * s], _coefficients[5 * s + 1], _coefficients[5 * s + 2], _coefficients[5 * s + 3], _coefficients[5 * s + 4]);
}
