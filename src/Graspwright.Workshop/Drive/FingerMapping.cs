using Graspwright.Mechanics.Drive;

namespace Graspwright.Workshop.Drive;

/// <summary>Hands a finger's records to the drive engine.</summary>
internal static class FingerMapping
{
    /// <summary>A finger.</summary>
    /// <param name="finger">The finger.</param>
    /// <param name="worn">Pins with their worn play, or else new.</param>
    public static Finger ToFinger(Hand.Finger finger, bool worn) => new()
    {
        Name = finger.Name,
        Mcp = DriveMapping.ToVector(finger.Knuckle),
        Across = finger.Across,
        SplayRadians = finger.SplayRadians,
        Segments = ToTriple(finger.Segments),
        HalfThickness = ToTriple(finger.HalfThickness),
        OpenRadians = ToTriple(finger.OpenRadians),
        RangeRadians = ToTriple(finger.RangeRadians),
        PadStiffness = finger.PadStiffness,
        Joints = finger.Joints switch
        {
            Hand.AdaptiveJoints => new AdaptiveJoints(),
            Hand.CoupledJoints coupled => new CoupledJoints(ToCoupling(coupled.PipFromMcp), ToCoupling(coupled.DipFromPip)),
            _ => throw new ArgumentException("A finger's joints are adaptive or coupled.", nameof(finger)),
        },
        Arms = ToTriple(finger.Arms),
        DrivePin = finger.DrivePin is { } pin ? new(pin.Radius, pin.RestRadians, pin.LineRadians) : null,
        SpringRate = ToTriple(finger.SpringRate),
        SpringPreload = ToTriple(finger.SpringPreload),
        Drag = ToTriple(finger.Drag),
        PinRadius = ToTriple(finger.PinRadius),
        Play = ToTriple(worn ? finger.WornPlay : finger.Play),
        Pull = new()
        {
            Kind = DriveMapping.ToKind(finger.Pull.Kind),
            Stiffness = finger.Pull.Stiffness,
            Slack = finger.Pull.Slack,
            GuideWrapRadians = finger.Pull.GuideWrapRadians,
        },
    };

    private static Coupling ToCoupling(Hand.Coupling coupling) => coupling switch
    {
        Hand.RatioCoupling ratio => new RatioCoupling(ratio.Ratio),
        Hand.FourBarCoupling bars => new FourBarCoupling(bars.BeforeRadius, bars.BeforeRadians, bars.AfterRadius, bars.AfterRadians),
        _ => throw new ArgumentException("A coupling is a ratio or a four-bar.", nameof(coupling)),
    };

    private static Triple ToTriple(Hand.Triple triple) => new(triple.First, triple.Second, triple.Third);
}
