using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>The mechanism from the thumb's side, to scale, in a recorded state of a closing run.</summary>
/// <remarks>Everything is drawn from the run's own numbers. Finger pulls and the sizes of bodies are not part of the model and are not drawn.</remarks>
public static class SideView
{
    private const double Margin = 5, Text = 2.1, Step = 4.2, BarHeight = 13, LeftNames = 14, RightNames = 32;

    /// <summary>One state on a picture as wide as an A4 sheet between its margins (180 mm).</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="held">What it holds.</param>
    /// <param name="run">The run.</param>
    /// <param name="row">A row of <see cref="RunResult.Closing"/> or <see cref="RunResult.Opening"/>.</param>
    /// <param name="sentence">What the picture says, above it.</param>
    /// <param name="palm">Palm line; <see langword="null"/> = not drawn.</param>
    public static Picture Draw(DriveModel drive, HeldObject held, RunResult run, double[] row, string sentence, PalmLine? palm = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(row);
        const double width = 180;
        var posture = new Posture(drive, run.Layout, row);
        Extent extent = Extent.Of(drive, held, [posture]);
        var fit = new ViewFrame(extent, width - 2 * Margin - LeftNames - RightNames, 170, default);
        IReadOnlyList<string> head = Lettering.Wrap(sentence, width - 2 * Margin, 2.9);
        IReadOnlyList<string> caption = Caption(drive, run.Layout, row, width - 2 * Margin);
        double foot = Margin + caption.Count * Step + 15, headHeight = head.Count * 5.6, band = BarHeight + 12;
        var picture = new Picture(width, Margin + headHeight + band + fit.HeightMm + 6 + foot, "Side view at " + Degrees(row[TraceLayout.Theta]), sentence + " " + string.Join(' ', caption));
        double y = picture.HeightMm - Margin - 2.9;
        picture.OnLayer("sentence");
        foreach (string line in head)
        {
            picture.Text(new(Margin, y), line, 2.9);
            y -= 5.6;
        }

        double bandTop = picture.HeightMm - Margin - headHeight;
        Figures(picture, row, new(Margin, bandTop - 8));
        BarGlyphs.Draw(picture, drive, row, new(width - Margin, bandTop - 3), BarHeight, 24);
        var frame = new ViewFrame(fit, width - 2 * Margin - LeftNames - RightNames, new(Margin + LeftNames, foot));
        double greatest = ObjectMarks.Greatest(run.Layout, row), arrows = ObjectMarks.ArrowScale(greatest, ObjectMarks.LongestMm(held, frame, 16));
        State(picture, frame, drive, held, run.Layout, row, palm, arrows, names: true);
        Foot(picture, frame, greatest > 0 ? arrows : null, new(Margin, foot - 8));
        y = foot - 15 - Text;
        picture.OnLayer("caption");
        foreach (string line in caption)
        {
            picture.Text(new(Margin, y), line, Text);
            y -= Step;
        }

        return picture;
    }

