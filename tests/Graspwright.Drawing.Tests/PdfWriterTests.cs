using System.Security.Cryptography;
using System.Text;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;
using Graspwright.Drawing.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace Graspwright.Drawing.Tests;

/// <summary>PDF as an independent reader (PdfPig) sees it.</summary>
public sealed class PdfWriterTests
{
    private const double PointsPerMm = 72 / 25.4;

    [Theory]
    [InlineData(210, 297)]
    [InlineData(215.9, 279.4)]
    public void A_page_is_as_large_as_its_picture(double width, double height)
    {
        using PdfDocument file = PdfDocument.Open(PdfWriter.Write([new Picture(width, height, "t", "d")], "t"));
        Page page = file.GetPage(1);
        Assert.Equal(width, page.Width / PointsPerMm, 1e-4);
        Assert.Equal(height, page.Height / PointsPerMm, 1e-4);
    }

    [Fact]
    public void Every_kind_of_mark_lies_where_it_was_put()
    {
        var picture = new Picture(100, 80, "t", "d");
        picture.Line(new(10, 20), new(60, 50), Pen.Thin);
        picture.Polyline([new(5, 5), new(15, 6), new(12, 9)], Pen.Main);
        picture.Outline([new(20, 5), new(30, 5), new(30, 15)], pen: null, Ink.Wash);
        picture.Circle(new(50, 40), 12.5, Pen.Hair, Ink.Paper);
        picture.Arc(new(80, 60), 10, Math.PI / 2, 2 * Math.PI, Pen.Hair);
        picture.Point(new(90, 10));
        PdfRectangle[] boxes = [.. Boxes(picture)];
        Assert.Equal(6, boxes.Length);
        Same((10, 20, 60, 50), boxes[0]);
        Same((5, 5, 15, 9), boxes[1]);
        Same((20, 5, 30, 15), boxes[2]);
        Same((37.5, 27.5, 62.5, 52.5), boxes[3]);
        Same((70, 50, 90, 70), boxes[4]); // three quarters of the way round from the top
        Same((89.6, 9.6, 90.4, 10.4), boxes[5]);
    }

    [Fact]
    public void An_arc_stays_on_its_circle()
    {
        var picture = new Picture(300, 300, "t", "d");
        picture.Arc(new(150, 150), 100, 0.3, 5.9, Pen.Hair);
        using PdfDocument file = PdfDocument.Open(PdfWriter.Write([picture], "t"));
        PdfSubpath.CubicBezierCurve[] curves = [.. file.GetPage(1).Paths.SelectMany(p => p).SelectMany(s => s.Commands).OfType<PdfSubpath.CubicBezierCurve>()];
        Assert.Equal(8, curves.Length);
        foreach (PdfSubpath.CubicBezierCurve c in curves)
        {
            for (double t = 0; t <= 1; t += 0.05)
            {
                double s = 1 - t;
                double x = s * s * s * c.StartPoint.X + 3 * s * s * t * c.FirstControlPoint.X + 3 * s * t * t * c.SecondControlPoint.X + t * t * t * c.EndPoint.X;
                double y = s * s * s * c.StartPoint.Y + 3 * s * s * t * c.FirstControlPoint.Y + 3 * s * t * t * c.SecondControlPoint.Y + t * t * t * c.EndPoint.Y;
                Assert.Equal(100, double.Hypot(x / PointsPerMm - 150, y / PointsPerMm - 150), 1.5e-3); // 5e-6 of the radius, and coordinates to 0.001 mm
            }
        }
    }

