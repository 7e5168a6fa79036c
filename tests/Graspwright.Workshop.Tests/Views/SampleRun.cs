using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Views;

namespace Graspwright.Workshop.Tests.Views;

/// <summary>A made-up hand and a made-up run of it: rows are filled by simple formulas, not by the solver.</summary>
internal static class SampleRun
{
    public const double Degree = Math.PI / 180;

    public static readonly PalmLine Palm = new(new(0, -0.012), 0);

    public static readonly HeldObject Mug = Cylinder.OnPalm(Palm.Point, Palm.DirectionRadians, 0.073, 0.030);

    public static DriveModel Drive(DrivingDirection direction = DrivingDirection.Flexion) => new()
    {
        Wrist = new Wrist { Direction = direction, TravelRadians = 38 * Degree, Capacity = new([0], [12]) },
        PullLink = new PullLink { Anchor = new(-0.045, 0.028), Stiffness = 1.5e6 },
        Crank = new BellCrank
        {
            Fulcrum = new(0.020, 0.020), Input = 0.018 * Vector2D.AtAngle(80 * Degree), Output = new(0.005, 0.014), StopRadians = 80 * Degree,
            Slot = new Slot { DirectionRadians = -110 * Degree, Length = 0.007, Preload = 45, Rate = 3000 },
        },
        TransferLink = new TransferLink { Stiffness = 1.5e6 },
        Rail = new Rail { Rest = new(0.060, 0.030), DirectionRadians = Math.PI, Travel = 0.022 },
        Tree = Bar("root", 0.020, Bar("A", 0.010, new FingerLeaf(0), new FingerLeaf(1)), Bar("B", 0.010, new FingerLeaf(2), new FingerLeaf(3))),
        Fingers = [Finger("index", 0.095, 0.045), Finger("middle", 0.097, 0.048), Finger("ring", 0.094, 0.045), Finger("little", 0.088, 0.037)],
    };

    public static RunResult Run(bool opening = true)
    {
        var layout = new TraceLayout(["index", "middle", "ring", "little"], ["root", "A", "B"]);
        IReadOnlyList<double[]> closing = [.. Enumerable.Range(0, 36).Select(i => Row(layout, i * Degree, 1))];
        return new RunResult
        {
            Layout = layout,
            Closing = closing,
            Opening = opening ? [.. Enumerable.Range(0, 36).Select(i => Row(layout, (35 - i) * Degree, 0.7))] : [],
            Events =
            [
                Event(EventKind.Touch, 15.2), Event(EventKind.Touch, 20.1), Event(EventKind.AllTouch, 20.7), Event(EventKind.ShiftStart, 21.4),
                Event(EventKind.ShiftEnd, 33.5), Event(EventKind.EffortLimit, 35),
            ],
            Jumps = [],
            Peaks = [],
            End = RunEnd.Effort,
            WorkIn = 0.5,
            LoopMax = 0.8,
            LoopMaxTheta = 35 * Degree,
        };
    }

    private static double[] Row(TraceLayout layout, double theta, double share)
    {
        double[] row = new double[layout.Columns];
        double degrees = theta / Degree, grip = share * Math.Max(0, degrees - 20) * 4;
        row[TraceLayout.Theta] = theta;
        row[TraceLayout.Tau] = share * 0.075 * degrees;
        row[TraceLayout.EffortShare] = degrees / 35;
        row[TraceLayout.Phi] = 1.65 * theta;
        row[TraceLayout.Shift] = Math.Clamp((degrees - 21.4) / 12.1, 0, 1) * 0.007;
        row[TraceLayout.Carriage] = 0.0098 * degrees / 35;
        row[TraceLayout.OutputPinRadius] = 0.015;
        row[TraceLayout.OutputArm] = 0.0145;
        row[TraceLayout.Grip] = grip;
        row[TraceLayout.Stops] = degrees >= 33.5 ? Math.Pow(2, 3) : 0;
        row[TraceLayout.Tilt(0)] = -2 * Degree;
        for (int f = 0; f < 4; f++)
        {
            Vector2D end = Drive().Fingers[f].Mcp;
            double bend = 0;
            for (int j = 0; j < 3; j++)
            {
                row[layout.Joint(f, j)] = theta * (j == 0 ? 1.65 : j == 1 ? 1.15 : 0.7);
                bend += Drive().Fingers[f].OpenRadians[j] + row[layout.Joint(f, j)];
                Vector2D next = end + Drive().Fingers[f].Segments[j] * Vector2D.AtAngle(-bend);
                row[layout.Contact(f, j)] = j == 1 ? 0 : grip / 8;
                row[layout.ContactPointX(f, j)] = (end.X + next.X) / 2;
                row[layout.ContactPointX(f, j) + 1] = (end.Y + next.Y) / 2;
                end = next;
            }

            row[layout.TipX(f)] = end.X;
            row[layout.TipX(f) + 1] = end.Y;
        }

        return row;
    }

    private static RunEvent Event(EventKind kind, double degrees) => new(kind, degrees * Degree, Opening: false, "", 0, 0, InJump: false);

    private static BalanceBar Bar(string name, double arm, BalanceNode first, BalanceNode second) =>
        new() { Name = name, FirstArm = arm, SecondArm = arm, TiltStopRadians = 60 * Degree, First = first, Second = second };

    private static Finger Finger(string name, double x, double proximal) => new()
    {
        Name = name, Mcp = new(x, 0), Segments = new(proximal, 0.025, 0.020), HalfThickness = new(0.0085, 0.0075, 0.0065),
        OpenRadians = new(5 * Degree, 10 * Degree, 8 * Degree), RangeRadians = new(1.5, 1.6, 1.2), PadStiffness = 15_000,
        Joints = new AdaptiveJoints(), Pull = new FingerPull { Stiffness = 1e6 },
    };
}
