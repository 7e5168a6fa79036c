using System.Diagnostics;
using System.Text;

namespace Graspwright.Book.Tests.Pages;

/// <summary>Pages as the program pdftoppm paints them.</summary>
internal static class Raster
{
    private const string Painter = "/usr/bin/pdftoppm";

    /// <summary>Middles of the first and the last dark stroke that one row of the first page crosses [dots].</summary>
    /// <param name="pdf">The file.</param>
    /// <param name="dotsPerInch">Dots to the inch.</param>
    /// <param name="fromFootMm">Height of the row above the foot of the page [mm].</param>
    /// <param name="fromLeftMm">Dots further left are not looked at [mm].</param>
    public static (double First, double Last) DarkSpan(byte[] pdf, int dotsPerInch, double fromFootMm, double fromLeftMm)
    {
        Assert.SkipUnless(File.Exists(Painter), "pdftoppm is not here; it is in the system package poppler-utils.");
        string folder = Directory.CreateTempSubdirectory("pages").FullName;
        try
        {
            string file = Path.Combine(folder, "a.pdf");
            File.WriteAllBytes(file, pdf);
            using Process process = Process.Start(new ProcessStartInfo(Painter, ["-gray", "-r", $"{dotsPerInch}", "-f", "1", "-l", "1", "-singlefile", file, Path.Combine(folder, "a")]) { UseShellExecute = false })!;
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return Span(File.ReadAllBytes(Path.Combine(folder, "a.pgm")), dotsPerInch / 25.4, fromFootMm, fromLeftMm);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (double First, double Last) Span(byte[] image, double dotsPerMm, double fromFootMm, double fromLeftMm)
    {
        // P5, width, height, 255, one white space, then the dots.
        int at = 0;
        string[] head = new string[4];
        for (int i = 0; i < head.Length; i++)
        {
            int end = Array.FindIndex(image, at, b => b is (byte)' ' or (byte)'\n');
            head[i] = Encoding.ASCII.GetString(image, at, end - at);
            at = end + 1;
        }

        Assert.Equal("P5", head[0]);
        int width = int.Parse(head[1], System.Globalization.CultureInfo.InvariantCulture), height = int.Parse(head[2], System.Globalization.CultureInfo.InvariantCulture);
        int row = height - 1 - (int)Math.Round(fromFootMm * dotsPerMm);
        int[] dark = [.. Enumerable.Range(0, width).Where(x => x >= fromLeftMm * dotsPerMm && image[at + row * width + x] < 128)];
        int first = 0, last = dark.Length - 1;
        while (dark[first + 1] == dark[first] + 1)
        {
            first++;
        }

        while (dark[last - 1] == dark[last] - 1)
        {
            last--;
        }

        return ((dark[0] + dark[first]) / 2.0, (dark[last] + dark[^1]) / 2.0);
    }
}
