namespace Graspwright.Strength.Lives;

/// <summary>A test of whether groups live alike.</summary>
/// <param name="Statistic">Value that is near its degrees of freedom where they do.</param>
/// <param name="Freedom">Degrees of freedom.</param>
/// <param name="Chance">Chance of so great a value where they do; NaN where the test cannot be made.</param>
public readonly record struct LikenessTest(double Statistic, int Freedom, double Chance);

/// <summary>Compares the lives of groups.</summary>
public static class Comparison
{
    /// <summary>Log-rank test: breaks of each group beside those expected if all ran the same risk at the same age.</summary>
    /// <param name="groups">Records of each group; spans stand at their middles.</param>
    /// <remarks>Mantel 1966; the variance is that of drawing without putting back.</remarks>
    public static LikenessTest LogRank(IReadOnlyList<IReadOnlyList<LifeRecord>> groups) => LogRank([groups]);

    /// <summary>The same where groups are only compared within strata, such as parts of one material.</summary>
    /// <param name="strata">Records of each group, the same groups in each stratum; a group may be empty there.</param>
    public static LikenessTest LogRank(IReadOnlyList<IReadOnlyList<IReadOnlyList<LifeRecord>>> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        int k = strata.Count > 0 ? strata[0].Count : 0;
        double[] over = new double[k];
        double[,] variance = new double[k, k];
        foreach (IReadOnlyList<IReadOnlyList<LifeRecord>> groups in strata)
        {
            AddStratum(groups, over, variance);
        }

        // Groups that were never watched beside another say nothing and would leave the variance without an inverse.
        int[] used = [.. Enumerable.Range(0, k).Where(i => variance[i, i] > 0)];
        int n = used.Length - 1;
        if (n < 1)
        {
            return new(double.NaN, 0, double.NaN);
        }

        double[,] among = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                among[i, j] = variance[used[i], used[j]];
            }
        }

        double statistic = Quadratic(among, [.. used.Select(u => over[u])], n);
        return new(statistic, n, double.IsFinite(statistic) ? GammaLaw.ChiSquareAbove(n, statistic) : double.NaN);
    }

    private static void AddStratum(IReadOnlyList<IReadOnlyList<LifeRecord>> groups, double[] over, double[,] variance)
    {
        int k = groups.Count;
        double[] risk = [.. groups.Select(g => g.Sum(r => r.Count))];
        var all = groups.SelectMany((g, i) => g.Select(r => (Record: r, Group: i))).OrderBy(r => r.Record.Middle).ToList();
        for (int at = 0; at < all.Count;)
        {
            double time = all[at].Record.Middle, breaks = 0, atRisk = risk.Sum();
            double[] before = [.. risk];
            for (; at < all.Count && all[at].Record.Middle.Equals(time); at++)
            {
                (LifeRecord r, int g) = all[at];
                risk[g] -= r.Count;
                if (r.Broke)
                {
                    breaks += r.Count;
                    over[g] += r.Count;
                }
            }

            double share = atRisk > 1 ? breaks * (atRisk - breaks) / (atRisk - 1) : 0;
            for (int i = 0; i < k && breaks > 0; i++)
            {
                over[i] -= breaks * before[i] / atRisk;
                for (int j = 0; j < k; j++)
                {
                    variance[i, j] += share * before[i] / atRisk * ((i == j ? 1 : 0) - before[j] / atRisk);
                }
            }
        }
    }

    /// <summary>Likelihood ratio: one law for each group against one for all.</summary>
    /// <param name="form">Form of the laws.</param>
    /// <param name="groups">Records of each group.</param>
    /// <returns>NaN where a group alone allows no fit.</returns>
    public static LikenessTest LikelihoodRatio(LifeForm form, IReadOnlyList<IReadOnlyList<LifeRecord>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        LifeFit together = LifeFitting.Fit(form, [.. groups.SelectMany(g => g)]);
        double apart = 0;
        foreach (IReadOnlyList<LifeRecord> group in groups)
        {
            apart += LifeFitting.Fit(form, group).LogLikelihood;
        }

        int freedom = (groups.Count - 1) * (form == LifeForm.Exponential ? 1 : 2);
        double statistic = Math.Max(0, 2 * (apart - together.LogLikelihood));
        return new(statistic, freedom, double.IsFinite(statistic) && freedom > 0 ? GammaLaw.ChiSquareAbove(freedom, statistic) : double.NaN);
    }

    /// <summary>xᵀ·V⁻¹·x over the first n, by elimination; NaN where V has no inverse.</summary>
    private static double Quadratic(double[,] v, double[] x, int n)
    {
        double[,] m = new double[n, n + 1];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                m[i, j] = v[i, j];
            }

            m[i, n] = x[i];
        }

        double sum = 0;
        for (int c = 0; c < n; c++)
        {
            // Symmetric and not negative: the pivots of the diagonal are safe, and xᵀ·V⁻¹·x is the sum of squares over pivots.
            double pivot = m[c, c];
            if (!(pivot > 1e-12 * Math.Max(1, v[c, c])))
            {
                return double.NaN;
            }

            sum += m[c, n] * m[c, n] / pivot;
            for (int r = c + 1; r < n; r++)
            {
                double f = m[r, c] / pivot;
                for (int j = c; j <= n; j++)
                {
                    m[r, j] -= f * m[c, j];
                }
            }
        }

        return sum;
    }
}
