using Graspwright.Strength.Lives;

namespace Graspwright.Strength.Spares;

/// <summary>A place of the hand where a part runs.</summary>
/// <param name="Law">Law of life there.</param>
/// <param name="Age">Age of the part fitted now, in the law's unit.</param>
public readonly record struct Running(LifeLaw Law, double Age);

/// <summary>A number to keep.</summary>
/// <param name="Keep">Parts to keep.</param>
/// <param name="Chances">Chances of 0, 1, … breaks over the time to be bridged, all places together.</param>
/// <param name="RunsOut">Chance that more break than are kept.</param>
/// <param name="Expected">Breaks expected.</param>
public sealed record StockCount(int Keep, IReadOnlyList<double> Chances, double RunsOut, double Expected);

/// <summary>How many parts to keep, and when to look.</summary>
public static class Stock
{
    /// <summary>Most breaks of one place that are looked at.</summary>
    public const int MostEach = 60;

    /// <summary>The least number of parts that leaves the hand down at most with a chance.</summary>
    /// <param name="running">Places that share the part.</param>
    /// <param name="bridged">Time from one order's thought to the next order's arrival: period and supply together.</param>
    /// <param name="chance">Greatest chance that the drawer runs out, above 0 and below 1.</param>
    /// <returns><see langword="null"/> where more would break than can be counted.</returns>
    public static StockCount? Keep(IReadOnlyList<Running> running, double bridged, double chance)
    {
        ArgumentNullException.ThrowIfNull(running);
        Dictionary<Running, double[]> known = [];
        List<double[]> each = [];
        foreach (Running r in running)
        {
            if (!known.TryGetValue(r, out double[]? counts))
            {
                counts = Renewals.Counts(r.Law, r.Age, bridged, MostEach);
                known[r] = counts;
            }

            if (counts[MostEach] > 1e-6)
            {
                return null;
            }

            each.Add(counts);
        }

        double[] all = Renewals.Together(each);
        double left = 1, expected = 0;
        int keep = -1;
        double runsOut = 0;
        for (int n = 0; n < all.Length; n++)
        {
            expected += n * all[n];
            left -= all[n];
            if (keep < 0 && left <= chance)
            {
                (keep, runsOut) = (n, Math.Max(0, left));
            }
        }

        return new(keep, all, runsOut, expected);
    }

    /// <summary>Time to the next look, so that the chance that something broke unseen by then stays at a target.</summary>
    /// <param name="running">Parts, all whole now.</param>
    /// <param name="chance">Target, above 0 and below 1.</param>
    public static double NextLook(IReadOnlyList<Running> running, double chance)
    {
        ArgumentNullException.ThrowIfNull(running);
        double wanted = NormalLaw.LogOnePlus(-chance), low = 0, high = double.PositiveInfinity;
        foreach (Running r in running)
        {
            high = Math.Min(high, r.Law.BrokenAfter(r.Age, chance)); // one alone would have used up the target by then
        }

        for (int i = 0; i < 200 && high - low > 1e-12 * high; i++)
        {
            double middle = 0.5 * (low + high), log = 0;
            foreach (Running r in running)
            {
                log += r.Law.LogWhole(r.Age + middle) - r.Law.LogWhole(r.Age);
            }

            (low, high) = log > wanted ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
