using Graspwright.Hand;
using Graspwright.Workshop.Dose;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Tests.Dose;

public sealed class DosingTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();

    [Fact]
    public void The_demo_s_day_lies_within_the_limits_at_all_day_effort_and_its_formulas_give_its_figures()
    {
        (Answer? answer, IReadOnlyList<InputError> errors) = Dosing.Answer(new(Boatyard));
        Assert.Empty(errors);
        Assert.Contains("557 grips a day of 3.5 s", answer!.Sentence, StringComparison.Ordinal);
        Assert.Contains(answer.Findings, f => f is { Key: "dose_mean", Subject: "all-day", Verdict: Verdict.Good });
        Assert.Contains(answer.Tables[0].Rows, r => r[0].Text == "the day as the file counts it");
        Assert.All(answer.Figures, f => Assert.Equal(f.Value!.Value, FormulaText.Evaluate(f.Working!.Formula, f.Working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal)), 1e-9 * Math.Abs(f.Value.Value)));
    }

    [Fact]
    public void Three_times_the_limit_fails_and_a_lock_helps()
    {
        (Answer? answer, _) = Dosing.Answer(new(Boatyard) { Day = Day(3000, 8) });
        Assert.Contains(answer!.Findings, f => f is { Key: "dose_mean", Subject: "all-day", Verdict: Verdict.Fails });
        Assert.DoesNotContain(answer.Findings, f => f is { Key: "dose_mean", Subject: "all-day, held by locks" });
        Assert.Contains("Past a limit: all-day; squeeze", answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Grips_longer_than_the_day_are_said_to_be_so()
    {
        (Answer? answer, _) = Dosing.Answer(new(Boatyard) { Day = Day(10000, 8) });
        Assert.Contains("take longer than the 8 h", answer!.Sentence, StringComparison.Ordinal);
        Assert.NotNull(answer.Figures[0].Why);
        Assert.Contains(answer.Findings, f => f is { Key: "dose_time", Verdict: Verdict.Fails });
    }

    [Fact]
    public void Load_and_life_read_the_same_grips()
    {
        Assert.Equal(557, Boatyard.CountedGrips.Sum(g => g.PerDay));
        Assert.Equal(Boatyard.Structure.Use.GripsPerDay, Boatyard.CountedGrips.Sum(g => g.PerDay));
        Assert.Equal(557, Workshop.Strength.GripLoads.Of(Boatyard).Grips.Sum(g => g.PerDay), 1e-9);
        HandModel more = Boatyard with { Structure = Boatyard.Structure with { Use = Boatyard.Structure.Use with { GripsPerDay = 600 } } };
        Assert.Equal(43, more.UncountedGrips, 1e-9);
        Assert.Equal(600, Workshop.Strength.GripLoads.Of(more).Grips.Sum(g => g.PerDay), 1e-9);
        Table day = Dosing.Answer(new(more)).Answer!.Tables[0];
        Assert.Equal(600, day.Rows.Single(r => r[0].Text == "the day as the file counts it")[1].Number!.Value, 1e-9);
    }

    private static Use Day(double grips, double hold) => Boatyard.Structure.Use with { GripsPerDay = grips, HoldSeconds = hold, WornSeconds = 28800 };

    [Fact]
    public void Tingling_and_night_pain_send_to_a_clinician() =>
        Assert.Contains(Dosing.Cautions, c => c.Contains("Tingling", StringComparison.Ordinal) && c.Contains("night", StringComparison.Ordinal) && c.Contains("clinician", StringComparison.Ordinal));
}
