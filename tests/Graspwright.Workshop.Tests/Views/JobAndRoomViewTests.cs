using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Thumb;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

public sealed class JobAndRoomViewTests
{
    private static readonly HandModel Demo = MadeHand.Boatyard();

    [Fact]
    public void Draws_an_arrow_for_every_force_that_presses_and_the_load()
    {
        JobOutcome mug = Jobbing.Answer(new(Demo) { Jobs = ["full mug"] }).Outcomes[0];
        Picture picture = JobView.Draw(mug);
        int pressing = mug.Held!.Forces.Count(f => f.InPlane.Length >= 0.05);
        int heads = picture.Marks.OfType<PolylineMark>().Count(m => m.Layer == "forces" && m.Closed);
        Assert.True(pressing > 3);
        Assert.True(heads > pressing, $"{heads} arrow heads for {pressing} forces in two views");
        Assert.Contains("Full mug", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_the_nearest_place_of_a_sweep_in_both_views()
    {
        RoomResult room = Rooming.Answer(Demo, "hand.toml");
        Picture picture = RoomView.Draw(room.Room!, room.Sweeps[0]);
        Assert.Equal(2, picture.Marks.OfType<CircleMark>().Count(m => m.Layer == "nearest place"));
        Assert.Contains("comes nearest", picture.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Draws_the_thumb_s_pad_and_its_nearest_fingertip_in_both_views()
    {
        IReadOnlyList<ThumbMeeting> meetings = Thumbing.Meetings(Demo);
        Assert.Equal(Demo.Thumb!.Postures.Count, meetings.Count);
        Picture picture = ThumbView.Draw(Demo, meetings[0]);
        Assert.Equal(2, picture.Marks.OfType<TextMark>().Count(m => m.Text == "thumb's pad"));
        Assert.Contains("the index meets its pad", picture.Description, StringComparison.Ordinal);
        Assert.Contains("no fingertip meets its pad", ThumbView.Draw(Demo, meetings[1]).Description, StringComparison.Ordinal);
    }
}
