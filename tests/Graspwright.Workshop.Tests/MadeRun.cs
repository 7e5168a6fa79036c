using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Tests;

/// <summary>A run written by hand: two fingers on a bar, load-sensing arm, numbers chosen to be easy to check.</summary>
internal sealed class MadeRun
{
    public static readonly TraceLayout Layout = new(["index", "middle"], ["root"]);

    public List<RunEvent> Events { get; } = [];

    public List<double[]> Closing { get; } = [];

    public List<double[]> Opening { get; } = [];

    public List<ForcePeak> Peaks { get; } = [];

    public RunEnd End { get; set; } = RunEnd.Effort;

    public RunFailure? Failure { get; set; }

    public DriveModel Drive { get; set; } = MadeDrive();

    public HeldObject Held { get; set; } = new Cylinder(new(0.080, -0.040), 0.030);

    public RunOptions Options { get; set; } = new() { EffortFraction = 0.25 };

    public List<double?> LockLimits { get; } = [];

    /// <summary>A closing to 30° that touches at 10°, shifts from 12° to 15° and grips with 18 N cos 4° + 6 N.</summary>
    public static MadeRun Gripping()
    {
        MadeRun made = new();
        double[] rest = Row(0);
        double[] touch = Row(10);
        touch[TraceLayout.JointTravel] = Radians(10.5);
        touch[TraceLayout.EffortShare] = 0.3;
        double[] end = Row(30);
        end[TraceLayout.Tau] = 2.5;
        end[TraceLayout.EffortShare] = 1;
        end[TraceLayout.JointTravel] = Radians(33);
        end[TraceLayout.Phi] = 0.8;
        end[TraceLayout.Shift] = 0.005;
        end[TraceLayout.Carriage] = 0.012;
        end[TraceLayout.OutputArm] = 0.0072;
        end[TraceLayout.PullLink] = 100;
        end[TraceLayout.TransferLink] = 200;
        end[TraceLayout.SlotLoad] = 60;
        end[TraceLayout.Fulcrum] = 180;
        end[TraceLayout.Stored] = 0.40;
        end[TraceLayout.ContactEnergy] = 0.02;
        end[TraceLayout.Pivot(0)] = 190;
        end[TraceLayout.Tilt(0)] = Radians(4);
        Contact(end, 0, 0, 8, new(0.0700, -0.0150));
        Contact(end, 0, 2, 10, new(0.1050, -0.0750));
        Contact(end, 1, 2, 6, new(0.0950, -0.0800));
        end[Layout.FingerPull(0)] = 90;
        end[Layout.FingerPull(1)] = 80;
        end[Layout.Pin(0, 0)] = 50;
        double cos4 = Math.Cos(Radians(4));
        end[TraceLayout.Grip] = 18 * cos4 + 6;
        Vector2D sum = 8 * cos4 * Unit(0.0700, -0.0150) + 10 * cos4 * Unit(0.1050, -0.0750) + 6 * Unit(0.0950, -0.0800);
        end[TraceLayout.ResultantX] = sum.X;
        end[TraceLayout.ResultantY] = sum.Y;
        made.Closing.AddRange([rest, touch, Row(12), Row(15), end]);
        double[] back = Row(0);
        back[Layout.Joint(0, 1)] = Radians(0.4);
        made.Opening.AddRange([end, back]);
        made.Events.AddRange(
        [
            new(EventKind.Touch, Radians(10), false, "index", 1, 0, false),
            new(EventKind.AllTouch, Radians(10), false, "middle", 3, 0, false),
            new(EventKind.ShiftStart, Radians(12), false, "slot", 0, 45, false),
            new(EventKind.ShiftEnd, Radians(15), false, "slot", 0, 60, false),
            new(EventKind.EffortLimit, Radians(30), false, "wrist", 0, 0, false),
        ]);
        made.Peaks.AddRange(
        [
            new("pull link", 100, Radians(30), false), new("transfer link", 200, Radians(30), false), new("pull index", 90, Radians(30), false),
            new("fulcrum", 180, Radians(30), false), new("rail", 20, Radians(30), false), new("bar root", 190, Radians(30), false),
        ]);
        return made;
    }

