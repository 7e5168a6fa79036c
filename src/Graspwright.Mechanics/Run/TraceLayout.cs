namespace Graspwright.Mechanics.Run;

/// <summary>Which column of a recorded state holds what. All columns are SI numbers.</summary>
/// <remarks>Finger blocks follow the fixed columns and the bars; each finger has <see cref="FingerColumns"/> columns.</remarks>
public sealed class TraceLayout
{
    /// <summary>Names and counts of a drive.</summary>
    /// <param name="fingerNames">Names of the fingers, thumb side first.</param>
    /// <param name="barNames">Names of the bars in the order of a walk from the root, first child first.</param>
    public TraceLayout(IReadOnlyList<string> fingerNames, IReadOnlyList<string> barNames)
    {
        FingerNames = fingerNames;
        BarNames = barNames;
        Columns = FixedColumns + BarColumns * barNames.Count + FingerColumns * fingerNames.Count;
    }

    /// <summary>θ, drive angle of the wrist from the start posture [rad].</summary>
    public const int Theta = 0;

    /// <summary>τ, moment that the wearer supplies, gimbal friction included [N·m].</summary>
    public const int Tau = 1;

    /// <summary>τ ÷ effort limit [-]; of the whole capacity where no effort limit was set.</summary>
    public const int EffortShare = 2;

    /// <summary>Travel of the wearer's own joint: θ and give [rad].</summary>
    public const int JointTravel = 3;

    /// <summary>φ, crank angle from rest [rad].</summary>
    public const int Phi = 4;

    /// <summary>d, shift of the output pin in its slot [m].</summary>
    public const int Shift = 5;

    /// <summary>s, carriage travel [m].</summary>
    public const int Carriage = 6;

    /// <summary>|C − P| [m].</summary>
    public const int OutputPinRadius = 7;

    /// <summary>Distance from the fulcrum to the transfer link's line [m].</summary>
    public const int OutputArm = 8;

    /// <summary>Pull-link force, tension positive [N].</summary>
    public const int PullLink = 9;

    /// <summary>Transfer-link force, tension positive [N].</summary>
    public const int TransferLink = 10;

    /// <summary>Load along the slot [N].</summary>
    public const int SlotLoad = 11;

    /// <summary>Force of the transfer link along the rail, in the sense of closing [N].</summary>
    public const int CarriageForce = 12;

    /// <summary>Force between carriage and rail, across it [N].</summary>
    public const int RailNormal = 13;

    /// <summary>Load on the fulcrum pin [N].</summary>
    public const int Fulcrum = 14;

    /// <summary>Stored energy Π [J].</summary>
    public const int Stored = 15;

    /// <summary>Part of it in contacts [J].</summary>
    public const int ContactEnergy = 16;

    /// <summary>Grip force: Σ cos σ · Σ contact forces [N].</summary>
    public const int Grip = 17;

    /// <summary>Resultant on the object, x [N].</summary>
    public const int ResultantX = 18;

    /// <summary>Resultant on the object, y [N]; negative pushes it out of the palm.</summary>
    public const int ResultantY = 19;

    /// <summary>Stops acting, as bits: coordinate i low = bit 2i, high = bit 2i + 1; order φ, d, s, tilts, three joints a finger.</summary>
    public const int Stops = 20;

    /// <summary>Work done by the wrist since the start of this leg [J].</summary>
    public const int Work = 21;

    /// <summary>Dissipated by friction since the start of this leg [J].</summary>
    public const int Dissipated = 22;

    /// <summary>Number of friction places that stick.</summary>
    public const int Sticking = 23;

    /// <summary>Whether the state is an output step (1) or only an event (0).</summary>
    public const int OutputStep = 24;

    /// <summary>Places that stick, as bits in the order of <see cref="PlaceNames"/>.</summary>
    public const int StickingPlaces = 25;

    /// <summary>Columns before the bars.</summary>
    public const int FixedColumns = 26;

    /// <summary>Columns of a bar.</summary>
    public const int BarColumns = 2;

    /// <summary>Columns of a finger.</summary>
    public const int FingerColumns = 24;

    /// <summary>Names of the fingers.</summary>
    public IReadOnlyList<string> FingerNames { get; }

    /// <summary>Names of the bars.</summary>
    public IReadOnlyList<string> BarNames { get; }

    /// <summary>Names of the places that may rub, in the order of their bits.</summary>
    public IReadOnlyList<string> PlaceNames { get; init; } = [];

    /// <summary>Number of columns.</summary>
    public int Columns { get; }

    /// <summary>Tilt of a bar [rad].</summary>
    /// <param name="bar">Index of the bar.</param>
    public static int Tilt(int bar) => FixedColumns + BarColumns * bar;

    /// <summary>Load on the pivot of a bar [N].</summary>
    /// <param name="bar">Index of the bar.</param>
    public static int Pivot(int bar) => FixedColumns + BarColumns * bar + 1;

    /// <summary>Flexion q of a joint [rad].</summary>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="joint">0 MCP, 1 PIP, 2 DIP.</param>
    public int Joint(int finger, int joint) => FingerBase(finger) + joint;

    /// <summary>Contact force of a segment [N].</summary>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="segment">0 proximal, 1 middle, 2 distal.</param>
    public int Contact(int finger, int segment) => FingerBase(finger) + 3 + segment;

    /// <summary>Overlap of a segment with the object [m]; negative is a gap; NaN without an object.</summary>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="segment">0 proximal, 1 middle, 2 distal.</param>
    public int Overlap(int finger, int segment) => FingerBase(finger) + 6 + segment;

    /// <summary>Load on a joint pin [N]; a lower bound at PIP and DIP of a ratio-coupled finger.</summary>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="joint">0 MCP, 1 PIP, 2 DIP.</param>
    public int Pin(int finger, int joint) => FingerBase(finger) + 9 + joint;

    /// <summary>Travel of the finger's leaf [m].</summary>
    /// <param name="finger">Index of the finger.</param>
    public int LeafTravel(int finger) => FingerBase(finger) + 12;

    /// <summary>Tension of the pull at the leaf [N].</summary>
    /// <param name="finger">Index of the finger.</param>
    public int LeafPull(int finger) => FingerBase(finger) + 13;

    /// <summary>Tension of the pull behind its guide, at the finger [N].</summary>
    /// <param name="finger">Index of the finger.</param>
    public int FingerPull(int finger) => FingerBase(finger) + 14;

    /// <summary>Fingertip (end of the centre line), x [m]; y is the next column.</summary>
    /// <param name="finger">Index of the finger.</param>
    public int TipX(int finger) => FingerBase(finger) + 15;

    /// <summary>Contact point on the centre line of a segment, x [m]; y is the next column; NaN without an object.</summary>
    /// <param name="finger">Index of the finger.</param>
    /// <param name="segment">0 proximal, 1 middle, 2 distal.</param>
    public int ContactPointX(int finger, int segment) => FingerBase(finger) + 17 + 2 * segment;

    /// <summary>Whether the finger is locked (1) or free (0).</summary>
    /// <param name="finger">Index of the finger.</param>
    public int Locked(int finger) => FingerBase(finger) + 23;

    private int FingerBase(int finger) => FixedColumns + BarColumns * BarNames.Count + FingerColumns * finger;
}
