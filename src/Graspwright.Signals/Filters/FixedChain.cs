namespace Graspwright.Signals.Filters;

/// <summary>Work of a chain in a controller's own terms.</summary>
/// <param name="Multiplications">Products of 32 by 32 bits kept to 64.</param>
/// <param name="Additions">Sums of 64 bits.</param>
/// <param name="Shifts">Shifts of 64 bits back to 32.</param>
/// <param name="Moves">Loads and stores of 32 bits.</param>
public readonly record struct ChainWork(long Multiplications, long Additions, long Shifts, long Moves)
{
    /// <summary>Both together.</summary>
    public static ChainWork operator +(ChainWork a, ChainWork b) => Add(a, b);

    /// <summary>Both together.</summary>
    /// <param name="a">One.</param>
    /// <param name="b">The other.</param>
    public static ChainWork Add(ChainWork a, ChainWork b) =>
        new(a.Multiplications + b.Multiplications, a.Additions + b.Additions, a.Shifts + b.Shifts, a.Moves + b.Moves);
}

/// <summary>What a kind of small controller takes for each step of the work [clock cycles].</summary>
/// <param name="Words">The kind.</param>
/// <param name="ClockHertz">Clock [1/s].</param>
/// <param name="Multiplication">A product of 32 by 32 bits kept to 64.</param>
/// <param name="Addition">A sum of 64 bits.</param>
/// <param name="Shift">A shift of 64 bits by a fixed number.</param>
/// <param name="Move">A load or store of 32 bits.</param>
/// <remarks>Cycle counts from memory of the makers' tables of instructions and of compilers' helper routines; generous, and no measurement.</remarks>
public sealed record ControllerKind(string Words, double ClockHertz, int Multiplication, int Addition, int Shift, int Move)
{
    /// <summary>The kinds that are known.</summary>
    public static IReadOnlyList<ControllerKind> All { get; } =
    [
        new("8 bit, 16 MHz, with a multiplier of 8 by 8", 16e6, 110, 12, 60, 10),
        new("32 bit, 48 MHz, without long products", 48e6, 24, 3, 6, 2),
        new("32 bit, 100 MHz, with long products", 100e6, 1, 2, 3, 2),
    ];

    /// <summary>Cycles of some work.</summary>
    /// <param name="work">The work.</param>
    public long Cycles(ChainWork work) => work.Multiplications * Multiplication + work.Additions * Addition + work.Shifts * Shift + work.Moves * Move;
}

/// <summary>The causal front end as a small controller runs it: whole numbers of 32 bits, products of 64, no floating point.</summary>
/// <remarks>
/// Coefficients carry 28 bits behind the point, so that ±8 fits. Samples are taken at 16 bits and shifted up by eight,
/// which keeps the rounding of the low-pass below one count. Each section is direct form I: its state is past input and
/// output, which cannot overflow as long as the signal does not. Work is counted as it is done.
/// </remarks>
public sealed class FixedChain
{
    /// <summary>Bits behind the point of a coefficient.</summary>
    public const int CoefficientBits = 28;

    /// <summary>Bits by which samples are shifted up.</summary>
    public const int SampleBits = 8;

    private readonly FixedSection[] _band, _smooth;

    /// <summary>A front end at rest.</summary>
    /// <param name="frontEnd">The front end.</param>
    public FixedChain(FrontEnd frontEnd)
    {
        ArgumentNullException.ThrowIfNull(frontEnd);
        _band = [.. frontEnd.Band?.Sections.Select(s => new FixedSection(s)) ?? []];
        _smooth = [.. frontEnd.Smooth.Sections.Select(s => new FixedSection(s))];
    }

    /// <summary>Work done so far.</summary>
    public ChainWork Work { get; private set; }

    /// <summary>Samples so far.</summary>
    public long Samples { get; private set; }

    /// <summary>Coefficients of the sections in whole numbers: b0, b1, b2, a1, a2, first the band, then the smoothing.</summary>
    public IEnumerable<int[]> Coefficients => _band.Concat(_smooth).Select(s => s.Coefficients);

    /// <summary>Takes a sample.</summary>
    /// <param name="sample">Count of the converter, within ±32 767.</param>
    /// <returns>Envelope [counts], with <see cref="SampleBits"/> bits behind the point.</returns>
    public int Step(int sample)
    {
        int x = sample << SampleBits;
        foreach (FixedSection section in _band)
        {
            x = section.Step(x);
            Work += FixedSection.WorkOfStep;
        }

        if (_band.Length > 0)
        {
            x = x < 0 ? -x : x;
            Work += new ChainWork(0, 1, 0, 0);
        }

        foreach (FixedSection section in _smooth)
        {
            x = section.Step(x);
            Work += FixedSection.WorkOfStep;
        }

        Samples++;
        return x;
    }

    private sealed class FixedSection(Section section)
    {
        private int _x1, _x2, _y1, _y2;
        private long _left;

        public static ChainWork WorkOfStep => new(5, 5, 1, 12);

        public int[] Coefficients { get; } = [Fixed(section.B0), Fixed(section.B1), Fixed(section.B2), Fixed(section.A1), Fixed(section.A2)];

        public int Step(int x)
        {
            int[] c = Coefficients;
            // What rounding cut off is carried to the next sample: without it a slow low-pass stands still below a count.
            long sum = _left + (long)c[0] * x + (long)c[1] * _x1 + (long)c[2] * _x2 - (long)c[3] * _y1 - (long)c[4] * _y2;
            long whole = sum >> CoefficientBits;
            _left = sum - (whole << CoefficientBits);
            int y = (int)Math.Clamp(whole, int.MinValue, int.MaxValue);
            (_x2, _x1, _y2, _y1) = (_x1, x, _y1, y);
            return y;
        }

        private static int Fixed(double coefficient)
        {
            double scaled = Math.Round(coefficient * (1L << CoefficientBits));
            return Math.Abs(scaled) <= int.MaxValue
                ? (int)scaled
                : throw new ArgumentOutOfRangeException(nameof(coefficient), coefficient, "A coefficient within ±8.");
        }
    }
}
