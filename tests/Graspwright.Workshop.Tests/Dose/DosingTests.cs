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
        (Answer? answer, IReadOnlyList<InputError> errors) = Dosing.Answer(new(Boatyard, Boatyard.Day!));
        Assert.Empty(errors);
        Assert.Contains("420 grips a day of 3.5 s", answer!.Sentence, StringComparison.Ordinal);
        Assert.Contains(answer.Findings, f => f is { Key: "dose_mean", Subject: "all-day", Verdict: Verdict.Good });
        Assert.Contains(answer.Tables[0].Rows, r => r[0].Text == "the jobs of the file");
        Assert.All(answer.Figures, f => Assert.Equal(f.Value!.Value, FormulaText.Evaluate(f.Working!.Formula, f.Working.Inputs.ToDictionary(i => i.Name, i => i.Value, StringComparer.Ordinal)), 1e-9 * Math.Abs(f.Value.Value)));
    }

    [Fact]
    public void Three_times_the_limit_fails_and_a_lock_helps()
    {
        (Answer? answer, _) = Dosing.Answer(new(Boatyard, new(3000, 8, 28800)));
        Assert.Contains(answer!.Findings, f => f is { Key: "dose_mean", Subject: "all-day", Verdict: Verdict.Fails });
        Assert.DoesNotContain(answer.Findings, f => f is { Key: "dose_mean", Subject: "all-day, held by locks" });
        Assert.Contains("Past a limit: all-day; squeeze", answer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Grips_longer_than_the_day_are_said_to_be_so()
    {
        (Answer? answer, _) = Dosing.Answer(new(Boatyard, new(10000, 8, 28800)));
        Assert.Contains("take longer than the 8 h", answer!.Sentence, StringComparison.Ordinal);
        Assert.NotNull(answer.Figures[0].Why);
        Assert.Contains(answer.Findings, f => f is { Key: "dose_time", Verdict: Verdict.Fails });
    }

    [Fact]
    public void Tingling_and_night_pain_send_to_a_clinician() =>
        Assert.Contains(Dosing.Cautions, c => c.Contains("Tingling", StringComparison.Ordinal) && c.Contains("night", StringComparison.Ordinal) && c.Contains("clinician", StringComparison.Ordinal));
}
