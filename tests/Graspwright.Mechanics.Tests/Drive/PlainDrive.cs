using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Drive;

/// <summary>A plain drive without friction, of which a test changes what it is about.</summary>
internal static class PlainDrive
{
    public const double Degree = Math.PI / 180;

    /// <summary>To the end of travel, whatever the effort.</summary>
    public static RunOptions ToTheEnd => new() { EffortFraction = null, Opening = false };

    public static HeldObject Bottle => Cylinder.OnPalm(new(0, -0.012), 0, 0.078, 0.03);

    public static Finger AdaptiveFinger(string name) => new()
    {
        Name = name,
        Mcp = new(0.095, 0),
        Segments = new(0.045, 0.025, 0.02),
        HalfThickness = new(8.5e-3, 7.5e-3, 6.5e-3),
        OpenRadians = new(5 * Degree, 10 * Degree, 8 * Degree),
        RangeRadians = new(90 * Degree, 95 * Degree, 70 * Degree),
        PadStiffness = 15e3,
        Joints = new AdaptiveJoints(),
        Arms = new(8e-3, 4e-3, 2e-3),
        SpringRate = new(0.01, 0.02, 0.02),
        SpringPreload = new(0.008, 0.008, 0.008),
        Pull = new FingerPull { Stiffness = 1e6 },
    };

    public static Finger CoupledFinger(string name, double armMetres = 9e-3) => AdaptiveFinger(name) with
    {
        Joints = new CoupledJoints(new RatioCoupling(0.7), new RatioCoupling(0.6)),
        Arms = new(armMetres, 0, 0),
    };

    public static DriveModel With(BalanceNode tree, params Finger[] fingers) => new()
    {
        Wrist = new Wrist { TravelRadians = 38 * Degree, Capacity = new MomentTable([0], [10]) },
        PullLink = new PullLink { Anchor = new(-0.045, 0.028), Stiffness = 1.5e6 },
        Crank = new BellCrank
        {
            Fulcrum = new(0.02, 0.02),
            Input = 0.018 * Vector2D.AtAngle(80 * Degree),
            Output = new(5e-3, 14e-3),
            StopRadians = 80 * Degree,
        },
        TransferLink = new TransferLink { Stiffness = 1.5e6 },
        Rail = new Rail { Rest = new(0.06, 0.03), DirectionRadians = Math.PI, Travel = 22e-3 },
        Tree = tree,
        Fingers = fingers,
    };

    public static BalanceBar EqualBar(string name, BalanceNode first, BalanceNode second) => new()
    {
        Name = name,
        FirstArm = 0.012,
        SecondArm = 0.012,
        TiltStopRadians = 75 * Degree,
        First = first,
        Second = second,
    };
}
