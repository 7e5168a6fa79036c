using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Spares;
using Graspwright.Workshop.Strength;
using Graspwright.Workshop.Tests.Log;

namespace Graspwright.Workshop.Tests.Lives;

public sealed class LivesAnswerTests
{
    private static readonly string[] Forbidden = ["censor", "posterior", "hazard ratio", "p-value", "MLE", "NaN", "∞", "Infinity"];

    [Fact]
    public void Tells_the_boatyards_story()
    {
        Answer answer = Demo().Answer;
        Assert.StartsWith("The log has 44 fingers: 36 broke, 8 were whole when last seen.", answer.Sentence, StringComparison.Ordinal);
        Assert.Contains("of those fitted now (petg-along, revision B)", answer.Sentence, StringComparison.Ordinal);
        Assert.Equal(["parts", "laws", "computed life", "by finger", "by material", "by cause"], answer.Tables.Select(t => t.Name));
        Assert.Equal(Verdict.Tight, answer.Findings.Single(f => f.Key == "alike_material").Verdict);
        Assert.Equal(Verdict.Good, answer.Findings.Single(f => f.Key == "ageing").Verdict);

        // The laws that the lives were drawn from: Weibull of shape 1.9, scales 22 to 50 days for PLA and 1.6 times that for PETG. The fits of one material hold them.
        PartStudy petg = new("petg", [.. DemoLog().Entries.Where(e => e.Material == "petg-along")], null);
        Graspwright.Strength.Lives.Bounded median = Graspwright.Strength.Lives.ProfileBounds.Quantile(petg.Best, 0.5);
        Assert.InRange(1.6 * 36.5 * Math.Pow(Math.Log(2), 1 / 1.9), median.Low, median.High * 1.1); // 36.5 days: middle of the four scales
    }

    [Theory]
    [InlineData("finger")]
    [InlineData("cord")]
    [InlineData("pin")]
    [InlineData("spring")]
    [InlineData("liner")]
    public void Prints_formulas_that_give_the_printed_values(string part)
    {
        Answer answer = LivesAnswer.Of(new(MadeHand.Boatyard(), DemoLog(), part)).Answer;
        Assert.Contains(answer.Figures, f => f.Value is not null);
        Worked(answer);
    }

    [Fact]
    public void Prints_formulas_of_spares_that_give_the_printed_values()
    {
        Answer answer = SparesAnswer.Of(MadeHand.Boatyard(), DemoLog()).Answer;
        Assert.True(answer.Figures.Single(f => f.Key == "spares_kept").Value > 5);
        Worked(answer);
    }

    [Fact]
    public void Gives_a_bound_from_below_where_nothing_broke()
    {
        LivesResult result = Of("finger,index,,,2026-01-01,2026-02-10,,,", "finger,middle,,,2026-01-01,2026-01-26,,,");
        Assert.Contains("None broke, so only this is sure", result.Answer.Sentence, StringComparison.Ordinal);
        Figure least = result.Answer.Figures.Single(f => f.Key == "life_median_at_least");
        Assert.InRange(least.Value!.Value, 5, 40);
        Assert.NotNull(result.Answer.Figures.Single(f => f.Key == "life_median").Why);
        Worked(result.Answer);
        Assert.NotEmpty(SvgWriter.Write(LifePictures.Whole(result.Study)));
    }

