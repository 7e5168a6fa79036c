namespace Graspwright.Mechanics.Run;

/// <summary>One closing run, with its opening where asked for.</summary>
/// <remarks>Rows of <see cref="Closing"/> and <see cref="Opening"/> are laid out by <see cref="Layout"/>.</remarks>
public sealed class RunResult
{
    /// <summary>Which column holds what.</summary>
    public required TraceLayout Layout { get; init; }

    /// <summary>Recorded states of closing: each output step and each event, θ rising.</summary>
    public required IReadOnlyList<double[]> Closing { get; init; }

    /// <summary>Recorded states of opening, θ falling; empty where not asked for.</summary>
    public required IReadOnlyList<double[]> Opening { get; init; }

    /// <summary>Events in the order in which they happened.</summary>
    public required IReadOnlyList<RunEvent> Events { get; init; }

    /// <summary>Jumps in the order in which they happened.</summary>
    public required IReadOnlyList<RunJump> Jumps { get; init; }

    /// <summary>Peaks of link and pin forces over the whole run.</summary>
    public required IReadOnlyList<ForcePeak> Peaks { get; init; }

    /// <summary>Why the closing ended.</summary>
    public required RunEnd End { get; init; }

    /// <summary>Where the path was lost; <see langword="null"/> = it was not.</summary>
    public RunFailure? Failure { get; init; }

    /// <summary>∫τ dθ of closing [J].</summary>
    public required double WorkIn { get; init; }

    /// <summary>−∫τ dθ of opening, the work given back to the wrist [J].</summary>
    public double WorkBack { get; init; }

    /// <summary>Dissipated by friction while closing [J].</summary>
    public double DissipatedClosing { get; init; }

    /// <summary>Dissipated by friction while opening [J].</summary>
    public double DissipatedOpening { get; init; }

    /// <summary>Energy lost in jumps while closing, locks included [J].</summary>
    public double LostInJumps { get; init; }

    /// <summary>Work of closing less stored, dissipated and lost [J]: how well the books balance.</summary>
    public double BalanceResidual { get; init; }

    /// <summary>Greatest τ_close − τ_open [N·m].</summary>
    public double LoopMax { get; init; }

    /// <summary>θ of it [rad].</summary>
    public double LoopMaxTheta { get; init; }

    /// <summary>−∫(∂s/∂d) dd at fixed crank over the shift [m]; 0 without a shift.</summary>
    public double ShiftGiveBack { get; init; }

    /// <summary>Newton steps taken.</summary>
    public long NewtonSteps { get; init; }

    /// <summary>Matrix factorisations.</summary>
    public long Factorisations { get; init; }

    /// <summary>State at the end of closing.</summary>
    public double[] AtEnd => Closing[^1];

    /// <summary>First event of a kind, or <see langword="null"/>.</summary>
    /// <param name="kind">Kind.</param>
    public RunEvent? First(EventKind kind)
    {
        foreach (RunEvent e in Events)
        {
            if (e.Kind == kind)
            {
                return e;
            }
        }

        return null;
    }
}

/// <summary>What happened.</summary>
public enum EventKind
{
    /// <summary>A segment touches.</summary>
    Touch,

    /// <summary>Every unlocked finger touches at once, for the first time.</summary>
    AllTouch,

    /// <summary>A touching segment stops touching.</summary>
    ContactLost,

    /// <summary>The slot's shift leaves its near end.</summary>
    ShiftStart,

    /// <summary>The slot's shift reaches its far end.</summary>
    ShiftEnd,

    /// <summary>A coordinate reaches a stop.</summary>
    StopReached,

    /// <summary>A coordinate leaves a stop.</summary>
    StopLeft,

    /// <summary>A cord goes slack.</summary>
    Slack,

    /// <summary>A cord comes taut.</summary>
    Taut,

    /// <summary>A lock acts.</summary>
    Lock,

    /// <summary>The effort limit is met.</summary>
    EffortLimit,

    /// <summary>The wearer's travel is used up.</summary>
    TravelEnd,

    /// <summary>The pull link's line passes through the fulcrum or the wrist axis.</summary>
    DeadCentre,
}

/// <summary>An event, located inside the step.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="ThetaRadians">Wrist angle [rad].</param>
/// <param name="Opening">Whether the hand was opening.</param>
/// <param name="Subject">Finger, coordinate, link or bar, by name: <c>index</c>, <c>crank</c>, <c>slot</c>, <c>carriage</c>, <c>bar root</c>, <c>pull link</c>.</param>
/// <param name="Part">Segment or joint 1 to 3 where the subject is a finger; 0 else.</param>
/// <param name="Value">Slot load [N] for shifts, peak force of the contact [N] for lost contacts, else 0.</param>
/// <param name="InJump">Whether it happened inside a jump.</param>
public sealed record RunEvent(EventKind Kind, double ThetaRadians, bool Opening, string Subject, int Part, double Value, bool InJump);

/// <summary>A jump to another equilibrium at one wrist angle.</summary>
/// <param name="ThetaRadians">Wrist angle [rad].</param>
/// <param name="Opening">Whether the hand was opening.</param>
/// <param name="EnergyLost">Energy lost [J], friction in the jump not counted.</param>
/// <param name="Before">Recorded state before.</param>
/// <param name="After">Recorded state after.</param>
/// <param name="ByLock">Whether a lock set the energy free.</param>
public sealed record RunJump(double ThetaRadians, bool Opening, double EnergyLost, double[] Before, double[] After, bool ByLock);

/// <summary>Greatest value of a force over closing and opening.</summary>
/// <param name="Subject">Link or pin by name: <c>pull link</c>, <c>transfer link</c>, <c>fulcrum</c>, <c>rail</c>, <c>bar root</c>, <c>pull index</c>, <c>index mcp</c>.</param>
/// <param name="Newtons">Force [N].</param>
/// <param name="ThetaRadians">Wrist angle of it [rad].</param>
/// <param name="Opening">Whether the hand was opening.</param>
public sealed record ForcePeak(string Subject, double Newtons, double ThetaRadians, bool Opening);
