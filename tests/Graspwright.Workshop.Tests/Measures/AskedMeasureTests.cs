using Graspwright.Hand;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Tests.Measures;

public sealed class AskedMeasureTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard();

    [Fact]
    public void Every_measure_of_the_hand_reads_what_its_own_verb_prints()
    {
        Answer[] answers = [Jobbing.Answer(new(Demo)).Answer!, Breaking.Answer(new(Demo)).Answer!, Lasting.Answer(new(Demo)).Answer!, Rooming.Answer(Demo, "").Answer!];
        Dictionary<string, Figure> printed = answers.SelectMany(a => a.Figures).DistinctBy(f => f.Key).ToDictionary(f => f.Key);
        AskedHand reading = new(Demo);
        foreach (HandMeasure measure in HandMeasureTable.All)
        {
            foreach (string subject in measure.HasSubject ? measure.Subjects(Demo) : [""])
            {
                string text = subject.Length > 0 ? $"{measure.Key}@{subject}" : measure.Key;
                AskedMeasure asked = Asked(text);
                Assert.Equal(printed[text].Value, asked.Value(reading).Value);
                Assert.Equal(printed[text].Unit, asked.Unit);
                Assert.Equal(printed[text].Value, asked.Figure(reading).Value);
                Assert.Equal(text, asked.Figure(reading).Key);
            }
        }
    }

    [Fact]
    public void Measures_of_a_run_read_what_the_grip_prints()
    {
        GripResult grip = Gripping.Answer(new(Demo));
        AskedHand reading = new(Demo);
        foreach (Situation situation in grip.Answer!.Situations.Where(s => s.Effort == "all-day").Take(3))
        {
            foreach (Figure figure in situation.Figures.Where(f => f.Value is not null && f.Key != "clearance"))
            {
                AskedMeasure asked = Asked($"{figure.Key}@{situation.ObjectName}/{situation.Locks}");
                Assert.Equal(figure.Value!.Value, asked.Value(reading).Value, 1e-9);
            }
        }
    }

    [Fact]
    public void Prints_formulas_that_give_the_printed_values()
    {
        AskedHand reading = new(Demo);
        PrintedFormulas.GiveTheirValues([.. HandMeasureTable.All.SelectMany(m => m.HasSubject ? m.Subjects(Demo).Select(s => m.Figure(reading, s)) : [m.Figure(reading, "")])]);
    }

    [Fact]
    public void The_worst_is_the_least_where_more_is_better_and_the_greatest_where_less_is()
    {
        AskedHand reading = new(Demo);
        string[] things = [.. Demo.Objects.Where(o => o is not NothingHeld).Select(o => o.Name)];
        string[] patterns = [GripQuestion.AllFree, .. Demo.Locks.Select(l => l.Name)];
        double[] grips = [.. things.SelectMany(t => patterns, (t, p) => Asked($"grip_force@{t}/{p}").Value(reading).Value)];
        double[] losses = [.. things.SelectMany(t => patterns, (t, p) => Asked($"degrees_lost_to_give@{t}/{p}").Value(reading).Value)];
        Assert.Equal(grips.Min(), Asked("worst(grip_force)").Value(reading).Value);
        Assert.Equal(losses.Max(), Asked("worst(degrees_lost_to_give)").Value(reading).Value);
        Assert.Equal(Demo.Jobs.Min(j => Asked($"job_margin@{j.Name}").Value(reading).Value), Asked("worst(job_margin)").Value(reading).Value);
        Assert.Contains("@", Asked("worst(grip_force)").Figure(reading).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Runs_nothing_that_no_measure_asked_for_and_nothing_twice()
    {
        int runs = 0, openings = 0;
        RunResult Count(Mechanics.Drive.DriveModel drive, Mechanics.Objects.HeldObject held, RunOptions options)
        {
            Interlocked.Increment(ref runs);
            Interlocked.Add(ref openings, options.Opening ? 1 : 0);
            return ClosingRun.Solve(drive, held, options);
        }

        AskedHand reading = new(Demo, null, Count);
        AskedMeasure mass = Asked("moving_mass"), force = Asked("grip_force@mug"), arm = Asked("output_arm@mug/all free"), loop = Asked("loop_mean@mug");
        foreach (AskedMeasure asked in (AskedMeasure[])[mass, force, arm, loop])
        {
            asked.Expect(reading);
        }

        Assert.False(mass.Value(reading).Value <= 0);
        Assert.Equal(0, runs);
        Assert.True(force.Value(reading).Value > 0 && arm.Value(reading).Value > 0 && loop.Value(reading).Value > 0);
        Assert.Equal((1, 1), (runs, openings));
        Assert.True(Asked("grip_force@tin").Value(reading).Value > 0);
        Assert.Equal((2, 1), (runs, openings));
    }

    [Theory]
    [InlineData("grip_farce@mug", "Did you mean 'grip_force'?")]
    [InlineData("grip_force@mag", "Did you mean 'mug'?")]
    [InlineData("grip_force@mug/all fre", "Did you mean 'all free'?")]
    [InlineData("grip_force@mug/all free/squeze", "Did you mean 'squeeze'?")]
    [InlineData("grip_force", "Write 'grip_force@mug'.")]
    [InlineData("job_margin", "Write 'job_margin@")]
    [InlineData("job_margin@bucked", "Did you mean 'bucket'?")]
    [InlineData("jobs_done@bucket", "Write 'jobs_done'.")]
    [InlineData("worst(grip_force", "Write 'worst(grip_force)'.")]
    [InlineData("worst(jobs_done)", "Write 'jobs_done'.")]
    [InlineData("worst(job_spare)", "Write 'worst(job_margin)'.")]
    [InlineData("worst(grip_force@mug)", "worst(grip_force)")]
    [InlineData("worst(shift_start)", "Say where")]
    [InlineData("", "Use one of these names.")]
    public void Says_what_is_wrong_with_a_measure_asked_for(string text, string fix)
    {
        Assert.Null(AskedMeasure.Read(text, Demo, out AskedFault? why));
        Assert.Contains(fix, why!.Fix, StringComparison.Ordinal);
    }

    private static AskedMeasure Asked(string text) => AskedMeasure.Read(text, Demo, out AskedFault? why) ?? throw new InvalidOperationException($"{text}: {why!.Found}. {why.Fix}");
}
