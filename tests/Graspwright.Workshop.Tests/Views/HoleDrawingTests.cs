using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

public sealed class HoleDrawingTests
{
    private static readonly HandModel Boatyard = MadeHand.Boatyard();

    [Fact]
    public void Every_hole_lies_as_far_from_the_others_as_in_the_hand()
    {
        foreach (HolePiece piece in HoleDrawing.Pieces(Boatyard))
        {
            CircleMark[] circles = [.. piece.Drawing.Marks.OfType<CircleMark>()];
            Hole[] drilled = [.. piece.Holes.Where(h => h.DiameterMm > 0).GroupBy(h => (h.XMm, h.YMm)).Select(g => g.First())];
            Assert.Equal(drilled.Length, circles.Length);
            for (int i = 1; i < drilled.Length; i++)
            {
                Assert.Equal(drilled[i].XMm - drilled[0].XMm, circles[i].Centre.X - circles[0].Centre.X, 1e-9);
                Assert.Equal(drilled[i].YMm - drilled[0].YMm, circles[i].Centre.Y - circles[0].Centre.Y, 1e-9);
                Assert.Equal(drilled[i].DiameterMm, 2 * circles[i].RadiusMm, 1e-9);
            }
        }
    }

    [Fact]
    public void The_plate_has_fulcrum_rail_and_knuckles_at_their_places()
    {
        HolePiece plate = HoleDrawing.Pieces(Boatyard)[0];
        Assert.Contains(plate.Holes, h => h is { Name: "fulcrum", XMm: 21.3, YMm: 19, DiameterMm: 6 });
        Assert.Contains(plate.Holes, h => h.Name == "knuckle of the little" && (h.XMm, h.YMm) == (87, -2));
        Hole end = plate.Holes.Single(h => h.Name.Contains("end of its rail", StringComparison.Ordinal));
        Assert.Equal((37, 30), (Math.Round(end.XMm, 9), Math.Round(end.YMm, 9))); // 61 mm less 24 mm of travel
    }

    [Fact]
    public void Numbers_stand_clear_of_each_other()
    {
        foreach (HolePiece piece in HoleDrawing.Pieces(Boatyard))
        {
            TextMark[] numbers = [.. piece.Drawing.Marks.OfType<TextMark>()];
            Assert.All(numbers.SelectMany((a, i) => numbers.Skip(i + 1).Select(b => a.At.DistanceTo(b.At))), d => Assert.True(d > 2.4, $"{piece.Name}: {d} mm"));
        }
    }
}
