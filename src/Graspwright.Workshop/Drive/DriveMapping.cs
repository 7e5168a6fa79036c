using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Workshop.Drive;

/// <summary>Hands a hand's records to the drive engine.</summary>
public static class DriveMapping
{
    /// <summary>The drive of a hand; capacity is that of the driving direction.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="worn">Pins with their worn play, or else new.</param>
    public static DriveModel ToDrive(Hand.HandModel hand, bool worn = false)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return new()
        {
            Wrist = ToWrist(hand.Wrist),
            Joint = ToJoint(hand, worn),
            PullLink = new()
            {
                Kind = ToKind(hand.PullLink.Kind),
                Anchor = ToVector(hand.PullLink.Anchor),
                Stiffness = hand.PullLink.Stiffness,
                Slack = hand.PullLink.Slack,
                AnchorPinRadius = hand.PullLink.AnchorPin.Radius,
                CrankPinRadius = hand.PullLink.CrankPin.Radius,
                AnchorPlay = Play(hand.PullLink.AnchorPin, worn),
                CrankPlay = Play(hand.PullLink.CrankPin, worn),
            },
            Crank = ToCrank(hand.Crank, worn),
            TransferLink = new()
            {
                Kind = ToKind(hand.TransferLink.Kind),
                Stiffness = hand.TransferLink.Stiffness,
                Slack = hand.TransferLink.Slack,
                CarriagePinRadius = hand.TransferLink.CarriagePin.Radius,
                CarriagePlay = Play(hand.TransferLink.CarriagePin, worn),
            },
            Rail = new()
            {
                Rest = ToVector(hand.Rail.Rest),
                DirectionRadians = hand.Rail.DirectionRadians,
                Travel = hand.Rail.Travel,
                Drag = hand.Rail.Drag,
                GuideLength = hand.Rail.GuideLength,
                LoadOffset = ToVector(hand.Rail.LoadOffset),
            },
            Tree = ToNode(hand.Balance, hand.Fingers, worn),
            Fingers = [.. hand.Fingers.Select(f => FingerMapping.ToFinger(f, worn))],
            Friction = new() { Pin = hand.Friction.Pin, Rail = hand.Friction.Rail, Slot = hand.Friction.Slot, Guide = hand.Friction.Guide },
        };
    }

    /// <summary>Whether any pin is given more play worn than new.</summary>
    /// <param name="hand">The hand.</param>
    public static bool GivesWear(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        return Wears(hand.PullLink.AnchorPin) || Wears(hand.PullLink.CrankPin) || Wears(hand.Crank.FulcrumPin) || Wears(hand.Crank.OutputPin)
            || Wears(hand.TransferLink.CarriagePin) || (hand.Gimbal is { } gimbal && Wears(gimbal.Pin)) || WearOf(hand.Balance)
            || hand.Fingers.Any(f => f.WornPlay != f.Play);
    }

    /// <summary>Index of a finger by name.</summary>
    /// <param name="fingers">The fingers.</param>
    /// <param name="name">Name.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static int IndexOf(IReadOnlyList<Hand.Finger> fingers, string name)
    {
        ArgumentNullException.ThrowIfNull(fingers);
        for (int f = 0; f < fingers.Count; f++)
        {
            if (fingers[f].Name == name)
            {
                return f;
            }
        }

        throw new ArgumentException($"There is no finger '{name}'.", nameof(name));
    }

    /// <summary>A point as the engine takes it.</summary>
    /// <param name="point">Point [m].</param>
    public static Vector2D ToVector(Hand.Point point) => new(point.X, point.Y);

    /// <summary>The slot of a load-sensing arm.</summary>
    /// <param name="slot">Slot.</param>
    public static Slot ToSlot(Hand.Slot slot)
    {
        ArgumentNullException.ThrowIfNull(slot);
        return new() { DirectionRadians = slot.DirectionRadians, Length = slot.Length, Preload = slot.Preload, Rate = slot.Rate, TurnRadians = slot.TurnRadians };
    }

    /// <summary>Rod or cord.</summary>
    /// <param name="kind">Kind.</param>
    public static LinkKind ToKind(Hand.LinkKind kind) => kind == Hand.LinkKind.Rod ? LinkKind.Rod : LinkKind.Cord;

    private static Wrist ToWrist(Hand.Wrist wrist) => new()
    {
        Direction = wrist.Direction == Hand.DrivingDirection.Flexion ? DrivingDirection.Flexion : DrivingDirection.Extension,
        StartRadians = wrist.StartRadians,
        TravelRadians = wrist.TravelRadians,
        Capacity = new(wrist.DrivingCapacity.AnglesRadians, wrist.DrivingCapacity.MomentsNewtonMetres),
    };

    private static WristJoint ToJoint(Hand.HandModel hand, bool worn) => new()
    {
        CuffStiffness = hand.Give.CuffStiffness,
        ShellStiffness = hand.Give.ShellStiffness,
        GiveHysteresis = hand.Give.Hysteresis,
        HasGimbal = hand.Gimbal is not null,
        GimbalPinRadius = hand.Gimbal?.Pin.Radius ?? 0,
        GimbalOffset = hand.Gimbal is { } gimbal ? ToVector(gimbal.Offset) : default,
        GimbalPlay = hand.Gimbal is { } pin ? Play(pin.Pin, worn) : 0,
    };

    private static BellCrank ToCrank(Hand.Crank crank, bool worn) => new()
    {
        Fulcrum = ToVector(crank.Fulcrum),
        Input = ToVector(crank.Input),
        Output = ToVector(crank.Output),
        StopRadians = crank.StopRadians,
        Slot = crank.Slot is { } slot ? ToSlot(slot) : null,
        FulcrumPinRadius = crank.FulcrumPin.Radius,
        OutputPinRadius = crank.OutputPin.Radius,
        Drag = crank.Drag,
        FulcrumPlay = Play(crank.FulcrumPin, worn),
        OutputPlay = Play(crank.OutputPin, worn),
    };

    private static BalanceNode ToNode(Hand.BalanceNode node, IReadOnlyList<Hand.Finger> fingers, bool worn) => node switch
    {
        Hand.FingerLeaf leaf => new FingerLeaf(IndexOf(fingers, leaf.Finger)),
        Hand.BalanceBar bar => new BalanceBar
        {
            Name = bar.Name,
            FirstArm = bar.FirstArm,
            SecondArm = bar.SecondArm,
            TiltStopRadians = bar.TiltStopRadians,
            First = ToNode(bar.First, fingers, worn),
            Second = ToNode(bar.Second, fingers, worn),
            PivotPinRadius = bar.PivotPin.Radius,
            FirstPinRadius = bar.FirstPinRadius,
            SecondPinRadius = bar.SecondPinRadius,
            Play = Play(bar.PivotPin, worn),
        },
        _ => throw new ArgumentException("A balance tree is made of bars and fingers.", nameof(node)),
    };

    private static bool WearOf(Hand.BalanceNode node) =>
        node is Hand.BalanceBar bar && (Wears(bar.PivotPin) || WearOf(bar.First) || WearOf(bar.Second));

    private static bool Wears(Hand.Pin pin) => pin.WornPlay > pin.Play;

    private static double Play(Hand.Pin pin, bool worn) => worn ? pin.WornPlay : pin.Play;
}
