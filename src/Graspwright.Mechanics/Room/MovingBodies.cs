using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Room;

/// <summary>The moving parts of a drive as capsules, placed at the coordinates of a recorded state.</summary>
/// <remarks>
/// Coordinates: θ, φ, d, s, a tilt for each bar, three flexions for each finger. Bars lie in the plane of the rail's line
/// and the direction across the hand, each level one pitch further from the carriage. A splayed finger bends in a plane
/// turned by its splay about the dorsal direction at its knuckle.
/// </remarks>
public sealed class MovingBodies
{
    private readonly DriveModel _drive;
    private readonly RoomModel _room;
    private readonly int _sense;
    private readonly List<BarPlace> _bars = [];
    private readonly Vector2D _rail;      // direction
    private readonly double _rootAcross;  // of the carriage's pivot, toward the thumb

    /// <summary>Takes the bodies of a drive.</summary>
    /// <param name="room">Sizes of the bodies.</param>
    /// <param name="layout">Layout of the states.</param>
    public MovingBodies(RoomModel room, TraceLayout layout)
    {
        ArgumentNullException.ThrowIfNull(room);
        ArgumentNullException.ThrowIfNull(layout);
        _room = room;
        _drive = room.Drive;
        Layout = layout;
        Vector2D anchor = _drive.PullLink.Anchor, along = _drive.Crank.Fulcrum + _drive.Crank.Input - anchor;
        double driving = _drive.Wrist.Direction == DrivingDirection.Flexion ? 1 : -1;
        _sense = driving * along.Dot(anchor.Perpendicular) * along.Dot(_drive.Crank.Input.Perpendicular) >= 0 ? 1 : -1;
        _rail = Vector2D.AtAngle(_drive.Rail.DirectionRadians);
        _rootAcross = AcrossOf(_drive.Tree, _drive.Fingers);
        if (_drive.Tree is BalanceBar root)
        {
            Gather(root, -1, first: true);
        }

        List<string> names = ["pull link", "crank's input arm", "crank's output arm", "transfer link", "carriage"];
        names.AddRange(_bars.Select(b => $"bar {b.Bar.Name}"));
        names.AddRange(_drive.Fingers.SelectMany(f => new[] { $"{f.Name} proximal", $"{f.Name} middle", $"{f.Name} distal" }));
        Names = names;
        Coordinates = 4 + _bars.Count + 3 * _drive.Fingers.Count;
    }

    /// <summary>A bar in the tree: its parent's index or −1, and on which of its parent's ends it hangs.</summary>
    internal sealed record BarPlace(BalanceBar Bar, int Parent, bool OnFirst, double FirstSide);

    /// <summary>Bars in the order of a walk from the root, first child first.</summary>
    internal IReadOnlyList<BarPlace> Bars => _bars;

    /// <summary>Layout of the states.</summary>
    public TraceLayout Layout { get; }

    /// <summary>Names of the bodies: links, crank's arms, carriage, bars, segments.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Index of the first bar.</summary>
    internal static int FirstBar => 5;

    /// <summary>Index of the first finger's proximal segment.</summary>
    internal int FirstSegment => FirstBar + _bars.Count;

    /// <summary>Number of coordinates.</summary>
    public int Coordinates { get; }

    /// <summary>Coordinates of a recorded state.</summary>
    /// <param name="row">The state.</param>
    public double[] Of(double[] row)
    {
        ArgumentNullException.ThrowIfNull(row);
        double[] x = new double[Coordinates];
        x[0] = row[TraceLayout.Theta];
        x[1] = row[TraceLayout.Phi];
        x[2] = row[TraceLayout.Shift];
        x[3] = row[TraceLayout.Carriage];
        for (int b = 0; b < _bars.Count; b++)
        {
            x[4 + b] = row[TraceLayout.Tilt(b)];
        }

        for (int f = 0; f < _drive.Fingers.Count; f++)
        {
            for (int j = 0; j < 3; j++)
            {
                x[4 + _bars.Count + 3 * f + j] = row[Layout.Joint(f, j)];
            }
        }

        return x;
    }

