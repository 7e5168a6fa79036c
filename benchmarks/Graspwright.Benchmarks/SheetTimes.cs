using Graspwright.Book.Pages;
using Graspwright.Book.Sheets;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Pdf;
using Graspwright.Hand;

namespace Graspwright.Benchmarks;

/// <summary>Pages laid out and written as PDF.</summary>
internal static class SheetTimes
{
    private const double Seconds = 2;

    /// <summary>Measures laying out and writing apart.</summary>
    public static Section Measure()
    {
        HandModel hand = HandFile.Read(Path.Combine(Repository.Root, "examples", "boatyard", "hand.toml")).Hand ?? throw new InvalidOperationException("The demo hand does not read.");
        Timing sheet = Timing.Of(() => MeasuringSheet.Make(hand, Paper.A4).ToPdf(), Seconds);
        IReadOnlyList<Picture> pages = Long();
        Timing book = Timing.Of(() => PdfWriter.Write(pages, "A long book"), Seconds);
        byte[] bytes = PdfWriter.Write(pages, "A long book");
        return new("Pages as PDF", $"The measuring sheet of the boatyard hand ({MeasuringSheet.Make(hand, Paper.A4).Pages().Count} pages) laid out and written; and {pages.Count} pages of text and tables, already laid out, written ({bytes.Length / 1024} kB). Letters are cut out of the font each time.",
        [
            new("measuring sheet, best batch", $"{Row.Number(sheet.Best * 1e3)} ms"),
            new("measuring sheet, median batch", $"{Row.Number(sheet.Median * 1e3)} ms"),
            new("long book, best batch", $"{Row.Number(book.Best * 1e3)} ms"),
            new("long book, median batch", $"{Row.Number(book.Median * 1e3)} ms"),
        ]);
    }

    private static IReadOnlyList<Picture> Long()
    {
        var flow = new PageFlow(Paper.A4, "A long book", "");
        string words = string.Join(' ', Enumerable.Repeat("a line of words that says something of a hand", 12));
        for (int i = 0; i < 120; i++)
        {
            flow.Heading("A heading");
            flow.Paragraph(words);
            flow.Table([new("part"), new("number", Right: true), new("what it is")], [.. Enumerable.Range(0, 8).Select(k => (IReadOnlyList<string>)["pin", $"{k}", "a pin of hardened steel"])]);
        }

        return flow.Pages();
    }
}