    /// <summary>The recorded state of closing nearest a wrist angle.</summary>
    /// <param name="run">The run.</param>
    /// <param name="thetaRadians">Wrist angle [rad].</param>
    public static double[] Nearest(RunResult run, double thetaRadians)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.Closing.MinBy(r => Math.Abs(r[TraceLayout.Theta] - thetaRadians))
            ?? throw new ArgumentException("The run holds no recorded state.", nameof(run));
    }

    internal static void State(Picture picture, ViewFrame frame, DriveModel drive, HeldObject held, TraceLayout layout, double[] row, PalmLine? palm, double newtonsPerMm, bool names)
    {
        var posture = new Posture(drive, layout, row);
        ObjectMarks.Object(picture, frame, held);
        if (palm is not null)
        {
            ObjectMarks.Palm(picture, frame, palm, drive.Fingers.Max(f => f.Mcp.X) - palm.Point.X, names);
        }

        FingerMarks.Draw(picture, frame, drive, layout, posture, row, names);
        MechanismMarks.Draw(picture, frame, drive, posture, row, names);
        double fingersLeft = posture.Fingers.Select((f, i) => f.Min(p => frame.At(p).X) - frame.Mm(i == 0 ? drive.Fingers[0].HalfThickness.Third : 0)).Min();
        ObjectMarks.Forces(picture, frame, held, layout, row, newtonsPerMm, fingersLeft);
    }

    /// <summary>Scale bar, frame axes and the scales in words.</summary>
    internal static void Foot(Picture picture, ViewFrame frame, double? newtonsPerMm, Place at)
    {
        picture.OnLayer("scale");
        Place origin = at.Moved(1, -1.5);
        picture.Arrow(origin, origin.Moved(9, 0), Pen.Thin, 1.8);
        picture.Arrow(origin, origin.Moved(0, 7), Pen.Thin, 1.8);
        picture.Text(origin.Moved(10, 0), "x distal", 1.9, level: Level.Middle);
        picture.Text(origin.Moved(1.6, 6), "y dorsal", 1.9, level: Level.Middle);
        Place start = at.Moved(34, -1.5);
        double ten = frame.Mm(0.010);
        for (int i = 0; i < 5; i++)
        {
            picture.Outline([start.Moved(i * ten, 0), start.Moved((i + 1) * ten, 0), start.Moved((i + 1) * ten, 1.4), start.Moved(i * ten, 1.4)], Pen.Hair, i % 2 == 0 ? Ink.Ink : Ink.Paper);
        }

        picture.Text(start.Moved(0, 2.4), "0", 1.9, Across.Middle);
        picture.Text(start.Moved(5 * ten, 2.4), "50 mm", 1.9, Across.Middle);
        string words = newtonsPerMm is { } n ? string.Create(CultureInfo.InvariantCulture, $"Scale {frame.Scale}. Arrows: {n:0.##} N per mm, forces on the object in N.") : $"Scale {frame.Scale}. No contact force.";
        picture.Text(start.Moved(5 * ten + 10, 0), words, 1.9);
    }

    private static void Figures(Picture picture, double[] row, Place at)
    {
        picture.OnLayer("figures");
        (string Figure, string Name)[] figures =
        [
            (Degrees(row[TraceLayout.Theta]), "wrist angle θ"),
            (row[TraceLayout.Tau].ToString("0.00", CultureInfo.InvariantCulture) + " N·m", "wrist moment τ"),
            (row[TraceLayout.Grip].ToString("0.0", CultureInfo.InvariantCulture) + " N", "grip force"),
        ];
        for (int i = 0; i < figures.Length; i++)
        {
            picture.Text(at.Moved(i * 36, 0), figures[i].Figure, 3.8, strong: true);
            picture.Text(at.Moved(i * 36, -4.6), figures[i].Name, 1.9, ink: Ink.Pale);
        }
    }

    private static IReadOnlyList<string> Caption(DriveModel drive, TraceLayout layout, double[] row, double width)
    {
        string state = string.Create(CultureInfo.InvariantCulture, $"Effort share {100 * row[TraceLayout.EffortShare]:0} %; crank {double.RadiansToDegrees(row[TraceLayout.Phi]):0.0}°, carriage {1000 * row[TraceLayout.Carriage]:0.0} mm, output arm {1000 * row[TraceLayout.OutputArm]:0.0} mm")
            + (drive.Crank.Slot is null ? "." : string.Create(CultureInfo.InvariantCulture, $", slot shifted {1000 * row[TraceLayout.Shift]:0.0} mm."));
        const string left = "Bars are seen from the back of the hand. Finger pulls are not drawn; contact with the palm and between fingers, weight and motion of the object are not in the model.";
        return [.. new[] { state, StopWords.Sentence(drive, layout, row), left }.SelectMany(s => Lettering.Wrap(s, width, Text))];
    }

    internal static string Degrees(double radians) => string.Create(CultureInfo.InvariantCulture, $"{double.RadiansToDegrees(radians):0.0}°");
}
