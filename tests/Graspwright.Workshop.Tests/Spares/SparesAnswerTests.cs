using Graspwright.Hand;
using Graspwright.Strength.Spares;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Spares;
using Graspwright.Workshop.Tests.Log;

namespace Graspwright.Workshop.Tests.Spares;

public sealed class SparesAnswerTests
{
    [Fact]
    public void Keeps_the_hand_as_a_whole_within_the_chance_asked_for()
    {
        SparesResult result = Demo(MadeHand.Boatyard());
        Assert.InRange(result.Answer.Figures.Single(f => f.Key == "spares_run_out").Value!.Value, 0, 5);
        Assert.Equal(["cord", "finger, petg-along, revision B", "liner", "pin, stainless-304", "spring"], result.Lines.Select(l => l.Study.Article.Name));
        Assert.All(result.Lines, l =>
        {
            Assert.NotNull(l.Keep);
            Assert.True(l.Safe is null || l.Safe.Keep >= l.Keep.Keep);
            Assert.True(l.Reordered is null || l.Reordered <= l.Keep.Keep + 1);
        });
    }

    [Fact]
    public void Keeps_more_for_a_longer_period_and_a_smaller_chance()
    {
        HandModel hand = MadeHand.Boatyard();
        int now = Kept(hand), longer = Kept(hand with { Drawer = hand.Drawer with { PeriodSeconds = 2 * hand.Drawer.PeriodSeconds } }), surer = Kept(hand with { Drawer = hand.Drawer with { Chance = 0.001 } });
        Assert.True(longer > now);
        Assert.True(surer > now);
    }

    [Fact]
    public void Ages_what_is_fitted_to_the_day_asked_about()
    {
        LogReading log = LogReaderTests.Read(BoatyardLog.Text());
        SparesResult later = SparesAnswer.Of(MadeHand.Boatyard(), log, log.LastDay.AddDays(20));
        Running first = later.Lines.First(l => l.Study.Article.Part == "finger").Study.Best[0];
        LogEntry entry = later.Lines.First(l => l.Study.Article.Part == "finger").Study.Fitted[0];
        Assert.Equal(entry.Age(log.LastDay) + 20, first.Age);
        Finding unseen = later.Answer.Findings.Single(f => f.Key == "broken_unseen");
        Assert.Equal(Verdict.Fails, unseen.Verdict);
        Assert.True(unseen.Figure > Demo(MadeHand.Boatyard()).Answer.Findings.Single(f => f.Key == "broken_unseen").Figure);
    }

    [Fact]
    public void Rises_with_each_look_no_further_than_asked()
    {
        SparesResult result = Demo(MadeHand.Boatyard());
        Look cords = result.Looks.Single(l => l.Study.Article.Part == "cord");
        int days = cords.Days[0].DayNumber - result.Today.DayNumber;
        double Broken(double after) => 1 - cords.Study.Best.Aggregate(1.0, (p, r) => p * r.Law.Whole(r.Age + after) / r.Law.Whole(r.Age));
        Assert.True(Broken(days) <= 0.1);
        Assert.True(Broken(days + 1) > 0.1);
    }

    [Fact]
    public void Says_when_nothing_is_fitted_and_when_nothing_is_known()
    {
        HandModel hand = MadeHand.Boatyard() with { Drawer = new() };
        Assert.Contains("nothing is fitted", SparesAnswer.Of(hand, LogReaderTests.Read(LogReaderTests.Lines("pin,,,,2026-01-01,,2026-01-09,broke,"))).Answer.Sentence, StringComparison.Ordinal);
        SparesResult unknown = SparesAnswer.Of(hand, LogReaderTests.Read(LogReaderTests.Lines("pin,,,,2026-01-01,2026-01-01,,,")));
        Assert.Contains("No number to keep can be said yet", unknown.Answer.Sentence, StringComparison.Ordinal);
        Assert.Equal(Verdict.NotKnown, unknown.Answer.Findings.Single(f => f.Key == "spares_known").Verdict);
    }

    private static int Kept(HandModel hand) => (int)Demo(hand).Answer.Figures.Single(f => f.Key == "spares_kept").Value!.Value;

    private static SparesResult Demo(HandModel hand) => SparesAnswer.Of(hand, LogReaderTests.Read(BoatyardLog.Text()));
}
