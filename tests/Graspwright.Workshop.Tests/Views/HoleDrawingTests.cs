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

    // An arc of 90° and length π/2·8 mm has the radius 8 mm: its end lies 8 mm along and 8 mm to the side.
    [Fact]
    public void An_arc_for_a_slot_ends_where_a_quarter_circle_ends_and_names_its_radius()
    {
        HandModel bent = Boatyard with { Crank = Boatyard.Crank with { Slot = new(0, Math.PI / 2 * 8e-3, 8, 100, Math.PI / 2) } };
        HolePiece crank = HoleDrawing.Pieces(bent)[1];
        Hole near = crank.Holes.Single(h => h.Name.Contains("slot begins", StringComparison.Ordinal)), far = crank.Holes.Single(h => h.Name.Contains("slot ends", StringComparison.Ordinal));
        Assert.Contains("8.0 mm radius", far.Name, StringComparison.Ordinal);
        Assert.Equal(8, far.XMm - near.XMm, 1e-9);
        Assert.Equal(8, far.YMm - near.YMm, 1e-9);
        Hole centre = crank.Holes.Single(h => h.Name.Contains("centre of the slot", StringComparison.Ordinal));
        Assert.Equal(0, centre.XMm - near.XMm, 1e-9);
        Assert.Equal(8, centre.YMm - near.YMm, 1e-9);
        PolylineMark line = crank.Drawing.Marks.OfType<PolylineMark>().Single(m => !m.Closed && m.Layer == "lines");
        Assert.All(line.Places.Zip(line.Places.Skip(1)), p => Assert.Equal(2 * 8 * Math.Sin(Math.PI / 4 / (line.Places.Count - 1)), p.First.DistanceTo(p.Second), 1e-9));
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
