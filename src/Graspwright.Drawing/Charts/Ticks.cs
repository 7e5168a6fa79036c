using System.Globalization;

namespace Graspwright.Drawing.Charts;

/// <summary>Round numbers along an axis, in steps of 1, 2 or 5 times a power of ten.</summary>
public sealed class Ticks
{
    // What lies beyond a round number by less than this share of a step is not seen and needs no further step.
    private const double Unseen = 2e-3;

    private readonly string format;

    private Ticks(double low, double high, double step)
    {
        Step = step;
        long first = (long)Math.Floor(low / step + Unseen), last = (long)Math.Ceiling(high / step - Unseen);
        double[] values = new double[(int)(last - first) + 1];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = (first + i) * step;
        }

        Values = values;
        int places = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 12);
        format = "0." + new string('0', places);
    }

    /// <summary>The round numbers, rising; the first and last enclose the extent.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>Distance between them.</summary>
    public double Step { get; }

    /// <summary>First of them.</summary>
    public double Low => Values[0];

    /// <summary>Last of them.</summary>
    public double High => Values[^1];

    /// <summary>Round numbers that enclose an extent.</summary>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end; an empty extent is widened.</param>
    /// <param name="atMost">Greatest number of steps, 2 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite or the ends are upside down.</exception>
    public static Ticks Enclosing(double low, double high, int atMost)
    {
        if (!double.IsFinite(low) || !double.IsFinite(high) || high < low || !double.IsFinite(high - low))
        {
            throw new ArgumentOutOfRangeException(nameof(high), high, $"An axis can't run from {low.ToString(CultureInfo.InvariantCulture)} to here.");
        }

        double least = Math.Max(1e-9, 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high)));
        if (high - low < least)
        {
            double middle = (low + high) / 2, half = Math.Max(0.5, 0.1 * Math.Abs(middle));
            (low, high) = low >= 0 && low < half ? (0, 2 * half) : (middle - half, middle + half);
        }

        double power = Math.Pow(10, Math.Floor(Math.Log10((high - low) / atMost)));
        for (; ; power *= 10)
        {
            foreach (double m in (ReadOnlySpan<double>)[1, 2, 5])
            {
                double step = m * power;
                if (Math.Ceiling(high / step - Unseen) - Math.Floor(low / step + Unseen) <= atMost)
                {
                    return new(low, high, step);
                }
            }
        }
    }

    /// <summary>A number as it stands on the axis.</summary>
    /// <param name="value">A tick.</param>
    public string Label(double value) => (Math.Abs(value) < Step / 1e6 ? 0 : value).ToString(format, CultureInfo.InvariantCulture).Replace('-', '\u2212');
}
