namespace Graspwright.Strength.Lives;

/// <summary>Logarithm of the likelihood with its slopes, in a = 1/spread and b = −location/spread.</summary>
/// <param name="Value">The logarithm.</param>
/// <param name="A">Slope along a.</param>
/// <param name="B">Slope along b.</param>
/// <param name="AA">Second slope along a.</param>
/// <param name="AB">Mixed second slope.</param>
/// <param name="BB">Second slope along b.</param>
internal readonly record struct Slopes(double Value, double A, double B, double AA, double AB, double BB);

/// <summary>Records made ready for fitting: equal ones gathered, times as logarithms about their middle.</summary>
/// <remarks>
/// In a and b the logarithm of the likelihood is concave for Weibull and for lognormal, spans included, because the standard value
/// a·ln t + b is linear in them and both laws have a log-concave density (Burridge 1981 from memory; Prékopa for the spans).
/// </remarks>
internal sealed class LifeLikelihood
{
    private readonly bool _normal;
    private readonly double[] _seen, _seenCount, _whole, _wholeCount, _before, _beforeCount, _from, _to, _spanCount;
    private readonly double _logTimes;

    public LifeLikelihood(LifeForm form, IReadOnlyList<LifeRecord> records)
    {
        _normal = form == LifeForm.Lognormal;
        Form = form;
        LifeRecord[] sorted = [.. records];
        if (Array.Exists(sorted, r => !r.Sound))
        {
            throw new ArgumentException("A record says something impossible: negative times, an end before its start, or no parts.", nameof(records));
        }

        Array.Sort(sorted, static (x, y) => x.Low != y.Low ? x.Low.CompareTo(y.Low) : x.High.CompareTo(y.High));
        int kept = 0;
        for (int i = 0; i < sorted.Length; i++)
        {
            LifeRecord r = sorted[i];
            if (r.Low <= 0 && !r.Broke)
            {
                continue; // whole when new: says nothing
            }

            if (kept > 0 && sorted[kept - 1].Low.Equals(r.Low) && sorted[kept - 1].High.Equals(r.High))
            {
                sorted[kept - 1] = sorted[kept - 1] with { Count = sorted[kept - 1].Count + r.Count };
            }
            else
            {
                sorted[kept++] = r;
            }
        }

        sorted = sorted[..kept];
        Kept = sorted;
        double sum = 0, count = 0;
        foreach (LifeRecord r in sorted)
        {
            sum += r.Count * Math.Log(r.Middle);
            count += r.Count;
        }

        Centre = count > 0 ? sum / count : 0;
        (_seen, _seenCount) = Take(r => r.Seen, r => r.Low);
        (_whole, _wholeCount) = Take(r => !r.Broke, r => r.Low);
        (_before, _beforeCount) = Take(r => r.Broke && !r.Seen && r.Low <= 0, r => r.High);
        (_from, _spanCount) = Take(r => r.Broke && !r.Seen && r.Low > 0, r => r.Low);
        (_to, _) = Take(r => r.Broke && !r.Seen && r.Low > 0, r => r.High);
        for (int i = 0; i < _seen.Length; i++)
        {
            _logTimes += _seenCount[i] * (_seen[i] + Centre);
        }
    }

    public LifeForm Form { get; }

    /// <summary>What is subtracted from the logarithms of times.</summary>
    public double Centre { get; }

    /// <summary>The records that say something, sorted, equal ones together.</summary>
    public IReadOnlyList<LifeRecord> Kept { get; }

    /// <summary>Standard deviation of the logarithms of their middles, at least 0.05.</summary>
    public double RoughSpread()
    {
        double sum = 0, count = 0;
        foreach (LifeRecord r in Kept)
        {
            double y = Math.Log(r.Middle) - Centre;
            sum += r.Count * y * y;
            count += r.Count;
        }

        return Math.Max(0.05, Math.Sqrt(sum / Math.Max(1, count)));
    }

