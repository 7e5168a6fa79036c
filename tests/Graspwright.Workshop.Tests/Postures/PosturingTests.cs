using Graspwright.Hand;
using Graspwright.Workshop.Postures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Postures;

public sealed class PosturingTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard() with { Jobs = [] };

    /// <summary>A wrist that is its own mirror image: the same strength and range both ways. A start at +a driven by extension is then the start at −a driven by flexion.</summary>
    [Fact]
    public void A_wrist_that_is_its_own_mirror_gives_the_same_both_ways()
    {
        MomentTable flexion = new([-0.6, 0, 0.5], [8, 10, 11]), extension = new([-0.5, 0, 0.6], [11, 10, 8]);
        HandModel mirror = Demo with { Wrist = Demo.Wrist with { FlexionCapacity = flexion, ExtensionCapacity = extension }, WristRange = new(0.55, 0.55) };
        Table table = Posturing.Answer(mirror, "hand.toml").Answer!.Tables[0];
        var rows = table.Rows.Where(r => r[^1].Text!.Length == 0).ToDictionary(r => (r[0].Text, Math.Round(r[1].Number!.Value)));
        int compared = 0;
        foreach (((string? drive, double start), IReadOnlyList<Cell> row) in rows.Where(r => r.Key.Text == "flexion"))
        {
            IReadOnlyList<Cell> other = rows[("extension", -start)];
            Assert.Equal("flexion", drive);
            for (int c = 2; c < row.Count - 1; c++)
            {
                Assert.True(row[c].Number is null == other[c].Number is null && Math.Abs((row[c].Number ?? 0) - (other[c].Number ?? 0)) < 1e-6 * Math.Max(1, row[c].Number ?? 0), $"{start}, column {c}: {row[c].Number} against {other[c].Number}");
            }

            compared++;
        }

        Assert.True(compared > 5);
    }

    [Fact]
    public void Shows_the_file_as_it_is_first_and_never_calls_it_better_than_it_is()
    {
        Answer answer = Posturing.Answer(MadeHand.Boatyard(), "hand.toml").Answer!;
        Assert.Equal("as the file has it", answer.Tables[0].Rows[0][^1].Text);
        double most = answer.Tables[0].Rows.Max(r => r[3].Number!.Value);
        Assert.Equal(most, answer.Findings[0].Limit);
    }

    [Fact]
    public void Without_a_measured_range_it_says_what_it_took()
    {
        Answer answer = Posturing.Answer(Demo with { WristRange = null }, "hand.toml").Answer!;
        Assert.Contains(answer.Cautions, c => c.Contains("40° each way", StringComparison.Ordinal));
    }

    [Fact]
    public void A_range_without_travel_is_bad_input() =>
        Assert.Equal("wrist_range", Assert.Single(Posturing.Answer(Demo with { WristRange = new(0.05, 0.05) }, "hand.toml").Errors).Key);
}