    /// <summary>Places every body.</summary>
    /// <param name="x">Coordinates.</param>
    /// <param name="bodies">Takes the bodies, in the order of <see cref="Names"/>.</param>
    public void Place(ReadOnlySpan<double> x, Span<Capsule> bodies)
    {
        PlaceDrive(x, bodies);
        for (int b = 0; b < _bars.Count; b++)
        {
            bodies[FirstBar + b] = Bar(b, x, bodies);
        }

        for (int f = 0; f < _drive.Fingers.Count; f++)
        {
            PlaceFinger(f, x, bodies);
        }
    }

    /// <summary>Places one body, and what carries it; the others stay as they are.</summary>
    /// <param name="body">Its number.</param>
    /// <param name="x">Coordinates.</param>
    /// <param name="bodies">Takes the bodies.</param>
    internal void Place(int body, ReadOnlySpan<double> x, Span<Capsule> bodies)
    {
        if (body < FirstBar)
        {
            PlaceDrive(x, bodies);
        }
        else if (body < FirstSegment)
        {
            int parent = _bars[body - FirstBar].Parent;
            if (parent >= 0)
            {
                Place(FirstBar + parent, x, bodies);
            }

            bodies[body] = Bar(body - FirstBar, x, bodies);
        }
        else
        {
            PlaceFinger((body - FirstSegment) / 3, x, bodies);
        }
    }

    private void PlaceFinger(int f, ReadOnlySpan<double> x, Span<Capsule> bodies) =>
        Segments(_drive.Fingers[f], x.Slice(4 + _bars.Count + 3 * f, 3), bodies.Slice(FirstSegment + 3 * f, 3));

    private Vector2D CarriageAt(ReadOnlySpan<double> x) => _drive.Rail.Rest + x[3] * _rail;

    private void PlaceDrive(ReadOnlySpan<double> x, Span<Capsule> bodies)
    {
        double z = _room.DriveAcross, link = _room.LinkRadius;
        double driving = _drive.Wrist.Direction == DrivingDirection.Flexion ? 1 : -1;
        Vector2D fulcrum = _drive.Crank.Fulcrum, anchor = _drive.PullLink.Anchor.Rotated(driving * x[0]);
        Vector2D input = fulcrum + _drive.Crank.Input.Rotated(_sense * x[1]);
        Vector2D rest = _drive.Crank.Output + (_drive.Crank.Slot is { } slot ? slot.At(x[2]) : default);
        Vector2D output = fulcrum + rest.Rotated(_sense * x[1]), u = _rail, carriage = CarriageAt(x);
        double half = 0.5 * (_drive.Rail.GuideLength ?? 0);
        bodies[0] = new(In(anchor, z), In(input, z), link);
        bodies[1] = new(In(fulcrum, z), In(input, z), link);
        bodies[2] = new(In(fulcrum, z), In(output, z), link);
        bodies[3] = new(In(output, z), In(carriage, z), link);
        bodies[4] = new(In(carriage - half * u, z), In(carriage + half * u, z), _room.BarRadius);
    }

    /// <summary>How fast, and with what acceleration, any point of each body can move at most while the coordinates go straight from one set to another in a unit of time [m].</summary>
    internal void Bounds(ReadOnlySpan<double> from, ReadOnlySpan<double> to, Span<Motion> motions)
    {
        double crank = Math.Abs(to[1] - from[1]), shift = Math.Abs(to[2] - from[2]), carriage = Math.Abs(to[3] - from[3]), wrist = Math.Abs(to[0] - from[0]);
        double slot = _drive.Crank.Slot?.Length ?? 0, radius = _drive.Crank.Output.Length + slot, anchor = _drive.PullLink.Anchor.Length;
        Motion input = new(_drive.Crank.Input.Length * crank, _drive.Crank.Input.Length * crank * crank);
        Motion output = new(radius * crank + shift, radius * crank * crank + 2 * crank * shift);
        motions[0] = input.OrGreater(new(anchor * wrist, anchor * wrist * wrist));
        motions[1] = input;
        motions[2] = output;
        motions[3] = output.OrGreater(new(carriage, 0));
        motions[4] = new(carriage, 0);
        for (int b = 0; b < _bars.Count; b++)
        {
            BarPlace place = _bars[b];
            double arm = Math.Max(place.Bar.FirstArm, place.Bar.SecondArm), turn = Math.Abs(to[4 + b] - from[4 + b]);
            Motion before = place.Parent < 0 ? motions[4] : motions[FirstBar + place.Parent];
            motions[FirstBar + b] = new(before.Speed + arm * turn, before.Acceleration + arm * turn * turn);
        }

        for (int f = 0; f < _drive.Fingers.Count; f++)
        {
            Finger finger = _drive.Fingers[f];
            double speed = 0, acceleration = 0, turned = 0;
            for (int j = 0; j < 3; j++)
            {
                int i = 4 + _bars.Count + 3 * f + j;
                turned += Math.Abs(to[i] - from[i]);
                speed += finger.Segments[j] * turned;
                acceleration += finger.Segments[j] * turned * turned;
                motions[FirstSegment + 3 * f + j] = new(speed, acceleration);
            }
        }
    }

