using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using UglyToad.PdfPig;

namespace Graspwright.Book.Tests.Cards;

public sealed class MouldCardsTests
{
    private static string Demo { get; } = File.ReadAllText(Path.Combine(Root(), "examples", "boatyard", "hand.toml"));

    public static TheoryData<string, string, string> Hands
    {
        get
        {
            TheoryData<string, string, string> all = [];
            foreach (Paper paper in Paper.All)
            {
                all.Add(paper.Name, "roll = \"22 s\"", "roll = \"22 s\"");
                all.Add(paper.Name, "roll = \"22 s\"", "roll = \"80 s\""); // several batches
                all.Add(paper.Name, "room = \"17 °C\"", "room = \"30 °C\""); // does not fit
                all.Add(paper.Name, "tub = \"300 ml\"", "tub = \"5 ml\"");
            }

            return all;
        }
    }

    [Theory, MemberData(nameof(Hands))]
    public void Each_card_is_one_page_with_its_cautions(string paperName, string old, string replacement)
    {
        Paper paper = Paper.Find(paperName)!;
        HandModel hand = HandFile.Parse(Demo.Replace(old, replacement, StringComparison.Ordinal), "hand.toml").Hand!;
        foreach (byte[] card in (byte[][])[MouldCards.Batch(LinerAnswer.Of(hand, "").Answer!, paper), MouldCards.Clock(ClockAnswer.Of(hand, "").Result!, paper), MouldCards.Copies(CopiesAnswer.Of(hand, "").Answer!, paper)])
        {
            using PdfDocument file = PdfDocument.Open(card);
            Assert.Equal(1, file.NumberOfPages);
            string words = string.Join(' ', file.GetPage(1).GetWords().Select(w => w.Text));
            Assert.Contains("Take care", words, StringComparison.Ordinal);
            Assert.Contains("licensed prosthetist", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_batch_card_says_what_to_weigh()
    {
        HandModel hand = HandFile.Parse(Demo, "hand.toml").Hand!;
        byte[] card = MouldCards.Batch(LinerAnswer.Of(hand, "").Answer!, Paper.A4);
        using PdfDocument file = PdfDocument.Open(card);
        Assert.Contains("Weigh 72 g of A and 72 g of B", string.Join(' ', file.GetPage(1).GetWords().Select(w => w.Text)), StringComparison.Ordinal);
        Assert.Equal(card, MouldCards.Batch(LinerAnswer.Of(hand, "").Answer!, Paper.A4)); // the same bytes every time
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Graspwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The solution's folder is not above the tests.");
    }
}
