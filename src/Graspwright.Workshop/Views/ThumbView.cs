using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Room;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Thumb;

namespace Graspwright.Workshop.Views;

/// <summary>The fingers where the nearest of them comes to the thumb's pad, from the thumb's side and from the back of the hand.</summary>
public static class ThumbView
{
    private const double Width = 180, Margin = 6, Ray = 0.030; // millimetres; metres of the pad's ray that are drawn

    /// <summary>The picture.</summary>
    /// <param name="hand">The hand, with a thumb.</param>
    /// <param name="meeting">The posture and its fingertips.</param>
    public static Picture Draw(Hand.HandModel hand, ThumbMeeting meeting)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(meeting);
        Hand.Thumb thumb = hand.Thumb ?? throw new ArgumentException("The hand has no thumb.", nameof(hand));
        FingertipOnThumb nearest = meeting.Tips.MinBy(t => t.Gap)!;
        List<(int Finger, Capsule Body)> bodies = [.. Bodies(meeting, nearest.Theta)];
        Vector3D pad = Space(meeting.Posture.Pad), looks = (Space(meeting.Posture.LooksAt) - pad).Unit;
        string name = meeting.Drive.Fingers[nearest.Finger].Name, off = string.Create(CultureInfo.InvariantCulture, $"{double.RadiansToDegrees(nearest.OffRadians):0}° from face to face");
        string sentence = nearest.Gap <= Thumbing.Meets
            ? $"Thumb {meeting.Posture.Name}: the {name} meets its pad at {Angles.Text(nearest.Theta)} of wrist, {off}."
            : string.Create(CultureInfo.InvariantCulture, $"Thumb {meeting.Posture.Name}: no fingertip meets its pad; the {name} comes nearest, {1000 * nearest.Gap:0.0} mm at {Angles.Text(nearest.Theta)} of wrist, {off}.");
        IReadOnlyList<string> head = Lettering.Wrap(sentence, Width - 2 * Margin, 2.7);
        Extent side = Bounds(bodies, pad, looks, thumb, dorsal: true), back = Bounds(bodies, pad, looks, thumb, dorsal: false);
        double panel = (Width - 3 * Margin) / 2, scale = Math.Max(new ViewFrame(side, panel, 90, default).Reduction, new ViewFrame(back, panel, 90, default).Reduction);
        double high = 1000 * Math.Max(side.Height, back.Height) / scale;
        Picture picture = new(Width, Margin * 2 + head.Count * 5.2 + high + 18, $"Thumb: {meeting.Posture.Name}", sentence);
        double y = picture.HeightMm - Margin - 2.7;
        picture.OnLayer("sentence");
        foreach (string line in head)
        {
            picture.Text(new(Margin, y), line, 2.7);
            y -= 5.2;
        }

        picture.Text(new(Margin, y - 1), "from the thumb's side", 2, ink: Ink.Pale);
        picture.Text(new(2 * Margin + panel, y - 1), "from the back of the hand, thumb side up", 2, ink: Ink.Pale);
        foreach (bool dorsal in (bool[])[true, false])
        {
            Extent extent = dorsal ? side : back;
            Place corner = new(dorsal ? Margin : 2 * Margin + panel, Margin + 8 + (high - 1000 * extent.Height / scale) / 2);
            View(new(picture, extent, corner, scale, dorsal), meeting, bodies, nearest, thumb, pad, looks);
        }

