namespace Graspwright.Workshop.Bench;

/// <summary>A reading that could be taken.</summary>
/// <param name="Thing">Object in the hand; <c>nothing</c> = closing in the air.</param>
/// <param name="Opening">Whether it is taken on the way back.</param>
/// <param name="WristDegrees">Angle of the dummy wrist from the start posture, give included [deg].</param>
/// <param name="Quantity">What is read: <c>wrist moment</c>, <c>grip</c>, <c>carriage</c>.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Expected">What the model expects.</param>
/// <param name="Deviation">How far a reading scatters (standard deviation).</param>
/// <param name="Sensitivity">Change of the reading for a change of each parameter's logarithm, ÷ the deviation.</param>
public sealed record BenchReading(string Thing, bool Opening, double WristDegrees, string Quantity, string Unit, double Expected, double Deviation, IReadOnlyList<double> Sensitivity);

/// <summary>Readings chosen so that the parameters can be told apart.</summary>
/// <param name="Readings">The chosen readings, in the order of work.</param>
/// <param name="Spread">Standard deviation of each parameter's logarithm after them: about its uncertainty as a share.</param>
/// <param name="Correlation">Correlation of each pair of parameters after them.</param>
/// <param name="ToldBy">For each reading, the parameter it tells most about, by index.</param>
public sealed record ReadingPlan(IReadOnlyList<BenchReading> Readings, double[] Spread, double[,] Correlation, int[] ToldBy);

/// <summary>Chooses readings by the determinant of their information.</summary>
/// <remarks>
/// Information of readings with sensitivities g is M = I/σ₀² + Σ g·gᵀ, with σ₀ what is known beforehand of a parameter's
/// logarithm. The readings that make det M largest make the volume of uncertainty of all parameters together smallest
/// (a D-optimal design). Chosen greedily, each by 1 + gᵀM⁻¹g, then improved by exchanges until none helps.
/// </remarks>
/// <source key="fedorov-1972">Exchange of design points.</source>
public static class DesignOfReadings
{
    /// <summary>What is known beforehand of a parameter's logarithm: it may be three times as large or a third.</summary>
    public static double PriorSpread { get; } = Math.Log(3);

    /// <summary>Chooses readings.</summary>
    /// <param name="candidates">Readings that could be taken; all with the same number of sensitivities.</param>
    /// <param name="count">How many to choose; at most all.</param>
    /// <returns>Indices of the chosen ones.</returns>
    public static IReadOnlyList<int> Choose(IReadOnlyList<BenchReading> candidates, int count)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        if (candidates.Count == 0)
        {
            return [];
        }

        int n = candidates[0].Sensitivity.Count;
        double[,] inverse = Prior(n);
        var chosen = new List<int>();
        while (chosen.Count < Math.Min(count, candidates.Count))
        {
            int best = Best(candidates, chosen, inverse);
            chosen.Add(best);
            Update(inverse, candidates[best].Sensitivity, +1);
        }

        Exchange(candidates, chosen, inverse);
        return chosen;
    }

    /// <summary>What the chosen readings tell.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="parameters">How many parameters there are.</param>
    public static ReadingPlan Plan(IReadOnlyList<BenchReading> readings, int parameters)
    {
        ArgumentNullException.ThrowIfNull(readings);
        double[,] inverse = Prior(parameters);
        foreach (BenchReading reading in readings)
        {
            Update(inverse, reading.Sensitivity, +1);
        }

        double[] spread = [.. Enumerable.Range(0, parameters).Select(i => Math.Sqrt(inverse[i, i]))];
        double[,] correlation = new double[parameters, parameters];
        for (int i = 0; i < parameters; i++)
        {
            for (int k = 0; k < parameters; k++)
            {
                correlation[i, k] = inverse[i, k] / (spread[i] * spread[k]);
            }
        }

        return new(readings, spread, correlation, [.. readings.Select(r => ToldBy(inverse, r))]);
    }

    // The parameter whose uncertainty grows most, as a share, when the reading is left out.
    private static int ToldBy(double[,] inverse, BenchReading reading)
    {
        double[,] without = (double[,])inverse.Clone();
        Update(without, reading.Sensitivity, -1);
        return Enumerable.Range(0, reading.Sensitivity.Count).MaxBy(i => without[i, i] / inverse[i, i]);
    }

    private static double[,] Prior(int n)
    {
        double[,] prior = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            prior[i, i] = PriorSpread * PriorSpread;
        }

        return prior;
    }

    private static int Best(IReadOnlyList<BenchReading> candidates, List<int> chosen, double[,] inverse)
    {
        int best = -1;
        double most = double.NegativeInfinity;
        for (int i = 0; i < candidates.Count; i++)
        {
            double gain = chosen.Contains(i) ? double.NegativeInfinity : Quadratic(inverse, candidates[i].Sensitivity);
            if (gain > most)
            {
                (best, most) = (i, gain);
            }
        }

        return best;
    }

    private static void Exchange(IReadOnlyList<BenchReading> candidates, List<int> chosen, double[,] inverse)
    {
        const int mostPasses = 50;
        for (int pass = 0, improved = 1; pass < mostPasses && improved > 0; pass++)
        {
            improved = 0;
            for (int place = 0; place < chosen.Count; place++)
            {
                int old = chosen[place];
                Update(inverse, candidates[old].Sensitivity, -1);
                double now = Quadratic(inverse, candidates[old].Sensitivity);
                chosen[place] = -1;
                int best = Best(candidates, chosen, inverse);
                bool better = Quadratic(inverse, candidates[best].Sensitivity) > now * (1 + 1e-9);
                chosen[place] = better ? best : old;
                Update(inverse, candidates[chosen[place]].Sensitivity, +1);
                improved += better ? 1 : 0;
            }
        }
    }

    private static double Quadratic(double[,] inverse, IReadOnlyList<double> g)
    {
        double sum = 0;
        for (int i = 0; i < g.Count; i++)
        {
            for (int k = 0; k < g.Count; k++)
            {
                sum += g[i] * inverse[i, k] * g[k];
            }
        }

        return sum;
    }

    // (M ± g·gᵀ)⁻¹ from M⁻¹, by Sherman and Morrison.
    private static void Update(double[,] inverse, IReadOnlyList<double> g, int sign)
    {
        int n = g.Count;
        double[] product = new double[n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                product[i] += inverse[i, k] * g[k];
            }
        }

        double below = 1;
        for (int i = 0; i < n; i++)
        {
            below += sign * g[i] * product[i];
        }

        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                inverse[i, k] -= sign * product[i] * product[k] / below;
            }
        }
    }
}
