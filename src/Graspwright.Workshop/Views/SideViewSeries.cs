using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Side views at up to four wrist angles on one A4 sheet, all at one scale.</summary>
public static class SideViewSeries
{
    private const double Margin = 12, Gap = 6;

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
        double cell = (width - 2 * Margin - Gap) / 2;
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
        double room = (y - 4 - Margin - 14) / 2 - 42;
        var fit = new ViewFrame(extent, cell, room, default);
        double arrows = ObjectMarks.ArrowScale(rows.Max(r => ObjectMarks.Greatest(run.Layout, r)), 11);
        double top = y;
        for (int i = 0; i < rows.Count; i++)
        {
            double left = Margin + i % 2 * (cell + Gap), cellTop = top - i / 2 * (fit.HeightMm + 46);
            Cell(picture, drive, held, run.Layout, rows[i], palm, fit, arrows, new(left, cellTop), cell);
        }

        double below = top - (rows.Count + 1) / 2 * (fit.HeightMm + 46);
        SideView.Foot(picture, new ViewFrame(fit, cell, default), arrows, new(Margin, Math.Max(below - 2, Margin)));
        return picture;
    }

    private static void Cell(Picture picture, DriveModel drive, HeldObject held, TraceLayout layout, double[] row, PalmLine? palm, ViewFrame fit, double arrows, Place topLeft, double width)
    {
        picture.OnLayer("figures");
        string rest = string.Create(CultureInfo.InvariantCulture, $"{row[TraceLayout.Tau]:0.00} N·m    {row[TraceLayout.Grip]:0.0} N");
        picture.Line(topLeft, topLeft.Moved(width, 0), Pen.Hair);
        picture.Text(topLeft.Moved(0, -6), SideView.Degrees(row[TraceLayout.Theta]), 3.4, strong: true);
        picture.Text(topLeft.Moved(18, -6), rest, 2.6);
        picture.Text(topLeft.Moved(18, -9.6), "moment, grip", 1.8, ink: Ink.Pale);
        BarGlyphs.Draw(picture, drive, row, topLeft.Moved(width, -13), 9);
        var frame = new ViewFrame(fit, width, topLeft.Moved(0, -31 - fit.HeightMm));
        SideView.State(picture, frame, drive, held, layout, row, palm, arrows, names: false);
        picture.OnLayer("caption");
        double y = -34 - fit.HeightMm - 1.8;
        foreach (string line in Lettering.Wrap(StopWords.Sentence(drive, layout, row), width, 1.8).Take(3))
        {
            picture.Text(topLeft.Moved(0, y), line, 1.8);
            y -= 3.2;
        }
    }
}
