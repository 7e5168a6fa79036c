namespace Graspwright.Strength.Lives;

/// <summary>A smooth density by its samples at even steps; nothing beyond them.</summary>
/// <remarks>Between samples it is the polynomial through the six nearest, by Newton's forward differences, so its sum up to a place is right to the sixth power of the step.</remarks>
internal sealed class EvenSamples
{
    private readonly double _start, _step;
    private readonly double[] _values, _sums;

    /// <summary>Takes the samples.</summary>
    /// <param name="start">Place of the first.</param>
    /// <param name="step">Step.</param>
    /// <param name="values">Samples.</param>
    public EvenSamples(double start, double step, double[] values)
    {
        (_start, _step, _values) = (start, step, values);
        _sums = new double[values.Length];
        for (int i = 1; i < values.Length; i++)
        {
            _sums[i] = _sums[i - 1] + Part(i - 1, 1);
        }
    }

    /// <summary>Sum of the density up to a place.</summary>
    /// <param name="place">Place.</param>
    public double Below(double place)
    {
        double at = (place - _start) / _step;
        if (at <= 0)
        {
            return 0;
        }

        int cell = (int)Math.Min(at, _values.Length);
        return cell >= _values.Length - 1 ? _sums[^1] : _sums[cell] + Part(cell, at - cell);
    }

    /// <summary>Sum over a cell from its first sample to a share of it.</summary>
    private double Part(int cell, double share)
    {
        Span<double> d = stackalloc double[6];
        for (int k = 0; k < 6; k++)
        {
            int i = cell - 2 + k;
            d[k] = i >= 0 && i < _values.Length ? _values[i] : 0;
        }

        for (int order = 1; order < 6; order++)
        {
            for (int k = 5; k >= order; k--)
            {
                d[k] -= d[k - 1];
            }
        }

        return _step * (Sum(d, 2 + share) - Sum(d, 2));
    }

    /// <summary>Σ dₖ·∫ of the binomial s over k, from 0 to s.</summary>
    private static double Sum(ReadOnlySpan<double> d, double s) => s * (d[0] + s * (d[1] / 2 + d[2] * (s / 6 - 1.0 / 4) + d[3] * (1.0 / 6 + s * (s / 24 - 1.0 / 6))
        + d[4] * (-1.0 / 8 + s * (11.0 / 72 + s * (s / 120 - 1.0 / 16))) + d[5] * (1.0 / 10 + s * (-5.0 / 36 + s * (7.0 / 96 + s * (s / 720 - 1.0 / 60))))));
}
