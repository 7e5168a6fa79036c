using Graspwright.Book.Pages;
using Graspwright.Drawing.Display;

namespace Graspwright.Book.Tests.Pages;

public sealed class TilesTests
{
    // Dashes begin anew with every mark: a seam of many short pieces would print as a full line.
    [Fact]
    public void A_dashed_line_of_many_pieces_stays_one_run_in_each_window()
    {
        Picture picture = new(150, 50, "a seam", "a seam");
        picture.OnLayer("seam").Polyline([.. Enumerable.Range(0, 141).Select(i => new Place(5 + i, 25 + 3 * Math.Sin(0.2 * i)))], new Pen(0.25, Ink.Ink, Dash.Dashed));
        IReadOnlyList<Tile> tiles = Tiles.Of(picture, 60, 60);
        Assert.Equal(3, tiles.Count);
        double length = 0;
        foreach (Tile tile in tiles)
        {
            PolylineMark run = Assert.Single(tile.Picture.Marks.OfType<PolylineMark>(), m => m.Layer == "seam");
            Assert.Equal(Dash.Dashed, run.Pen!.Value.Dash);
            Assert.All(run.Places, p => Assert.InRange(p.X, 0, 60));
            length += run.Places[^1].X - run.Places[0].X;
        }

        // the whole of it, and what overlaps twice
        Assert.Equal(140 + 2 * Tiles.OverlapMm, length, 1e-9);
    }

    [Fact]
    public void A_line_that_leaves_a_window_and_comes_back_is_two_runs()
    {
        Picture picture = new(150, 50, "a bow", "a bow");
        picture.OnLayer("seam").Polyline([new(10, 10), new(100, 25), new(10, 40)], Pen.Thin);
        Assert.Equal(2, Tiles.Of(picture, 60, 60)[0].Picture.Marks.OfType<PolylineMark>().Count(m => m.Layer == "seam"));
    }
}
