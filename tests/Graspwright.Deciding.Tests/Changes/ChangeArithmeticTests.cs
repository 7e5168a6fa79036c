using CsCheck;
using Graspwright.Deciding.Changes;

namespace Graspwright.Deciding.Tests.Changes;

/// <summary>Lists of changes made by hand, whose effects are known.</summary>
public sealed class ChangeArithmeticTests
{
    [Fact]
    public void Items_that_add_have_the_same_gain_alone_and_in_company()
    {
        double[] gains = [3, -1, 0.5, 2];
        ChangeEffects effects = ChangeArithmetic.Of(4, set => 10 + set.Items.Sum(i => gains[i]), 1e-9);
        Assert.Equal(10, effects.AsItIs);
        Assert.Equal(14.5, effects.All);
        Assert.Equal(gains, effects.Alone);
        Assert.Equal(gains, effects.InCompany);
        Assert.All(effects.Pairs, p => Assert.Equal(Together.Add, p.How));
        Assert.Equal(0, effects.BeyondPairs, 1e-12);
    }

    [Fact]
    public void Items_that_cancel_fight()
    {
        // Each opens the same valve from its own side: one alone gives 4, both together nothing.
        ChangeEffects effects = ChangeArithmetic.Of(2, set => set.Has(0) != set.Has(1) ? 4 : 0, 1e-9);
        Assert.Equal([4, 4], effects.Alone);
        Assert.Equal([-4, -4], effects.InCompany);
        Assert.Equal(Together.Fight, Assert.Single(effects.Pairs).How);
        Assert.Equal(-8, effects.Pairs[0].Beyond);
    }

    [Fact]
    public void Items_that_multiply_strengthen_each_other()
    {
        // 8 × 1.5 × 2: 4 and 8 alone, 16 together.
        ChangeEffects effects = ChangeArithmetic.Of(2, set => 8 * (set.Has(0) ? 1.5 : 1) * (set.Has(1) ? 2 : 1), 1e-9);
        Assert.Equal([4, 8], effects.Alone);
        Assert.Equal([8, 12], effects.InCompany);
        Assert.Equal(Together.Strengthen, effects.Pairs[0].How);
        Assert.Equal(4, effects.Pairs[0].Beyond);
    }

    [Fact]
    public void A_lock_and_its_key_help_only_together()
    {
        ChangeEffects effects = ChangeArithmetic.Of(3, set => set.Has(0) && set.Has(2) ? 5 : 0, 1e-9);
        Assert.Equal([0, 0, 0], effects.Alone);
        Assert.Equal([Together.Add, Together.HelpOnlyTogether, Together.Add], effects.Pairs.Select(p => p.How));
    }

    [Fact]
    public void Two_ways_to_the_same_end_overlap() =>
        Assert.Equal(Together.Overlap, ChangeArithmetic.Of(2, set => set.Bits == 0 ? 0 : 3, 1e-9).Pairs[0].How);

    [Fact]
    public void What_only_three_bring_about_is_told() =>
        Assert.Equal(7, ChangeArithmetic.Of(3, set => set == ChangeSet.Whole(3) ? 7 : 0, 1e-9).BeyondPairs);

    [Fact]
    public void A_missing_value_is_said_to_be_missing() =>
        Assert.Equal(Together.NotKnown, ChangeArithmetic.Of(2, set => set.Bits == 3 ? double.NaN : 1, 1e-9).Pairs[0].How);

    [Fact]
    public void The_sets_are_none_alone_all_less_one_and_pairs_each_once()
    {
        Assert.Equal(1 + 10 + 1 + 10 + 45, ChangeArithmetic.Sets(10).Count);
        Assert.Equal("0 1 2 3", string.Join(' ', ChangeArithmetic.Sets(2).Select(s => s.Bits).Order()));
        Assert.Equal(2, ChangeArithmetic.Sets(1).Count);
    }

    [Fact]
    public void Any_list_of_pairwise_effects_is_taken_apart_exactly() => Gen.Select(Gen.Double[-9, 9].Array[5], Gen.Double[-9, 9].Array[10], Gen.Double[-9, 9]).Sample((own, pair, plain) =>
    {
        double Value(ChangeSet set)
        {
            double sum = plain + set.Items.Sum(i => own[i]);
            int k = 0;
            for (int i = 0; i < 5; i++)
            {
                for (int j = i + 1; j < 5; j++, k++)
                {
                    sum += set.Has(i) && set.Has(j) ? pair[k] : 0;
                }
            }

            return sum;
        }

        ChangeEffects effects = ChangeArithmetic.Of(5, Value, 1e-9);
        Assert.Equal(0, effects.BeyondPairs, 1e-9);
        Assert.All(effects.Pairs.Zip(pair), p => Assert.Equal(p.Second, p.First.Beyond, 1e-9));
    });
}
