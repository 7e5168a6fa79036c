using System.Globalization;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;
using Graspwright.Workshop.Jobs;

namespace Graspwright.Workshop.Views;

/// <summary>The forces on a held object at the limit of its job: from the thumb's side, and along the hand.</summary>
public static class JobView
{
    private const double Width = 180, Margin = 6, Letters = 2.0, Longest = 24, NamesHeight = 46, LargestRadius = 31;

    private static readonly double[] Sizes = [1, 1.5, 2, 3, 5];

    /// <summary>The picture.</summary>
    /// <param name="outcome">A job with a grip.</param>
    public static Picture Draw(JobOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        Grasp grasp = outcome.Grasp ?? throw new ArgumentException("A job without a grip has no forces to draw.", nameof(outcome));
        string sentence = JobWords.Reason(outcome);
        IReadOnlyList<string> head = Lettering.Wrap(sentence, Width - 2 * Margin, 2.7);
        double headHeight = head.Count * 5.2;
        double radius = outcome.Reading!.Held is Cylinder c ? 1000 * c.Radius : 0, size = Sizes.First(s => radius / s <= LargestRadius || s == Sizes[^1]);
        double half = Math.Max(30, radius / size + 14), middle = NamesHeight + half;
        Picture picture = new(Width, middle + half + 12 + headHeight, $"Forces on the object: {outcome.Job.Name}", sentence);
        double y = picture.HeightMm - Margin - 2.7;
        picture.OnLayer("sentence");
        foreach (string line in head)
        {
            picture.Text(new(Margin, y), line, 2.7);
            y -= 5.2;
        }

        HeldObject held = outcome.Reading.Held;
        double scale = NewtonsPerMm(outcome);
        Side(picture, outcome, grasp, held, new(52, middle), scale, half, size);
        Front(picture, outcome, grasp, held, new(132, middle), scale, half, size);
        Foot(picture, outcome, scale, size);
        return picture;
    }

    private static double NewtonsPerMm(JobOutcome outcome)
    {
        double greatest = outcome.Load.Force.Length;
        foreach (Vector3D f in outcome.Held!.Forces)
        {
            greatest = Math.Max(greatest, f.Length);
        }

        return ObjectMarks.ArrowScale(Math.Max(greatest, 0.1), Longest);
    }

    /// <summary>From the thumb's side: x to the right, y up.</summary>
    private static void Side(Picture picture, JobOutcome outcome, Grasp grasp, HeldObject held, Place middle, double scale, double half, double size)
    {
        picture.OnLayer("object");
        picture.Text(middle.Moved(-44, half), "seen from the thumb's side", Letters, ink: Ink.Pale);
        Shape(picture, held, middle, size);
        picture.OnLayer("forces");
        Place At(Vector3D p) => middle.Moved(1000 / size * (p.X - grasp.Centre.X), 1000 / size * (p.Y - grasp.Centre.Y));
        for (int c = 0; c < grasp.Contacts.Count && c < outcome.Held!.Forces.Count; c++)
        {
            Arrow(picture, grasp.Contacts[c], At(grasp.Contacts[c].Place), outcome.Held.Forces[c].InPlane, scale, name: false, slips: c == outcome.Held.FirstSlip.Contact);
        }

        Load(picture, outcome, middle, outcome.Load.Force.InPlane, scale);
    }

    /// <summary>Along the hand from the fingertips: toward the thumb to the right, y up.</summary>
    private static void Front(Picture picture, JobOutcome outcome, Grasp grasp, HeldObject held, Place middle, double scale, double half, double size)
    {
        picture.OnLayer("object");
        picture.Text(middle.Moved(-44, half), "seen from the fingertips, thumb side right", Letters, ink: Ink.Pale);
        if (held is Cylinder cylinder)
        {
            double r = 1000 / size * cylinder.Radius, end = 42 / size;
            picture.Outline([middle.Moved(-end, -r), middle.Moved(end, -r), middle.Moved(end, r), middle.Moved(-end, r)], new Pen(0.25), Ink.Wash);
        }

        picture.OnLayer("forces");
        List<(double X, Place Tail, string Name)> names = [];
        for (int c = 0; c < grasp.Contacts.Count && c < outcome.Held!.Forces.Count; c++)
        {
            HoldContact contact = grasp.Contacts[c];
            Place at = middle.Moved(1000 / size * (contact.Place.Z - grasp.Centre.Z), 1000 / size * (contact.Place.Y - grasp.Centre.Y));
            Vector3D f = outcome.Held.Forces[c];
            Arrow(picture, contact, at, new(f.Z, f.Y), scale, name: true, slips: c == outcome.Held.FirstSlip.Contact);
            names.Add((at.X, at, string.Create(CultureInfo.InvariantCulture, $"{contact.Name} {f.Length:0.0}")));
        }

        Names(picture, names, middle.Y - half - 12);
        Vector3D load = outcome.Load.Force;
        Load(picture, outcome, middle, new(load.Z, load.Y), scale);
    }

