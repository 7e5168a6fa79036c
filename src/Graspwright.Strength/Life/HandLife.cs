namespace Graspwright.Strength.Life;

/// <summary>A part with all places at which it can break; they share one piece of material.</summary>
/// <param name="Places">Places.</param>
/// <param name="StrengthSpread">Coefficient of variation of its strength.</param>
/// <param name="LifeSpread">Standard deviation of log₁₀ of its life.</param>
public sealed record LivingPart(IReadOnlyList<PartLife> Places, double StrengthSpread, double LifeSpread);

/// <summary>How the wearer's use may lie off, as standard deviations of natural logarithms.</summary>
/// <param name="Load">Loads of grips.</param>
/// <param name="Energy">Energy of knocks.</param>
/// <param name="Count">Counts.</param>
public readonly record struct UseSpread(double Load, double Energy, double Count);

/// <summary>Lives of the parts of a hand over many samples.</summary>
/// <param name="Days">Days to a break: of each part, by sample.</param>
public sealed record SampledLives(IReadOnlyList<double[]> Days)
{
    /// <summary>Days to the first break of some parts, by sample.</summary>
    /// <param name="parts">Indices of the parts.</param>
    public double[] First(IReadOnlyList<int> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        double[] first = new double[Days.Count > 0 ? Days[0].Length : 0];
        Array.Fill(first, double.PositiveInfinity);
        foreach (int part in parts)
        {
            for (int s = 0; s < first.Length; s++)
            {
                first[s] = Math.Min(first[s], Days[part][s]);
            }
        }

        return first;
    }

    /// <summary>The value below which a share of samples lies, straight between neighbours.</summary>
    /// <param name="sorted">Sorted samples, at least one.</param>
    /// <param name="share">Share, 0 to 1.</param>
    public static double Quantile(ReadOnlySpan<double> sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int i = (int)Math.Min(place, sorted.Length - 1);
        return i + 1 >= sorted.Length || sorted[i].Equals(sorted[i + 1]) ? sorted[i] : sorted[i] + (place - i) * (sorted[i + 1] - sorted[i]);
    }
}

/// <summary>Draws lives. The same seed gives the same samples, whatever else runs.</summary>
public static class HandLife
{
    private const int Shared = 3, Own = 3;

    private const ulong SeedStep = 0xD1B54A32D192ED03; // an odd number far from the generator's own step

    /// <summary>Samples hands: in each, one wearer's use and one piece of material for each part.</summary>
    /// <param name="parts">Parts.</param>
    /// <param name="spread">Spread of the use.</param>
    /// <param name="samples">Number of samples, 1 or more.</param>
    /// <param name="seed">Seed.</param>
    public static SampledLives Sample(IReadOnlyList<LivingPart> parts, UseSpread spread, int samples, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        Chance ofUse = new(seed);
        double[] drawn = new double[samples];
        double[][] shared = new double[Shared][];
        double[] spreads = [spread.Load, spread.Energy, spread.Count];
        for (int i = 0; i < Shared; i++)
        {
            ofUse.Stratified(drawn);
            shared[i] = Array.ConvertAll(drawn, u => Math.Exp(spreads[i] * Chance.Normal(u)));
        }

        double[][] days = new double[parts.Count][];
        Parallel.For(0, parts.Count, p =>
        {
            // Each part has a seed of its own, so that its draws do not hang on the order in which parts are done.
            Chance chance = new(seed + SeedStep * (ulong)(p + 1));
            double[][] own = [new double[samples], new double[samples], new double[samples]];
            LivingPart part = parts[p];

            // A lognormal strength whose coefficient of variation is the one given, its mean the strength of the table.
            double variance = Math.Log(1 + part.StrengthSpread * part.StrengthSpread), deviation = Math.Sqrt(variance);
            for (int i = 0; i < Own; i++)
            {
                chance.Stratified(own[i]);
            }

            days[p] = new double[samples];
            for (int s = 0; s < samples; s++)
            {
                LifeDraw draw = new(shared[0][s], shared[1][s], shared[2][s],
                    Math.Exp(deviation * Chance.Normal(own[0][s]) - variance / 2),
                    Math.Pow(10, part.LifeSpread * Chance.Normal(own[1][s])),
                    -Math.Log(own[2][s]));
                double first = double.PositiveInfinity;
                foreach (PartLife place in part.Places)
                {
                    first = Math.Min(first, place.Days(draw));
                }

                days[p][s] = first;
            }
        });
        return new(days);
    }
}
