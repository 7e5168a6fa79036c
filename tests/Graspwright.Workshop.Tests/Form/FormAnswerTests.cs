using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Tests.Mould;

namespace Graspwright.Workshop.Tests.Form;

public sealed class FormAnswerTests
{
    private static readonly Lazy<FormResult> Form = new(() => FormAnswer.Of(Boatyard.Hand, "hand.toml"));
    private static readonly Lazy<PatternResult> Pattern = new(() => PatternAnswer.Of(Boatyard.Hand, "hand.toml"));

    [Fact]
    public void Every_figure_works_out()
    {
        PrintedFormulas.GiveTheirValues(Form.Value.Answer!.Figures);
        PrintedFormulas.GiveTheirValues(Pattern.Value.Answer!.Figures);
    }

    [Fact]
    public void The_form_keeps_the_tapes_girths()
    {
        Table girths = Form.Value.Answer!.Tables.Single(t => t.Name == "girths of the form");
        foreach (IReadOnlyList<Cell> row in girths.Rows)
        {
            Assert.Equal(row[2].Number!.Value, row[3].Number!.Value, 0.1);
        }
    }

    [Fact]
    public void The_sheet_is_a_little_more_than_flat_and_near_Steiner()
    {
        double of(string key) => Form.Value.Answer!.Figures.Single(f => f.Key == key).Value!.Value;
        Assert.InRange(of("sheet_volume") / of("sheet_volume_flat"), 1.0, 1.15);
        Assert.Equal(of("sheet_volume_steiner"), of("sheet_volume"), 0.01 * of("sheet_volume"));
    }

    [Fact]
    public void The_pattern_has_no_flips_and_laps_and_a_sleeve()
    {
        Assert.Contains("thumb sleeve", Pattern.Value.Pieces.Select(p => p.Name));
        Assert.Equal(Pattern.Value.Pieces.Count, Pattern.Value.Pieces.Select(p => p.Name).Distinct().Count());
        Assert.All(Pattern.Value.Pieces, p => Assert.Equal((0, 0), (p.Pattern.Flat.Flips, p.Pattern.Flat.Crossings)));
        // both sides of every seam have the same letters
        IEnumerable<IGrouping<string, string>> letters = Pattern.Value.Pieces.SelectMany(p => p.Pattern.Notches.Select(n => n.Letter)).GroupBy(l => l);
        Assert.All(letters, l => Assert.Equal(2, l.Count()));
    }

    [Fact]
    public void A_left_hand_has_the_mirrored_pattern()
    {
        PatternResult left = PatternAnswer.Of(Boatyard.Hand with { Side = Side.Left }, "hand.toml", stop: TestContext.Current.CancellationToken);
        PaperPiece a = Pattern.Value.Pieces[0], b = left.Pieces[0];
        Assert.Equal(a.Width, b.Width, 1e-9);
        (double x, double y) = a.Place(0.01, 0.02);
        Assert.Equal((a.Width - x, y), b.Place(0.01, 0.02) is var p ? (p.X, p.Y) : default, (l, r) => Math.Abs(l.Item1 - r.Item1) < 1e-9 && Math.Abs(l.Item2 - r.Item2) < 1e-9);
    }

    [Fact]
    public void The_own_outline_traced_and_turned_is_found_again()
    {
        PaperPiece sheet = Pattern.Value.Pieces[0];
        (double sin, double cos) = Math.SinCos(0.7);
        (double X, double Y)[] traced = [.. sheet.Pattern.SewLine.Select(p => sheet.Place(p.X, p.Y)).Select(p => (cos * p.X - sin * p.Y + 0.3, sin * p.X + cos * p.Y))];
        PatternResult compared = PatternAnswer.Of(Boatyard.Hand, "hand.toml", traced, stop: TestContext.Current.CancellationToken);
        Assert.InRange(compared.Answer!.Figures.Single(f => f.Key == "outline_worst").Value!.Value, 0, 0.6);
    }

    [Fact]
    public void Pictures_show_all_pieces_at_full_size()
    {
        Assert.True(PatternPictures.FullSize(Pattern.Value).WidthMm > 1000 * Pattern.Value.Pieces.Sum(p => p.Width));
        Assert.NotEmpty(FormPictures.Views(Form.Value).Marks);
    }

    [Fact]
    public void Pieces_lie_whole_on_pages_where_they_fit()
    {
        IReadOnlyList<Picture> pages = PatternPictures.Pages(Pattern.Value, 180, 240)!;
        Assert.InRange(pages.Count, 1, Pattern.Value.Pieces.Count);
        // each cut line is on one page, whole and inside it
        PolylineMark[] cuts = [.. pages.SelectMany(p => p.Marks.OfType<PolylineMark>().Where(m => m.Layer == "cut"))];
        Assert.Equal(Pattern.Value.Pieces.Count, cuts.Length);
        Assert.All(cuts.SelectMany(c => c.Places), p => Assert.True(p is { X: > 0 and < 180, Y: > 0 and < 240 }));
        Assert.Equal(Pattern.Value.Pieces.Select(p => 1000 * p.Width).Order(), cuts.Select(c => c.Places.Max(p => p.X) - c.Places.Min(p => p.X)).Order(), (a, b) => Math.Abs(a - b) < 1e-6);
        // and no two of one page overlap
        foreach (Picture page in pages)
        {
            (double Low, double High, double Left, double Right)[] boxes = [.. page.Marks.OfType<PolylineMark>().Where(m => m.Layer == "cut").Select(m => (m.Places.Min(p => p.Y), m.Places.Max(p => p.Y), m.Places.Min(p => p.X), m.Places.Max(p => p.X)))];
            Assert.All(boxes, a => Assert.Single(boxes, b => b.Left < a.Right && a.Left < b.Right && b.Low < a.High && a.Low < b.High));
        }

        Assert.Null(PatternPictures.Pages(Pattern.Value, 100, 240));
    }
}
