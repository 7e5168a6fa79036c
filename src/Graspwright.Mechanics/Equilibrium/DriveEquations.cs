using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Residual and exact Jacobian of the drive's equilibrium at one wrist angle, friction of the same state included.</summary>
/// <remarks>
/// <para>
/// Unknowns: crank φ, slot d, carriage s, bar tilts t (the trunk), then each finger's joints: q₁ of a coupled finger, q₁ q₂
/// q₃ of an adaptive one. Residual r = ∂Π/∂x + Σ M_j ∂γ_j/∂x with one friction force M_j for each place that rubs and
/// γ_j the way it slides. SI units throughout. <c>docs/physics.md</c> has the derivation; files: <c>.Trunk</c> links,
/// crank, rail and bars; <c>.Fingers</c> the fingers, four at a time in a <see cref="FingerGroup"/>; <c>.Friction</c>
/// places that rub; <c>.Rates</c> directional derivatives.
/// </para>
/// <para>
/// Contacts and cords follow given modes (touching or not, taut or slack) so that each piece of the path is smooth;
/// with <see cref="ModesByValue"/> they follow the sign of overlap and elongation instead.
/// </para>
/// </remarks>
internal sealed partial class DriveEquations
{
    /// <summary>Index of the crank angle φ.</summary>
    public const int Phi = 0;

    /// <summary>Index of the slot shift d.</summary>
    public const int Shift = 1;

    /// <summary>Index of the carriage travel s.</summary>
    public const int Carriage = 2;

    private readonly DriveModel _drive;
    private readonly BalanceBar[] _bars;
    private readonly Finger[] _fingers;
    private readonly FingerState _state;
    private readonly double _forearmSense; // +1 flexion, −1 extension

    /// <summary>Lays out the unknowns of a drive.</summary>
    public DriveEquations(DriveModel drive, HeldObject held)
    {
        _drive = drive;
        _fingers = [.. drive.Fingers];
        List<BalanceBar> bars = [];
        Walk(drive.Tree, bars);
        _bars = [.. bars];
        TrunkCount = 3 + _bars.Length;
        Offsets = new int[_fingers.Length];
        Sizes = new int[_fingers.Length];
        int next = TrunkCount;
        for (int f = 0; f < _fingers.Length; f++)
        {
            Offsets[f] = next;
            Sizes[f] = _fingers[f].Joints is AdaptiveJoints ? 3 : 1;
            next += Sizes[f];
        }

        Count = next;
        _state = new FingerState(Count, _fingers.Length);
        ThetaDerivative = new double[Count];
        Low = new double[Count];
        High = new double[Count];
        Ridge = new double[Count];
        Frozen = new bool[Count];
        _forearmSense = drive.Wrist.Direction == DrivingDirection.Flexion ? 1 : -1;
        Held = held;
        Jacobian = new ArrowMatrix(TrunkCount, Offsets, Sizes);
        SetUpTrunk();
        SetUpFingers(held);
        SetUpFriction();
        SetBounds();
    }

    /// <summary>What is held.</summary>
    public HeldObject Held { get; }

    /// <summary>Number of unknowns.</summary>
    public int Count { get; }

    /// <summary>Number of trunk unknowns.</summary>
    public int TrunkCount { get; }

    /// <summary>Number of bars.</summary>
    public int BarCount => _bars.Length;

    /// <summary>Number of fingers.</summary>
    public int FingerCount => _fingers.Length;

    /// <summary>First unknown of each finger.</summary>
    public int[] Offsets { get; }

    /// <summary>Unknowns of each finger.</summary>
    public int[] Sizes { get; }

    /// <summary>Bars in the order of a walk from the root.</summary>
    public IReadOnlyList<BalanceBar> Bars => _bars;

    /// <summary>Unknowns [rad or m].</summary>
    public double[] X => _state.X;

    /// <summary>Wrist angle [rad].</summary>
    public double Theta { get; set; }

    /// <summary>Residual of the last evaluation [N·m or N].</summary>
    public double[] R => _state.R;

    /// <summary>∂r/∂θ of the last evaluation.</summary>
    public double[] ThetaDerivative { get; }

    /// <summary>∂r/∂x of the last evaluation.</summary>
    public ArrowMatrix Jacobian { get; }

    /// <summary>Lower stops.</summary>
    public double[] Low { get; }

    /// <summary>Upper stops.</summary>
    public double[] High { get; }

    /// <summary>Tiny stiffness that keeps flat directions where they are; it enters the matrix, never the residual.</summary>
    public double[] Ridge { get; }

    /// <summary>Unknowns that can never move: no slot, rigid bar, fused joint, locked finger.</summary>
    public bool[] Frozen { get; }

    /// <summary>Whether contacts and cords follow the sign of overlap and elongation.</summary>
    public bool ModesByValue
    {
        get => _state.ModesByValue;
        set => _state.ModesByValue = value;
    }

    /// <summary>Whether the change of friction bounds enters the Jacobian; without it the friction part is symmetric.</summary>
    public bool BoundDerivatives
    {
        get => _state.BoundDerivatives;
        set => _state.BoundDerivatives = value;
    }

    /// <summary>Stored energy of the last evaluation [J].</summary>
    public double Stored { get; private set; }

    /// <summary>Evaluates residual, Jacobian and forces at <see cref="X"/> and <see cref="Theta"/>.</summary>
    public void Evaluate()
    {
        Array.Clear(R, 0, TrunkCount);
        Array.Clear(Jacobian.A);
        Stored = 0;
        Turn();
        AddPullLink();
        AddTransferLink();
        AddLinkFriction();
        WriteTrunk();
        AddFingers();
        AddBarFriction();
    }

    private static void Walk(BalanceNode node, List<BalanceBar> bars)
    {
        if (node is BalanceBar bar)
        {
            bars.Add(bar);
            Walk(bar.First, bars);
            Walk(bar.Second, bars);
        }
    }

    private void SetBounds()
    {
        High[Phi] = _drive.Crank.StopRadians;
        High[Shift] = _drive.Crank.Slot?.Length ?? 0;
        High[Carriage] = _drive.Rail.Travel;
        Frozen[Shift] = _drive.Crank.Slot is null;
        for (int b = 0; b < _bars.Length; b++)
        {
            High[3 + b] = _bars[b].TiltStopRadians;
            Low[3 + b] = -_bars[b].TiltStopRadians;
            Frozen[3 + b] = _bars[b].TiltStopRadians == 0;
        }

        for (int i = 0; i < Count; i++)
        {
            Ridge[i] = i is Shift or Carriage ? 1e-3 : 1e-9;
        }

        for (int f = 0; f < _fingers.Length; f++)
        {
            SetFingerBounds(f);
        }
    }
}
