using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Pull link, slot spring and transfer link.</content>
/// <remarks>
/// Derivatives of the links stand side by side by (φ, d, s, θ), so that one operation serves a whole row of the
/// Jacobian. For the vector v between a link's pins, L its length, n = v/L and α its angle:
/// L_a = n·v_a, α_a = n × v_a/L, L_ab = (v_a·v_b − L_a L_b)/L + n·v_ab, α_ab = (v_b × v_a)/L² + n × v_ab/L − 2α_a L_b/L.
/// </remarks>
internal sealed partial class DriveEquations
{
    // Rows of the Jacobian and residual of (φ, d, s), gathered before they are written down.
    private Lane _rowPhi, _rowShift, _rowCarriage, _trunkRow;

    // Pull link: direction, ∂L and ∂α by (φ, 0, 0, θ), and their derivatives by φ.
    private Vector2D _pullUnit;
    private Lane _pullSlope, _pullTurn, _pullBend, _pullTurnBend;
    private double _lThetaTheta, _aThetaTheta, _pullAngle;

    // Transfer link: ∂L and ∂α by (φ, d, s, 0), and the rows of ∂²α.
    private Vector2D _transferUnit, _slotNow, _output;
    private Lane _transferSlope, _transferTurn, _turnByPhi, _turnByShift, _turnByCarriage;
    private double _transferAngle;

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
    public (double Theta, double Phi) PullArms => (_pullSlope[3], _pullSlope[0]);

    /// <summary>Rates of the two arms along (φ rate, θ rate).</summary>
    public (double Theta, double Phi) PullArmRates(double phiRate, double thetaRate) =>
        (_pullBend[3] * phiRate + _lThetaTheta * thetaRate, _pullBend[0] * phiRate + _pullBend[3] * thetaRate);

    private double PullStiffness { get; set; }

    private double TransferStiffness { get; set; }

    private void AddPullLink()
    {
        PullLink link = _drive.PullLink;
        BellCrank crank = _drive.Crank;
        Vector2D arm = Cranked(crank.Input), anchor = Wristed(link.Anchor), v = crank.Fulcrum + arm - anchor;
        double length = v.Length, inverse = 1 / length;
        Vector2D n = inverse * v;
        Vector2D vPhi = _crankSense * arm.Perpendicular;         // ∂v/∂φ; ∂²v/∂φ² = −arm
        Vector2D vTheta = -_forearmSense * anchor.Perpendicular; // ∂v/∂θ; ∂²v/∂θ² = +anchor
        double lPhi = n.Dot(vPhi), lTheta = n.Dot(vTheta), aPhi = n.Cross(vPhi) * inverse, aTheta = n.Cross(vTheta) * inverse;
        double lPhiPhi = (vPhi.Dot(vPhi) - lPhi * lPhi) * inverse - n.Dot(arm);
        double lPhiTheta = (vPhi.Dot(vTheta) - lPhi * lTheta) * inverse;
        double aPhiPhi = -n.Cross(arm) * inverse - 2 * aPhi * lPhi * inverse;
        double aPhiTheta = vTheta.Cross(vPhi) * inverse * inverse - 2 * aPhi * lTheta * inverse;
        _pullUnit = n;
        _pullSlope = Vector256.Create(lPhi, 0, 0, lTheta);
        _pullTurn = Vector256.Create(aPhi, 0, 0, aTheta);
        _pullBend = Vector256.Create(lPhiPhi, 0, 0, lPhiTheta);
        _pullTurnBend = Vector256.Create(aPhiPhi, 0, 0, aPhiTheta);
        _lThetaTheta = (vTheta.Dot(vTheta) - lTheta * lTheta) * inverse + n.Dot(anchor);
        _aThetaTheta = n.Cross(anchor) * inverse - 2 * aTheta * lTheta * inverse;
        _pullAngle = HasFriction ? Math.Atan2(v.Y, v.X) : 0;

        PullElongation = length - _pullRest;
        bool carries = link.Kind == LinkKind.Rod || (ModesByValue ? PullElongation > 0 : PullTaut);
        double k = carries ? link.Stiffness : 0, t = k * PullElongation;
        PullForce = t;
        PullStiffness = k;
        Stored += 0.5 * t * PullElongation;
        _trunkRow = t * _pullSlope;
        _rowPhi = k * lPhi * _pullSlope + t * _pullBend;
    }

