using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Room;
using Graspwright.Numerics;
using Graspwright.Workshop.Room;

namespace Graspwright.Workshop.Views;

/// <summary>All bodies at the first clash, or at the smallest gap, from the thumb's side and from the back of the hand.</summary>
public static class RoomView
{
    private const double Width = 180, Margin = 6;

    /// <summary>The picture.</summary>
    /// <param name="room">The bodies.</param>
    /// <param name="swept">The sweep.</param>
    public static Picture Draw(RoomModel room, RoomSwept swept)
    {
        ArgumentNullException.ThrowIfNull(room);
        ArgumentNullException.ThrowIfNull(swept);
        NearPair? near = swept.Sweep.FirstClash ?? (swept.Sweep.Pairs.Count > 0 ? swept.Sweep.Pairs[0] : null);
        double theta = near?.ClashTheta ?? near?.GapTheta ?? 0;
        MovingBodies moving = new(room, swept.Run.Layout);
        Capsule[] bodies = new Capsule[moving.Names.Count];
        moving.Place(At(moving, swept.Run.Closing, theta), bodies);
        List<(string Name, Capsule Body, bool Still)> all = [.. room.Still.Select(s => (s.Name, s.Body, true)), .. bodies.Select((b, i) => (moving.Names[i], b, false))];
        string sentence = Sentence(swept, near, theta);
        IReadOnlyList<string> head = Lettering.Wrap(sentence, Width - 2 * Margin, 2.7);
        Extent side = Bounds(all, dorsal: true), back = Bounds(all, dorsal: false);
        ViewFrame first = new(side, Width - 2 * Margin, 84, default), second = new(back, Width - 2 * Margin, 84, default);
        double scale = Math.Max(first.Reduction, second.Reduction);
        double h1 = 1000 * side.Height / scale, h2 = 1000 * back.Height / scale, headHeight = head.Count * 5.2;
        Picture picture = new(Width, Margin * 2 + headHeight + h1 + h2 + 30, $"Room: {swept.Locks}", sentence);
        double y = picture.HeightMm - Margin - 2.7;
        picture.OnLayer("sentence");
        foreach (string line in head)
        {
            picture.Text(new(Margin, y), line, 2.7);
            y -= 5.2;
        }

        picture.Text(new(Margin, y - 1), "from the thumb's side", 2, ink: Ink.Pale);
        View(picture, all, near, side, new(Margin, Margin + h2 + 20), scale, dorsal: true);
        picture.OnLayer("sentence").Text(new(Margin, Margin + h2 + 12), "from the back of the hand, thumb side up", 2, ink: Ink.Pale);
        View(picture, all, near, back, new(Margin, Margin + 8), scale, dorsal: false);
        picture.OnLayer("caption").Text(new(Margin, Margin), string.Create(CultureInfo.InvariantCulture, $"Scale 1:{scale:0.#}. Shaded: hand with liner and shell. Parts are drawn as the round bars they are taken for."), 2);
        return picture;
    }

    private static string Sentence(RoomSwept swept, NearPair? near, double theta)
    {
        string locks = swept.Locks == Grip.GripQuestion.AllFree ? "All free" : $"With the locks ‘{swept.Locks}’";
        if (near is null)
        {
            return $"{locks} there is nothing to pass.";
        }

        return near.ClashTheta is not null
            ? string.Create(CultureInfo.InvariantCulture, $"{locks}: at {double.RadiansToDegrees(theta):0.0}° of wrist the {near.First} meets the {near.Second}, the first clash.")
            : string.Create(CultureInfo.InvariantCulture, $"{locks} nothing meets; the {near.First} comes nearest the {near.Second}, {1000 * near.Gap:0.0} mm at {double.RadiansToDegrees(theta):0.0}° of wrist.");
    }

    private static double[] At(MovingBodies moving, IReadOnlyList<double[]> states, double theta)
    {
        for (int r = 1; r < states.Count; r++)
        {
            double[] a = moving.Of(states[r - 1]), b = moving.Of(states[r]);
            if (theta <= b[0] && b[0] > a[0])
            {
                double t = Math.Clamp((theta - a[0]) / (b[0] - a[0]), 0, 1);
                return [.. a.Select((x, i) => x + t * (b[i] - x))];
            }
        }

        return moving.Of(states[^1]);
    }

    private static Vector2D Flat(Vector3D p, bool dorsal) => new(p.X, dorsal ? p.Y : p.Z);

    private static Extent Bounds(List<(string Name, Capsule Body, bool Still)> all, bool dorsal)
    {
        Extent extent = new(0, 0, 0, 0);
        foreach ((_, Capsule body, _) in all)
        {
            extent = extent.With(Flat(body.From, dorsal), body.Radius).With(Flat(body.To, dorsal), body.Radius);
        }

        return extent;
    }

    private static void View(Picture picture, List<(string Name, Capsule Body, bool Still)> all, NearPair? near, Extent extent, Place corner, double scale, bool dorsal)
    {
        Place On(Vector3D p)
        {
            Vector2D flat = Flat(p, dorsal);
            return corner.Moved(1000 * (flat.X - extent.Left) / scale, 1000 * (flat.Y - extent.Bottom) / scale);
        }

        picture.OnLayer("hand");
        foreach ((_, Capsule body, _) in all.Where(b => b.Still))
        {
            picture.Capsule(On(body.From), On(body.To), 1000 * body.Radius / scale, Pen.Hair, Ink.Wash);
        }

        picture.OnLayer("moving parts");
        foreach ((string name, Capsule body, _) in all.Where(b => !b.Still))
        {
            bool marked = near is not null && (name == near.First || name == near.Second);
            picture.Capsule(On(body.From), On(body.To), 1000 * body.Radius / scale, marked ? new Pen(0.5, Ink.Accent) : new Pen(0.2));
        }

        if (near is not null)
        {
            picture.OnLayer("nearest place");
            Place at = On(near.Place);
            picture.Circle(at, 3.2, new Pen(0.4, Ink.Accent));
            picture.Line(at.Moved(2.4, 2.4), at.Moved(9, 9), new Pen(0.25, Ink.Accent));
            picture.Text(at.Moved(10, 9), near.ClashTheta is null ? "nearest" : "meets", 2.1, ink: Ink.Accent);
        }
    }
}
