namespace Graspwright.Signals.Filters;

/// <summary>Spectra of real signals by the fast Fourier transform of a power of two.</summary>
public sealed class Spectrum
{
    private readonly int _count;
    private readonly double[] _cos, _sin, _re, _im;
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
        (_re, _im, _cos, _sin) = (new double[half], new double[half], new double[half], new double[half]);
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

    /// <summary>Squared magnitudes of the transform of a windowed piece without its mean.</summary>
    /// <param name="piece">Samples.</param>
    /// <param name="power">Squared magnitudes at 0 … half the rate: half the count, and one.</param>
    public void Power(ReadOnlySpan<double> piece, Span<double> power)
    {
        double mean = 0;
        foreach (double v in piece)
        {
            mean += v;
        }

        mean /= _count;
        int half = _count / 2;
        for (int i = 0; i < half; i++)
        {
            int to = _turned[i];
            _re[to] = (piece[2 * i] - mean) * Window[2 * i];
            _im[to] = (piece[2 * i + 1] - mean) * Window[2 * i + 1];
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

        double[] sum = new double[_count / 2 + 1], one = new double[sum.Length];
        int pieces = 0;
        for (int start = 0; start + _count <= values.Length; start += _count / 2, pieces++)
        {
            Power(values.Slice(start, _count), one);
            for (int k = 0; k < sum.Length; k++)
            {
                sum[k] += one[k];
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
        double[] re = _re, im = _im;
        for (int span = 1; span < n; span <<= 1)
        {
            int stride = _count / (2 * span);
            for (int k = 0; k < span; k++)
            {
                double c = _cos[k * stride], s = _sin[k * stride];
                for (int i = k; i < n; i += 2 * span)
                {
                    int j = i + span;
                    double tr = re[j] * c + im[j] * s, ti = im[j] * c - re[j] * s;
                    re[j] = re[i] - tr;
                    im[j] = im[i] - ti;
                    re[i] += tr;
                    im[i] += ti;
                }
            }
        }
    }

    /// <summary>Takes the transform of a real signal out of that of its even and odd samples as real and imaginary parts.</summary>
    private void Split(int half, Span<double> power)
    {
        power[0] = (_re[0] + _im[0]) * (_re[0] + _im[0]);
        power[half] = (_re[0] - _im[0]) * (_re[0] - _im[0]);
        for (int k = 1; k < half; k++)
        {
            int m = half - k;
            double er = 0.5 * (_re[k] + _re[m]), ei = 0.5 * (_im[k] - _im[m]), or = 0.5 * (_im[k] + _im[m]), oi = 0.5 * (_re[m] - _re[k]);
            double xr = er + or * _cos[k] + oi * _sin[k], xi = ei + oi * _cos[k] - or * _sin[k];
            power[k] = xr * xr + xi * xi;
        }
    }
}
