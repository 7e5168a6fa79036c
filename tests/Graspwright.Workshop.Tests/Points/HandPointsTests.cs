using Graspwright.Drawing.Points;
using Graspwright.Hand;
using Graspwright.Workshop.Points;

namespace Graspwright.Workshop.Tests.Points;

public sealed class HandPointsTests
{
    [Fact]
    public void Gives_places_in_the_hand_frame_not_from_the_fulcrum()
    {
        HandModel hand = MadeHand.Boatyard();
        NamedPoint output = HandPoints.Of(hand).Single(p => p.Name == "output pin");
        Assert.Equal(1000 * (hand.Crank.Fulcrum.X + hand.Crank.Output.X), output.XMm, 1e-9);
    }

    [Fact]
    public void Writing_and_reading_back_moves_nothing_and_changes_no_byte()
    {
        HandReading reading = MadeHand.Read();
        HandEditor editor = HandEditor.Open(reading)!;
        IReadOnlyList<NamedPoint> drawn = PointTable.Read(PointTable.Write(HandPoints.Of(reading.Hand!)), "points.csv");
        var read = HandPoints.Read(editor, reading.Hand!, drawn, "points.csv");
        Assert.Empty(read.Moves);
        Assert.Equal(editor.Source.Text.Text, read.Edited!.Source.Text.Text);
    }

    [Fact]
    public void Moving_the_fulcrum_alone_leaves_the_pins_where_they_are_drawn()
    {
        HandReading reading = MadeHand.Read();
        HandModel hand = reading.Hand!;
        NamedPoint[] drawn = [.. HandPoints.Of(hand).Select(p => p.Name == "fulcrum" ? p with { XMm = p.XMm + 0.5 } : p)];
        var read = HandPoints.Read(HandEditor.Open(reading)!, hand, drawn, "points.csv");

        Assert.Equal("fulcrum", Assert.Single(read.Moves).To.Name);
        HandModel after = read.Edited!.Reading.Hand!;
        Assert.Equal(hand.Crank.Fulcrum.X + 0.0005, after.Crank.Fulcrum.X, 1e-12);
        Assert.Equal(hand.Crank.Fulcrum.X + hand.Crank.Input.X, after.Crank.Fulcrum.X + after.Crank.Input.X, 1e-8);
        Assert.Equal(hand.Crank.Fulcrum.Y + hand.Crank.Output.Y, after.Crank.Fulcrum.Y + after.Crank.Output.Y, 1e-12);
        Assert.Contains("# from the fulcrum", read.Edited.Source.Text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_a_point_that_the_hand_does_not_have()
    {
        HandReading reading = MadeHand.Read();
        var read = HandPoints.Read(HandEditor.Open(reading)!, reading.Hand!, [new("elbow", 0, 0)], "points.csv");
        Assert.Null(read.Edited);
        Assert.Equal("elbow", Assert.Single(read.Errors).Key);
    }
}
