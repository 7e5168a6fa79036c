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
    public void The_greatest_level_of_a_stretch_is_exactly_where_its_switch_begins_to_act() => Gen.Select(Gen.Float[0, 1].Array[1, 60], Gen.Int[1, 12]).Sample((stretch, most) =>
    {
        float[] levels = new float[most];
        HoldLevels.Of(stretch, levels);
        return Enumerable.Range(1, most).All(hold => float.IsNegativeInfinity(levels[hold - 1])
            ? stretch.Length < hold
            : Activations(stretch, levels[hold - 1], hold) > 0 && Activations(stretch, MathF.BitIncrement(levels[hold - 1]), hold) == 0);
    });

    [Fact]
    public void Crossings_tell_exactly_when_a_switch_acts() => Gen.Select(Gen.Int[0, 9].Array[1, 200], Gen.Int[2, 9], Gen.Int[1, 9], Gen.Int[1, 4], Gen.Int[0, 12]).Sample((whole, on, off, hold, refractory) =>
    {
        float[] envelope = [.. whole.Select(v => (float)v)];
        SwitchSettings settings = new(on, Math.Min(off, on), hold / 1000.0, refractory / 1000.0);
        Switch at = new(settings, 1000);
        List<int> acted = [];
        new Crossings(envelope, on).Activations(settings, 1000, acted);
        return Enumerable.Range(0, envelope.Length).Where(i => at.Step(envelope[i])).SequenceEqual(acted);
    });

    [Fact]
    public void Off_level_and_refractory_time_are_such_that_a_trembling_gesture_acts_once_and_the_next_is_not_missed()
    {
        // A gesture that trembles between 4 and 10, once falling to 1 after 0.24 s; rest at 0.5; the next follows half a second later.
        const int rate = 100;
        List<float> envelope = [];
        List<Signals.Recordings.Mark> marks = [];
        for (int n = 0; n < 5; n++)
        {
            double start = envelope.Count / (double)rate;
            envelope.AddRange(Enumerable.Range(0, 80).Select(i => i is >= 24 and < 30 ? 1f : i % 8 < 4 ? 10f : 4f));
            envelope.AddRange(Enumerable.Repeat(0.5f, 50));
            marks.Add(new(start, start + 0.8, "fist"));
            marks.Add(new(start + 0.8, start + 1.3, "rest"));
        }

        ThresholdResult found = ThresholdSearch.Find([new(rate, [[.. envelope]], marks, 1)], 0, "fist", 0, new(0.03))!;
        Assert.Equal((0, 0, 0), (found.Missed, found.Wrong, found.Repeated));
        Assert.InRange(found.Settings.Off, 0.5, 1); // between rest and where it falls, or a wait bridges the fall
        Assert.Equal(found.Gestures, Wear.Count([.. envelope], rate, found.Settings));
        Assert.True(Wear.Count([.. envelope], rate, found.Settings with { Off = 5 }) > found.Gestures); // or the test shows nothing
    }

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
        float[] levels = new float[200];
        int hold = Switch.SamplesOf(found.Settings.HoldSeconds, take.RateHertz), least = int.MaxValue;
        for (int i = 1; i <= 1000; i++)
        {
            int bad = 0;
            foreach (Signals.Recordings.Mark m in take.Marks)
            {
                bool own = m.Gesture == "fist";
                double start = own ? m.StartSeconds : m.StartSeconds + Math.Min(0.6, (m.EndSeconds - m.StartSeconds) / 2), end = own ? Math.Min(m.EndSeconds, m.StartSeconds + 0.725) : m.EndSeconds;
                HoldLevels.Of(take.Envelopes[0].AsSpan((int)(start * 1000), (int)(end * 1000) - (int)(start * 1000)), levels);
                bool acts = levels[hold - 1] >= top * i / 1000;
                bad += acts != own ? 1 : 0;
            }

            least = Math.Min(least, bad);
        }

        Assert.True(found.Missed + found.Wrong <= least, $"{found.Missed} + {found.Wrong} against {least}");
        Assert.True(found.Errors > 0 && least > 0, $"{found} {least}"); // a hard place, or the test shows nothing
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
        float[] envelope = new float[3 * 3600 * 10];
        for (int i = 0; i < envelope.Length; i++)
        {
            envelope[i] = (float)(10 * (1 + 0.2 * i / 36000.0) + (i % 400 < 30 ? 90 : 0));
        }

        Drift drift = Wear.Over(envelope, 10, 26)!.Value;
        Assert.Equal(0.2 * 10 / 13.0, drift.RestPerHour, 0.01);
        Assert.Equal(5, drift.HoursToThreshold, 0.1);
        Assert.Null(Wear.Over(envelope.AsSpan(0, 3000), 10, 26));
    }

    private static long Activations(float[] stretch, double level, int hold) => Wear.Count(stretch, 1000, new(level, level, hold / 1000.0, 0));
}
