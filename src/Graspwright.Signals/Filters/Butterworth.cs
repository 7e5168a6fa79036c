using System.Numerics;

namespace Graspwright.Signals.Filters;

/// <summary>Butterworth filters by the bilinear transform with both edges moved so that they fall where asked, −3.01 dB there.</summary>
/// <remarks><source key="butterworth-1930">S. Butterworth 1930, <i>On the theory of filter amplifiers</i>; poles, transforms and zeros
/// as in any textbook of digital filters.</source></remarks>
public static class Butterworth
{
    /// <summary>Low-pass.</summary>
    /// <param name="order">Order, 1 to 20.</param>
    /// <param name="edgeHertz">Edge [1/s], above 0 and below half the rate.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <exception cref="ArgumentOutOfRangeException">An edge or the order is out of range.</exception>
    public static SectionChain LowPass(int order, double edgeHertz, double rateHertz)
    {
        double w = Warped(edgeHertz, rateHertz);
        Complex[] poles = [.. Prototype(order).Select(p => p * w)];
        return Digital(poles, zerosAtZero: 0, zerosAtInfinity: order, at: 0);
    }

    /// <summary>High-pass.</summary>
    /// <param name="order">Order, 1 to 20.</param>
    /// <param name="edgeHertz">Edge [1/s], above 0 and below half the rate.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <exception cref="ArgumentOutOfRangeException">An edge or the order is out of range.</exception>
    public static SectionChain HighPass(int order, double edgeHertz, double rateHertz)
    {
        double w = Warped(edgeHertz, rateHertz);
        Complex[] poles = [.. Prototype(order).Select(p => w / p)];
        return Digital(poles, zerosAtZero: order, zerosAtInfinity: 0, at: Math.PI);
    }

    /// <summary>Band-pass; twice the order in poles.</summary>
    /// <param name="order">Order, 1 to 20.</param>
    /// <param name="lowHertz">Lower edge [1/s], above 0.</param>
    /// <param name="highHertz">Upper edge [1/s], above the lower and below half the rate.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <exception cref="ArgumentOutOfRangeException">An edge or the order is out of range.</exception>
    public static SectionChain BandPass(int order, double lowHertz, double highHertz, double rateHertz)
    {
        double low = Warped(lowHertz, rateHertz), high = Warped(highHertz, rateHertz);
        if (high <= low)
        {
            throw new ArgumentOutOfRangeException(nameof(highHertz), highHertz, "The upper edge must lie above the lower.");
        }

        double width = high - low, centre = Math.Sqrt(low * high);
        List<Complex> poles = [];
        foreach (Complex p in Prototype(order))
        {
            Complex half = p * width / 2, root = Complex.Sqrt(half * half - centre * centre);
            poles.Add(half + root);
            poles.Add(half - root);
        }

        return Digital([.. poles], zerosAtZero: order, zerosAtInfinity: order, at: 2 * Math.Atan(centre / 2));
    }

    /// <summary>Notch of second order: zero at its frequency, −3 dB at frequency·(1 ± 1/(2·quality)).</summary>
    /// <param name="hertz">Frequency [1/s].</param>
    /// <param name="quality">Frequency ÷ width, above 0.</param>
    /// <param name="rateHertz">Sampling rate [1/s].</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is out of range.</exception>
    public static SectionChain Notch(double hertz, double quality, double rateHertz)
    {
        Inside(hertz, rateHertz);
        double w = 2 * Math.PI * hertz / rateHertz;
        double gain = 1 / (1 + Math.Tan(w / quality / 2));
        double b1 = -2 * gain * Math.Cos(w);
        return new([new(gain, b1, gain, b1, 2 * gain - 1)]);
    }

    private static Complex[] Prototype(int order)
    {
        if (order is < 1 or > 20)
        {
            throw new ArgumentOutOfRangeException(nameof(order), order, "An order from 1 to 20.");
        }

        Complex[] poles = new Complex[order];
        for (int k = 0; k < order; k++)
        {
            poles[k] = 2 * k + 1 == order ? -Complex.One : Complex.FromPolarCoordinates(1, Math.PI * (2 * k + 1 + order) / (2 * order));
        }

        return poles;
    }

    private static void Inside(double hertz, double rateHertz)
    {
        if (!(hertz > 0 && hertz < rateHertz / 2))
        {
            throw new ArgumentOutOfRangeException(nameof(hertz), hertz, FormattableString.Invariant($"An edge above 0 and below {rateHertz / 2} Hz, half the sampling rate."));
        }
    }

    private static double Warped(double hertz, double rateHertz)
    {
        Inside(hertz, rateHertz);
        return 2 * Math.Tan(Math.PI * hertz / rateHertz);
    }

    /// <summary>Takes analogue poles (for a rate of 1) to sections, gain 1 at an angle of the unit circle.</summary>
    private static SectionChain Digital(Complex[] analogue, int zerosAtZero, int zerosAtInfinity, double at)
    {
        Complex[] poles = [.. analogue.Select(p => (2 + p) / (2 - p))];
        // Zeros at s = 0 come to z = 1, those at infinity to z = −1; each pair of poles takes two of them, one of each kind where there are both.
        List<(Complex First, Complex? Second)> pairs = Paired(poles);
        List<Section> sections = [];
        foreach ((Complex first, Complex? second) in pairs)
        {
            int take = second is null ? 1 : 2;
            double[] zeros = new double[take];
            for (int i = 0; i < take; i++)
            {
                zeros[i] = zerosAtZero > zerosAtInfinity || zerosAtZero > 0 && i == 0 ? 1 : -1;
                _ = zeros[i] > 0 ? zerosAtZero-- : zerosAtInfinity--;
            }

            double a1 = second is { } s ? -(first + s).Real : -first.Real, a2 = second is { } t ? (first * t).Real : 0;
            double b1 = take == 2 ? -(zeros[0] + zeros[1]) : -zeros[0], b2 = take == 2 ? zeros[0] * zeros[1] : 0;
            sections.Add(new(1, b1, b2, a1, a2));
        }

        SectionChain chain = new(sections);
        double gain = 1 / chain.Response(at / (2 * Math.PI), 1).Magnitude;
        sections[0] = sections[0] with { B0 = gain, B1 = gain * sections[0].B1, B2 = gain * sections[0].B2 };
        return chain;
    }

    /// <summary>Conjugate pairs, farthest from the unit circle first; real poles by twos, a single one first.</summary>
    private static List<(Complex First, Complex? Second)> Paired(Complex[] poles)
    {
        const double real = 1e-12;
        List<(Complex First, Complex? Second)> pairs = [];
        Complex[] reals = [.. poles.Where(p => Math.Abs(p.Imaginary) <= real).OrderBy(p => p.Real)];
        for (int i = reals.Length % 2; i < reals.Length; i += 2)
        {
            pairs.Add((reals[i], reals[i + 1]));
        }

        pairs.AddRange(poles.Where(p => p.Imaginary > real).Select(p => (p, (Complex?)Complex.Conjugate(p))));
        pairs.Sort((x, y) => x.First.Magnitude.CompareTo(y.First.Magnitude));
        if (reals.Length % 2 == 1)
        {
            pairs.Insert(0, (reals[0], null));
        }

        return pairs;
    }
}
