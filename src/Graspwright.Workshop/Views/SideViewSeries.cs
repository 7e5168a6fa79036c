using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Side views at up to four wrist angles on one A4 sheet, all at one scale.</summary>
public static class SideViewSeries
{
    private const double Margin = 12, Gap = 3, WordsMm = 64;

    /// <summary>The sheet.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="held">What it holds.</param>
    /// <param name="run">The run.</param>
    /// <param name="rows">One to four recorded states.</param>
    /// <param name="sentence">What the sheet says, above it.</param>
    /// <param name="palm">Palm line; <see langword="null"/> = not drawn.</param>
    /// <exception cref="ArgumentException">Not one to four states.</exception>
    public static Picture Draw(DriveModel drive, HeldObject held, RunResult run, IReadOnlyList<double[]> rows, string sentence, PalmLine? palm = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count is < 1 or > 4)
        {
            throw new ArgumentException("A sheet shows one to four states.", nameof(rows));
        }

        const double width = Picture.A4WidthMm, height = Picture.A4HeightMm;
        IReadOnlyList<string> head = Lettering.Wrap(sentence, width - 2 * Margin, 2.9);
        string angles = string.Join(", ", rows.Select(r => SideView.Degrees(r[TraceLayout.Theta])));
        var picture = new Picture(width, height, "Side views at " + angles, sentence + " Side views of the mechanism at wrist angles " + angles + ".");
        double y = height - Margin - 2.9;
        picture.OnLayer("sentence");
        foreach (string line in head)
        {
            picture.Text(new(Margin, y), line, 2.9);
            y -= 5.6;
        }

        Extent extent = Extent.Of(drive, held, rows.Select(r => new Posture(drive, run.Layout, r)));
        double step = (y - Margin - 22) / Math.Max(rows.Count, 2);
        var fit = new ViewFrame(extent, width - 2 * Margin - WordsMm - Gap, step - 2 * Gap, default);
        step = Math.Min(step, Math.Max(fit.HeightMm, 46) + 2 * Gap);
        double greatest = rows.Max(r => ObjectMarks.Greatest(run.Layout, r)), arrows = ObjectMarks.ArrowScale(greatest, ObjectMarks.LongestMm(held, fit, 14));
        for (int i = 0; i < rows.Count; i++)
        {
            State(picture, drive, held, run.Layout, rows[i], palm, fit, arrows, new(Margin, y - i * step), step);
        }

        Place foot = new(Margin, y - rows.Count * step - 8);
        SideView.Foot(picture, fit, greatest > 0 ? arrows : null, foot);
        Legend(picture, run.Layout, foot.Moved(0, -7));
        return picture;
    }

    private static void State(Picture picture, DriveModel drive, HeldObject held, TraceLayout layout, double[] row, PalmLine? palm, ViewFrame fit, double arrows, Place topLeft, double height)
    {
        picture.OnLayer("figures");
        picture.Line(topLeft, topLeft.Moved(Picture.A4WidthMm - 2 * Margin, 0), Pen.Hair);
        (string Figure, string Name)[] figures = [(SideView.Degrees(row[TraceLayout.Theta]), "wrist"), (Number(row[TraceLayout.Tau], "0.00") + " N·m", "moment"), (Number(row[TraceLayout.Grip], "0.0") + " N", "grip")];
        double[] columns = [0, 18, 44];
        for (int i = 0; i < 3; i++)
        {
            picture.Text(topLeft.Moved(columns[i], -6.5), figures[i].Figure, 2.9, strong: true);
            picture.Text(topLeft.Moved(columns[i], -10), figures[i].Name, 1.8, ink: Ink.Pale);
        }

        int bars = layout.BarNames.Count;
        double barStep = bars == 0 ? 0 : Math.Min(WordsMm / bars, 21);
        BarGlyphs.Draw(picture, drive, row, topLeft.Moved(barStep * bars, -14), 10, barStep);
        picture.OnLayer("caption");
        double y = bars == 0 ? -16 : -37;
        foreach (string line in Lettering.Wrap(StopWords.Sentence(drive, layout, row), WordsMm, 1.8))
        {
            picture.Text(topLeft.Moved(0, y), line, 1.8);
            y -= 3.4;
        }

        var frame = new ViewFrame(fit, Picture.A4WidthMm - 2 * Margin - WordsMm - Gap, topLeft.Moved(WordsMm + Gap, -Gap - (height - 2 * Gap + fit.HeightMm) / 2));
        SideView.State(picture, frame, drive, held, layout, row, palm, arrows, names: false);
    }

    /// <summary>Which dash is which finger; the nearest is drawn with its thickness.</summary>
    private static void Legend(Picture picture, TraceLayout layout, Place at)
    {
        picture.OnLayer("legend");
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            string name = f == 0 ? layout.FingerNames[f] + " (outline)" : layout.FingerNames[f];
            picture.Line(at, at.Moved(9, 0), new Pen(0.3, Ink.Ink, FingerMarks.DashOf(f)));
            picture.Text(at.Moved(10.2, 0), name, 1.8, level: Level.Middle);
            at = at.Moved(16 + Lettering.WidthMm(name, 1.8), 0);
        }
    }

    // A number that rounds to nothing carries no sign; the sign is the true minus.
    private static string Number(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? text.TrimStart('-') : text.Replace('-', '\u2212');
    }
}
