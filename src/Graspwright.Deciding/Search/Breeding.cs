namespace Graspwright.Deciding.Search;

/// <summary>Ways to make a new design out of known ones. Which way is used follows from what each was worth lately.</summary>
/// <source key="deb-agrawal-1995">Simulated binary crossover, and polynomial mutation with it.</source>
/// <source key="storn-price-1997">Differential evolution.</source>
internal static class Breeding
{
    /// <summary>How many ways there are.</summary>
    public const int Ways = 5;

    private const double Crossing = 15, Mutating = 20, LeastShare = 0.08;

    /// <summary>Chooses a way.</summary>
    public static int Choose(IReadOnlyList<double> credits, ref Chance chance)
    {
        double sum = credits.Sum(), at = chance.Share();
        for (int way = 0; way < Ways - 1; way++)
        {
            double share = LeastShare + (1 - Ways * LeastShare) * (sum > 0 ? credits[way] / sum : 1.0 / Ways);
            if (at < share)
            {
                return way;
            }

            at -= share;
        }

        return Ways - 1;
    }

    /// <summary>A new design, settled in the space.</summary>
    /// <param name="way">Way of breeding.</param>
    /// <param name="space">The space.</param>
    /// <param name="known">Designs that breed.</param>
    /// <param name="front">The front so far.</param>
    /// <param name="chance">Stream of chance of the new design.</param>
    public static double[] Child(int way, DesignSpace space, IReadOnlyList<Design> known, IReadOnlyList<Design> front, ref Chance chance)
    {
        IReadOnlyList<Design> best = front.Count > 1 ? front : known;
        double[] child = way switch
        {
            0 => Crossed(space, known, ref chance),
            1 => Differed(space, known, known[chance.Below(known.Count)].Values, 0.5, 0.2, ref chance),
            2 => Differed(space, known, best[chance.Below(best.Count)].Values, 0.3 + 0.4 * chance.Share(), 0.9, ref chance),
            3 => Toward(space, known, best, ref chance),
            _ => Nudged(space, best, ref chance),
        };
        space.Settle(child);
        return child;
    }

    private static double[] Crossed(DesignSpace space, IReadOnlyList<Design> known, ref Chance chance)
    {
        double[] one = known[chance.Below(known.Count)].Values, other = known[chance.Below(known.Count)].Values;
        double[] child = [.. one];
        bool crosses = chance.Share() < 0.9;
        for (int i = 0; crosses && i < child.Length; i++)
        {
            if (chance.Share() >= 0.5)
            {
                continue;
            }

            if (space.Parameters[i].Unordered)
            {
                child[i] = other[i];
                continue;
            }

            child[i] = Cross(one[i], other[i], space.Parameters[i], ref chance);
        }

        Mutate(space, child, 1.0 / child.Length, ref chance);
        return child;
    }

    private static double Cross(double one, double other, FreeParameter p, ref Chance chance)
    {
        double low = Math.Min(one, other), high = Math.Max(one, other), apart = high - low;
        double at = chance.Share();
        bool lower = chance.Share() < 0.5;
        if (!(apart > 1e-14 * (p.High - p.Low)))
        {
            return one;
        }

        double room = lower ? low - p.Low : p.High - high;
        double alpha = 2 - Math.Pow(1 + 2 * Math.Max(room, 0) / apart, -(Crossing + 1));
        double spread = at <= 1 / alpha ? Math.Pow(at * alpha, 1 / (Crossing + 1)) : Math.Pow(1 / (2 - at * alpha), 1 / (Crossing + 1));
        return 0.5 * (lower ? low + high - spread * apart : low + high + spread * apart);
    }

    private static void Mutate(DesignSpace space, double[] child, double rate, ref Chance chance)
    {
        for (int i = 0; i < child.Length; i++)
        {
            if (chance.Share() >= rate)
            {
                continue;
            }

            FreeParameter p = space.Parameters[i];
            double width = p.High - p.Low, at = chance.Share();
            if (p.Unordered)
            {
                child[i] = chance.Below((int)p.Count);
            }
            else if (width > 0)
            {
                double below = (child[i] - p.Low) / width, above = (p.High - child[i]) / width;
                double step = at < 0.5
                    ? Math.Pow(2 * at + (1 - 2 * at) * Math.Pow(1 - below, Mutating + 1), 1 / (Mutating + 1)) - 1
                    : 1 - Math.Pow(2 * (1 - at) + 2 * (at - 0.5) * Math.Pow(1 - above, Mutating + 1), 1 / (Mutating + 1));
                child[i] += Stepped(step * width, p);
            }
        }
    }

    private static double[] Differed(DesignSpace space, IReadOnlyList<Design> known, double[] parent, double factor, double rate, ref Chance chance)
    {
        double[] a = known[chance.Below(known.Count)].Values, b = known[chance.Below(known.Count)].Values, c = known[chance.Below(known.Count)].Values;
        double[] child = [.. parent];
        int always = chance.Below(child.Length);
        for (int i = 0; i < child.Length; i++)
        {
            if (i != always && chance.Share() >= rate)
            {
                continue;
            }

            FreeParameter p = space.Parameters[i];
            child[i] = p.Unordered ? a[i] : Bounced(a[i] + Stepped(factor * (b[i] - c[i]), p), parent[i], p, ref chance);
        }

        return child;
    }

    private static double[] Toward(DesignSpace space, IReadOnlyList<Design> known, IReadOnlyList<Design> best, ref Chance chance)
    {
        double[] from = known[chance.Below(known.Count)].Values, to = best[chance.Below(best.Count)].Values;
        double[] b = known[chance.Below(known.Count)].Values, c = known[chance.Below(known.Count)].Values;
        double[] child = [.. from];
        double pull = 0.3 + 0.9 * chance.Share(), push = 0.3 + 0.4 * chance.Share();
        for (int i = 0; i < child.Length; i++)
        {
            FreeParameter p = space.Parameters[i];
            child[i] = p.Unordered
                ? chance.Share() < 0.5 ? to[i] : from[i]
                : Bounced(from[i] + Stepped(pull * (to[i] - from[i]) + push * (b[i] - c[i]), p), from[i], p, ref chance);
        }

        return child;
    }

    /// <summary>A design of the front, one or two of its values moved a little: how little is by chance, over many sizes.</summary>
    private static double[] Nudged(DesignSpace space, IReadOnlyList<Design> best, ref Chance chance)
    {
        double[] child = [.. best[chance.Below(best.Count)].Values];
        int count = chance.Share() < 0.6 ? 1 : 2;
        for (int k = 0; k < count; k++)
        {
            int i = chance.Below(child.Length);
            FreeParameter p = space.Parameters[i];
            double size = Math.Pow(10, -4 * chance.Share()) * (p.High - p.Low);
            child[i] = p.Unordered ? chance.Below((int)p.Count) : Bounced(child[i] + Stepped(0.5 * size * chance.Normal(), p), child[i], p, ref chance);
        }

        return child;
    }

    /// <summary>A move no smaller than a step of the parameter, so that steps do not swallow it.</summary>
    private static double Stepped(double move, FreeParameter p) => p.Step > 0 && move != 0 && Math.Abs(move) < p.Step ? Math.CopySign(p.Step, move) : move;

    private static double Bounced(double value, double from, FreeParameter p, ref Chance chance) =>
        value < p.Low ? p.Low + chance.Share() * (from - p.Low) * (chance.Share() < 0.5 ? 0 : 1)
        : value > p.High ? p.High - chance.Share() * (p.High - from) * (chance.Share() < 0.5 ? 0 : 1)
        : value;
}
