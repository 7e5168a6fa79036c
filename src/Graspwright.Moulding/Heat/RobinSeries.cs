namespace Graspwright.Moulding.Heat;

/// <summary>Exact temperature of a body at one temperature throughout, put into surroundings of another, with heat transfer at its surface.</summary>
/// <remarks>
/// Series over the roots of the Biot equation, as in every textbook of heat transfer (Carslaw and Jaeger, Conduction of
/// Heat in Solids, 2nd ed., ch. 3, 7, 9; from memory, and compared with tabulated roots in the tests).
/// Half-thickness L for a slab alike on both sides, radius for cylinder and sphere; Bi = h·L ÷ k, Fo = α·t ÷ L².
/// </remarks>
/// <source key="carslaw-jaeger">Chapters 3, 7 and 9.</source>
public sealed class RobinSeries
{
    private const double Negligible = 1e-17;
    private const int MostTerms = 4000;

    private readonly BodyShape _shape;
    private readonly List<(double Root, double Weight)> _terms = [];

    /// <summary>A series for one Biot number.</summary>
    /// <param name="shape">Shape.</param>
    /// <param name="biot">Biot number h·L ÷ k, above 0.</param>
    /// <param name="leastFourier">Least Fourier number that will be asked for, above 0: it decides how many terms are found.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not above 0.</exception>
    public RobinSeries(BodyShape shape, double biot, double leastFourier)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(biot);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(leastFourier);
        _shape = shape;
        for (int n = 0; n < MostTerms; n++)
        {
            double root = Root(shape, biot, n);
            _terms.Add((root, Weight(shape, root)));
            if (Math.Exp(-root * root * leastFourier) < Negligible)
            {
                break;
            }
        }
    }

    /// <summary>Root number n (from 0) of the Biot equation.</summary>
    /// <param name="shape">Shape: slab ζ·tan ζ = Bi, cylinder ζ·J₁(ζ) ÷ J₀(ζ) = Bi, sphere 1 − ζ·cot ζ = Bi.</param>
    /// <param name="biot">Biot number, above 0.</param>
    /// <param name="n">Number of the root, from 0.</param>
    public static double Root(BodyShape shape, double biot, int n)
    {
        // Each equation, multiplied by what its poles divide by, has one root in a known bracket.
        (double low, double high) = shape switch
        {
            BodyShape.Slab => (n * Math.PI, (n + 0.5) * Math.PI),
            BodyShape.Sphere => (n * Math.PI, (n + 1) * Math.PI),
            _ => (Bessel.ZeroOfJ1(n), Bessel.ZeroOfJ0(n)),
        };
        double Miss(double z) => shape switch
        {
            BodyShape.Slab => z * Math.Sin(z) - biot * Math.Cos(z),
            BodyShape.Sphere => (1 - biot) * Math.Sin(z) - z * Math.Cos(z),
            _ => z * Bessel.J1(z) - biot * Bessel.J0(z),
        };
        // At ζ = 0 the equations hold for no heat transfer at all: begin just beside it.
        low = n == 0 ? Math.Min(1e-9, 1e-3 * Math.Sqrt(biot)) : low;
        double sign = Math.Sign(Miss(low));
        for (int i = 0; i < 200 && high - low > 4e-16 * high; i++)
        {
            double middle = (low + high) / 2;
            if (Math.Sign(Miss(middle)) == sign)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low + high) / 2;
    }

    /// <summary>Factor of the first term at the middle: C₁ of the textbook tables.</summary>
    public double FirstWeight => _terms[0].Weight;

    /// <summary>Share of the first temperature difference that is left at a place.</summary>
    /// <param name="place">Distance from the middle ÷ L, 0 to 1.</param>
    /// <param name="fourier">Fourier number, not below the least one given.</param>
    public double At(double place, double fourier)
    {
        double sum = 0;
        for (int i = _terms.Count - 1; i >= 0; i--)
        {
            (double root, double weight) = _terms[i];
            sum += weight * Math.Exp(-root * root * fourier) * Profile(root * place);
        }

        return sum;
    }

    /// <summary>Share of the first temperature difference that is left on average over the volume.</summary>
    /// <param name="fourier">Fourier number, not below the least one given.</param>
    public double Mean(double fourier)
    {
        double sum = 0;
        for (int i = _terms.Count - 1; i >= 0; i--)
        {
            (double root, double weight) = _terms[i];
            sum += weight * Math.Exp(-root * root * fourier) * ProfileMean(root);
        }

        return sum;
    }

    private static double Weight(BodyShape shape, double z) => shape switch
    {
        BodyShape.Slab => 4 * Math.Sin(z) / (2 * z + Math.Sin(2 * z)),
        BodyShape.Sphere => 4 * (Math.Sin(z) - z * Math.Cos(z)) / (2 * z - Math.Sin(2 * z)),
        _ => 2 * Bessel.J1(z) / (z * (Bessel.J0(z) * Bessel.J0(z) + Bessel.J1(z) * Bessel.J1(z))),
    };

    private double Profile(double x) => _shape switch
    {
        BodyShape.Slab => Math.Cos(x),
        BodyShape.Sphere => x == 0 ? 1 : Math.Sin(x) / x,
        _ => Bessel.J0(x),
    };

    private double ProfileMean(double z) => _shape switch
    {
        BodyShape.Slab => Math.Sin(z) / z,
        BodyShape.Sphere => 3 * (Math.Sin(z) - z * Math.Cos(z)) / (z * z * z),
        _ => 2 * Bessel.J1(z) / z,
    };
}
