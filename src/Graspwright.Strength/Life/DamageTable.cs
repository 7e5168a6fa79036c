using Graspwright.Strength.Fatigue;

namespace Graspwright.Strength.Life;

/// <summary>Damage of a day against how great the stresses are in proportion to the strength, tabled for many samples.</summary>
/// <remarks>
/// Loads, scatter of strength and ageing act only through x = stress ÷ strength, so one table of the daily damage R(x)
/// serves them all. Ageing lets ln x rise evenly with time, so the damage of a time is a difference of the tabled
/// integral of R over ln x. Between entries R is taken as a power of x, which a Miner sum of straight lines almost is.
/// </remarks>
public sealed class DamageTable
{
    private const int Steps = 96;
    private const double Span = 4.6; // from a hundredth of the breaking stress
    private readonly double[] _log = new double[Steps + 1];
    private readonly double[] _sum = new double[Steps + 1];
    private readonly double _first, _step;
    private readonly bool _ends;

    /// <summary>Tables the damage of some blocks.</summary>
    /// <param name="blocks">Blocks of a day.</param>
    /// <param name="line">Fatigue line.</param>
    /// <param name="strength">Tensile strength [Pa].</param>
    /// <param name="ends">Whether there is no damage once the highest block breaks at once, because breaks at once are counted apart.</param>
    public DamageTable(ReadOnlySpan<StressBlock> blocks, FatigueLine line, double strength, bool ends)
    {
        _ends = ends;
        double highest = 0;
        foreach (StressBlock block in blocks)
        {
            highest = block.PerDay > 0 && block.Amplitude > 0 ? Math.Max(highest, block.Highest) : highest;
        }

        IsEmpty = highest <= 0;
        if (IsEmpty)
        {
            return;
        }

        // The table ends just below the factor at which the highest block breaks at once.
        double top = Math.Log(strength / highest) - 1e-3;
        _step = Span / Steps;
        _first = top - Span;
        for (int i = 0; i <= Steps; i++)
        {
            _log[i] = Math.Log(DamageSum.OfDay(blocks, line, strength, Math.Exp(_first + i * _step)));
        }

        _sum[0] = Math.Exp(_log[0]) / Power(0);
        for (int i = 0; i < Steps; i++)
        {
            _sum[i + 1] = _sum[i] + Integral(i, _step);
        }
    }

    /// <summary>Whether there is no damage at all.</summary>
    public bool IsEmpty { get; }

    /// <summary>Damage of a day.</summary>
    /// <param name="logTimes">Logarithm of the factor on all stresses.</param>
    public double Rate(double logTimes)
    {
        if (IsEmpty || (_ends && logTimes > _first + Span))
        {
            return 0;
        }

        int i = Cell(logTimes);
        return Math.Exp(_log[i] + Power(i) * (logTimes - _first - i * _step));
    }

    /// <summary>∫R d(ln x) from nought.</summary>
    /// <param name="logTimes">Logarithm of the factor on all stresses.</param>
    public double Integrated(double logTimes)
    {
        if (IsEmpty)
        {
            return 0;
        }

        logTimes = _ends ? Math.Min(logTimes, _first + Span) : logTimes;
        int i = Cell(logTimes);
        double along = logTimes - _first - i * _step;
        return logTimes < _first ? Math.Exp(_log[0] + Power(0) * along) / Power(0) : _sum[i] + Integral(i, along);
    }

    private int Cell(double logTimes) => (int)Math.Clamp((logTimes - _first) / _step, 0, Steps - 1);

    private double Power(int cell) => (_log[cell + 1] - _log[cell]) / _step;

    private double Integral(int cell, double along)
    {
        double power = Power(cell);
        return Math.Exp(_log[cell]) * (Math.Exp(power * along) - 1) / power;
    }
}
