using System.Globalization;
using System.Text;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Fonts;

namespace Graspwright.Drawing.Pdf;

/// <summary>Writes pictures as a PDF file, one to a page, at full size. The same pictures give the same bytes, on every machine.</summary>
/// <remarks>
/// A page is as large as its picture, to a ten-thousandth of a point; a millimetre of the picture is a millimetre on paper
/// when the file is printed at 100 %, which the file asks the printing program for. Letters are those of the shipped font.
/// Nothing is compressed, and there is no date in the file.
/// </remarks>
/// <source key="pdf-1-7">ISO 32000-1.</source>
public static class PdfWriter
{
    /// <summary>The pages as a PDF file.</summary>
    /// <param name="pages">One picture for each page, at least one.</param>
    /// <param name="title">Title of the whole.</param>
    /// <param name="language">Language of the text, for programs that read aloud.</param>
    /// <exception cref="ArgumentException">There is no page.</exception>
    /// <exception cref="InvalidOperationException">A picture holds a coordinate that is not a finite number.</exception>
    public static byte[] Write(IReadOnlyList<Picture> pages, string title, string language = "en-GB")
    {
        ArgumentNullException.ThrowIfNull(pages);
        if (pages.Count == 0)
        {
            throw new ArgumentException("A PDF file needs a page.", nameof(pages));
        }

        FontSubset regular = new(ShippedFont.Regular, Letters(pages, strong: false)), bold = new(ShippedFont.Bold, Letters(pages, strong: true));
        var file = new PdfFile();
        int catalogue = file.Reserve(), tree = file.Reserve();
        int information = file.Add($"<< /Title {PdfFile.Words(title)} /Producer {PdfFile.Words("Graspwright")} >>");
        int upright = PdfFont.Add(file, regular), heavy = PdfFont.Add(file, bold);
        var numbers = new List<int>();
        foreach (Picture page in pages)
        {
            int content = file.AddStream(PdfPage.Write(page, regular, bold));
            numbers.Add(file.Add(string.Create(CultureInfo.InvariantCulture,
                $"<< /Type /Page /Parent {tree} 0 R /MediaBox [0 0 {Points(page.WidthMm)} {Points(page.HeightMm)}] /Resources << /Font << /F1 {upright} 0 R /F2 {heavy} 0 R >> >> /Contents {content} 0 R >>")));
        }

        file.Set(tree, string.Create(CultureInfo.InvariantCulture, $"<< /Type /Pages /Count {numbers.Count} /Kids [{string.Join(' ', numbers.Select(n => string.Create(CultureInfo.InvariantCulture, $"{n} 0 R")))}] >>"));
        file.Set(catalogue, string.Create(CultureInfo.InvariantCulture,
            $"<< /Type /Catalog /Pages {tree} 0 R /Lang {PdfFile.Words(language)} /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>"));
        return file.Bytes(catalogue, information);
    }

    /// <summary>Letters of the pictures that the shipped font lacks; each is printed as an empty box. Empty where all are there.</summary>
    /// <param name="pages">The pictures.</param>
    public static string Missing(IReadOnlyList<Picture> pages) =>
        string.Concat(((bool[])[false, true]).SelectMany(strong => Letters(pages, strong).Where(r => !ShippedFont.Of(strong).Has(r))).Distinct().Order().Select(r => r.ToString()));

    private static IEnumerable<Rune> Letters(IReadOnlyList<Picture> pages, bool strong) =>
        pages.SelectMany(p => p.Marks).OfType<TextMark>().Where(t => t.Strong == strong).SelectMany(t => t.Text.EnumerateRunes()).Distinct();

    private static string Points(double mm) => Math.Round(mm * PdfPage.PointsPerMm, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
