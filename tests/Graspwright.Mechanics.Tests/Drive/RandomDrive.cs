using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Tests.Drive;

/// <summary>Plausible drives of every kind, from a seed.</summary>
internal static class RandomDrive
{
    public const double Degree = Math.PI / 180;

    /// <summary>The same hands every time: what fails once fails again.</summary>
    public static void ForEachSeed(int count, Action<int> check)
    {
        for (int seed = 1; seed <= count; seed++)
        {
            check(seed);
        }
    }

    public static DriveModel Make(int seed, bool friction = true)
    {
        Random r = new(seed);
        double U(double low, double high) => low + (high - low) * r.NextDouble();
        bool adaptive = r.Next(2) == 0, slot = r.Next(2) == 0;
        int count = r.Next(1, 5);
        List<Finger> fingers = [];
        for (int f = 0; f < count; f++)
        {
            fingers.Add(MakeFinger(f, adaptive, r));
        }

        double length = U(14, 22) * 1e-3;
        return new DriveModel
        {
            Wrist = new Wrist
            {
                TravelRadians = U(30, 45) * Degree,
                Direction = r.Next(4) == 0 ? DrivingDirection.Extension : DrivingDirection.Flexion,
                Capacity = new MomentTable([-60 * Degree, 0, 60 * Degree], [U(6, 12), U(6, 12), U(6, 12)]),
            },
            PullLink = new PullLink
            {
                Anchor = new(U(-60, -35) * 1e-3, U(22, 34) * 1e-3),
                Stiffness = U(0.5, 2) * 1e6,
                AnchorPinRadius = U(0, 3) * 1e-3,
                CrankPinRadius = U(0, 3) * 1e-3,
            },
            Crank = new BellCrank
            {
                Fulcrum = new(U(12, 28) * 1e-3, U(14, 24) * 1e-3),
                Input = length * Vector2D.AtAngle(U(60, 100) * Degree),
                Output = new(U(0, 8) * 1e-3, U(10, 18) * 1e-3),
                StopRadians = 80 * Degree,
                FulcrumPinRadius = U(0, 3) * 1e-3,
                OutputPinRadius = U(0, 3) * 1e-3,
                Drag = U(0, 0.02),
                Slot = slot ? new Slot { DirectionRadians = U(-130, -90) * Degree, Length = U(3, 7) * 1e-3, Preload = U(10, 50), Rate = U(0, 4) * 1e3 } : null,
            },
            TransferLink = new TransferLink { Stiffness = U(0.5, 2) * 1e6, CarriagePinRadius = U(0, 3) * 1e-3 },
            Rail = new Rail { Rest = new(U(52, 66) * 1e-3, U(25, 34) * 1e-3), DirectionRadians = U(170, 190) * Degree, Travel = 24e-3, Drag = U(0, 0.5) },
            Tree = MakeTree(count, r),
            Fingers = fingers,
            Friction = friction
                ? new FrictionCoefficients { Pin = U(0.05, 0.2), Rail = U(0.05, 0.2), Slot = U(0.02, 0.2), Guide = U(0, 0.2) }
                : new FrictionCoefficients(),
        };
    }

    /// <summary>The same drive with a slot that is an arc, by up to 60° either way.</summary>
    public static DriveModel WithArc(DriveModel d, int seed)
    {
        Random r = new(seed * 104729 + 7);
        Slot slot = d.Crank.Slot ?? new() { DirectionRadians = (-130 + 40 * r.NextDouble()) * Degree, Length = 5e-3, Preload = 20, Rate = 1e3 };
        return d with { Crank = d.Crank with { Slot = slot with { TurnRadians = (-60 + 120 * r.NextDouble()) * Degree } } };
    }

    /// <summary>The same drive with every friction and drag taken out.</summary>
    public static DriveModel Frictionless(DriveModel d) => d with
    {
        Friction = new FrictionCoefficients(),
        Crank = d.Crank with { Drag = 0 },
        Rail = d.Rail with { Drag = 0 },
        Fingers = [.. d.Fingers.Select(f => f with { Drag = default })],
    };