        picture.OnLayer("caption").Text(new(Margin, Margin), string.Create(CultureInfo.InvariantCulture, $"Scale 1:{scale:0.#}. The arrow is where the pad looks; the bar is its width, {1000 * thumb.PadWidth:0} mm."), 2);
        return picture;
    }

    private sealed record Frame(Picture Picture, Extent Extent, Place Corner, double Scale, bool Dorsal)
    {
        public Place On(Vector3D p)
        {
            Vector2D flat = Flat(p, Dorsal);
            return Corner.Moved(1000 * (flat.X - Extent.Left) / Scale, 1000 * (flat.Y - Extent.Bottom) / Scale);
        }
    }

    private static void View(Frame frame, ThumbMeeting meeting, List<(int Finger, Capsule Body)> bodies, FingertipOnThumb nearest, Hand.Thumb thumb, Vector3D pad, Vector3D looks)
    {
        Picture picture = frame.Picture.OnLayer("fingers");
        foreach ((int finger, Capsule body) in bodies.OrderBy(b => b.Finger == nearest.Finger))
        {
            bool near = finger == nearest.Finger;
            picture.Capsule(frame.On(body.From), frame.On(body.To), 1000 * body.Radius / frame.Scale, new Pen(near ? 0.4 : 0.2, near ? Ink.Ink : Ink.Pale), near ? Ink.Wash : null);
        }

        foreach (IGrouping<int, (int Finger, Capsule Body)> finger in bodies.GroupBy(b => b.Finger).Where(g => !frame.Dorsal || g.Key == nearest.Finger))
        {
            Capsule first = finger.First().Body;
            double left = finger.Min(b => Math.Min(frame.On(b.Body.From).X, frame.On(b.Body.To).X) - 1000 * b.Body.Radius / frame.Scale);
            Place label = frame.Dorsal ? frame.On(first.From).Moved(0, 1000 * first.Radius / frame.Scale + 1.2) : new(left - 1.5, frame.On(first.From).Y - 0.8);
            picture.Text(label, meeting.Drive.Fingers[finger.Key].Name, 2, frame.Dorsal ? Across.Left : Across.Right, ink: Ink.Pale);
        }

        picture.OnLayer("thumb");
        Place at = frame.On(pad), tip = frame.On(pad + Ray * looks);
        double dx = tip.X - at.X, dy = tip.Y - at.Y, seen = double.Hypot(dx, dy), half = 500 * thumb.PadWidth / frame.Scale;
        if (seen > 1)
        {
            picture.Line(at.Moved(-half * dy / seen, half * dx / seen), at.Moved(half * dy / seen, -half * dx / seen), new Pen(0.9, Ink.Accent));
            picture.Arrow(at, tip, new Pen(0.3, Ink.Accent));
        }
        else
        {
            picture.Circle(at, half, new Pen(0.6, Ink.Accent)); // it looks along the line of sight
        }

        picture.Text(seen > 1 ? tip.Moved(1.5, -0.8) : at.Moved(half + 1.5, -0.8), "thumb's pad", 2.1, ink: Ink.Accent);
        picture.Circle(frame.On(nearest.Place), 0.8, null, Ink.Accent);
    }

    private static IEnumerable<(int Finger, Capsule Body)> Bodies(ThumbMeeting meeting, double theta)
    {
        MovingBodies moving = new(new() { Drive = meeting.Drive, LinkRadius = 0, BarRadius = 0, BarPitch = 0, Still = [], BackOfShell = 0 }, meeting.Run.Layout);
        Capsule[] all = new Capsule[moving.Names.Count];
        moving.Place(moving.Of(SideView.Nearest(meeting.Run, theta)), all);
        int first = all.Length - 3 * meeting.Drive.Fingers.Count;
        return all.Skip(first).Select((body, i) => (i / 3, body));
    }

    private static Extent Bounds(List<(int Finger, Capsule Body)> bodies, Vector3D pad, Vector3D looks, Hand.Thumb thumb, bool dorsal)
    {
        Vector2D at = Flat(pad, dorsal);
        Extent extent = new Extent(at.X, at.Y, at.X, at.Y).With(at, thumb.PadWidth).With(Flat(pad + Ray * looks, dorsal), 0.004);
        foreach ((_, Capsule body) in bodies)
        {
            extent = extent.With(Flat(body.From, dorsal), body.Radius).With(Flat(body.To, dorsal), body.Radius);
        }

        return new(extent.Left - 0.02, extent.Bottom, Math.Max(extent.Right, Flat(pad + Ray * looks, dorsal).X + 0.03), extent.Top + 0.004); // room for words
    }

    private static Vector2D Flat(Vector3D p, bool dorsal) => new(p.X, dorsal ? p.Y : p.Z);

    private static Vector3D Space(Hand.SpacePoint p) => new(p.X, p.Y, p.Z);
}
