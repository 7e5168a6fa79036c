namespace Graspwright.Deciding.Changes;

/// <summary>How two items act together on one measure.</summary>
public enum Together
{
    /// <summary>Together they give the sum of what each gives alone.</summary>
    Add,

    /// <summary>Neither helps alone; together they do.</summary>
    HelpOnlyTogether,

    /// <summary>Together they give more than the sum.</summary>
    Strengthen,

    /// <summary>Together they give less than the sum, but no less than the better of them alone.</summary>
    Overlap,

    /// <summary>Together they give less than the better of them alone, and by more than what the other takes away by itself.</summary>
    Fight,

    /// <summary>A value is missing.</summary>
    NotKnown,
}

/// <summary>What a pair of items does to one measure, as gains over the design as it is; more is better.</summary>
/// <param name="First">Number of the one item.</param>
/// <param name="Second">Number of the other.</param>
/// <param name="FirstAlone">Gain of the one alone.</param>
/// <param name="SecondAlone">Gain of the other alone.</param>
/// <param name="Both">Gain of both.</param>
/// <param name="How">In a word.</param>
public sealed record PairEffect(int First, int Second, double FirstAlone, double SecondAlone, double Both, Together How)
{
    /// <summary>What the two give beyond the sum of each alone.</summary>
    public double Beyond => Both - FirstAlone - SecondAlone;
}

/// <summary>What each item of a list of changes buys of one measure: alone, in company, and in pairs.</summary>
/// <param name="AsItIs">Value without any change, more is better.</param>
/// <param name="All">Value with all of them.</param>
/// <param name="Alone">Gain of each item alone.</param>
/// <param name="InCompany">What is lost when only this item is left out of all.</param>
/// <param name="Pairs">Every pair.</param>
public sealed record ChangeEffects(double AsItIs, double All, IReadOnlyList<double> Alone, IReadOnlyList<double> InCompany, IReadOnlyList<PairEffect> Pairs)
{
    /// <summary>Gain of all less the gains alone and what pairs give beyond them: what only three or more bring about.</summary>
    public double BeyondPairs => All - AsItIs - Alone.Sum() - Pairs.Sum(p => p.Beyond);
}

/// <summary>Arithmetic of a list of changes: which sets of them to judge, and what the values say.</summary>
/// <source key="daniel-1973">One factor at a time from both ends, with the two-factor interactions.</source>
public static class ChangeArithmetic
{
    /// <summary>The sets to judge: none, each alone, all, all less one, every pair; each once.</summary>
    /// <param name="items">Number of items.</param>
    public static IReadOnlyList<ChangeSet> Sets(int items)
    {
        List<ChangeSet> sets = [ChangeSet.None];
        for (int i = 0; i < items; i++)
        {
            sets.Add(ChangeSet.None.With(i));
        }

        sets.Add(ChangeSet.Whole(items));
        for (int i = 0; i < items; i++)
        {
            sets.Add(ChangeSet.Whole(items).Without(i));
        }

        for (int i = 0; i < items; i++)
        {
            for (int j = i + 1; j < items; j++)
            {
                sets.Add(ChangeSet.None.With(i).With(j));
            }
        }

        return [.. sets.Distinct()];
    }

    /// <summary>What the values of the sets say of one measure.</summary>
    /// <param name="items">Number of items.</param>
    /// <param name="value">Value of a set, more is better; NaN = none.</param>
    /// <param name="small">Differences up to this count as none; in the measure's unit.</param>
    public static ChangeEffects Of(int items, Func<ChangeSet, double> value, double small)
    {
        ArgumentNullException.ThrowIfNull(value);
        double plain = value(ChangeSet.None), all = value(ChangeSet.Whole(items));
        double[] alone = [.. Enumerable.Range(0, items).Select(i => value(ChangeSet.None.With(i)) - plain)];
        double[] company = [.. Enumerable.Range(0, items).Select(i => all - value(ChangeSet.Whole(items).Without(i)))];
        List<PairEffect> pairs = [];
        for (int i = 0; i < items; i++)
        {
            for (int j = i + 1; j < items; j++)
            {
                double both = value(ChangeSet.None.With(i).With(j)) - plain;
                pairs.Add(new(i, j, alone[i], alone[j], both, How(alone[i], alone[j], both, small)));
            }
        }

        return new(plain, all, alone, company, pairs);
    }

    /// <summary>How two items act together.</summary>
    /// <param name="one">Gain of the one alone.</param>
    /// <param name="other">Gain of the other alone.</param>
    /// <param name="both">Gain of both.</param>
    /// <param name="small">Differences up to this count as none.</param>
    public static Together How(double one, double other, double both, double small)
    {
        double beyond = both - one - other, best = Math.Max(one, other);
        return double.IsNaN(beyond) ? Together.NotKnown
            : beyond > small && best <= small && both > small ? Together.HelpOnlyTogether
            : beyond > small ? Together.Strengthen
            : beyond >= -small ? Together.Add
            : both < best + Math.Min(Math.Min(one, other), 0) - small ? Together.Fight
            : Together.Overlap;
    }
}

/// <summary>A set of items of a list, by number.</summary>
/// <param name="Bits">Bit i = item i.</param>
public readonly record struct ChangeSet(ulong Bits)
{
    /// <summary>Most items a list may have.</summary>
    public const int MostItems = 60;

    /// <summary>The empty set.</summary>
    public static ChangeSet None => default;

    /// <summary>All items.</summary>
    /// <param name="items">Number of items.</param>
    public static ChangeSet Whole(int items) => new((1UL << items) - 1);

    /// <summary>Whether an item is in it.</summary>
    /// <param name="item">Number of the item.</param>
    public bool Has(int item) => (Bits >> item & 1) != 0;

    /// <summary>The set with an item.</summary>
    /// <param name="item">Number of the item.</param>
    public ChangeSet With(int item) => new(Bits | 1UL << item);

    /// <summary>The set without an item.</summary>
    /// <param name="item">Number of the item.</param>
    public ChangeSet Without(int item) => new(Bits & ~(1UL << item));

    /// <summary>The items in it, in order.</summary>
    public IReadOnlyList<int> Items
    {
        get
        {
            List<int> items = [];
            for (int i = 0; i < MostItems; i++)
            {
                if (Has(i))
                {
                    items.Add(i);
                }
            }

            return items;
        }
    }
}
