using Graspwright.Hand;
using Graspwright.Page.Drive;
using Graspwright.Page.Hands;
using Graspwright.Workshop.Grip;

namespace Graspwright.Page.Tests.Drive;

public sealed class DriveHandlesTests : IDisposable
{
    private readonly DemoHand _demo = new();

    public void Dispose() => _demo.Dispose();

    [Fact]
    public void What_a_move_shows_is_what_it_puts_into_the_file()
    {
        OpenHand open = new(_demo.File, TimeProvider.System);
        foreach (string key in DriveTalk.Handles(open, open.State.Hand!).Select(h => h.Key))
        {
            Handle handle = DriveTalk.Handles(open, open.State.Hand!).First(h => h.Key == key);
            HandModel moved = handle.Moved(new(handle.At.X + 0.00113, handle.At.Y - 0.00087));
            IReadOnlyList<PathValue> texts = DriveHandles.Texts(open, handle, moved);
            Assert.NotEmpty(texts);
            Assert.True(open.Edit(texts, key).IsDone, key);
            foreach ((string path, double si, _) in handle.Values(moved))
            {
                Assert.Equal(si, open.Find(path)!.Si!.Value, 9);
            }
        }
    }

    [Theory]
    [InlineData("21.3 mm", 0.0214, "21.4 mm")]
    [InlineData("0.84 in", 0.0214, "0.843 in")]
    [InlineData("2.13 cm", 0.0214, "2.14 cm")]
    public void A_length_stays_in_the_unit_in_which_it_is_written(string written, double si, string text) => Assert.Equal(text, DriveHandles.Text(si, Dimension.Length, written));

    [Fact]
    public void Every_object_runs_and_the_frame_holds_what_is_shown()
    {
        OpenHand open = new(_demo.File, TimeProvider.System);
        (DriveRuns? runs, string why) = DriveRuns.Make(open.State.Hand!, Effort.AllDay, GripQuestion.AllFree);
        Assert.Empty(why);
        Assert.Equal(["mug", "rail", "tin", "plate"], runs!.Ran.Count == 4 ? runs.All.Select(c => c.Thing.Name) : []);
        DriveTalk talk = DriveTalk.Of(open, new("mug", Effort.AllDay, GripQuestion.AllFree, double.NaN, 0, 180))!;
        Assert.True(talk.Frame(null)!.Holds(runs.Drive, runs.Ran));
        Assert.Contains("effort limit", talk.Acting, StringComparison.Ordinal);
    }

    [Fact]
    public void The_curves_are_those_of_the_verb()
    {
        OpenHand open = new(_demo.File, TimeProvider.System);
        DriveRuns runs = DriveRuns.Make(open.State.Hand!, Effort.AllDay, GripQuestion.AllFree).Runs!;
        GripResult grip = Gripping.Answer(new(open.State.Hand!) { Objects = ["mug"], Locks = [GripQuestion.AllFree], Efforts = [Effort.AllDay] });
        Assert.Equal(grip.Cases[0].Situation.Find("grip_force")!.Value!.Value, runs.Chosen("mug").Run!.AtEnd[Mechanics.Run.TraceLayout.Grip], 9);
    }

    [Fact]
    public void A_hand_that_cannot_be_put_together_is_told_and_not_drawn()
    {
        OpenHand open = new(_demo.File, TimeProvider.System);
        DriveTalk talk = DriveTalk.Of(open, new("mug", Effort.AllDay, GripQuestion.AllFree, double.NaN, 0, 180) { Handle = "rail", To = DriveTalk.Handles(open, open.State.Hand!).First(h => h.Key == "output").At })!;
        Assert.Contains("cannot be put together", talk.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("\"scene\"", talk.Reply(new Dictionary<string, object>()), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_tried_goes_on_the_list_of_changes_and_the_hand_goes_back()
    {
        Assert.SkipUnless(ChangeKeeping.IsThere, "Hand files have no list of changes yet.");
        OpenHand open = new(_demo.File, TimeProvider.System);
        open.Edit([new("crank.fulcrum.x", "23 mm"), new("friction.pin", "0.1")], "tried");
        Assert.Equal(2, ChangeKeeping.Differences(open).Count);
        Assert.True(ChangeKeeping.Keep(open, "fulcrum out").IsDone);
        Assert.Equal("21.3 mm", open.Find("crank.fulcrum.x")!.Text);
        Assert.Contains("[changes.\"fulcrum out\".edits]", _demo.Text, StringComparison.Ordinal);
        Assert.Contains("\"crank.fulcrum.x\" = \"23 mm\"", _demo.Text, StringComparison.Ordinal);
        Assert.True(open.State.Sound);
        Assert.Empty(ChangeKeeping.Differences(open));
    }
}
