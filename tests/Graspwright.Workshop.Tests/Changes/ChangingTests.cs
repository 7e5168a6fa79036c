using Graspwright.Deciding.Changes;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Changes;

public sealed class ChangingTests
{
    private static readonly HandEditor Demo = HandEditor.Open(MadeHand.Read())!;
    private static readonly Lazy<ChangesResult> Whole = new(() => Changing.Answer(new(Demo) { File = "hand.toml" }));

    [Fact]
    public void The_demo_lists_six_changes_or_more_one_of_pads_and_two_that_fight()
    {
        ChangeStudy study = Whole.Value.Study!;
        Assert.True(study.Items.Count >= 6);
        Assert.Contains(study.Items, c => c.Edits.Any(e => e.Path.StartsWith("pads.", StringComparison.Ordinal)));
        Assert.Contains(study.Measures, m => m.Effects.Pairs.Any(p => p.How == Together.Fight));
        Assert.Contains("fight", Whole.Value.Answer!.Sentence, StringComparison.Ordinal);
        Assert.All(study.Items, c => Assert.True(c is { Evenings: not null, Money: not null, WithoutSeconds: not null, MockUp.Length: > 0 }));
    }

    [Fact]
    public void A_change_alone_gives_what_the_changed_file_gives()
    {
        ChangeStudy study = Whole.Value.Study!;
        int pads = study.Items.ToList().FindIndex(c => c.Name == "softer pads");
        HandEditor edited = study.Items[pads].Edits.Aggregate(Demo, (e, edit) => e.Set(edit.Path, edit.Value).Editor!);
        AskedHand hand = new(edited.Reading.Hand!);
        for (int k = 0; k < study.Measures.Count; k++)
        {
            Assert.Equal(study.Measures[k].Measure.Value(hand).Value, study.Value(ChangeSet.None.With(pads), k), 1e-9);
        }

        int jobs = study.Measures.ToList().FindIndex(m => m.Measure.Text == "jobs_done");
        Assert.Equal(Jobbing.Answer(new(edited.Reading.Hand!)).Answer!.Figures.First(f => f.Key == "jobs_done").Value, study.Value(ChangeSet.None.With(pads), jobs));
    }

    [Fact]
    public void The_steps_lead_from_as_it_is_to_all_one_item_at_a_time()
    {
        ChangeStudy study = Whole.Value.Study!;
        Assert.Equal(ChangeSet.None, study.Steps[0].Set);
        Assert.Equal(ChangeSet.Whole(study.Items.Count), study.Steps[^1].Set);
        Assert.All(study.Steps, s => Assert.False(double.IsNaN(study.Value(s.Set, 0))));
    }

    [Fact]
    public void Prints_formulas_that_give_the_printed_values() => PrintedFormulas.GiveTheirValues(Whole.Value.Answer!.Figures);

    [Fact]
    public void Draws_a_bar_or_mark_for_every_step()
    {
        Picture picture = StepView.Draw("demo", Whole.Value.Study!);
        Assert.True(picture.Marks.Count(m => m.Layer == "steps") >= Whole.Value.Study!.Steps.Count);
    }

    [Theory]
    [InlineData("jobs_don", "jobs_done")]
    [InlineData("grip_force@mugg", "mug")]
    public void A_measure_that_is_unknown_is_refused_with_the_nearest(string measure, string near)
    {
        ChangesResult result = Changing.Answer(new(Demo) { File = "hand.toml", Measures = [measure] });
        Assert.Null(result.Answer);
        Assert.Contains(near, Assert.Single(result.Errors).Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_changes_and_an_item_that_is_unknown_are_refused()
    {
        HandEditor starter = HandEditor.Open(HandFile.Parse(Starter.Text, "hand.toml"))!;
        Assert.Contains("no changes", Changing.Answer(new(starter)).Errors[0].Found, StringComparison.Ordinal);
        Assert.Contains("softer pads", Changing.Answer(new(Demo) { Only = ["softer pad"] }).Errors[0].Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_measure_without_a_value_is_said_and_leaves_the_others()
    {
        ChangesResult result = Changing.Answer(new(Demo) { Measures = ["grip_force@mug", "shift_cost@mug"], Only = ["stronger slot spring", "softer pads"] });
        Assert.Contains(result.Answer!.Findings, f => f is { Key: "change_not_judged", Verdict: Verdict.NotKnown });
        Assert.False(double.IsNaN(result.Study!.Value(ChangeSet.Whole(2), 0)));
        Assert.True(double.IsNaN(result.Study.Value(ChangeSet.Whole(2), 1)));
    }
}