    private void AddTransferLink()
    {
        BellCrank crank = _drive.Crank;
        TransferLink link = _drive.TransferLink;
        Slot? arc = Curved;
        double d = X[Shift];
        Vector2D slot = Cranked(arc?.Along(d) ?? _slotAtRest), output = Cranked(crank.Output) + (arc is null ? d * slot : Cranked(arc.At(d)));
        Vector2D v = _drive.Rail.Rest + X[Carriage] * _railDirection - crank.Fulcrum - output;
        double length = v.Length, inverse = 1 / length;
        Vector2D n = inverse * v, across = slot.Perpendicular, turned = -_crankSense * across; // ∂²v/∂φ∂d; ∂²v/∂φ² = output, ∂²v/∂d² = −κ across
        Vector2D v0 = -_crankSense * output.Perpendicular, v1 = -slot, v2 = _railDirection;
        Lane x = Vector256.Create(v0.X, v1.X, v2.X, 0), y = Vector256.Create(v0.Y, v1.Y, v2.Y, 0);
        Lane slope = n.X * x + n.Y * y, turn = inverse * (n.X * y - n.Y * x);
        _output = output;
        _slotNow = slot;
        _transferUnit = n;
        _transferSlope = slope;
        _transferTurn = turn;
        _transferAngle = HasFriction ? Math.Atan2(v.Y, v.X) : 0;

        TransferElongation = length - _transferRest;
        bool carries = link.Kind == LinkKind.Rod || (ModesByValue ? TransferElongation > 0 : TransferTaut);
        double k = carries ? link.Stiffness : 0, t = k * TransferElongation;
        TransferForce = t;
        TransferStiffness = k;
        Stored += 0.5 * t * TransferElongation;

        double mixed = n.Dot(turned), bent = -_curvature * n.Dot(across);
        _trunkRow += t * slope;
        _rowPhi += k * slope[0] * slope + t * Bend(inverse, x, y, slope, v0, slope[0], Vector256.Create(n.Dot(output), mixed, 0, 0));
        _rowShift = k * slope[1] * slope + t * Bend(inverse, x, y, slope, v1, slope[1], Vector256.Create(mixed, bent, 0, 0));
        _rowCarriage = k * slope[2] * slope + t * Bend(inverse, x, y, slope, v2, slope[2], default);
        if (HasFriction)
        {
            double turnedMixed = n.Cross(turned) * inverse, turnedBent = -_curvature * n.Cross(across) * inverse;
            _turnByPhi = TurnBend(inverse, x, y, slope, v0, turn[0], Vector256.Create(n.Cross(output) * inverse, turnedMixed, 0, 0));
            _turnByShift = TurnBend(inverse, x, y, slope, v1, turn[1], Vector256.Create(turnedMixed, turnedBent, 0, 0));
            _turnByCarriage = TurnBend(inverse, x, y, slope, v2, turn[2], default);
        }

        if (crank.Slot is { } spring)
        {
            _trunkRow += Vector256.Create(0, spring.Preload + spring.Rate * d, 0, 0);
            _rowShift += Vector256.Create(0, spring.Rate, 0, 0);
            Stored += d * (spring.Preload + 0.5 * spring.Rate * d);
        }
    }

    /// <summary>Row of ∂²L for one v_a: (v_a·v_b − L_a L_b)/L and the second derivative of v itself along n.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lane Bend(double inverse, Lane x, Lane y, Lane slope, Vector2D va, double la, Lane second) =>
        inverse * (va.X * x + va.Y * y - la * slope) + second;

    /// <summary>Row of ∂²α for one v_a: (v_b × v_a)/L² − 2α_a L_b/L and the second derivative of v itself across n.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lane TurnBend(double inverse, Lane x, Lane y, Lane slope, Vector2D va, double aa, Lane second) =>
        inverse * (inverse * (va.Y * x - va.X * y) - 2 * aa * slope) + second;

    /// <summary>Writes down the rows gathered for crank, slot and carriage.</summary>
    private void WriteTrunk()
    {
        Span<double> a = Jacobian.A, r = R;
        Lane row = _rowPhi;
        for (int at = 0; at < 3; at++)
        {
            Span<double> target = a.Slice(at * Jacobian.Stride, 3);
            target[0] = row[0];
            target[1] = row[1];
            target[2] = row[2];
            ThetaDerivative[at] = row[3]; // the fourth column is the wrist's
            row = at == 0 ? _rowShift : _rowCarriage;
        }

        r[0] = _trunkRow[0];
        r[1] = _trunkRow[1];
        r[2] = _trunkRow[2];
    }
}
