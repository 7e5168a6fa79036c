using CsCheck;
using Graspwright.Signals.Made;
using Graspwright.Signals.Separation;
using Graspwright.Signals.Tests.Made;
using Graspwright.Signals.Tests.Separation;
using Graspwright.Signals.Thresholds;

namespace Graspwright.Signals.Tests.Thresholds;

public sealed class ThresholdTests
{
    [Fact]
    public void The_greatest_level_of_a_stretch_is_exactly_where_its_switch_begins_to_act() => Gen.Select(Gen.Double[0, 1].Array[1, 60], Gen.Int[1, 12]).Sample((stretch, hold) =>
    {
        double level = ThresholdSearch.GreatestLevel(stretch, hold);
        if (double.IsNegativeInfinity(level))
        {
            return stretch.Length < hold;
        }

        return Activations(stretch, level, hold) > 0 && Activations(stretch, Math.BitIncrement(level), hold) == 0;
    });

    [Fact]
    public void Made_gestures_are_all_caught_in_time_and_nothing_else()
    {
        Take take = SeparatingTests.Ready(Scenes.Four(), 0);
        for (int c = 0; c < 4; c++)
        {
            ThresholdResult found = ThresholdSearch.Find([take], c, Scenes.Gestures[c + 1], 0.0375, new(0.125))!;
            Assert.Equal((0, 4, 0), (found.Missed, found.Gestures, found.Wrong));
            Assert.True(found.Others >= 20);
            Assert.InRange(found.DelaySeconds, 0.0375, 0.125);
            Assert.True(found.Settings.Off < found.Settings.On);
            Assert.True(found.Room > 1);
        }
    }

    [Fact]
    public void No_level_can_do_better_than_the_one_found()
    {
        Scene hard = Scenes.Four(9) with { Sites = [new("a", 14, 5, 90, 20)], Noise = 30e-6 };
        Take take = SeparatingTests.Ready(hard, 0);
        ThresholdResult found = ThresholdSearch.Find([take], 0, "fist", 0.0375, new(0.125))!;
        // The same count, the slow way, over a thousand levels at the same hold.
        double top = take.Envelopes[0].Max();
        int hold = Switch.SamplesOf(found.Settings.HoldSeconds, take.RateHertz), least = int.MaxValue;
        for (int i = 1; i <= 1000; i++)
        {
            int bad = 0;
            foreach (Signals.Recordings.Mark m in take.Marks)
            {
                bool own = m.Gesture == "fist";
                double start = own ? m.StartSeconds : m.StartSeconds + Math.Min(0.6, (m.EndSeconds - m.StartSeconds) / 2), end = own ? Math.Min(m.EndSeconds, m.StartSeconds + 0.725) : m.EndSeconds;
                bool acts = ThresholdSearch.GreatestLevel(take.Envelopes[0].AsSpan((int)(start * 1000), (int)(end * 1000) - (int)(start * 1000)), hold) >= top * i / 1000;
                bad += acts != own ? 1 : 0;
            }

            least = Math.Min(least, bad);
        }

        Assert.True(found.Missed + found.Wrong <= least, $"{found.Missed} + {found.Wrong} against {least}");
        Assert.True(found.Missed + found.Wrong > 0); // a hard place, or the test shows nothing
    }

    [Fact]
    public void Smoothing_that_takes_longer_than_the_limit_leaves_no_answer()
    {
        Take take = SeparatingTests.Ready(Scenes.Four(), 0);
        Assert.Null(ThresholdSearch.Find([take], 0, "fist", 0.2, new(0.125)));
        Assert.Null(ThresholdSearch.Find([take], 0, "wave", 0.0375, new(0.125)));
    }

    [Fact]
    public void A_switch_holds_then_acts_once_and_waits()
    {
        Switch at = new(new(10, 5, 0.003, 0.01), 1000);
        bool[] acted = [.. ((double[])[12, 12, 4, 12, 12, 12, 12, 7, 12, 12, 12, 4, 12, 12, 12, 12, 12, 12]).Select(v => at.Step(v))];
        Assert.Equal([5, 15], Enumerable.Range(0, acted.Length).Where(i => acted[i]));
        Assert.Equal(2, at.Activations);
    }

    /// <summary>The rule of three, and the upper ends of a Poisson count as tables print them: 4.744, 6.296, 16.962.</summary>
    [Fact]
    public void What_may_be_claimed_of_false_activations_follows_the_rule_of_three()
    {
        Assert.Equal(1.5, Wear.Claim(2, 0).AtMostPerHour, 1e-12);
        Assert.Equal(2.9957, Wear.UpperCount(0), 1e-4);
        Assert.Equal(4.7439, Wear.UpperCount(1), 1e-4);
        Assert.Equal(6.2958, Wear.UpperCount(2), 1e-4);
        Assert.Equal(16.9622, Wear.UpperCount(10), 1e-4);
        Assert.Throws<ArgumentOutOfRangeException>(() => Wear.Claim(0, 0));
    }

    [Fact]
    public void Drift_over_hours_is_found_in_spite_of_gestures()
    {
        double[] envelope = new double[3 * 3600 * 10];
        for (int i = 0; i < envelope.Length; i++)
        {
            envelope[i] = 10 * (1 + 0.2 * i / 36000.0) + (i % 400 < 30 ? 90 : 0);
        }

        Drift drift = Wear.Over(envelope, 10, 26)!.Value;
        Assert.Equal(0.2 * 10 / 13.0, drift.RestPerHour, 0.01);
        Assert.Equal(5, drift.HoursToThreshold, 0.1);
        Assert.Null(Wear.Over(envelope.AsSpan(0, 3000), 10, 26));
    }

    private static long Activations(double[] stretch, double level, int hold) => Wear.Count(stretch, 1000, new(level, level, hold / 1000.0, 0));
}
