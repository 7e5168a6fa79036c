using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>The fingers' forces on the object at the end of closing, contact by contact.</summary>
internal static class ContactTerms
{
    private static readonly string[] Segments = ["proximal", "middle", "distal"];

    /// <summary>One contact: its force on the object, the finger weighted by cos σ.</summary>
    /// <param name="Name">Finger and segment.</param>
    /// <param name="Finger">Index of the finger.</param>
    /// <param name="Segment">0 proximal, 1 middle, 2 distal.</param>
    /// <param name="Force">Contact force, not weighted [N].</param>
    /// <param name="OnObject">Weighted force on the object [N].</param>
    internal sealed record Contact(string Name, int Finger, int Segment, double Force, Vector2D OnObject);

    /// <summary>Every touching segment.</summary>
    /// <param name="reading">Run.</param>
    public static IEnumerable<Contact> All(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        double[] end = reading.End;
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int s = 0; s < 3; s++)
            {
                double force = end[layout.Contact(f, s)];
                if (force > 0)
                {
                    double weighted = force * Math.Cos(reading.Drive.Fingers[f].SplayRadians);
                    yield return new($"{layout.FingerNames[f]}_{Segments[s]}", f, s, force, weighted * Push(reading.Held, Point(reading, f, s)));
                }
            }
        }
    }

    /// <summary>Working of the resultant along an axis: the sum over the contacts.</summary>
    /// <param name="reading">Run.</param>
    /// <param name="x">Along x, or else y.</param>
    public static Working AlongAxis(RunReading reading, bool x)
    {
        Terms terms = new();
        foreach (Contact contact in All(reading))
        {
            terms.Add(Component(reading, contact, terms, x));
        }

        return terms.Working(terms.Sum, "drive-model");
    }

    /// <summary>Formula of a contact's weighted force along an axis; its inputs are added to the terms.</summary>
    /// <param name="reading">Run.</param>
    /// <param name="contact">Contact.</param>
    /// <param name="terms">Takes the inputs.</param>
    /// <param name="x">Along x, or else y.</param>
    public static string Component(RunReading reading, Contact contact, Terms terms, bool x)
    {
        string finger = reading.Run.Layout.FingerNames[contact.Finger];
        string splay = terms.Input($"{finger}_splay", reading.Drive.Fingers[contact.Finger].SplayRadians * Angles.DegreesPerRadian, "deg");
        string force = terms.Input(contact.Name, contact.Force, "N");
        if (reading.Held is Face face)
        {
            string normal = terms.Input("face_normal", face.NormalRadians * Angles.DegreesPerRadian, "deg");
            return $"-cos({splay}·π/180)·{force}·{(x ? "cos" : "sin")}({normal}·π/180)";
        }

        Cylinder cylinder = (Cylinder)reading.Held;
        Vector2D point = Point(reading, contact.Finger, contact.Segment);
        string cx = terms.Input("centre_x", cylinder.Centre.X * 1000, "mm"), cy = terms.Input("centre_y", cylinder.Centre.Y * 1000, "mm");
        string px = terms.Input($"{contact.Name}_x", point.X * 1000, "mm"), py = terms.Input($"{contact.Name}_y", point.Y * 1000, "mm");
        string along = x ? $"({cx} - {px})" : $"({cy} - {py})";
        return $"cos({splay}·π/180)·{force}·{along}/sqrt(({cx} - {px})^2 + ({cy} - {py})^2)";
    }

    private static Vector2D Point(RunReading reading, int finger, int segment)
    {
        int column = reading.Run.Layout.ContactPointX(finger, segment);
        return new(reading.End[column], reading.End[column + 1]);
    }

    private static Vector2D Push(HeldObject held, Vector2D point) => held switch
    {
        Face face => -Vector2D.AtAngle(face.NormalRadians),
        Cylinder cylinder => (1 / (cylinder.Centre - point).Length) * (cylinder.Centre - point),
        _ => throw new InvalidOperationException("A contact force without an object."),
    };
}