    [Fact]
    public void Text_reads_back_letter_by_letter_at_its_place_and_height()
    {
        const string all = "Grip 31.2 N·m ≤ 45° ± 0.1 → ½ × − µ Ωθφ é ß Ж ≥ ≈ “x”";
        var picture = new Picture(200, 100, "t", "d");
        picture.Text(new(20, 50), all, 5);
        picture.Text(new(180, 20), "HIH", 4, Across.Right, Level.Top, strong: true);
        using PdfDocument file = PdfDocument.Open(PdfWriter.Write([picture], "t"));
        Letter[] letters = [.. file.GetPage(1).Letters];
        Assert.Equal(all + "HIH", string.Concat(letters.Select(l => l.Value)));
        Assert.Equal(20, letters[0].StartBaseLine.X / PointsPerMm, 2e-3);
        Assert.Equal(50, letters[0].StartBaseLine.Y / PointsPerMm, 2e-3);
        Letter last = letters[^1];
        Assert.Equal(180, last.EndBaseLine.X / PointsPerMm, 2e-3);
        Assert.Equal(16, last.StartBaseLine.Y / PointsPerMm, 2e-3); // the top of the capitals is at 20
        Assert.Contains("Inter-Bold", last.FontName, StringComparison.Ordinal);
        double end = letters[all.EnumerateRunes().Count() - 1].EndBaseLine.X / PointsPerMm;
        Assert.Equal(20 + ShippedFont.WidthMm(all, 5), end, 0.02); // PDF gives widths to a thousandth of the font size each
    }

    [Fact]
    public void A_letter_that_the_font_lacks_is_named_and_printed_as_a_box()
    {
        var picture = new Picture(100, 50, "t", "d");
        picture.Text(new(10, 10), "漁船 boat", 4);
        Assert.Equal("漁船", PdfWriter.Missing([picture]));
        using PdfDocument file = PdfDocument.Open(PdfWriter.Write([picture], "漁船"));
        Assert.Equal("漁船", file.Information.Title);
        Assert.EndsWith(" boat", string.Concat(file.GetPage(1).Letters.Select(l => l.Value)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_pages_give_the_same_bytes_in_every_process_and_on_every_machine()
    {
        // The sum below was taken in another process; nothing that changes from run to run may enter the file.
        var picture = new Picture(210, 297, "t", "d");
        picture.Text(new(20, 50), "Äpfel 12.5 mm", 5, strong: true);
        picture.Circle(new(50, 40), 12.5, Pen.Hair, Ink.Wash);
        picture.Line(new(1.0 / 3, 2), new(4, Math.PI), Pen.Thin with { Dash = Dash.DashDot });
        byte[] bytes = PdfWriter.Write([picture, picture], "Two pages");
        Assert.Equal("cb96c7131797c7a797301ea823ac5e6fed038b87c55d67c6462027fe9ed41b5b", Convert.ToHexString(SHA256.HashData(bytes)).ToLowerInvariant());
    }

    [Fact]
    public void A_page_asks_to_be_printed_at_its_size_and_tells_its_language()
    {
        string text = Encoding.Latin1.GetString(PdfWriter.Write([new Picture(10, 10, "t", "d")], "t"));
        Assert.Contains("/PrintScaling /None", text, StringComparison.Ordinal);
        Assert.Contains("/Lang <FEFF0065006E002D00470042>", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Throws<ArgumentException>(() => PdfWriter.Write([], "t"));
        var picture = new Picture(10, 10, "t", "d");
        picture.Line(new(double.NaN, 0), new(1, 1), Pen.Thin);
        Assert.Throws<InvalidOperationException>(() => PdfWriter.Write([picture], "t"));
    }

    private static IEnumerable<PdfRectangle> Boxes(Picture picture)
    {
        using PdfDocument file = PdfDocument.Open(PdfWriter.Write([picture], "t"));
        return [.. file.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()!.Value)];
    }

    private static void Same((double Left, double Bottom, double Right, double Top) mm, PdfRectangle box)
    {
        const double near = 1.1e-3;
        Assert.Equal(mm.Left, box.Left / PointsPerMm, near);
        Assert.Equal(mm.Bottom, box.Bottom / PointsPerMm, near);
        Assert.Equal(mm.Right, box.Right / PointsPerMm, near);
        Assert.Equal(mm.Top, box.Top / PointsPerMm, near);
    }
}
