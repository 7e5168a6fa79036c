using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Graspwright.Signals.Filters;

/// <summary>Spectra of real signals by the fast Fourier transform of a power of two, four pieces side by side.</summary>
/// <remarks>Each lane does the same sums in the same order, whatever lies in the others.</remarks>
public sealed class Spectrum
{
    /// <summary>Pieces side by side.</summary>
    public const int Lanes = 4;

    private readonly int _count;
    private readonly double[] _cos, _sin;
    private readonly Vector256<double>[] _re, _im;
    private readonly int[] _turned;

    /// <summary>A transform of one length.</summary>
    /// <param name="count">Samples, a power of two from 4.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is none.</exception>
    public Spectrum(int count)
    {
        if (count < 4 || (count & (count - 1)) != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, "A power of two from 4.");
        }

        _count = count;
        int half = count / 2;
        (_cos, _sin) = (new double[half], new double[half]);
        (_re, _im) = (new Vector256<double>[half], new Vector256<double>[half]);
        _turned = new int[half];
        Window = new double[count];
        for (int i = 0; i < half; i++)
        {
            (_sin[i], _cos[i]) = Math.SinCos(2 * Math.PI * i / count);
            for (int bit = 1, back = half >> 1; bit < half; bit <<= 1, back >>= 1)
            {
                _turned[i] |= (i & bit) != 0 ? back : 0;
            }
        }

        for (int i = 0; i < count; i++)
        {
            Window[i] = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / count);
            WindowPower += Window[i] * Window[i];
        }
    }

    /// <summary>The Hann window that Welch's method uses.</summary>
    public double[] Window { get; }

    /// <summary>Sum of the window's squares.</summary>
    public double WindowPower { get; }

    /// <summary>Squared magnitudes of the transforms of four windowed pieces without their means.</summary>
    /// <param name="pieces">Samples, a piece in each lane.</param>
    /// <param name="power">Squared magnitudes at 0 … half the rate: half the count, and one.</param>
    public void Power(ReadOnlySpan<Vector256<double>> pieces, Span<Vector256<double>> power)
    {
        Vector256<double> mean = Vector256<double>.Zero;
        foreach (Vector256<double> v in pieces)
        {
            mean += v;
        }

        mean /= _count;
        int half = _count / 2;
        for (int i = 0; i < half; i++)
        {
            int to = _turned[i];
            _re[to] = (pieces[2 * i] - mean) * Window[2 * i];
            _im[to] = (pieces[2 * i + 1] - mean) * Window[2 * i + 1];
        }

        Transform(half);
        Split(half, power);
    }

    /// <summary>Power density by Welch's method: pieces overlapping by half, each without its mean, Hann window, mean of all.</summary>
    /// <remarks><source key="welch-1967">P. D. Welch 1967, <i>The use of fast Fourier transform for the estimation of power spectra</i>.</source></remarks>
    /// <param name="values">The signal, at least one piece long.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <returns>Density at each multiple of rate ÷ count, one-sided [unit²·s].</returns>
    /// <exception cref="ArgumentException">The signal is shorter than a piece.</exception>
    public double[] Density(ReadOnlySpan<double> values, double rateHertz)
    {
        if (values.Length < _count)
        {
            throw new ArgumentException(FormattableString.Invariant($"{values.Length} samples are fewer than a piece of {_count}."), nameof(values));
        }

        double[] sum = new double[_count / 2 + 1];
        Vector256<double>[] four = new Vector256<double>[_count], power = new Vector256<double>[sum.Length];
        Span<double> lanes = MemoryMarshal.Cast<Vector256<double>, double>(four.AsSpan());
        int hop = _count / 2, pieces = (values.Length - _count) / hop + 1;
        for (int first = 0; first < pieces; first += Lanes)
        {
            int used = Math.Min(Lanes, pieces - first);
            for (int lane = 0; lane < used; lane++)
            {
                ReadOnlySpan<double> piece = values.Slice((first + lane) * hop, _count);
                for (int i = 0; i < piece.Length; i++)
                {
                    lanes[Lanes * i + lane] = piece[i];
                }
            }

            Power(four, power);
            for (int k = 0; k < sum.Length; k++)
            {
                for (int lane = 0; lane < used; lane++)
                {
                    sum[k] += power[k][lane];
                }
            }
        }

        double scale = 1 / (rateHertz * WindowPower * pieces);
        for (int k = 0; k < sum.Length; k++)
        {
            sum[k] *= k == 0 || k == sum.Length - 1 ? scale : 2 * scale;
        }

        return sum;
    }

    private void Transform(int n)
    {
        Nearest(n);
        for (int span = Math.Min(4, n); span < n; span <<= 1)
        {
            int stride = _count / (2 * span);
            for (int first = 0; first < n; first += 2 * span)
            {
                Span<Vector256<double>> re = _re.AsSpan(first, span), im = _im.AsSpan(first, span), farRe = _re.AsSpan(first + span, span), farIm = _im.AsSpan(first + span, span);
                for (int k = 0, turn = 0; k < re.Length; k++, turn += stride)
                {
                    Vector256<double> c = Vector256.Create(_cos[turn]), s = Vector256.Create(_sin[turn]), jr = farRe[k], ji = farIm[k];
                    Vector256<double> tr = jr * c + ji * s, ti = ji * c - jr * s;
                    farRe[k] = re[k] - tr;
                    farIm[k] = im[k] - ti;
                    re[k] += tr;
                    im[k] += ti;
                }
            }
        }
    }

    /// <summary>The first two passes, whose turns are quarters.</summary>
    private void Nearest(int n)
    {
        Span<Vector256<double>> re = _re, im = _im;
        for (int i = 0; i + 1 < re.Length; i += 2)
        {
            (re[i], re[i + 1]) = (re[i] + re[i + 1], re[i] - re[i + 1]);
            (im[i], im[i + 1]) = (im[i] + im[i + 1], im[i] - im[i + 1]);
        }

        for (int i = 0; n >= 4 && i + 3 < re.Length; i += 4)
        {
            (re[i], re[i + 2]) = (re[i] + re[i + 2], re[i] - re[i + 2]);
            (im[i], im[i + 2]) = (im[i] + im[i + 2], im[i] - im[i + 2]);
            Vector256<double> tr = im[i + 3], ti = -re[i + 3];
            (re[i + 1], re[i + 3]) = (re[i + 1] + tr, re[i + 1] - tr);
            (im[i + 1], im[i + 3]) = (im[i + 1] + ti, im[i + 1] - ti);
        }
    }

    /// <summary>Takes the transform of a real signal out of that of its even and odd samples as real and imaginary parts.</summary>
    private void Split(int half, Span<Vector256<double>> power)
    {
        power[0] = (_re[0] + _im[0]) * (_re[0] + _im[0]);
        power[half] = (_re[0] - _im[0]) * (_re[0] - _im[0]);
        for (int k = 1; k < half; k++)
        {
            int m = half - k;
            Vector256<double> er = 0.5 * (_re[k] + _re[m]), ei = 0.5 * (_im[k] - _im[m]), or = 0.5 * (_im[k] + _im[m]), oi = 0.5 * (_re[m] - _re[k]);
            Vector256<double> xr = er + or * _cos[k] + oi * _sin[k], xi = ei + oi * _cos[k] - or * _sin[k];
            power[k] = xr * xr + xi * xi;
        }
    }
}