    /// <summary>Bounds of the motion of a body's points.</summary>
    /// <param name="Speed">Greatest speed [m a unit of time].</param>
    /// <param name="Acceleration">Greatest acceleration [m a unit of time squared].</param>
    internal readonly record struct Motion(double Speed, double Acceleration)
    {
        public static Motion operator +(Motion a, Motion b) => new(a.Speed + b.Speed, a.Acceleration + b.Acceleration);

        public Motion OrGreater(Motion other) => new(Math.Max(Speed, other.Speed), Math.Max(Acceleration, other.Acceleration));
    }

    private static Vector3D In(Vector2D p, double z) => new(p.X, p.Y, z);

    private static double AcrossOf(BalanceNode node, IReadOnlyList<Finger> fingers) => node switch
    {
        FingerLeaf leaf => fingers[leaf.FingerIndex].Across,
        BalanceBar bar => (AcrossOf(bar.First, fingers) * bar.SecondArm + AcrossOf(bar.Second, fingers) * bar.FirstArm) / (bar.FirstArm + bar.SecondArm),
        _ => 0,
    };

    private void Gather(BalanceBar bar, int parent, bool first)
    {
        int index = _bars.Count;
        double side = AcrossOf(bar.First, _drive.Fingers) >= AcrossOf(bar.Second, _drive.Fingers) ? 1 : -1;
        _bars.Add(new(bar, parent, first, side));
        if (bar.First is BalanceBar one)
        {
            Gather(one, index, first: true);
        }

        if (bar.Second is BalanceBar two)
        {
            Gather(two, index, first: false);
        }
    }

    private Capsule Bar(int b, ReadOnlySpan<double> x, ReadOnlySpan<Capsule> bodies)
    {
        BarPlace place = _bars[b];
        Vector3D along = In(_rail, 0), pivot;
        if (place.Parent < 0)
        {
            pivot = In(CarriageAt(x), _rootAcross);
        }
        else
        {
            Capsule parent = bodies[FirstBar + place.Parent];
            pivot = (place.OnFirst ? parent.From : parent.To) - _room.BarPitch * along;
        }

        (double sin, double cos) = Math.SinCos(x[4 + b]);
        Vector3D way = place.FirstSide * cos * new Vector3D(0, 0, 1) - sin * along;
        return new(pivot + place.Bar.FirstArm * way, pivot - place.Bar.SecondArm * way, _room.BarRadius);
    }

    /// <summary>The segments of a finger at its flexions.</summary>
    internal static void Segments(Finger finger, ReadOnlySpan<double> q, Span<Capsule> segments)
    {
        (double sinSplay, double cosSplay) = Math.SinCos(finger.SplayRadians);
        double angle = 0;
        Vector3D at = In(finger.Mcp, finger.Across);
        for (int i = 0; i < 3; i++)
        {
            angle -= finger.OpenRadians[i] + q[i];
            (double sin, double cos) = Math.SinCos(angle);
            Vector3D next = at + finger.Segments[i] * new Vector3D(cos * cosSplay, sin, cos * sinSplay);
            segments[i] = new(at, next, finger.HalfThickness[i]);
            at = next;
        }
    }
}