    public RunReading Reading() => new()
    {
        Run = Result(),
        Drive = Drive,
        Worn = Drive with { Crank = Drive.Crank with { FulcrumPlay = 4 * Drive.Crank.FulcrumPlay } },
        Held = Held,
        Options = Options,
        AngularSpeed = Radians(60),
        LockLimits = LockLimits,
        Room = new() { Drive = Drive, LinkRadius = 0.003, BarRadius = 0.003, BarPitch = 0.01, Still = [new("shell", new(default, new(0.06, 0, 0), 0.012))], BackOfShell = 0.012 },
    };

    public RunResult Result() => new()
    {
        Layout = Layout,
        Closing = Closing,
        Opening = Opening,
        Events = Events,
        Jumps = [],
        Peaks = Peaks,
        End = End,
        Failure = Failure,
        WorkIn = 0.50,
        WorkBack = 0.30,
        DissipatedClosing = 0.09,
        DissipatedOpening = 0.10,
        LostInJumps = 0.01,
        LoopMax = 0.8,
        LoopMaxTheta = Radians(28),
        ShiftGiveBack = 0.0031,
    };

    public static double Radians(double degrees) => degrees * Math.PI / 180;

    public static double[] Row(double degrees)
    {
        double[] row = new double[Layout.Columns];
        row[TraceLayout.Theta] = row[TraceLayout.JointTravel] = Radians(degrees);
        row[TraceLayout.OutputStep] = 1;
        return row;
    }

    private static Vector2D Unit(double x, double y)
    {
        Vector2D d = new Vector2D(0.080, -0.040) - new Vector2D(x, y);
        return (1 / d.Length) * d;
    }

    private static void Contact(double[] row, int finger, int segment, double force, Vector2D point)
    {
        row[Layout.Contact(finger, segment)] = force;
        row[Layout.ContactPointX(finger, segment)] = point.X;
        row[Layout.ContactPointX(finger, segment) + 1] = point.Y;
    }

    private static DriveModel MadeDrive() => new()
    {
        Wrist = new() { TravelRadians = Radians(38), Capacity = new([0, Radians(33)], [12, 10]) },
        Joint = new() { HasGimbal = true, GimbalOffset = new(0.003, 0.004), GimbalPinRadius = 0.002, GimbalPlay = 0.0001 },
        PullLink = new() { Anchor = new(-0.045, 0.028), Stiffness = 1e6, AnchorPlay = 0.0001, CrankPlay = 0.0001 },
        Crank = new()
        {
            Fulcrum = new(0.020, 0.020), Input = new(0.003, 0.0177), Output = new(-0.015, -0.006), StopRadians = 1.4, FulcrumPlay = 0.0001,
            Slot = new() { DirectionRadians = -1.9, Length = 0.005, Preload = 45, Rate = 3000 },
        },
        TransferLink = new() { Stiffness = 1e6 },
        Rail = new() { Rest = new(0.060, 0.030), DirectionRadians = Math.PI, Travel = 0.022, GuideLength = 0.020, LoadOffset = new(0.008, 0.006) },
        Tree = new BalanceBar
        {
            Name = "root", FirstArm = 0.01, SecondArm = 0.01, TiltStopRadians = Radians(20), First = new FingerLeaf(0), Second = new FingerLeaf(1), Play = 0.0002,
        },
        Fingers = [MadeFinger("index", 4), MadeFinger("middle", 0)],
        Friction = new() { Pin = 0.12, Rail = 0.15 },
    };

    private static Finger MadeFinger(string name, double splayDegrees) => new()
    {
        Name = name, Mcp = new(0.095, 0), SplayRadians = Radians(splayDegrees),
        Segments = new(0.045, 0.025, 0.020), HalfThickness = new(0.008, 0.007, 0.006), OpenRadians = new(0.1, 0.2, 0.1),
        RangeRadians = new(1.5, 1.6, 1.2), PadStiffness = 15000, Joints = new CoupledJoints(new RatioCoupling(0.7), new RatioCoupling(0.6)),
        Arms = new(0.010, 0, 0), Play = new(0.00005, 0, 0), Pull = new() { Stiffness = 1e6 },
    };
}