    public Slopes At(double a, double b)
    {
        double value = -_logTimes, ga = 0, gb = 0, haa = 0, hab = 0, hbb = 0, ln = Math.Log(a);
        for (int i = 0; i < _seen.Length; i++)
        {
            double y = _seen[i], n = _seenCount[i], z = a * y + b, d, dd;
            if (_normal)
            {
                value += n * (ln + NormalLaw.LogDensity(z));
                (d, dd) = (-z, -1);
            }
            else
            {
                double w = Math.Exp(z);
                value += n * (ln + z - w);
                (d, dd) = (1 - w, -w);
            }

            d *= n;
            dd *= n;
            ga += d * y + n / a;
            gb += d;
            haa += dd * y * y - n / (a * a);
            hab += dd * y;
            hbb += dd;
        }

        for (int i = 0; i < _whole.Length; i++)
        {
            double y = _whole[i], n = _wholeCount[i], z = a * y + b, d, dd;
            if (_normal)
            {
                double log = NormalLaw.LogAbove(z), h = Math.Exp(NormalLaw.LogDensity(z) - log);
                value += n * log;
                (d, dd) = (-n * h, -n * h * (h - z));
            }
            else
            {
                d = dd = -n * Math.Exp(z);
                value += d;
            }

            ga += d * y;
            gb += d;
            haa += dd * y * y;
            hab += dd * y;
            hbb += dd;
        }

        for (int i = 0; i < _before.Length; i++)
        {
            double y = _before[i], n = _beforeCount[i];
            (double log, double d, double dd) = Before(a * y + b);
            value += n * log;
            ga += n * d * y;
            gb += n * d;
            haa += n * dd * y * y;
            hab += n * dd * y;
            hbb += n * dd;
        }

        for (int i = 0; i < _from.Length; i++)
        {
            double y1 = _from[i], y2 = _to[i], n = _spanCount[i];
            (double log, double d1, double d2, double d11, double d12, double d22) = Span(a * y1 + b, a * y2 + b);
            value += n * log;
            ga += n * (d1 * y1 + d2 * y2);
            gb += n * (d1 + d2);
            haa += n * (d11 * y1 * y1 + 2 * d12 * y1 * y2 + d22 * y2 * y2);
            hab += n * (d11 * y1 + d12 * (y1 + y2) + d22 * y2);
            hbb += n * (d11 + 2 * d12 + d22);
        }

        return new(double.IsNaN(value) ? double.NegativeInfinity : value, ga, gb, haa, hab, hbb);
    }

    private (double Log, double D, double DD) Before(double z)
    {
        if (_normal)
        {
            double log = NormalLaw.LogAbove(-z), h = Math.Exp(NormalLaw.LogDensity(z) - log);
            return (log, h, -h * (h + z));
        }

        double w = Math.Exp(z), g = w < 700 ? (w > 0 ? w / NormalLaw.ExpLessOne(w) : 1) : 0;
        return (w > 0 ? NormalLaw.LogOneLess(-w) : z, g, g > 0 ? g * (1 - w - g) : 0);
    }

    private (double Log, double D1, double D2, double D11, double D12, double D22) Span(double z1, double z2)
    {
        if (_normal)
        {
            (double near, double far) = z1 > 0 ? (z1, z2) : (-z2, -z1);
            double tail = NormalLaw.LogAbove(near), log = tail + NormalLaw.LogOneLess(Math.Min(-1e-300, NormalLaw.LogAbove(far) - tail));
            double r1 = Math.Exp(NormalLaw.LogDensity(z1) - log), r2 = Math.Exp(NormalLaw.LogDensity(z2) - log);
            return (log, -r1, r2, z1 * r1 - r1 * r1, r1 * r2, -z2 * r2 - r2 * r2);
        }

        double w1 = Math.Exp(z1), gap = w1 * NormalLaw.ExpLessOne(z2 - z1), w2 = w1 + gap;
        double q = gap < 700 ? 1 / NormalLaw.ExpLessOne(gap) : 0, p = q * (1 + q);
        return (-w1 + NormalLaw.LogOneLess(-gap), -w1 * (1 + q), q * w2, -w1 * (1 + q) - w1 * w1 * p, w1 * w2 * p, q * w2 - p * w2 * w2);
    }

    private (double[] Logs, double[] Counts) Take(Func<LifeRecord, bool> which, Func<LifeRecord, double> time)
    {
        List<double> logs = [], counts = [];
        foreach (LifeRecord r in Kept)
        {
            if (which(r))
            {
                logs.Add(Math.Log(time(r)) - Centre);
                counts.Add(r.Count);
            }
        }

        return ([.. logs], [.. counts]);
    }
}
