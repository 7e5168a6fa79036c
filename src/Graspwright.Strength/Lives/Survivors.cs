namespace Graspwright.Strength.Lives;

/// <summary>One step of the share still whole.</summary>
/// <param name="Time">Time of the step.</param>
/// <param name="AtRisk">Parts that were whole and watched just before.</param>
/// <param name="Breaks">Parts that broke there.</param>
/// <param name="Whole">Share still whole after it.</param>
/// <param name="Error">Standard error of that share, Greenwood's.</param>
/// <param name="Low">Lower bound of the share, on the log-minus-log scale.</param>
/// <param name="High">Upper bound.</param>
public readonly record struct SurvivorStep(double Time, double AtRisk, double Breaks, double Whole, double Error, double Low, double High);

/// <summary>The share still whole against age without any law: Kaplan and Meier's product, with Greenwood's error.</summary>
/// <remarks>Kaplan and Meier 1958; bounds on the log-minus-log scale as in Kalbfleisch and Prentice (both from memory).</remarks>
public static class Survivors
{
    /// <summary>The steps. A span stands at its middle; <see cref="SpanSurvivors"/> takes spans as they are.</summary>
    /// <param name="records">Records.</param>
    /// <param name="confidence">Confidence of the bounds.</param>
    public static IReadOnlyList<SurvivorStep> Steps(IReadOnlyList<LifeRecord> records, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(records);
        double z = NormalLaw.Quantile(0.5 + 0.5 * confidence), risk = 0, whole = 1, sum = 0;
        LifeRecord[] sorted = Sorted(records);
        foreach (LifeRecord r in sorted)
        {
            risk += r.Count;
        }

        List<SurvivorStep> steps = [];
        for (int i = 0; i < sorted.Length;)
        {
            double time = sorted[i].Middle, breaks = 0, all = 0;
            for (; i < sorted.Length && sorted[i].Middle.Equals(time); i++)
            {
                all += sorted[i].Count;
                breaks += sorted[i].Broke ? sorted[i].Count : 0;
            }

            if (breaks > 0)
            {
                whole *= 1 - breaks / risk;
                sum += breaks / (risk * (risk - breaks));
                double scaled = Math.Sqrt(sum) / Math.Log(whole);
                bool none = whole <= 0;
                steps.Add(new(time, risk, breaks, none ? 0 : whole, none ? double.NaN : whole * Math.Sqrt(sum),
                    none ? 0 : Math.Pow(whole, Math.Exp(-z * scaled)), none ? double.NaN : Math.Pow(whole, Math.Exp(z * scaled))));
            }

            risk -= all;
        }

        return steps;
    }

    /// <summary>Records by their one time, breaks before wholes of the same time.</summary>
    internal static LifeRecord[] Sorted(IReadOnlyList<LifeRecord> records)
    {
        LifeRecord[] sorted = [.. records];
        Array.Sort(sorted, static (x, y) => x.Middle != y.Middle ? x.Middle.CompareTo(y.Middle) : y.Broke.CompareTo(x.Broke));
        return sorted;
    }
}
