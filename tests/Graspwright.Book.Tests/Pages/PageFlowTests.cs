using Graspwright.Book.Pages;
using Graspwright.Drawing.Display;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Graspwright.Book.Tests.Pages;

public sealed class PageFlowTests
{
    public static TheoryData<string> Papers => [.. Paper.All.Select(p => p.Name)];

    [Theory, MemberData(nameof(Papers))]
    public void Rulers_measure_100_mm_for_an_independent_reader(string name)
    {
        PageFlow flow = new(Paper.Find(name)!, "Trial", "a hand");
        flow.CheckRulers();
        flow.NewPage();
        flow.Paragraph("second page");
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        Assert.Equal(2, file.NumberOfPages);
        Assert.Equal(3, Rulers(file.GetPage(1)).Count); // one across, one up, one in the foot
        Assert.Single(Rulers(file.GetPage(2)));
        Assert.All(file.GetPages().SelectMany(Rulers), length => Assert.Equal(100.0, length, 0.002));
    }

    [Theory, MemberData(nameof(Papers))]
    public void Rulers_measure_100_mm_on_the_raster_of_another_program(string name)
    {
        PageFlow flow = new(Paper.Find(name)!, "Trial", "a hand");
        flow.Paragraph("x");
        const int dotsPerInch = 508; // 20 dots to the millimetre
        (double first, double last) = Raster.DarkSpan(flow.ToPdf(), dotsPerInch, fromFootMm: 9.7, fromLeftMm: 60);
        Assert.Equal(100.0, (last - first) / 20.0, 0.1); // the wanted exactness of printed rulers; a dot is 0.05 mm
    }

    [Fact]
    public void Nothing_is_set_outside_the_margins_and_nothing_over_the_foot()
    {
        PageFlow flow = Everything(Paper.A4);
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        const double mm = 72 / 25.4;
        Assert.True(file.NumberOfPages > 3);
        foreach (Letter letter in file.GetPages().SelectMany(p => p.Letters).Where(l => l.Value.Trim().Length > 0))
        {
            Assert.InRange(letter.BoundingBox.Left / mm, 14.9, 195.1);
            Assert.InRange(letter.BoundingBox.Right / mm, 14.9, 195.1);
            Assert.InRange(letter.BoundingBox.Bottom / mm, 8, 285);
            Assert.False(letter.StartBaseLine.Y / mm is > 19 and < 24);
        }
    }