    public static HeldObject MakeObject(int seed)
    {
        Random r = new(seed * 7919 + 13);
        double radius = (10 + 30 * r.NextDouble()) * 1e-3;
        return r.Next(4) == 0
            ? new Face(new(0.11, -0.06), (60 + 60 * r.NextDouble()) * Degree)
            : Cylinder.OnPalm(new(0, -0.012), 0, 0.07 + 0.012 * r.NextDouble(), radius);
    }

    private static Finger MakeFinger(int index, bool adaptive, Random r)
    {
        double U(double low, double high) => low + (high - low) * r.NextDouble();
        Coupling Couple(double ratio) => r.Next(2) == 0
            ? new RatioCoupling(ratio)
            : new FourBarCoupling(U(6, 7) * 1e-3, U(70, 85) * Degree, U(7.5, 9) * 1e-3, -U(75, 100) * Degree);
        return new Finger
        {
            Name = $"finger{index + 1}",
            Mcp = new(U(88, 97) * 1e-3, U(-2, 2) * 1e-3),
            Across = (30 - 20 * index) * 1e-3,
            SplayRadians = U(-9, 9) * Degree,
            Segments = new(U(37, 48) * 1e-3, U(20, 28) * 1e-3, U(18, 21) * 1e-3),
            HalfThickness = new(8.5e-3, 7.5e-3, 6.5e-3),
            OpenRadians = new(5 * Degree, 10 * Degree, 8 * Degree),
            RangeRadians = new(90 * Degree, 95 * Degree, r.Next(5) == 0 ? 0 : 70 * Degree),
            PadStiffness = U(8, 20) * 1e3,
            Joints = adaptive ? new AdaptiveJoints() : new CoupledJoints(Couple(0.7), Couple(0.6)),
            Arms = adaptive ? new(U(6, 8) * 1e-3, U(3, 4.5) * 1e-3, U(1.5, 2.5) * 1e-3) : new(U(8, 11) * 1e-3, 0, 0),
            DrivePin = !adaptive && r.Next(3) == 0 ? new DrivePin(11e-3, U(-75, -50) * Degree, 180 * Degree) : null,
            SpringRate = adaptive ? new(0.01, 0.02, 0.02) : new(0.025, 0.01, 0.005),
            SpringPreload = adaptive ? new(0.008, 0.008, 0.008) : new(0.02, 0, 0.002),
            Drag = new(U(0, 0.003), U(0, 0.002), U(0, 0.001)),
            PinRadius = new(U(0, 2) * 1e-3, U(0, 1.5) * 1e-3, U(0, 1.5) * 1e-3),
            Pull = new FingerPull { Kind = r.Next(3) == 0 ? LinkKind.Rod : LinkKind.Cord, Stiffness = 1e6, GuideWrapRadians = U(0, 60) * Degree },
        };
    }

    private static BalanceNode MakeTree(int count, Random r)
    {
        BalanceBar Bar(string name, BalanceNode first, BalanceNode second) => new()
        {
            Name = name,
            FirstArm = (8 + 12 * r.NextDouble()) * 1e-3,
            SecondArm = (8 + 12 * r.NextDouble()) * 1e-3,
            TiltStopRadians = 60 * Degree,
            PivotPinRadius = 1.5e-3,
            FirstPinRadius = 1e-3,
            SecondPinRadius = 1e-3,
            First = first,
            Second = second,
        };
        return count switch
        {
            1 => new FingerLeaf(0),
            2 => Bar("root", new FingerLeaf(0), new FingerLeaf(1)),
            3 => Bar("root", new FingerLeaf(0), Bar("B", new FingerLeaf(1), new FingerLeaf(2))),
            _ => Bar("root", Bar("A", new FingerLeaf(0), new FingerLeaf(1)), Bar("B", new FingerLeaf(2), new FingerLeaf(3))),
        };
    }
}
