using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Pull link, crank, slot, transfer link, rail and the geometry of the bars.</content>
internal sealed partial class DriveEquations
{
    private const double ShortestLink = 1e-6;

    private double _crankSense; // ± of φ
    private double _pullRest, _transferRest;
    private Vector2D _railDirection;
    private Vector2D _slotAtRest; // its direction where it begins
    private double _curvature;    // of the slot; 0 = straight

    // Travel of the leaf of finger f: s + Σ_b arm·sin t, arms signed: minus the first arm, plus the second.
    private double[] _arms = []; // f·bars + bar; 0 where the finger is not behind the bar
    private int[] _ends = [];    // f·bars + bar: 1, 2 = behind the bar's first, second end; 0 = not behind it

    // Crank's turn, forearm's turn and the tilts, with their sines and cosines.
    private double[] _angle = [], _angleSin = [], _angleCos = [];

    /// <summary>∂s/∂d at fixed crank with a rigid transfer link: −L_d/L_s.</summary>
    public double CarriagePerShift(double phi, double d, double s)
    {
        double turn = _crankSense * phi;
        Slot? arc = Curved;
        Vector2D slot = (arc?.Along(d) ?? _slotAtRest).Rotated(turn), shifted = arc?.At(d).Rotated(turn) ?? d * slot;
        Vector2D v = _drive.Rail.Rest + s * _railDirection - _drive.Crank.Fulcrum - _drive.Crank.Output.Rotated(turn) - shifted;
        return v.Dot(slot) / v.Dot(_railDirection);
    }

    /// <summary>The slot where it is an arc; <see langword="null"/> where it is straight, or there is none.</summary>
    private Slot? Curved => _curvature != 0 ? _drive.Crank.Slot : null;

    private void SetUpTrunk()
    {
        BellCrank crank = _drive.Crank;
        PullLink pull = _drive.PullLink;
        Vector2D b = crank.Fulcrum + crank.Input;
        Vector2D c = crank.Fulcrum + crank.Output;
        _railDirection = Vector2D.AtAngle(_drive.Rail.DirectionRadians);
        _slotAtRest = Vector2D.AtAngle(crank.Slot?.DirectionRadians ?? 0);
        _curvature = crank.Slot?.Curvature ?? 0;
        double pullPins = (b - pull.Anchor).Length;
        double transferPins = (_drive.Rail.Rest - c).Length;
        RequireLength(pullPins, "pull link");
        RequireLength(transferPins, "transfer link");
        RequireLength(crank.Input.Length, "crank input arm");
        RequireLength(crank.Output.Length, "crank output arm");
        RefuseSlackRod(pull.Kind, pull.Slack, "pull link");
        RefuseSlackRod(_drive.TransferLink.Kind, _drive.TransferLink.Slack, "transfer link");
        _pullRest = pullPins + pull.Slack;
        _transferRest = transferPins + _drive.TransferLink.Slack;

        // The crank turns the way that keeps the pull link's length: dφ/dθ = −L_θ/L_φ > 0.
        Vector2D unit = (1 / pullPins) * (b - pull.Anchor);
        double lTheta = -_forearmSense * unit.Dot(pull.Anchor.Perpendicular);
        double lPhi = unit.Dot(crank.Input.Perpendicular);
        RefuseDeadCentre(lTheta, pull.Anchor.Length, "wrist axis");
        RefuseDeadCentre(lPhi, crank.Input.Length, "fulcrum");
        _crankSense = lTheta * lPhi < 0 ? 1 : -1;
        SetUpLeaves();
    }

    private static void RequireLength(double length, string subject)
    {
        if (!(length > ShortestLink))
        {
            throw new DriveException(DriveFault.NoLength, subject, length, $"The {subject} has no length: its two ends lie on each other.");
        }
    }

    private static void RefuseSlackRod(LinkKind kind, double slack, string subject)
    {
        if (kind == LinkKind.Rod && slack > 0)
        {
            throw new DriveException(DriveFault.RodWithSlack, subject, slack, $"The {subject} is a rod, and a rod cannot hang slack.");
        }
    }

    private static void RefuseDeadCentre(double arm, double size, string through)
    {
        if (Math.Abs(arm) < 1e-6 * size)
        {
            throw new DriveException(DriveFault.DeadCentreAtRest, "pull link", arm, $"The pull link passes through the {through} at rest and cannot turn the crank.");
        }
    }

    private void SetUpLeaves()
    {
        _arms = new double[_fingers.Length * _bars.Length];
        _ends = new int[_arms.Length];
        _angle = new double[(2 + _bars.Length + 3) / 4 * 4];
        _angleSin = new double[_angle.Length];
        _angleCos = new double[_angle.Length];
        for (int b = 0; b < _bars.Length; b++)
        {
            Below(_bars[b].First, b, 1, -_bars[b].FirstArm);
            Below(_bars[b].Second, b, 2, _bars[b].SecondArm);
        }

        void Below(BalanceNode node, int bar, int end, double arm)
        {
            if (node is FingerLeaf leaf)
            {
                _arms[leaf.FingerIndex * _bars.Length + bar] = arm;
                _ends[leaf.FingerIndex * _bars.Length + bar] = end;
                return;
            }

            Below(((BalanceBar)node).First, bar, end, arm);
            Below(((BalanceBar)node).Second, bar, end, arm);
        }
    }

    /// <summary>Sines and cosines of crank, forearm and bars, found together.</summary>
    private void Turn()
    {
        Span<double> angle = _angle, sin = _angleSin, cos = _angleCos;
        angle[0] = _crankSense * X[Phi];
        angle[1] = _forearmSense * Theta;
        X.AsSpan(Carriage + 1, _bars.Length).CopyTo(angle[2..]);
        for (int i = 0; i < angle.Length; i += 4)
        {
            SineAndCosine.Of(Vector256.Create(angle[i], angle[i + 1], angle[i + 2], angle[i + 3]), out Lane s, out Lane c);
            (sin[i], sin[i + 1], sin[i + 2], sin[i + 3]) = (s[0], s[1], s[2], s[3]);
            (cos[i], cos[i + 1], cos[i + 2], cos[i + 3]) = (c[0], c[1], c[2], c[3]);
        }
    }

    /// <summary>A vector of the crank, as the crank stands.</summary>
    private Vector2D Cranked(Vector2D v) => new(_angleCos[0] * v.X - _angleSin[0] * v.Y, _angleSin[0] * v.X + _angleCos[0] * v.Y);

    /// <summary>A vector of the forearm, as the wrist stands.</summary>
    private Vector2D Wristed(Vector2D v) => new(_angleCos[1] * v.X - _angleSin[1] * v.Y, _angleSin[1] * v.X + _angleCos[1] * v.Y);
}
