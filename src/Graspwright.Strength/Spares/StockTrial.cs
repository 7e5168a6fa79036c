using Graspwright.Strength.Life;

namespace Graspwright.Strength.Spares;

/// <summary>Chance that a hand stands still for want of a part, by trial.</summary>
/// <param name="Down">Share of the trials in which it did.</param>
/// <param name="Error">Standard error of that share.</param>
public readonly record struct DownShare(double Down, double Error);

/// <summary>Plays the drawer through: each break takes a part and orders another, which comes after the supply time.</summary>
/// <remarks>The same seed gives the same trials. Sums for this rule have no closed form where lives wear out; for constant hazard they have, and a test uses it.</remarks>
public static class StockTrial
{
    /// <summary>Chances of a stand-still for 0, 1, … parts kept at the start.</summary>
    /// <param name="running">Places that share the part.</param>
    /// <param name="period">Period.</param>
    /// <param name="supply">Supply time.</param>
    /// <param name="most">Greatest number kept that is looked at.</param>
    /// <param name="trials">Number of trials.</param>
    /// <param name="seed">Seed.</param>
    public static IReadOnlyList<DownShare> Down(IReadOnlyList<Running> running, double period, double supply, int most, int trials, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(running);
        Chance chance = new(seed);
        int[] down = new int[most + 1];
        List<double> breaks = [];
        for (int t = 0; t < trials; t++)
        {
            breaks.Clear();
            foreach (Running r in running)
            {
                double at = r.Law.BrokenAfter(r.Age, chance.Next());
                for (; at <= period; at += r.Law.Quantile(chance.Next()))
                {
                    breaks.Add(at);
                }
            }

            breaks.Sort();

            // Most orders outstanding at once: the break itself takes a part, so the drawer needs as many as that.
            int needed = 0;
            for (int i = 0, from = 0; i < breaks.Count; i++)
            {
                while (breaks[from] <= breaks[i] - supply)
                {
                    from++;
                }

                needed = Math.Max(needed, i - from + 1);
            }

            for (int kept = 0; kept <= most && kept < needed; kept++)
            {
                down[kept]++;
            }
        }

        return [.. down.Select(d => new DownShare((double)d / trials, Math.Sqrt((double)d / trials * (1 - (double)d / trials) / trials)))];
    }
}
