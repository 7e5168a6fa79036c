using Graspwright.Strength.Fatigue;

namespace Graspwright.Strength.Life;

/// <summary>One place of a part that can break: its stresses on a day of wear and what its material stands.</summary>
public sealed class PartLife
{
    private readonly DamageTable _grips;
    private readonly DamageTable[] _knocks;
    private readonly StressBlock[] _hard;
    private readonly int _gripBlocks;

    /// <summary>Tables a place.</summary>
    /// <param name="grips">Cycles of the grips.</param>
    /// <param name="knocks">Cycles of the knocks, class by class.</param>
    /// <param name="line">Fatigue line of the place, surface counted in.</param>
    /// <param name="strength">Stress at its notch that breaks it at once [Pa].</param>
    /// <param name="ageing">Rate at which strength is lost [1/day], 0 or more: strength falls as exp(−ageing·t).</param>
    public PartLife(ReadOnlySpan<StressBlock> grips, ReadOnlySpan<StressBlock> knocks, FatigueLine line, double strength, double ageing)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ageing);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(strength);
        _grips = new(grips, line, strength, ends: false);
        _knocks = new DamageTable[knocks.Length];
        for (int i = 0; i < knocks.Length; i++)
        {
            _knocks[i] = new(knocks.Slice(i, 1), line, strength, ends: true);
        }

        Ageing = ageing;
        Strength = strength;
        _hard = [.. grips, .. knocks];
        _gripBlocks = grips.Length;
    }

    /// <summary>Rate at which strength is lost [1/day].</summary>
    public double Ageing { get; }

    /// <summary>Breaking stress when new [Pa].</summary>
    public double Strength { get; }

    /// <summary>Days to a break of one sample: by fatigue, or by one load that is too great, whichever comes first.</summary>
    /// <param name="draw">What the sample drew.</param>
    /// <returns>Infinity where nothing wears it.</returns>
    public double Days(in LifeDraw draw)
    {
        double sudden = OverloadDays(draw), grip = Math.Log(draw.Load / draw.Strength), knock = Math.Log(Math.Sqrt(draw.Energy) / draw.Strength);
        double wanted = draw.Life / draw.Count;
        if (Ageing <= 0)
        {
            return Math.Min(sudden, wanted / Rate(grip, knock));
        }

        double start = Integrated(grip, knock), high = sudden, low = 0;
        if (high <= 0 || double.IsPositiveInfinity(high) || Damage(high) < wanted)
        {
            return sudden;
        }

        // Newton on the damage, which rises with time; where a step leaves the bracket it is halved instead.
        double days = Math.Min(high, wanted / Rate(grip, knock));
        for (int i = 0; i < 100; i++)
        {
            double over = Damage(days) - wanted;
            (low, high) = over > 0 ? (low, days) : (days, high);
            double next = days - over / Rate(grip + Ageing * days, knock + Ageing * days);
            next = next > low && next < high ? next : (low + high) / 2;
            if (Math.Abs(next - days) < 1e-4 * days)
            {
                return next;
            }

            days = next;
        }

        return days;

        double Damage(double t) => (Integrated(grip + Ageing * t, knock + Ageing * t) - start) / Ageing;
    }

    private double Rate(double grip, double knock)
    {
        double sum = _grips.Rate(grip);
        foreach (DamageTable table in _knocks)
        {
            sum += table.Rate(knock);
        }

        return sum;
    }

    private double Integrated(double grip, double knock)
    {
        double sum = _grips.Integrated(grip);
        foreach (DamageTable table in _knocks)
        {
            sum += table.Integrated(knock);
        }

        return sum;
    }

    /// <summary>Days until a load breaks it at once: each class of loads comes by chance, and breaks from the day on which the aged strength no longer stands it.</summary>
    /// <param name="draw">What the sample drew.</param>
    public double OverloadDays(in LifeDraw draw)
    {
        Span<(double Day, double Rate)> from = stackalloc (double, double)[_hard.Length];
        int count = 0;
        for (int i = 0; i < _hard.Length; i++)
        {
            double times = (i < _gripBlocks ? draw.Load : Math.Sqrt(draw.Energy)) / draw.Strength, stress = _hard[i].Highest * times;
            if (_hard[i].PerDay > 0 && (stress >= Strength || (Ageing > 0 && stress > 0)))
            {
                from[count++] = (stress >= Strength ? 0 : Math.Log(Strength / stress) / Ageing, _hard[i].PerDay * draw.Count);
            }
        }

        from = from[..count];
        from.Sort((a, b) => a.Day.CompareTo(b.Day));
        double left = draw.Waiting, rate = 0, day = 0;
        foreach ((double start, double more) in from)
        {
            if (rate > 0 && left < rate * (start - day))
            {
                return day + left / rate;
            }

            left -= rate * (start - day);
            day = start;
            rate += more;
        }

        return rate > 0 ? day + left / rate : double.PositiveInfinity;
    }
}

/// <summary>What one sample drew for one part.</summary>
/// <param name="Load">Factor on the loads of grips.</param>
/// <param name="Energy">Factor on the energy of knocks.</param>
/// <param name="Count">Factor on all counts.</param>
/// <param name="Strength">Factor on the strength of this part.</param>
/// <param name="Life">Factor on the life of this part.</param>
/// <param name="Waiting">Number of overloads waited for, mean 1 (exponential).</param>
public readonly record struct LifeDraw(double Load, double Energy, double Count, double Strength, double Life, double Waiting)
{
    /// <summary>The middle of every spread.</summary>
    public static LifeDraw Middle { get; } = new(1, 1, 1, 1, 1, Math.Log(2));
}
