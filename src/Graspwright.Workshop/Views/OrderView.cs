using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Views;

/// <summary>The order of failure on the side view: where each link of the chain lies and at which push it gives way.</summary>
public static class OrderView
{
    private const double Width = 180, Margin = 6, Small = 2.1, Row = 5.2;

    /// <summary>Draws it for the weakest finger, with a table of bars for all.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="orders">Order of failure of each finger.</param>
    public static Picture Draw(HandModel hand, IReadOnlyList<FailureOrder> orders)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(orders);
        DriveModel drive = DriveMapping.ToDrive(hand);
        RunResult run = ClosingRun.Solve(drive, HeldObject.None, new() { EffortFraction = 1e-9, Opening = false });
        var posture = new Posture(drive, run.Layout, run.Closing[0]);
        Extent extent = Extent.Of(drive, HeldObject.None, [posture]);
        int weakest = Enumerable.Range(0, orders.Count).MinBy(i => orders[i].First.Newtons);
        FailureOrder order = orders[weakest];
        double bars = Bars(orders) * Row + 12;
        var fit = new ViewFrame(extent, Width - 2 * Margin, 90, default);
        double height = bars + fit.HeightMm + 50;
        string sentence = $"The {order.Build.Finger.Name} finger pushed sideways at its tip: what gives way, in order";
        var picture = new Picture(Width, height, "Order of failure", sentence + ".");
        picture.OnLayer("sentence").Text(new(Margin, height - Margin - 3), sentence, 2.9, strong: true);
        var frame = new ViewFrame(fit, Width - 2 * Margin, new(Margin, bars + 18));
        FingerMarks.Draw(picture, frame, drive, run.Layout, posture, run.Closing[0], names: false);
        MechanismMarks.Draw(picture, frame, drive, posture, run.Closing[0], names: false);
        Places(picture.OnLayer("order"), frame, posture.Fingers[weakest], order, height - 20);
        Rows(picture, orders, new(Margin, bars));
        picture.OnLayer("caption").Text(new(Margin, Margin), "Bars: the push at the fingertip at which each gives way. Seen from the thumb's side; the push comes out of the paper.", Small);
        return picture;
    }

    private static int Bars(IReadOnlyList<FailureOrder> orders) => orders.Sum(o => o.Links.Count) + orders.Count;

    private static void Places(Picture picture, ViewFrame frame, Vector2D[] finger, FailureOrder order, double top)
    {
        Place knuckle = frame.At(finger[0]), tip = frame.At(finger[3]);
        picture.Circle(tip, 2.4, new Pen(0.4, Ink.Accent));
        picture.Circle(tip, 0.6, new Pen(0.4, Ink.Accent), Ink.Accent);
        List<(string Text, Place At)> marks = [];
        for (int i = 0; i < order.Links.Count; i++)
        {
            FailureLink link = order.Links[i];
            Place at = link.Name switch
            {
                "finger" => frame.At(0.5 * (finger[0] + finger[1])),
                "pin" or "base" => At(frame, finger, order, link, knuckle),
                "shell" => frame.At(new(finger[0].X * 0.6, finger[0].Y)),
                _ => frame.At(new(finger[0].X * 0.35, finger[0].Y)),
            };
            marks.Add((string.Create(CultureInfo.InvariantCulture, $"{i + 1}  {link.Name}, {link.Newtons:0} N"), at));
        }

        (string Text, Place At)[] across = [.. marks.OrderBy(m => m.At.X)];
        double step = (Width - 2 * Margin) / across.Length;
        for (int i = 0; i < across.Length; i++)
        {
            Place label = new(Margin + (i + 0.1) * step, top);
            picture.Line(across[i].At, label.Moved(1, -1.5), Pen.Hair);
            picture.Circle(across[i].At, 1.1, new Pen(0.35, Ink.Accent), Ink.Paper);
            picture.Text(label, across[i].Text, 2.6, strong: across[i].Text.StartsWith('1'), ink: across[i].Text.StartsWith('1') ? Ink.Accent : Ink.Ink);
        }
    }

    private static Place At(ViewFrame frame, Vector2D[] finger, FailureOrder order, FailureLink link, Place knuckle)
    {
        for (int h = 1; h < order.Build.Joints.Count; h++)
        {
            if (link.Where.Contains(order.Build.Position(h).Split(' ')[^1].ToUpperInvariant(), StringComparison.Ordinal))
            {
                return frame.At(finger[order.Build.Joints[h]]);
            }
        }

        return link.Name == "base" ? knuckle.Moved(-2.5, 0) : knuckle;
    }

    private static void Rows(Picture picture, IReadOnlyList<FailureOrder> orders, Place corner)
    {
        const double Left = 34, Longest = 78;
        double greatest = orders.Max(o => o.Links.Max(l => l.Newtons)), y = corner.Y;
        foreach (FailureOrder order in orders)
        {
            picture.OnLayer("names").Text(new(corner.X, y), order.Build.Finger.Name, 2.6, strong: true);
            foreach (FailureLink link in order.Links)
            {
                double length = Longest * link.Newtons / greatest;
                bool first = link == order.First;
                picture.OnLayer("bars").Text(new(corner.X + 18, y), link.Name, Small);
                picture.Outline([new(corner.X + Left, y), new(corner.X + Left + length, y), new(corner.X + Left + length, y + 2.4), new(corner.X + Left, y + 2.4)], Pen.Thin, first ? Ink.Accent : Ink.Wash);
                picture.Text(new(corner.X + Left + length + 1.5, y), string.Create(CultureInfo.InvariantCulture, $"{link.Newtons:0} N, {Fitted(link.Where)}"), Small);
                y -= Row;
            }

            y -= Row * 0.5;
        }
    }

    private static string Fitted(string where) => where.Length <= 40 ? where : where[..where.LastIndexOf(' ', 39)] + " …";
}
