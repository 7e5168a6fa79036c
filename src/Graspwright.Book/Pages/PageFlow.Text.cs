using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Book.Pages;

public sealed partial class PageFlow
{
    /// <summary>The title at the head of the first page.</summary>
    /// <param name="text">The title.</param>
    /// <param name="under">A line below it; nothing where empty.</param>
    public void Title(string text, string under = "")
    {
        Lines(text, Type.Title, strong: true);
        if (under.Length > 0)
        {
            Space(1);
            Lines(under, Type.Body, ink: Ink.Pale);
        }

        Space(2.5);
    }

    /// <summary>A heading; it stays with what follows.</summary>
    /// <param name="text">The heading.</param>
    public void Heading(string text)
    {
        Need(30);
        Space(3);
        Lines(text, Type.Heading, strong: true);
        Space(1);
    }

    /// <summary>A lesser heading; it stays with what follows.</summary>
    /// <param name="text">The heading.</param>
    public void Subheading(string text)
    {
        Need(22);
        Space(1.5);
        Lines(text, Type.Subheading, strong: true);
        Space(0.5);
    }

    /// <summary>A paragraph, broken into lines.</summary>
    /// <param name="text">The text; its own line breaks are kept.</param>
    /// <param name="strong">Bold.</param>
    public void Paragraph(string text, bool strong = false)
    {
        Lines(text, Type.Body, strong);
        Space(1.6);
    }

    /// <summary>Small print.</summary>
    /// <param name="text">The text.</param>
    public void Small(string text)
    {
        Lines(text, Type.Small, ink: Ink.Pale);
        Space(1.4);
    }

    /// <summary>Points of a list.</summary>
    /// <param name="items">The points.</param>
    public void Bullets(IReadOnlyList<string> items) => Items(items, _ => "–", 5);

    /// <summary>Steps in their order, numbered.</summary>
    /// <param name="items">The steps.</param>
    public void Steps(IReadOnlyList<string> items) => Items(items, i => string.Create(CultureInfo.InvariantCulture, $"{i + 1}."), 7);

    /// <summary>Things to tick off with a pen.</summary>
    /// <param name="items">The things.</param>
    public void TickList(IReadOnlyList<string> items) => Items(items, null, 7);

    /// <summary>Cautions in a frame of their own, with a mark that does not need colour.</summary>
    /// <param name="lines">The cautions.</param>
    /// <param name="heading">Heading of the frame.</param>
    public void Caution(IReadOnlyList<string> lines, string heading = "Take care")
    {
        ArgumentNullException.ThrowIfNull(lines);
        const double inset = 13, edge = 3;
        double width = WidthMm - inset - edge;
        IReadOnlyList<string>[] broken = [.. lines.Select(l => ShippedFont.Wrap(l, width, Type.Body))];
        double height = 2 * edge + Type.Room(1, Type.Subheading) + broken.Sum(b => Type.Room(b.Count, Type.Body) + 1);
        Need(Math.Min(height + 2, HeightMm));
        Space(2);
        double top = y, left = SideMm, right = SideMm + WidthMm;
        page.Outline([new(left, top), new(right, top), new(right, top - height), new(left, top - height)], Pen.Main);
        Place middle = new(left + 6.5, top - 7);
        page.Outline([middle.Moved(0, 4), middle.Moved(4.4, -3.4), middle.Moved(-4.4, -3.4)], Pen.Main);
        page.Text(middle.Moved(0, -2.6), "!", 4, Across.Middle, Level.Baseline, strong: true);
        y = top - edge;
        Line(heading, Type.Subheading, strong: true, left + inset);
        foreach (IReadOnlyList<string> caution in broken)
        {
            foreach (string line in caution)
            {
                Line(line, Type.Body, strong: false, left + inset);
            }

            y -= 1;
        }

        y = top - height - 3;
    }

    private void Items(IReadOnlyList<string> items, Func<int, string>? mark, double inset)
    {
        ArgumentNullException.ThrowIfNull(items);
        for (int i = 0; i < items.Count; i++)
        {
            IReadOnlyList<string> lines = ShippedFont.Wrap(items[i], WidthMm - inset, Type.Body);
            Need(Math.Min(Type.Room(lines.Count, Type.Body), HeightMm));
            double foot = y - Type.Room(1, Type.Body);
            if (mark is null)
            {
                const double box = 3;
                Place corner = new(SideMm + 0.3, foot - 0.4);
                page.Outline([corner, corner.Moved(box, 0), corner.Moved(box, box), corner.Moved(0, box)], Pen.Thin);
            }
            else
            {
                page.Text(new(SideMm, foot), mark(i), Type.Body);
            }

            foreach (string line in lines)
            {
                Line(line, Type.Body, strong: false, SideMm + inset);
            }

            Space(1.2);
        }
    }

    private void Lines(string text, double heightMm, bool strong = false, Ink ink = Ink.Ink)
    {
        foreach (string line in ShippedFont.Wrap(text, WidthMm, heightMm, strong))
        {
            Line(line, heightMm, strong, SideMm, ink);
        }
    }

    // One line; what lies above it must have made sure that the block fits, or the line moves on alone.
    private void Line(string text, double heightMm, bool strong, double left, Ink ink = Ink.Ink)
    {
        Need(Type.Room(1, heightMm));
        y -= Type.Room(1, heightMm);
        page.Text(new(left, y), text, heightMm, Across.Left, Level.Baseline, ink, strong);
    }
}
