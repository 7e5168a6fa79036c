using Graspwright.Book.Pages;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Bench;
using Graspwright.Workshop.Cards;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Measuring;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Spares;
using Graspwright.Workshop.Views;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Graspwright.Book.Tests.Sheets;

/// <summary>Every sheet of the boatyard hand, as an independent reader sees it.</summary>
public sealed class SheetTests
{
    private const double Mm = 72 / 25.4;
    private static readonly HandModel Hand = Boatyard();
    private static readonly JobsResult Jobs = Jobbing.Answer(new(Hand));
    private static readonly IReadOnlyList<CardGrip> Card = GripCard.Make(Hand, "hand.toml").Grips;
    private static readonly SparesResult Spares = SparesAnswer.Of(Hand, LogReader.Read($"{LogReader.Header}\npin,index mcp,,,2026-01-01,,2026-01-21,broke,\npin,index mcp,,,2026-01-21,,2026-02-20,broke,\npin,little mcp,,,2026-01-01,,2026-02-15,broke,\npin,index mcp,,,2026-02-20,2026-03-01,,,\nliner,,,,2026-01-01,2026-03-01,,,\n", "log.csv", Hand));
    private static readonly IReadOnlyList<ViceTest> Tests = Proving.Make(Hand, "hand.toml").Tests;

    // A plan without runs: the sheet does not care where the readings come from.
    private static readonly BenchReading[] Readings = [.. Enumerable.Range(0, 16).Select(i => new BenchReading("mug", i % 2 == 1, 2 * i, "wrist moment", "N·m", 1.5, 0.03, [1, 0]))];
    private static readonly BenchParameter[] Parameters = [new("pin friction", "friction at the pins", null), new("cuff give", "stiffness of the cuff", null)];

    public static TheoryData<string, string> Every => [.. from paper in Paper.All from sheet in Sheets.Keys select (paper.Name, sheet)];

    private static readonly Dictionary<string, Func<Paper, PageFlow>> Sheets = new(StringComparer.Ordinal)
    {
        ["measuring"] = paper => MeasuringSheet.Make(Hand, paper),
        ["jobs"] = paper => JobSheet.Make(Hand, Jobs, paper),
        ["card"] = paper => GripCardSheet.Make(Hand, Card, paper),
        ["bench"] = paper => BenchSheet.Make(Hand, DesignOfReadings.Plan(Readings, 2), Parameters, paper),
        ["holes"] = paper => HoleSheet.Make(Hand, paper),
        ["proof"] = paper => ProofSheet.Make(Hand, Tests, paper),
        ["drawer"] = paper => DrawerSheet.Make(Hand, Spares, paper),
    };

    [Theory, MemberData(nameof(Every))]
    public void Every_page_is_on_its_paper_with_all_letters_inside_and_a_ruler_of_100_mm(string paperName, string sheet)
    {
        Paper paper = Paper.Find(paperName)!;
        PageFlow flow = Sheets[sheet](paper);
        Assert.Empty(Drawing.Pdf.PdfWriter.Missing(flow.Pages()));
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        foreach (Page page in file.GetPages())
        {
            Assert.Equal(paper.WidthMm, page.Width / Mm, 1e-4);
            Assert.Equal(paper.HeightMm, page.Height / Mm, 1e-4);
            Assert.All(page.Letters.Where(l => l.Value.Trim().Length > 0), l =>
            {
                Assert.InRange(l.BoundingBox.Left / Mm, 14.5, paper.WidthMm - 14.5);
                Assert.InRange(l.BoundingBox.Right / Mm, 14.5, paper.WidthMm - 14.5);
            });
            Assert.Contains(page.Paths.Select(p => p.GetBoundingRectangle()!.Value), b => Math.Abs(b.Width / Mm - 100) < 0.002 && b.Height < 0.01 && Math.Abs(b.Bottom / Mm - 9) < 0.01);
            string text = string.Join(' ', page.GetWords().Select(w => w.Text));
            Assert.Contains("Print at 100 %", text, StringComparison.Ordinal);
            Assert.Contains($"page {page.Number} of {file.NumberOfPages}", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_measuring_sheet_has_room_for_every_reading_of_its_csv()
    {
        string text = Text(MeasuringSheet.Make(Hand, Paper.A4));
        foreach (double angle in Protocol.Angles(Hand))
        {
            Assert.Contains(angle.ToString("0", System.Globalization.CultureInfo.InvariantCulture).Replace('-', '−'), text, StringComparison.Ordinal);
        }

        Assert.All([.. Protocol.Girths, .. Protocol.ThumbPostures(Hand), .. Hand.Fingers.Select(f => f.Name)], words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.Contains("see a clinician", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Holes_are_printed_at_full_size()
    {
        using PdfDocument file = PdfDocument.Open(HoleSheet.Make(Hand, Paper.A4).ToPdf());
        HolePiece plate = HoleDrawing.Pieces(Hand)[0];
        Hole fulcrum = plate.Holes.Single(h => h.Name == "fulcrum"), wrist = plate.Holes[0];
        (double X, double Y, double Size)[] circles =
        [
            .. file.GetPages().SelectMany(p => p.Paths).Select(p => p.GetBoundingRectangle()!.Value).Where(b => Math.Abs(b.Width - b.Height) < 0.005 && b.Width / Mm is > 1 and < 10)
                .Select(b => ((b.Left + b.Right) / 2 / Mm, (b.Bottom + b.Top) / 2 / Mm, b.Width / Mm)),
        ];
        Assert.Equal(6, circles[0].Size, 0.003);
        Assert.Equal((fulcrum.XMm - wrist.XMm, fulcrum.YMm - wrist.YMm), (Math.Round(circles[1].X - circles[0].X, 2), Math.Round(circles[1].Y - circles[0].Y, 2)));
    }

    [Fact]
    public void The_proof_list_has_a_line_for_each_cycle_and_places_to_sign()
    {
        string text = Text(ProofSheet.Make(Hand, Tests, Paper.A4));
        Assert.All(Tests, t => Assert.Contains(t.Name, text, StringComparison.Ordinal));
        Assert.Contains("cycle 1 2 3 4 5 6 7 8 9 10", text, StringComparison.Ordinal);
        Assert.Equal(3, text.Split("signed").Length - 1);
        Assert.All((string[])["Tested by", "Responsible", "Wearer"], who => Assert.Contains(who, text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_job_list_says_of_every_job_what_it_spares()
    {
        string text = Text(JobSheet.Make(Hand, Jobs, Paper.A4));
        Assert.Contains("jobs work", text, StringComparison.Ordinal);
        Assert.All(Hand.Jobs, j => Assert.Contains(j.Name, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_grip_that_the_hand_lacks_is_on_its_card_as_lacking() =>
        Assert.Contains("Point: not on this hand", Text(GripCardSheet.Make(Hand, [new(new(GripKind.Point, null, null, "no lock pattern holds the index straight"))], Paper.A4)), StringComparison.Ordinal);

    private static string Text(PageFlow flow)
    {
        using PdfDocument file = PdfDocument.Open(flow.ToPdf());
        return string.Join(' ', file.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static HandModel Boatyard()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return HandFile.Read(Path.Combine(folder!.FullName, "examples", "boatyard", "hand.toml")).Hand!;
    }
}
