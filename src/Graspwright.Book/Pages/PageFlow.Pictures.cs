using System.Globalization;
using Graspwright.Drawing.Display;

namespace Graspwright.Book.Pages;

public sealed partial class PageFlow
{
    private const double CaptionMm = 7;

    /// <summary>A drawing at full size, 1 : 1. One that is larger than a page is spread over several, to be glued together.</summary>
    /// <param name="picture">The drawing.</param>
    /// <param name="caption">What it shows.</param>
    public void AtFullSize(Picture picture, string caption)
    {
        ArgumentNullException.ThrowIfNull(picture);
        Paper before = paper;
        bool Fits(Paper on) => picture.WidthMm <= on.WidthMm - 2 * SideMm && picture.HeightMm + CaptionMm <= on.HeightMm - TopMm - FootMm;
        if (!Fits(paper) && Fits(paper.Turned))
        {
            NewPage(paper.Turned);
        }

        if (!Fits(paper))
        {
            Tiles(picture, caption);
            NewPage(before);
            return;
        }

        Need(picture.HeightMm + CaptionMm);
        page.Insert(picture, SideMm + (WidthMm - picture.WidthMm) / 2, y - picture.HeightMm);
        page.OnLayer("page");
        y -= picture.HeightMm;
        Caption($"{caption} Full size, 1 : 1.");
        if (paper != before)
        {
            NewPage(before);
        }
    }

    /// <summary>A picture made smaller, or larger, to fit the width of the text and a height. It is not for measuring, and says so.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="highestMm">Greatest height [mm].</param>
    public void NotToScale(Picture picture, string caption, double highestMm)
    {
        ArgumentNullException.ThrowIfNull(picture);
        double height = Math.Min(highestMm, HeightMm - CaptionMm);
        double scale = Math.Min(WidthMm / picture.WidthMm, height / picture.HeightMm);
        Need(picture.HeightMm * scale + CaptionMm);
        page.Insert(picture, SideMm + (WidthMm - picture.WidthMm * scale) / 2, y - picture.HeightMm * scale, scale);
        page.OnLayer("page");
        y -= picture.HeightMm * scale;
        Caption($"{caption} Not to scale.");
    }

    /// <summary>Two rulers, across and up, to check the printer before anything is cut by a drawing.</summary>
    public void CheckRulers()
    {
        const double height = CheckRuler.LengthMm + 6;
        Need(height);
        double foot = y - height + 3;
        CheckRuler.Standing(page, new(SideMm + 8, foot));
        CheckRuler.Lying(page, new(SideMm + 20, foot));
        page.Text(new(SideMm + 20, foot + 14), "Measure both rulers. Each must be 100 mm long, to within 0.5 mm;", Type.Body);
        page.Text(new(SideMm + 20, foot + 9.5), "if one is not, set the printer to 100 % and print again before you cut.", Type.Body);
        y -= height + 2;
    }

    private void Caption(string text)
    {
        Space(1);
        Lines(text, Type.Small, ink: Ink.Pale);
        Space(2);
    }

    // The whole drawing is laid on every sheet, moved, and what lies outside the frame is covered with bare paper.
    private void Tiles(Picture picture, string caption)
    {
        const double overlap = 10, head = 12;
        Paper on = Sheets(paper.Turned) < Sheets(paper) ? paper.Turned : paper;
        double width = Room(on).Width, height = Room(on).Height;
        int across = Count(picture.WidthMm, width), down = Count(picture.HeightMm, height);
        for (int row = 0; row < down; row++)
        {
            for (int column = 0; column < across; column++)
            {
                NewPage(on);
                double top = y - head, foot = top - height, left = SideMm, right = SideMm + width;
                page.Insert(picture, left - column * (width - overlap), top - picture.HeightMm + row * (height - overlap));
                page.OnLayer("page");
                Cover(0, 0, paper.WidthMm, foot);
                Cover(0, top, paper.WidthMm, paper.HeightMm);
                Cover(0, foot, left, top);
                Cover(right, foot, paper.WidthMm, top);
                page.Outline([new(left, foot), new(right, foot), new(right, top), new(left, top)], Pen.Hair with { Dash = Dash.Dashed });
                string place = string.Create(CultureInfo.InvariantCulture, $"sheet {row * across + column + 1} of {across * down}: row {row + 1}, column {column + 1}");
                Line($"{caption} Full size, 1 : 1; {place}.", Type.Small, strong: true, SideMm);
                Line("Cut one of two neighbours along its frame and lay it on the other: neighbours share 10 mm.", Type.Small, strong: false, SideMm);
                y = FootMm;
            }
        }

        int Sheets(Paper p) => Count(picture.WidthMm, Room(p).Width) * Count(picture.HeightMm, Room(p).Height);
        static (double Width, double Height) Room(Paper p) => (p.WidthMm - 2 * SideMm, p.HeightMm - TopMm - FootMm - head);
        static int Count(double size, double area) => size <= area ? 1 : 1 + (int)Math.Ceiling((size - area) / (area - overlap) - 1e-9);
        void Cover(double x0, double y0, double x1, double y1) => page.Outline([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], pen: null, Ink.Paper);
    }
}