    private static void Names(Picture picture, List<(double X, Place Tail, string Name)> names, double y)
    {
        picture.OnLayer("names");
        (double X, Place Tail, string Name)[] order = [.. names.OrderBy(n => n.X)];
        double[] at = Lettering.Spread([.. order.Select(n => n.X)], 3.6, 92, 174);
        for (int i = 0; i < order.Length; i++)
        {
            picture.Line(order[i].Tail, new(at[i], y + 14), Pen.Pale);
            picture.Text(new(at[i] + 0.8, y + 13), order[i].Name, 1.8, Across.Right, Level.Middle, Ink.Ink, strong: false, angleRadians: Math.PI / 2);
        }
    }

    private static void Shape(Picture picture, HeldObject held, Place middle, double size)
    {
        if (held is Cylinder cylinder)
        {
            picture.Circle(middle, 1000 / size * cylinder.Radius, new Pen(0.35), Ink.Wash);
        }
        else if (held is Face face)
        {
            double along = face.NormalRadians + Math.PI / 2;
            picture.Line(middle.Toward(along, -24), middle.Toward(along, 24), new Pen(0.9));
        }
    }

    private static void Arrow(Picture picture, HoldContact contact, Place at, Vector2D force, double scale, bool name, bool slips)
    {
        if (force.Length < 0.05)
        {
            picture.Circle(at, 0.7, Pen.Thin);
        }
        else
        {
            Place tail = at.Moved(-force.X / scale, -force.Y / scale);
            picture.Arrow(tail, at, new Pen(contact.Kind == ContactKind.Finger ? 0.45 : 0.3, contact.Kind == ContactKind.Finger ? Ink.Accent : Ink.Ink));
        }

        if (slips)
        {
            picture.Circle(at, 1.9, new Pen(0.3, Ink.Ink, Dash.Dashed));
            if (name)
            {
                picture.Text(at.Moved(2.4, 1.2), "slips first", 1.8);
            }
        }
    }

    private static void Load(Picture picture, JobOutcome outcome, Place middle, Vector2D force, double scale)
    {
        if (force.Length > 0.05 * outcome.Load.Force.Length && force.Length > 0)
        {
            Place tip = middle.Moved(force.X / scale, force.Y / scale);
            picture.Arrow(middle, tip, new Pen(0.7));
            bool far = tip.X - middle.X > 14; // its words would run into the next view
            picture.Text(far ? tip.Moved(0, -4) : tip.Moved(1.5, -2.5), string.Create(CultureInfo.InvariantCulture, $"load {outcome.Load.Force.Length:0.0}"), Letters, far ? Across.Right : Across.Left, strong: true);
        }
        else
        {
            picture.Circle(middle, 1.2, new Pen(0.5));
            picture.Circle(middle, 0.3, null, Ink.Ink);
        }
    }

    private static void Foot(Picture picture, JobOutcome outcome, double scale, double size)
    {
        picture.OnLayer("caption");
        string attitude = $"Forearm {outcome.Job.Forearm}; {(outcome.Job.Wet ? "wet" : "dry")}; {(outcome.Job.LockAndRelax ? "locked, wrist relaxed" : $"closed at your {(outcome.Job.Squeeze ? "squeeze" : "all-day")} effort")}.";
        string factor = outcome.Held is { Factor: >= 0 } held ? string.Create(CultureInfo.InvariantCulture, $"Contact forces (N) are those that balance {held.Factor:0.00} times the load, the most that friction bears; the load is drawn once.") : "No contact forces balance the load.";
        double moment = outcome.Load.MomentAbout(outcome.Grasp!.Centre).Length;
        string turns = moment > 0.005 ? string.Create(CultureInfo.InvariantCulture, $" About the middle the load turns with {moment:0.00} N·m.") : "";
        double y = Margin;
        foreach (string line in Lettering.Wrap(string.Create(CultureInfo.InvariantCulture, $"{attitude} {factor}{turns} Scale 1:{size:0.#}; arrows {scale:0.##} N per mm."), Width - 2 * Margin, Letters).Reverse())
        {
            picture.Text(new(Margin, y), line, Letters);
            y += 4.2;
        }
    }
}
