using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Holding;

/// <summary>What touches the object beside the fingers of the device.</summary>
public sealed record BesideFingers
{
    /// <summary>Friction of the pads on the object.</summary>
    public required double PadFriction { get; init; }

    /// <summary>Friction of the palm on the object.</summary>
    public double PalmFriction { get; init; }

    /// <summary>Whether the palm is behind the object.</summary>
    public bool Palm { get; init; }

    /// <summary>A point of the palm line [m].</summary>
    public Vector2D PalmPoint { get; init; }

    /// <summary>Direction of the palm line from +x [rad].</summary>
    public double PalmRadians { get; init; }

    /// <summary>Direction in which the ball of the thumb and the heel of the hand push, from +x [rad]; NaN = they do not.</summary>
    public double HeelRadians { get; init; } = double.NaN;

    /// <summary>Breadth of the palm across the hand [m].</summary>
    public double PalmBreadth { get; init; }

    /// <summary>Friction of the thumb's skin on the object.</summary>
    public double ThumbFriction { get; init; }

    /// <summary>Greatest force of the thumb [N]; 0 = the thumb does not help.</summary>
    public double ThumbForce { get; init; }

    /// <summary>Place of the thumb across the hand [m].</summary>
    public double ThumbAcross { get; init; }

    /// <summary>Radius of the patch over which a pad touches [m]; 0 = a point.</summary>
    public double PadRadius { get; init; }
}

/// <summary>Makes a grip out of a recorded state of a closing run.</summary>
public static class GripOfRun
{
    private static readonly string[] Segments = ["proximal", "middle", "distal"];

    /// <summary>The grip, squeezed: each finger keeps its drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="held">The object; a cylinder or a face.</param>
    /// <param name="layout">Layout of the state.</param>
    /// <param name="state">The state, mostly the end of closing.</param>
    /// <param name="beside">Friction, palm and thumb.</param>
    /// <param name="thickness">Thickness of a plate [m]; not read for a cylinder.</param>
    /// <param name="touched">State whose touching segments count as contacts, even where the force has gone; <see langword="null"/> = the state itself.</param>
    /// <returns><see langword="null"/> where no finger touches.</returns>
    public static Grasp? Squeezed(DriveModel drive, HeldObject held, TraceLayout layout, double[] state, BesideFingers beside, double thickness = 0, double[]? touched = null)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(beside);
        List<HoldContact> contacts = [];
        List<FingerDrive> drives = [];
        for (int f = 0; f < drive.Fingers.Count; f++)
        {
            AddFinger(contacts, drives, drive, held, layout, (state, touched ?? state), f, beside);
        }

        if (contacts.Count == 0)
        {
            return null;
        }

        Vector3D centre = Centre(held, contacts);
        if (held is Cylinder cylinder)
        {
            Vector3D fingers = Sum(contacts);
            AddPalm(contacts, cylinder, beside, drive.Fingers[0].PadStiffness);
            AddThumbOnCylinder(contacts, cylinder, fingers, beside, drive.Fingers[0].PadStiffness);
        }
        else
        {
            AddThumbOnPlate(contacts, (Face)held, thickness, beside, drive.Fingers[0].PadStiffness);
        }

