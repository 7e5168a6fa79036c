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
    private Vector2D _slotAtRest;

    // Pull link: direction, and first and second derivatives of length L and angle α.
    private Vector2D _pullUnit;
    private double _pullLength, _lPhi, _lTheta, _lPhiPhi, _lPhiTheta, _lThetaTheta;
    private double _aPhi, _aTheta, _aPhiPhi, _aPhiTheta, _aThetaTheta;

    // Transfer link: the same over (φ, d, s).
    private readonly double[] _m1 = new double[3], _m2 = new double[9], _b1 = new double[3], _b2 = new double[9];
    private Vector2D _transferUnit, _slotNow, _output;
    private double _transferAngle, _pullAngle;

    // Travel of the leaf of finger f: s + Σ_b arm·sin t, arms signed: minus the first arm, plus the second.
    private double[] _arms = []; // f·bars + bar; 0 where the finger is not behind the bar
    private int[] _ends = [];    // f·bars + bar: 1, 2 = behind the bar's first, second end; 0 = not behind it

    // Crank's turn, forearm's turn and the tilts, with their sines and cosines; the tilts' in every lane too.
    private double[] _angle = [], _angleSin = [], _angleCos = [];
    private Lane[] _tiltSin = [], _tiltCos = [];

    /// <summary>Pull-link force, tension positive [N].</summary>
    public double PullForce { get; private set; }

    /// <summary>Elongation of the pull link past its free length [m].</summary>
    public double PullElongation { get; private set; }

    /// <summary>Transfer-link force, tension positive [N].</summary>
    public double TransferForce { get; private set; }

    /// <summary>Elongation of the transfer link [m].</summary>
    public double TransferElongation { get; private set; }

    /// <summary>Whether the pull link carries load, where it is a cord.</summary>
    public bool PullTaut { get; set; } = true;

    /// <summary>Whether the transfer link carries load, where it is a cord.</summary>
    public bool TransferTaut { get; set; } = true;

    /// <summary>Load along the slot [N].</summary>
    public double SlotLoad => TransferForce * _transferUnit.Dot(_slotNow);

    /// <summary>Force of the transfer link along the rail in the sense of closing [N].</summary>
    public double CarriageForce => -TransferForce * _transferUnit.Dot(_railDirection);

    /// <summary>Distance from the fulcrum to the output pin [m].</summary>
    public double OutputRadius => _output.Length;

    /// <summary>Distance from the fulcrum to the line of the transfer link [m].</summary>
    public double OutputArm => Math.Abs(_output.Cross(_transferUnit));

    /// <summary>∂L/∂θ and ∂L/∂φ of the pull link [m/rad]: zero at a dead centre.</summary>
    public (double Theta, double Phi) PullArms => (_lTheta, _lPhi);

    /// <summary>Rates of the two arms along (φ rate, θ rate).</summary>
    public (double Theta, double Phi) PullArmRates(double phiRate, double thetaRate) =>
        (_lPhiTheta * phiRate + _lThetaTheta * thetaRate, _lPhiPhi * phiRate + _lPhiTheta * thetaRate);

    /// <summary>∂s/∂d at fixed crank with a rigid transfer link: −L_d/L_s.</summary>
    public double CarriagePerShift(double phi, double d, double s)
    {
        double turn = _crankSense * phi;
        Vector2D slot = _slotAtRest.Rotated(turn);
        Vector2D v = _drive.Rail.Rest + s * _railDirection - _drive.Crank.Fulcrum - _drive.Crank.Output.Rotated(turn) - d * slot;
        return v.Dot(slot) / v.Dot(_railDirection);
    }

    private void SetUpTrunk()
    {
        BellCrank crank = _drive.Crank;
        PullLink pull = _drive.PullLink;
        Vector2D b = crank.Fulcrum + crank.Input;
        Vector2D c = crank.Fulcrum + crank.Output;
        _railDirection = Vector2D.AtAngle(_drive.Rail.DirectionRadians);
        _slotAtRest = Vector2D.AtAngle(crank.Slot?.DirectionRadians ?? 0);
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
        _tiltSin = new Lane[_bars.Length];
        _tiltCos = new Lane[_bars.Length];
        int index = 0;
        Descend(_drive.Tree, [], ref index);

        void Descend(BalanceNode node, List<(int Bar, int End, double Arm)> above, ref int bar)
        {
            if (node is FingerLeaf leaf)
            {
                foreach ((int b, int end, double arm) in above)
                {
                    _arms[leaf.FingerIndex * _bars.Length + b] = arm;
                    _ends[leaf.FingerIndex * _bars.Length + b] = end;
                }

                return;
            }

            BalanceBar own = (BalanceBar)node;
            int mine = bar++;
            Descend(own.First, [.. above, (mine, 1, -own.FirstArm)], ref bar);
            Descend(own.Second, [.. above, (mine, 2, own.SecondArm)], ref bar);
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
            (Lane s, Lane c) = Vector256.SinCos(Vector256.Create<double>(angle[i..]));
            s.CopyTo(sin[i..]);
            c.CopyTo(cos[i..]);
        }

        for (int b = 0; b < _bars.Length; b++)
        {
            _tiltSin[b] = Vector256.Create(sin[2 + b]);
            _tiltCos[b] = Vector256.Create(cos[2 + b]);
        }
    }

    /// <summary>A vector of the crank, as the crank stands.</summary>
    private Vector2D Cranked(Vector2D v) => new(_angleCos[0] * v.X - _angleSin[0] * v.Y, _angleSin[0] * v.X + _angleCos[0] * v.Y);

    /// <summary>A vector of the forearm, as the wrist stands.</summary>
    private Vector2D Wristed(Vector2D v) => new(_angleCos[1] * v.X - _angleSin[1] * v.Y, _angleSin[1] * v.X + _angleCos[1] * v.Y);

    private void AddPullLink()
    {
        PullLink link = _drive.PullLink;
        BellCrank crank = _drive.Crank;
        Vector2D arm = Cranked(crank.Input);
        Vector2D anchor = Wristed(link.Anchor);
        Vector2D v = crank.Fulcrum + arm - anchor;
        double length = v.Length, inverse = 1 / length;
        Vector2D n = inverse * v;
        Vector2D vPhi = _crankSense * arm.Perpendicular;       // ∂v/∂φ; ∂²v/∂φ² = −arm
        Vector2D vTheta = -_forearmSense * anchor.Perpendicular; // ∂v/∂θ; ∂²v/∂θ² = +anchor
        _pullUnit = n;
        _pullLength = length;
        _lPhi = n.Dot(vPhi);
        _lTheta = n.Dot(vTheta);
        _lPhiPhi = (vPhi.Dot(vPhi) - _lPhi * _lPhi) * inverse - n.Dot(arm);
        _lPhiTheta = (vPhi.Dot(vTheta) - _lPhi * _lTheta) * inverse;
        _lThetaTheta = (vTheta.Dot(vTheta) - _lTheta * _lTheta) * inverse + n.Dot(anchor);
        _aPhi = n.Cross(vPhi) * inverse;
        _aTheta = n.Cross(vTheta) * inverse;
        _aPhiPhi = -n.Cross(arm) * inverse - 2 * _aPhi * _lPhi * inverse;
        _aPhiTheta = vTheta.Cross(vPhi) * inverse * inverse - 2 * _aPhi * _lTheta * inverse;
        _aThetaTheta = n.Cross(anchor) * inverse - 2 * _aTheta * _lTheta * inverse;
        _pullAngle = HasFriction ? Math.Atan2(v.Y, v.X) : 0;

        PullElongation = length - _pullRest;
        bool carries = link.Kind == LinkKind.Rod || (ModesByValue ? PullElongation > 0 : PullTaut);
        double k = carries ? link.Stiffness : 0;
        double t = k * PullElongation;
        PullForce = t;
        PullStiffness = k;
        Stored += 0.5 * t * PullElongation;
        R[Phi] += t * _lPhi;
        ThetaDerivative[Phi] += k * _lPhi * _lTheta + t * _lPhiTheta;
        Jacobian.A[0] += k * _lPhi * _lPhi + t * _lPhiPhi;
    }

    private double PullStiffness { get; set; }

    private double TransferStiffness { get; set; }

    private void AddTransferLink()
    {
        BellCrank crank = _drive.Crank;
        TransferLink link = _drive.TransferLink;
        Vector2D slot = Cranked(_slotAtRest);
        Vector2D output = Cranked(crank.Output) + X[Shift] * slot;
        Vector2D v = _drive.Rail.Rest + X[Carriage] * _railDirection - crank.Fulcrum - output;
        double length = v.Length, inverse = 1 / length;
        Vector2D n = inverse * v;
        Vector2D v0 = -_crankSense * output.Perpendicular, v1 = -slot, v2 = _railDirection;
        _output = output;
        _slotNow = slot;
        _transferUnit = n;
        _transferAngle = HasFriction ? Math.Atan2(v.Y, v.X) : 0;
        Set(_m1, n.Dot(v0), n.Dot(v1), n.Dot(v2));
        Set(_b1, n.Cross(v0) * inverse, n.Cross(v1) * inverse, n.Cross(v2) * inverse);
        Vector2D v01 = -_crankSense * slot.Perpendicular;
        SecondDerivatives(0, 0, v0, v0, output, n, inverse);
        SecondDerivatives(0, 1, v0, v1, v01, n, inverse);
        SecondDerivatives(0, 2, v0, v2, default, n, inverse);
        SecondDerivatives(1, 1, v1, v1, default, n, inverse);
        SecondDerivatives(1, 2, v1, v2, default, n, inverse);
        SecondDerivatives(2, 2, v2, v2, default, n, inverse);

        TransferElongation = length - _transferRest;
        bool carries = link.Kind == LinkKind.Rod || (ModesByValue ? TransferElongation > 0 : TransferTaut);
        double k = carries ? link.Stiffness : 0;
        double t = k * TransferElongation;
        TransferForce = t;
        TransferStiffness = k;
        Stored += 0.5 * t * TransferElongation;
        int nt = TrunkCount;
        for (int a = 0; a < 3; a++)
        {
            R[a] += t * _m1[a];
            for (int b = 0; b < 3; b++)
            {
                Jacobian.A[a * nt + b] += k * _m1[a] * _m1[b] + t * _m2[a * 3 + b];
            }
        }

        if (crank.Slot is { } spring)
        {
            double d = X[Shift];
            R[Shift] += spring.Preload + spring.Rate * d;
            Jacobian.A[nt + 1] += spring.Rate;
            Stored += d * (spring.Preload + 0.5 * spring.Rate * d);
        }
    }

    private static void Set(double[] target, double a, double b, double c)
    {
        target[0] = a;
        target[1] = b;
        target[2] = c;
    }

    /// <summary>Second derivatives of length and angle of v: L_ab = (v_a·v_b − L_a L_b)/L + n·v_ab; α_ab = (v_b×v_a)/L² + n×v_ab/L − 2α_a L_b/L.</summary>
    private void SecondDerivatives(int a, int b, Vector2D va, Vector2D vb, Vector2D vab, Vector2D n, double inverse)
    {
        double l = (va.Dot(vb) - _m1[a] * _m1[b]) * inverse + n.Dot(vab);
        double angle = vb.Cross(va) * inverse * inverse + n.Cross(vab) * inverse - 2 * _b1[a] * _m1[b] * inverse;
        _m2[a * 3 + b] = l;
        _m2[b * 3 + a] = l;
        _b2[a * 3 + b] = angle;
        _b2[b * 3 + a] = angle;
    }
}
