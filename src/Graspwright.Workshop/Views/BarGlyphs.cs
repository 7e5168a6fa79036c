using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Draws the balance bars as seen from the back of the hand, thumb side up, each with its tilt.</summary>
internal static class BarGlyphs
{
    /// <summary>Draws all bars in a row, right end at a place.</summary>
    /// <param name="picture">Picture.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="row">Recorded state.</param>
    /// <param name="topRight">Upper right corner.</param>
    /// <param name="heightMm">Height for a bar [mm], without its name.</param>
    /// <param name="stepMm">Width of one bar's place [mm].</param>
    public static void Draw(Picture picture, DriveModel drive, double[] row, Place topRight, double heightMm, double stepMm)
    {
        List<BalanceBar> bars = [.. Walk(drive.Tree)];
        if (bars.Count == 0)
        {
            return;
        }

        picture.OnLayer("bars");
        double scale = heightMm / bars.Max(b => 2 * Math.Max(b.FirstArm, b.SecondArm));
        int closing = Math.Cos(drive.Rail.DirectionRadians) < 0 ? -1 : 1;
        for (int i = 0; i < bars.Count; i++)
        {
            Place pivot = topRight.Moved(-stepMm * (bars.Count - i - 0.5), -heightMm / 2);
            Bar(picture, drive, bars[i], row[TraceLayout.Tilt(i)], pivot, scale, closing);
            string tilt = Math.Round(double.RadiansToDegrees(row[TraceLayout.Tilt(i)]), 1) is var degrees && degrees == 0 ? "0.0" : degrees.ToString("0.0", CultureInfo.InvariantCulture).Replace('-', '\u2212');
            picture.Text(new(pivot.X, topRight.Y - heightMm - 2.4), bars[i].Name, 1.7, Across.Middle, Level.Top);
            picture.Text(new(pivot.X, topRight.Y - heightMm - 5.2), tilt + "°", 1.7, Across.Middle, Level.Top);
        }
    }

    /// <summary>The bars in the order of the recorded columns: from the root, first child first.</summary>
    public static IEnumerable<BalanceBar> Walk(BalanceNode node) =>
        node is BalanceBar bar ? Walk(bar.First).Concat(Walk(bar.Second)).Prepend(bar) : [];

    private static void Bar(Picture picture, DriveModel drive, BalanceBar bar, double tilt, Place pivot, double scale, int closing)
    {
        Place First(double t) => pivot.Moved(-closing * scale * bar.FirstArm * Math.Sin(t), scale * bar.FirstArm * Math.Cos(t));
        Place Second(double t) => pivot.Moved(closing * scale * bar.SecondArm * Math.Sin(t), -scale * bar.SecondArm * Math.Cos(t));
        foreach (double stop in (ReadOnlySpan<double>)[bar.TiltStopRadians, -bar.TiltStopRadians])
        {
            picture.Line(First(stop), Second(stop), new Pen(0.13, Ink.Pale, Dash.Dotted));
        }

        Place first = First(tilt), second = Second(tilt);
        picture.Line(first, second, new Pen(0.7));
        picture.Arrow(pivot, pivot.Moved(6.5 * closing, 0), new Pen(0.2), 1.6);
        picture.Circle(pivot, 0.8, Pen.Thin, Ink.Paper);
        double beside = -closing * 1.6;
        Across across = closing < 0 ? Across.Left : Across.Right;
        picture.Text(first.Moved(beside, 0), NameOf(drive, bar.First), 1.8, across, Level.Middle);
        picture.Text(second.Moved(beside, 0), NameOf(drive, bar.Second), 1.8, across, Level.Middle);
    }

    private static string NameOf(DriveModel drive, BalanceNode node) => node switch
    {
        FingerLeaf leaf => drive.Fingers[leaf.FingerIndex].Name,
        BalanceBar bar => "bar " + bar.Name,
        _ => throw new InvalidOperationException($"A balance tree can't hold a {node.GetType().Name}."),
    };
}