        Vector3D axis = held is Face face ? new(Math.Cos(face.NormalRadians), Math.Sin(face.NormalRadians), 0) : new(0, 0, 1);
        return new() { Contacts = contacts, Drives = drives, Centre = centre, Axis = axis };
    }

    /// <summary>The same grip with its fingers locked and the wrist relaxed.</summary>
    /// <param name="left">What is left of the grip, as <see cref="Squeezed"/> gives it of the relaxed state.</param>
    /// <param name="lockLimits">Greatest generalised force that each finger's lock bears [N·m]; empty = not given.</param>
    /// <returns><see langword="null"/> where palm and thumb cannot balance what is left.</returns>
    public static Grasp? Locked(Grasp left, IReadOnlyList<FingerDrive> lockLimits)
    {
        ArgumentNullException.ThrowIfNull(left);
        if (new LoadLimit(left).Unloaded() is not { } forces)
        {
            return null;
        }

        HoldContact[] contacts = [.. left.Contacts.Select((c, i) => c with { Preload = Math.Max(0, forces[i].Dot(c.Normal)) })];
        return left with { Contacts = contacts, Locked = true, LockLimits = lockLimits };
    }

    private static void AddFinger(List<HoldContact> contacts, List<FingerDrive> drives, DriveModel drive, HeldObject held, TraceLayout layout, (double[] Now, double[] Touched) states, int f, BesideFingers beside)
    {
        double[] state = states.Now;
        Finger finger = drive.Fingers[f];
        double weight = Math.Cos(finger.SplayRadians), tangent = Math.Tan(finger.SplayRadians);
        FingerPosture posture = new(finger, [state[layout.Joint(f, 0)], state[layout.Joint(f, 1)], state[layout.Joint(f, 2)]]);
        double[] drivers = new double[posture.Motions];
        bool touches = false;
        for (int s = 0; s < 3; s++)
        {
            double force = state[layout.Contact(f, s)];
            if (states.Touched[layout.Contact(f, s)] <= 0)
            {
                continue;
            }

            int column = layout.ContactPointX(f, s);
            (Vector2D place, Vector2D push) = OnObject(held, new(state[column], state[column + 1]));
            Vector2D[] motions = new Vector2D[posture.Motions];
            for (int m = 0; m < motions.Length; m++)
            {
                motions[m] = posture.Velocity(s, m, place);
                drivers[m] += weight * force * push.Dot(motions[m]);
            }

            touches = true;
            contacts.Add(new()
            {
                Name = $"{finger.Name} {Segments[s]}",
                Kind = ContactKind.Finger,
                Finger = f,
                Place = new(place.X, place.Y, finger.Across + tangent * (place.X - finger.Mcp.X)),
                Normal = new(push.X, push.Y, 0),
                Preload = weight * force,
                Friction = beside.PadFriction,
                SpinRadius = 2.0 / 3 * beside.PadRadius,
                Stiffness = finger.PadStiffness,
                Motions = motions,
            });
        }

        for (int m = 0; touches && m < drivers.Length; m++)
        {
            drives.Add(new(f, m, drivers[m]));
        }
    }

    private static (Vector2D Place, Vector2D Push) OnObject(HeldObject held, Vector2D inside)
    {
        if (held is Cylinder cylinder)
        {
            Vector2D toCentre = cylinder.Centre - inside, push = 1 / toCentre.Length * toCentre;
            return (cylinder.Centre - cylinder.Radius * push, push);
        }

        Face face = held as Face ?? throw new ArgumentException("Nothing is held.", nameof(held));
        Vector2D normal = Vector2D.AtAngle(face.NormalRadians);
        return (inside - (inside - face.Point).Dot(normal) * normal, -normal);
    }

    private static Vector3D Centre(HeldObject held, List<HoldContact> contacts)
    {
        if (held is Cylinder cylinder)
        {
            return new(cylinder.Centre.X, cylinder.Centre.Y, 0);
        }

        Vector3D sum = default;
        double weight = 0;
        foreach (HoldContact c in contacts)
        {
            sum += (c.Preload + 1e-9) * c.Place;
            weight += c.Preload + 1e-9;
        }

        return 1 / weight * sum;
    }

    private static Vector3D Sum(List<HoldContact> contacts)
    {
        Vector3D sum = default;
        foreach (HoldContact c in contacts)
        {
            sum += c.Preload * c.Normal;
        }

        return sum;
    }

    /// <summary>The palm meets a cylinder along a line across the hand: two places, a quarter of the breadth to each side; so do its ball and heel, nearer the wrist.</summary>
    private static void AddPalm(List<HoldContact> contacts, Cylinder cylinder, BesideFingers beside, double stiffness)
    {
        if (!beside.Palm)
        {
            return;
        }

        Vector2D along = Vector2D.AtAngle(beside.PalmRadians);
        Pair("palm, thumb side", "palm, little side", new(along.Y, -along.X));
        if (!double.IsNaN(beside.HeelRadians))
        {
            Pair("ball of the thumb", "heel of the hand", Vector2D.AtAngle(beside.HeelRadians));
        }

        void Pair(string thumbSide, string littleSide, Vector2D push)
        {
            Vector2D place = cylinder.Centre - cylinder.Radius * push;
            foreach (int side in (ReadOnlySpan<int>)[1, -1])
            {
                contacts.Add(new()
                {
                    Name = side > 0 ? thumbSide : littleSide,
                    Kind = ContactKind.Palm,
                    Place = new(place.X, place.Y, side * beside.PalmBreadth / 4),
                    Normal = new(push.X, push.Y, 0),
                    Friction = beside.PalmFriction,
                    Stiffness = stiffness,
                });
            }
        }
    }

    /// <summary>The thumb presses a handle from opposite the fingers' resultant.</summary>
    private static void AddThumbOnCylinder(List<HoldContact> contacts, Cylinder cylinder, Vector3D fingers, BesideFingers beside, double stiffness)
    {
        if (beside.ThumbForce <= 0)
        {
            return;
        }

        Vector2D push = fingers.InPlane.Length > 1e-9 ? -1 / fingers.InPlane.Length * fingers.InPlane : new(0, 1);
        Vector2D place = cylinder.Centre - cylinder.Radius * push;
        contacts.Add(Thumb(new(place.X, place.Y, beside.ThumbAcross), new(push.X, push.Y, 0), beside, stiffness));
    }

    /// <summary>The thumb holds a plate from its other face, under the middle of the fingers' forces.</summary>
    private static void AddThumbOnPlate(List<HoldContact> contacts, Face face, double thickness, BesideFingers beside, double stiffness)
    {
        Vector3D place = Centre(face, contacts);
        Vector2D normal = Vector2D.AtAngle(face.NormalRadians);
        Vector3D push = new(normal.X, normal.Y, 0);
        contacts.Add(Thumb(place - thickness * push, push, beside, stiffness));
    }

    private static HoldContact Thumb(Vector3D place, Vector3D push, BesideFingers beside, double stiffness) => new()
    {
        Name = "thumb",
        Kind = ContactKind.Thumb,
        Place = place,
        Normal = push,
        MostNormal = beside.ThumbForce,
        Friction = beside.ThumbFriction,
        SpinRadius = 2.0 / 3 * beside.PadRadius,
        Stiffness = stiffness,
    };
}
