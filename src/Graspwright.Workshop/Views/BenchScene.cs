using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Views;

/// <summary>The part of the hand's plane that a scene shows, and its scale; it stays while things in it are moved.</summary>
public sealed class BenchFrame
{
    internal const double Side = 3, Foot = 9;
    private readonly double _left, _right;

    internal BenchFrame(Extent extent, double widthMm, bool names, bool near)
    {
        (_left, _right) = names ? (17, 30) : (4, 4);
        Extent = extent;
        WidthMm = widthMm;
        Names = names;
        Near = near;
        double reduction = 1000 * extent.Width / (widthMm - _left - _right);
        View = new(extent, reduction, new(_left, Foot));
        HeightMm = View.HeightMm + Foot + Side;
    }

    internal Extent Extent { get; }

    internal ViewFrame View { get; }

    /// <summary>Whether parts are named.</summary>
    public bool Names { get; }

    /// <summary>Whether it shows the mechanism alone.</summary>
    public bool Near { get; }

    /// <summary>Width of the scene [mm].</summary>
    public double WidthMm { get; }

    /// <summary>Height of the scene [mm].</summary>
    public double HeightMm { get; }

    /// <summary>Millimetres of the hand to one of the scene.</summary>
    public double Reduction => View.Reduction;

    /// <summary>Place of a point of the hand frame, y down as on a screen.</summary>
    /// <param name="x">Distal [m].</param>
    /// <param name="y">Dorsal [m].</param>
    /// <returns>To the right and down from the upper left corner [mm].</returns>
    public (double Right, double Down) At(double x, double y)
    {
        Place p = View.At(new(x, y));
        return (p.X, HeightMm - p.Y);
    }

    /// <summary>Whether a frame shows the same as this one, or more.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="runs">What it holds, with its runs.</param>
    public bool Holds(DriveModel drive, IReadOnlyList<(HeldObject Held, RunResult Run)> runs)
    {
        Extent wanted = Near ? BenchScene.NearReach(drive, runs) : BenchScene.Reach(drive, runs);
        return wanted.Left >= Extent.Left && wanted.Right <= Extent.Right && wanted.Bottom >= Extent.Bottom && wanted.Top <= Extent.Top;
    }
}

/// <summary>The mechanism from the thumb's side for a screen: one state of a run with its forces and the limits that act, in a frame that does not move.</summary>
public static class BenchScene
{
    private const double NarrowMm = 125, Letters = 2.1, LongestForce = 15, Room = 0.008;

    /// <summary>A frame that holds the hand open and closed on everything.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="runs">What it holds, with its runs.</param>
    /// <param name="widthMm">Width of the scene [mm]; below 125 parts are not named.</param>
    /// <param name="near">Whether the mechanism alone fills it: forearm anchor, crank, rail.</param>
    public static BenchFrame Frame(DriveModel drive, IReadOnlyList<(HeldObject Held, RunResult Run)> runs, double widthMm, bool near = false)
    {
        Extent e = near ? NearReach(drive, runs) : Reach(drive, runs);
        return new(new(e.Left - Room, e.Bottom - Room, e.Right + Room, e.Top + Room), widthMm, widthMm >= NarrowMm, near);
    }

    internal static Extent NearReach(DriveModel drive, IReadOnlyList<(HeldObject Held, RunResult Run)> runs)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(runs);
        Extent extent = new Extent(0, 0, 0, 0).With(drive.Rail.Rest, 0).With(drive.Rail.Rest + drive.Rail.Travel * Vector2D.AtAngle(drive.Rail.DirectionRadians), 0).With(drive.PullLink.Anchor, 0);
        foreach ((_, RunResult run) in runs)
        {
            foreach (Posture p in (ReadOnlySpan<Posture>)[new(drive, run.Layout, run.Closing[0]), new(drive, run.Layout, run.AtEnd)])
            {
                extent = extent.With(p.Anchor, 0).With(p.Input, 0).With(p.SlotFar, 0).With(p.CarriagePin, 0);
            }
        }