    [Fact]
    public void A_long_table_repeats_its_head_and_keeps_every_row()
    {
        PageFlow flow = new(Paper.A4, "Trial", "");
        flow.Table([new("number", Right: true), new("word")], [.. Enumerable.Range(0, 120).Select(i => (IReadOnlyList<string>)[$"{i}", $"row{i}"])]);
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        string[] words = [.. file.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)];
        Assert.Equal(Enumerable.Range(0, 120).Select(i => $"row{i}"), words.Where(w => w.StartsWith("row", StringComparison.Ordinal)));
        Assert.Equal(file.NumberOfPages, words.Count(w => w == "number"));
        Assert.True(file.NumberOfPages > 1);
    }

    [Fact]
    public void The_last_row_of_a_table_never_stands_alone_on_a_page()
    {
        bool broke = false;
        for (int rows = 24; rows < 36; rows++)
        {
            PageFlow flow = new(Paper.Letter, "Trial", "");
            flow.Table([new("number", Right: true), new("word")], [.. Enumerable.Range(0, rows).Select(i => (IReadOnlyList<string>)[$"{i}", $"row{i}"])], pen: true);
            using PdfDocument file = PdfDocument.Open(flow.ToPdf());
            int last = file.GetPage(file.NumberOfPages).GetWords().Count(w => w.Text.StartsWith("row", StringComparison.Ordinal));
            Assert.True(last >= 2, $"{last} of {rows} rows on the last page");
            broke |= last == 2;
        }

        Assert.True(broke, "no table of these broke before its last two rows");
    }

    [Fact]
    public void A_drawing_at_full_size_keeps_its_size_turned_or_spread()
    {
        const double mm = 72 / 25.4;
        foreach ((double width, double height, int sheets) in ((double, double, int)[])[(150, 100, 1), (240, 120, 1), (400, 300, 4)])
        {
            var picture = new Picture(width, height, "t", "d");
            picture.Circle(new(width / 2, height / 2), 40, Pen.Thin);
            PageFlow flow = new(Paper.A4, "Trial", "");
            flow.AtFullSize(picture, "A circle.");
            using PdfDocument file = PdfDocument.Open(flow.ToPdf());
            Assert.Equal(sheets, file.NumberOfPages);
            Assert.All(
                file.GetPages().SelectMany(p => p.Paths).Select(p => p.GetBoundingRectangle()!.Value).Where(b => Math.Abs(b.Width - b.Height) < 0.01 && b.Width > 50 * mm),
                b => Assert.Equal(80, b.Width / mm, 0.003));
        }
    }

    [Fact]
    public void Neighbouring_sheets_of_a_spread_drawing_share_ten_millimetres()
    {
        const double mm = 72 / 25.4;
        var picture = new Picture(330, 100, "t", "d");
        picture.Circle(new(165, 50), 45, Pen.Thin);
        PageFlow flow = new(Paper.A4, "Trial", "");
        flow.AtFullSize(picture, "A circle.");
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        Assert.Equal(2, file.NumberOfPages);
        double[] left = [.. file.GetPages().Select(p => p.Paths.Select(q => q.GetBoundingRectangle()!.Value).First(b => Math.Abs(b.Width / mm - 90) < 0.01).Left / mm)];
        Assert.Equal(file.GetPage(1).Width / mm - 30 - 10, left[0] - left[1], 0.003);
    }

    [Fact]
    public void The_same_calls_give_the_same_bytes_and_a_finished_sheet_takes_no_more()
    {
        Assert.Equal(Everything(Paper.Letter).ToPdf(), Everything(Paper.Letter).ToPdf());
        PageFlow flow = Everything(Paper.A4);
        Assert.Equal(flow.ToPdf(), flow.ToPdf());
        Assert.Throws<InvalidOperationException>(() => flow.NewPage());
    }

    [Fact]
    public void A_row_with_a_cell_too_few_is_refused() =>
        Assert.Throws<ArgumentException>(() => new PageFlow(Paper.A4, "t", "").Table([new("a"), new("b")], [["1"]]));

    private static PageFlow Everything(Paper paper)
    {
        PageFlow flow = new(paper, "Trial", "a hand");
        string words = string.Join(' ', Enumerable.Repeat("words that go on and on", 30));
        flow.Title("A title", "and a line");
        flow.Heading("Heading");
        flow.Paragraph(words);
        flow.Bullets([words, "short"]);
        flow.Steps([words, "short"]);
        flow.TickList(["first", words]);
        flow.Caution([words, "short"]);
        flow.Subheading("Less");
        flow.Small(words);
        flow.Table([new("a"), new("b", Right: true), new("c")], [[words, "1", words], ["x", "2", "Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichenverleihungsurkunde"]]);
        flow.Table([new("try", 20), new("value")], [.. Enumerable.Range(0, 40).Select(i => (IReadOnlyList<string>)[$"{i}", ""])], pen: true);
        flow.Fields([.. Enumerable.Range(0, 9).Select(i => new FormField($"field {i}", "mm"))]);
        flow.WritingLines("Remarks", 4);
        flow.Signature("Tested by");
        var picture = new Picture(120, 60, "t", "d");
        picture.Circle(new(60, 30), 25, Pen.Thin);
        flow.AtFullSize(picture, "A circle.");
        flow.NotToScale(picture, "The same circle.", 40);
        flow.CheckRulers();
        return flow;
    }

    // A ruler is a straight line from which 101 strokes rise: found by its strokes, measured from the first to the last.
    private static List<double> Rulers(Page page)
    {
        const double mm = 72 / 25.4;
        var boxes = page.Paths.Select(p => p.GetBoundingRectangle()!.Value).ToArray();
        var lengths = new List<double>();
        foreach (var line in boxes.Where(b => Math.Max(b.Width, b.Height) is > 90 * mm and < 110 * mm && Math.Min(b.Width, b.Height) < 0.01))
        {
            bool lying = line.Width > line.Height;
            double[] strokes = [.. boxes.Where(b => lying
                    ? b.Width < 0.01 && Math.Abs(b.Bottom - line.Bottom) < 0.01 && b.Height is > 1 and < 4 * mm && b.Left > line.Left - 0.1 && b.Left < line.Right + 0.1
                    : b.Height < 0.01 && Math.Abs(b.Right - line.Right) < 0.01 && b.Width is > 1 and < 4 * mm && b.Bottom > line.Bottom - 0.1 && b.Bottom < line.Top + 0.1)
                .Select(b => (lying ? b.Left : b.Bottom) / mm).Order()];
            Assert.Equal(101, strokes.Length);
            lengths.Add(strokes[^1] - strokes[0]);
        }

        return lengths;
    }
}