    [Theory]
    [InlineData("finger,index,,,2026-01-01,2026-01-01,,,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-01,broke,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-09,broke,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-09,found broken,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-09,broke,", "finger,middle,,,2026-01-01,,2026-01-09,broke,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-09,broke,", "finger,middle,,,2026-01-01,2026-01-20,,,")]
    [InlineData("finger,index,,,2026-01-01,,2026-01-09,broke,", "finger,middle,,,2026-01-01,,2026-01-30,broke,", "finger,ring,,,2026-01-01,,2026-01-10,retired,")]
    public void Speaks_plainly_of_any_small_log(params string[] rows)
    {
        LivesResult result = Of(rows);
        string text = TextAnswer.Write(result.Answer) + JsonAnswer.Write(result.Answer);
        Assert.All(Forbidden, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
        Assert.Contains("dropped load", text, StringComparison.Ordinal);
        Worked(result.Answer);
        SparesResult spares = SparesAnswer.Of(MadeHand.Boatyard() with { Drawer = new() }, LogReaderTests.Read(LogReaderTests.Lines(rows)));
        Assert.DoesNotContain("NaN", TextAnswer.Write(spares.Answer), StringComparison.Ordinal);
        Worked(spares.Answer);
    }

    [Fact]
    public void Puts_the_log_to_a_computed_life()
    {
        HandModel hand = MadeHand.Boatyard();
        LogReading log = LogReaderTests.Read(LogReaderTests.Lines("finger,index,,,2026-01-01,2026-03-30,,,", "finger,middle,,,2026-01-01,2026-03-30,,,"));
        PartStudy study = LivesAnswer.Of(new(hand, log)).Study;
        Assert.Equal(21, study.Before!.Median.Value, 0.2);
        Assert.True(study.After!.Median.Value > 2 * study.Before.Median.Value);
        Assert.Contains("with the log put to it that becomes", LivesAnswer.Of(new(hand, log)).Answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_what_broke_and_what_is_whole()
    {
        PartStudy study = Demo().Study;
        Picture paper = LifePictures.Paper(study);
        int breaks = Graspwright.Strength.Lives.Survivors.Steps(study.Records).Count;
        Assert.Equal(breaks, paper.Marks.OfType<CircleMark>().Count());
        Assert.Equal(study.Records.Where(r => !r.Broke && r.Low > 0).Select(r => r.Low).Distinct().Count(), paper.Marks.OfType<LineMark>().Count(m => m.Layer == "still whole"));
        Assert.All(paper.Marks.OfType<CircleMark>(), m => Assert.InRange(m.Centre.X, 0, paper.WidthMm));
        Assert.Contains("spans as they are", SvgWriter.Write(LifePictures.Whole(study)), StringComparison.Ordinal);
    }

    [Fact]
    public void Knows_each_source_that_it_names() =>
        Assert.All(Demo().Answer.Figures.Concat(SparesAnswer.Of(MadeHand.Boatyard(), DemoLog()).Answer.Figures).Select(f => f.Working?.Source).OfType<string>(), key => Assert.Contains(key, LifeSources.All.Select(s => s.Key)));

    private static void Worked(Answer answer) => Assert.All(answer.Figures.Where(f => f.Value is not null), figure =>
    {
        double worked = FormulaText.Evaluate(figure.Working!.Formula, figure.Working.Inputs.ToDictionary(i => i.Name, i => i.Value));
        Assert.Equal(figure.Value!.Value, worked, 1e-6 * Math.Max(1, Math.Abs(worked)));
        Assert.True(!(figure.Low > figure.Value) && !(figure.High < figure.Value), figure.Key);
    });

    [Fact]
    public void Takes_the_computed_life_from_the_hinges_where_few_broke_and_none_is_given()
    {
        HandModel hand = MadeHand.Boatyard();
        hand = hand with { Drawer = hand.Drawer with { ComputedLives = [] } };
        LogReading log = LogReaderTests.Read("part,position,material,revision,fitted,last_seen_whole,ended,how,cause\nfinger,index,6061-T6,A,2025-06-02,2026-03-31,,,\nfinger,ring,6061-T6,A,2025-06-02,,2025-07-14,broke,knock\n");
        ComputedLife computed = ComputedPart.Of(hand, "finger", log.Entries)!;

        // The same from what `lasts` answers: of index and ring the first hinge to break, hinge by hinge an upper bound.
        HandBand band = Lasting.Sample(Lasting.InMaterial(hand, "6061-T6"), GripLoads.Of(hand), 1000, 1);
        double least = band.Hinges.Where(h => h.Position.StartsWith("index ", StringComparison.Ordinal) || h.Position.StartsWith("ring ", StringComparison.Ordinal)).Min(h => h.Days[500]);
        Assert.InRange(computed.MedianSeconds / 86400, 0.5 * least, 2 * least);
        Assert.True(computed.LowSeconds < computed.MedianSeconds && computed.MedianSeconds < computed.HighSeconds);
        PartStudy study = LivesAnswer.Studies(hand, log).Single();
        Assert.Equal(computed.MedianSeconds / 86400, study.Before!.Median.Value, 0.02 * computed.MedianSeconds / 86400);
        Assert.NotEqual(study.Before.Median.Value, study.After!.Median.Value);
    }

    [Fact]
    public void Computes_no_life_for_a_part_that_is_no_finger_or_of_a_material_unheard_of()
    {
        HandModel hand = MadeHand.Boatyard() with { Drawer = new() };
        LogReading log = LogReaderTests.Read("part,position,material,revision,fitted,last_seen_whole,ended,how,cause\ncord,index,,,2025-06-02,2026-03-31,,,\nliner,palm,,,2025-06-02,2026-03-31,,,\n");
        Assert.All(log.Entries, e => Assert.Null(ComputedPart.Of(hand, e.Part, [e])));
    }

    private static LivesResult Demo() => LivesAnswer.Of(new(MadeHand.Boatyard(), DemoLog()));

    private static LogReading DemoLog() => LogReaderTests.Read(BoatyardLog.Text());

    private static LivesResult Of(params string[] rows)
    {
        LogReading log = LogReaderTests.Read(LogReaderTests.Lines(rows));
        Assert.Empty(log.Errors);
        return LivesAnswer.Of(new(MadeHand.Boatyard() with { Drawer = new() }, log));
    }
}