        return extent;
    }

    internal static Extent Reach(DriveModel drive, IReadOnlyList<(HeldObject Held, RunResult Run)> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        Extent? all = null;
        foreach ((HeldObject held, RunResult run) in runs)
        {
            Extent one = Extent.Of(drive, held, [new(drive, run.Layout, run.Closing[0]), new(drive, run.Layout, run.AtEnd)]);
            all = all is { } a ? new(Math.Min(a.Left, one.Left), Math.Min(a.Bottom, one.Bottom), Math.Max(a.Right, one.Right), Math.Max(a.Top, one.Top)) : one;
        }

        return all ?? throw new ArgumentException("A scene needs a run.", nameof(runs));
    }

    /// <summary>Draws one state.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="held">What it holds.</param>
    /// <param name="run">The run.</param>
    /// <param name="row">A row of its closing.</param>
    /// <param name="palm">Palm line.</param>
    /// <param name="sentence">What the scene says, for those who can't see it.</param>
    public static Picture Draw(BenchFrame frame, DriveModel drive, HeldObject held, RunResult run, double[] row, PalmLine palm, string sentence)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(row);
        Picture picture = new(frame.WidthMm, frame.HeightMm, "Side view at " + SideView.Degrees(row[TraceLayout.Theta]), sentence);
        double greatest = ObjectMarks.Greatest(run.Layout, row), arrows = ObjectMarks.ArrowScale(greatest, ObjectMarks.LongestMm(held, frame.View, 14));
        SideView.State(picture, frame.View, drive, held, run.Layout, row, palm, arrows, frame.Names);
        Posture posture = new(drive, run.Layout, row);
        Forces(picture.OnLayer("forces on the mechanism"), frame.View, drive, posture, row);
        Limits(picture.OnLayer("limits"), frame.View, drive, run, row, posture);
        Scale(picture.OnLayer("scale"), frame, row);
        return picture;
    }

    /// <summary>Draws the mechanism of an earlier hand, to be laid under the scene of the present one.</summary>
    /// <param name="frame">The frame of the present scene.</param>
    /// <param name="drive">The earlier drive.</param>
    /// <param name="held">What it holds.</param>
    /// <param name="run">Its run.</param>
    /// <param name="row">A row of its closing.</param>
    public static Picture Ghost(BenchFrame frame, DriveModel drive, HeldObject held, RunResult run, double[] row)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(row);
        Picture picture = new(frame.WidthMm, frame.HeightMm, "An earlier state", "");
        Posture posture = new(drive, run.Layout, row);
        ObjectMarks.Object(picture, frame.View, held);
        FingerMarks.Draw(picture, frame.View, drive, run.Layout, posture, row, names: false);
        MechanismMarks.Draw(picture, frame.View, drive, posture, row, names: false);
        return picture;
    }

    /// <summary>What ends or limits the motion in a state, with the place where it acts in the hand frame [m].</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="run">The run.</param>
    /// <param name="row">A row of its closing.</param>
    public static IReadOnlyList<(string Words, double X, double Y)> Acting(DriveModel drive, RunResult run, double[] row)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(row);
        return [.. Acting(drive, run, row, new(drive, run.Layout, row)).Select(a => (a.Words, a.At.X, a.At.Y))];
    }

    private static IEnumerable<(string Words, Vector2D At)> Acting(DriveModel drive, RunResult run, double[] row, Posture posture)
    {
        if (row[TraceLayout.Theta] >= run.AtEnd[TraceLayout.Theta] - 1e-9)
        {
            string? end = run.End switch { RunEnd.Effort => "the effort limit ends it here", RunEnd.Travel => "the wrist’s travel is used up", _ => null };
            if (end is not null)
            {
                yield return (end, default);
            }
        }

        if (StopWords.Acts(row, 0, high: true))
        {
            yield return ("crank against its stop", drive.Crank.Fulcrum);
        }

        if (drive.Crank.Slot is not null && StopWords.Acts(row, 1, high: true))
        {
            yield return ("slot’s end: shifted", posture.Output);
        }

        if (StopWords.Acts(row, 2, high: true))
        {
            yield return ("end of the rail", posture.CarriagePin);
        }

        TraceLayout layout = run.Layout;
        for (int b = 0; b < layout.BarNames.Count; b++)
        {
            if (StopWords.Acts(row, 3 + b, high: true) || StopWords.Acts(row, 3 + b, high: false))
            {
                yield return ($"bar {layout.BarNames[b]} on its tilt stop", posture.CarriagePin);
            }
        }

        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            int joint = Array.FindIndex([0, 1, 2], j => drive.Fingers[f].RangeRadians[j] > 0 && StopWords.Acts(row, 3 + layout.BarNames.Count + 3 * f + j, high: true));
            if (joint >= 0)
            {
                yield return ($"{layout.FingerNames[f]} bent to its stop", posture.Fingers[f][joint]);
            }
        }
    }

    private static void Limits(Picture picture, ViewFrame view, DriveModel drive, RunResult run, double[] row, Posture posture)
    {
        double last = double.NegativeInfinity;
        foreach ((string words, Vector2D at) in Acting(drive, run, row, posture).OrderBy(a => a.At.Y))
        {
            Place place = view.At(at);
            double y = Math.Max(place.Y - 6.5, last + 3.6);
            double width = Lettering.WidthMm(words, Letters, strong: true);
            double x = Math.Min(place.X + 8, picture.WidthMm - BenchFrame.Side - width);
            picture.Circle(place, 1.9, new Pen(0.45, Ink.Accent));
            picture.Line(place.Moved(0.8, -1.8), new(x - 0.6, y + 1), new Pen(0.25, Ink.Accent));
            picture.Text(new(x, y), words, Letters, ink: Ink.Accent, strong: true);
            last = y;
        }
    }

    private static void Forces(Picture picture, ViewFrame view, DriveModel drive, Posture posture, double[] row)
    {
        double pull = row[TraceLayout.PullLink], transfer = row[TraceLayout.TransferLink], scale = Math.Max(Math.Max(Math.Abs(pull), Math.Abs(transfer)), row[TraceLayout.Fulcrum]) / LongestForce;
        if (scale * LongestForce < 0.5)
        {
            return;
        }

        Vector2D atInput = pull * Unit(posture.Anchor - posture.Input), atOutput = transfer * Unit(posture.CarriagePin - posture.Output);
        Arrow(picture, view.At(posture.Input), atInput, scale, pull);
        Arrow(picture, view.At(posture.Output), atOutput, scale, transfer);
        Arrow(picture, view.At(drive.Crank.Fulcrum), -(atInput + atOutput), scale, row[TraceLayout.Fulcrum]);
    }

    private static void Arrow(Picture picture, Place from, Vector2D force, double newtonsPerMm, double newtons)
    {
        Place head = from.Moved(force.X / newtonsPerMm, force.Y / newtonsPerMm);
        picture.Arrow(from, head, new Pen(0.5, Ink.Accent), 2.4);
        bool left = head.X < from.X;
        picture.Text(head.Moved(left ? -0.8 : 0.8, 1.1), newtons.ToString("0", CultureInfo.InvariantCulture) + " N", Letters, left ? Across.Right : Across.Left, ink: Ink.Accent);
    }

    private static Vector2D Unit(Vector2D v) => v.Length > 0 ? 1 / v.Length * v : default;

    private static void Scale(Picture picture, BenchFrame frame, double[] row)
    {
        double ten = frame.View.Mm(0.010);
        Place start = new(BenchFrame.Side, 2.4);
        for (int i = 0; i < 5; i++)
        {
            picture.Outline([start.Moved(i * ten, 0), start.Moved((i + 1) * ten, 0), start.Moved((i + 1) * ten, 1.2), start.Moved(i * ten, 1.2)], Pen.Hair, i % 2 == 0 ? Ink.Ink : Ink.Paper);
        }

        picture.Text(start.Moved(5 * ten + 1.5, 0), "50 mm", Letters);
        string state = string.Create(CultureInfo.InvariantCulture, $"wrist {double.RadiansToDegrees(row[TraceLayout.Theta]):0.0}°   {row[TraceLayout.Tau]:0.00} N·m   grip {row[TraceLayout.Grip]:0.0} N");
        picture.Text(new(frame.WidthMm - BenchFrame.Side, 2.4), state, Letters + 0.2, Across.Right, strong: true);
    }
}
