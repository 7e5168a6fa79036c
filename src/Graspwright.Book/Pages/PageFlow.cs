using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;
using Graspwright.Drawing.Pdf;

namespace Graspwright.Book.Pages;

/// <summary>Lays headings, text, tables, forms and drawings on pages, from top to bottom, at full size.</summary>
/// <remarks>
/// Every page has a foot with its number, the words that tell how to print it, and a ruler of 100 mm.
/// Whatever does not fit moves to the next page; tables break between rows and repeat their head.
/// </remarks>
public sealed partial class PageFlow
{
    private const double SideMm = 15;
    private const double TopMm = 14;
    private const double FootMm = 25;

    private readonly List<Picture> pages = [];
    private readonly string title;
    private readonly string subject;
    private Paper paper;
    private Picture page;
    private double y;
    private bool finished;

    /// <summary>Begins with an empty page.</summary>
    /// <param name="paper">Size of paper.</param>
    /// <param name="title">Title of the whole, in every page's foot and in the file.</param>
    /// <param name="subject">What it is about, such as the hand's name, in every page's foot.</param>
    public PageFlow(Paper paper, string title, string subject)
    {
        ArgumentNullException.ThrowIfNull(paper);
        (this.title, this.subject, this.paper) = (title, subject, paper);
        page = Begin(paper);
    }

    /// <summary>Width of the text [mm].</summary>
    public double WidthMm => paper.WidthMm - 2 * SideMm;

    /// <summary>Greatest height that fits on one page [mm].</summary>
    public double HeightMm => paper.HeightMm - TopMm - FootMm;

    /// <summary>Room left on the page [mm].</summary>
    public double LeftMm => y - FootMm;

    /// <summary>Leaves room.</summary>
    /// <param name="mm">How much [mm].</param>
    public void Space(double mm) => y = Math.Max(FootMm, y - mm);

    /// <summary>Moves to a new page unless a height fits on this one: keeps things together.</summary>
    /// <param name="heightMm">The height [mm].</param>
    public void Need(double heightMm)
    {
        if (heightMm > LeftMm && y < paper.HeightMm - TopMm)
        {
            NewPage();
        }
    }

    /// <summary>Begins a new page.</summary>
    /// <param name="on">Other paper from here on, such as the same one turned; the same where left out.</param>
    public void NewPage(Paper? on = null) => page = Begin(on ?? paper);

    /// <summary>The pages, with their feet. Nothing can be added afterwards.</summary>
    public IReadOnlyList<Picture> Pages()
    {
        if (!finished)
        {
            finished = true;
            if (pages.Count > 1 && pages[^1].Marks.Count == 0)
            {
                pages.RemoveAt(pages.Count - 1);
            }

            for (int i = 0; i < pages.Count; i++)
            {
                Foot(pages[i], i + 1);
            }
        }

        return pages;
    }

    /// <summary>The pages as a PDF file; the same pages give the same bytes.</summary>
    public byte[] ToPdf() => PdfWriter.Write(Pages(), subject.Length == 0 ? title : $"{title}: {subject}");

    private Picture Begin(Paper on)
    {
        if (finished)
        {
            throw new InvalidOperationException("The pages are finished; nothing can be added.");
        }

        if (pages.Count > 0 && pages[^1].Marks.Count == 0)
        {
            pages.RemoveAt(pages.Count - 1); // an empty page is not kept
        }

        paper = on;
        y = on.HeightMm - TopMm;
        string number = (pages.Count + 1).ToString(CultureInfo.InvariantCulture);
        var fresh = new Picture(on.WidthMm, on.HeightMm, $"{title}, page {number}", $"Page {number} of {title}").OnLayer("page");
        pages.Add(fresh);
        return fresh;
    }

    private void Foot(Picture on, int number)
    {
        double right = on.WidthMm - SideMm;
        on.OnLayer("foot");
        on.Line(new(SideMm, 21), new(right, 21), Pen.Hair);
        string count = string.Create(CultureInfo.InvariantCulture, $"page {number} of {pages.Count}");
        on.Text(new(right, 17.6), count, Type.Foot, Across.Right);
        string what = subject.Length == 0 ? title : $"{title} · {subject}";
        double room = right - SideMm - ShippedFont.WidthMm(count, Type.Foot) - 6;
        on.Text(new(SideMm, 17.6), ShippedFont.Wrap(what, room, Type.Foot)[0], Type.Foot);
        double zero = right - CheckRuler.LengthMm - 2;
        double words = zero - SideMm - 4;
        IReadOnlyList<string> lines = ShippedFont.Wrap("Print at 100 %, not “fit to page”. This ruler must measure 100 mm.", words, Type.Foot);
        for (int i = 0; i < lines.Count; i++)
        {
            on.Text(new(SideMm, 12.6 - Type.Room(i, Type.Foot)), lines[i], Type.Foot);
        }

        CheckRuler.Lying(on, new(zero, 9));
    }
}
