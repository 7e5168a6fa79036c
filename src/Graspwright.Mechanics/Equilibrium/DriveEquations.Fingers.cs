using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Fingers: pulls, springs, contacts.</content>
internal sealed partial class DriveEquations
{
    private const int PerFinger = 3;
    private bool _hasObject, _isFace;
    private Vector2D _objectPoint, _faceNormal;
    private double _objectRadius;
    private FingerGeometry[] _geometry = [];
    private JointCoupling[] _pip = [], _dip = [];
    private bool[] _isCoupled = [], _dipFused = [];
    private int[] _limitingJoint = [];

    /// <summary>Whether each finger's pull is attached.</summary>
    public bool[] Attached { get; private set; } = [];

    /// <summary>Whether each finger's pull carries load.</summary>
    public bool[] Taut { get; private set; } = [];

    /// <summary>Whether each segment touches: finger·3 + segment.</summary>
    public bool[] Touching { get; private set; } = [];

    /// <summary>Overlap of each segment [m].</summary>
    public double[] Overlap { get; private set; } = [];

    /// <summary>Contact force of each segment [N].</summary>
    public double[] ContactForce { get; private set; } = [];

    /// <summary>Joint flexions q [rad], finger·3 + joint.</summary>
    public double[] Joint { get; private set; } = [];

    /// <summary>Elongation of each pull [m].</summary>
    public double[] PullElongations { get; private set; } = [];

    /// <summary>Tension at each leaf T₁ [N].</summary>
    public double[] LeafTension { get; private set; } = [];

    /// <summary>Travel of each leaf [m].</summary>
    public double[] LeafTravel { get; private set; } = [];

    /// <summary>Energy in contacts [J].</summary>
    public double ContactEnergy { get; private set; }

    /// <summary>Whether something is held.</summary>
    public bool HasObject => _hasObject;

    /// <summary>Geometry of a finger at the last evaluation.</summary>
    public FingerGeometry Geometry(int finger) => _geometry[finger];

    // Of the finger being added: gradient and Hessian of its own energy over (q₁, q₂, q₃), without the pull.
    private readonly double[] _g3 = new double[3], _h3 = new double[9];

    // Reduced to the finger's unknowns: take-up w, its slope and curvature; ∂leaf/∂trunk.
    private double[] _slopes = [];    // finger·3 + unknown
    private double[] _leafSlopes = []; // finger·nt + trunk unknown
    private readonly double[] _own = new double[3], _ownMatrix = new double[9], _curvature = new double[3];

    // Coupled fingers: dq₂/dq₁, dq₃/dq₁ and second derivatives.
    private double[] _chain = []; // finger·4

    /// <summary>Joint flexions of a finger from its unknowns.</summary>
    private void SetJoints(int f)
    {
        int o = Offsets[f], j = f * PerFinger;
        Joint[j] = X[o];
        if (!_isCoupled[f])
        {
            Joint[j + 1] = X[o + 1];
            Joint[j + 2] = X[o + 2];
            return;
        }

        _pip[f].TryEvaluate(X[o], out double q2, out double a1, out double a2);
        _dip[f].TryEvaluate(q2, out double q3, out double b1, out double b2);
        Joint[j + 1] = q2;
        Joint[j + 2] = q3;
        _chain[f * 4] = a1;
        _chain[f * 4 + 1] = b1 * a1;
        _chain[f * 4 + 2] = a2;
        _chain[f * 4 + 3] = b2 * a1 * a1 + b1 * a2;
    }

    private void AddFinger(int f)
    {
        Finger finger = _fingers[f];
        SetJoints(f);
        FingerGeometry geometry = _geometry[f];
        geometry.Place(Joint[f * 3], Joint[f * 3 + 1], Joint[f * 3 + 2]);
        Array.Clear(_h3);
        for (int j = 0; j < 3; j++)
        {
            double q = Joint[f * 3 + j], rate = _springRate[f * 3 + j], preload = _springPreload[f * 3 + j];
            _g3[j] = preload + rate * q;
            _h3[j * 4] = rate;
            Stored += q * (preload + 0.5 * rate * q);
        }

        if (_hasObject)
        {
            for (int i = 0; i < 3; i++)
            {
                AddContact(f, i, geometry, finger.PadStiffness);
            }
        }

        ReduceOwn(f);
        TakeUp(f, finger, out double w);
        AddPull(f, finger, w);
        AddFingerFriction(f, finger);
    }

    private void AddContact(int f, int i, FingerGeometry geometry, double stiffness)
    {
        int c = f * 3 + i;
        double overlap = _isFace ? geometry.OverlapOfFace(i, _objectPoint, _faceNormal) : geometry.OverlapOfCylinder(i, _objectPoint, _objectRadius);
        Overlap[c] = overlap;
        bool on = ModesByValue ? overlap > 0 : Touching[c];
        double force = on ? stiffness * overlap : 0;
        ContactForce[c] = force;
        if (!on)
        {
            return;
        }

        Meet(geometry, i);
        double energy = 0.5 * force * overlap;
        Stored += energy;
        ContactEnergy += energy;
        for (int a = 0; a < 3; a++)
        {
            double slope = geometry.Slope(i, a);
            _g3[a] += force * slope;
            for (int b = 0; b < 3; b++)
            {
                _h3[a * 3 + b] += stiffness * slope * geometry.Slope(i, b) + force * geometry.Curvature(i, a, b);
            }
        }
    }

    /// <summary>Derivatives of a segment's overlap.</summary>
    private void Meet(FingerGeometry geometry, int segment)
    {
        if (_isFace)
        {
            geometry.MeetFace(segment, _objectPoint, _faceNormal);
        }
        else
        {
            geometry.MeetCylinder(segment, _objectPoint, _objectRadius);
        }
    }

    /// <summary>Brings gradient and Hessian to the finger's own unknowns.</summary>
    private void ReduceOwn(int f)
    {
        if (!_isCoupled[f])
        {
            _g3.CopyTo(_own, 0);
            _h3.CopyTo(_ownMatrix, 0);
            return;
        }

        double a = _chain[f * 4], b = _chain[f * 4 + 1];
        _own[0] = _g3[0] + a * _g3[1] + b * _g3[2];
        _ownMatrix[0] = _h3[0] + a * a * _h3[4] + b * b * _h3[8]
            + 2 * (a * _h3[1] + b * _h3[2] + a * b * _h3[5])
            + _g3[1] * _chain[f * 4 + 2] + _g3[2] * _chain[f * 4 + 3];
    }

    /// <summary>Take-up w(q), slope and curvature over the finger's own unknowns. Only a drive pin bends it.</summary>
    private void TakeUp(int f, Finger finger, out double w)
    {
        int s = f * 3;
        _curvature[0] = 0;
        double q1 = Joint[s];
        if (finger.DrivePin is { } pin)
        {
            Vector2D line = Vector2D.AtAngle(pin.LineRadians);
            Vector2D at = pin.Radius * Vector2D.AtAngle(pin.RestRadians - q1);
            w = (at - pin.Radius * Vector2D.AtAngle(pin.RestRadians)).Dot(line);
            _slopes[s] = -at.Perpendicular.Dot(line);
            _curvature[0] = -at.Dot(line);
        }
        else
        {
            w = finger.Arms.First * q1;
            _slopes[s] = finger.Arms.First;
        }

        if (!_isCoupled[f])
        {
            _slopes[s + 1] = finger.Arms.Second;
            _slopes[s + 2] = _dipFused[f] ? 0 : finger.Arms.Third;
            w += _slopes[s + 1] * Joint[s + 1] + _slopes[s + 2] * Joint[s + 2];
        }
    }

    private void AddPull(int f, Finger finger, double w)
    {
        int nt = TrunkCount, bars = Math.Max(_bars.Length, 1), m = Sizes[f], o = Offsets[f];
        double travel = X[Carriage];
        Span<double> leaf = _leafSlopes.AsSpan(f * nt, nt);
        leaf.Clear();
        leaf[Carriage] = 1;
        for (int k = 0; k < _leafBarCount[f]; k++)
        {
            int bar = _leafBars[f * bars + k];
            double arm = _leafArms[f * bars + k];
            travel += arm * _tiltSin[bar];
            leaf[3 + bar] = arm * _tiltCos[bar];
        }

        LeafTravel[f] = travel;
        double elongation = travel - w - finger.Pull.Slack;
        PullElongations[f] = elongation;
        bool carries = Attached[f] && (finger.Pull.Kind == LinkKind.Rod || (ModesByValue ? elongation > 0 : Taut[f]));
        double k1 = carries ? finger.Pull.Stiffness : 0;
        double tension = k1 * elongation;
        LeafTension[f] = tension;
        LeafStiffness[f] = k1;
        Stored += 0.5 * tension * elongation;

        double[] A = Jacobian.A, B = Jacobian.B, C = Jacobian.C, D = Jacobian.D;
        ReadOnlySpan<int> moved = _leafUnknowns.AsSpan(f * nt, _leafBarCount[f] + 1);
        foreach (int a in moved)
        {
            double slope = leaf[a];
            R[a] += tension * slope;
            foreach (int b in moved)
            {
                A[a * nt + b] += k1 * slope * leaf[b];
            }

            for (int q = 0; q < m; q++)
            {
                double cross = -k1 * slope * _slopes[f * 3 + q];
                B[(f * nt + a) * 3 + q] += cross;
                C[(f * 3 + q) * nt + a] += cross;
            }
        }

        for (int k = 0; k < _leafBarCount[f]; k++)
        {
            int bar = _leafBars[f * bars + k];
            A[(3 + bar) * nt + 3 + bar] -= tension * _leafArms[f * bars + k] * _tiltSin[bar];
        }

        for (int q = 0; q < m; q++)
        {
            R[o + q] += _own[q] - tension * _slopes[f * 3 + q];
            for (int p = 0; p < m; p++)
            {
                D[(f * 3 + q) * 3 + p] += _ownMatrix[q * 3 + p] + k1 * _slopes[f * 3 + q] * _slopes[f * 3 + p];
            }
        }

        D[f * 9] -= tension * _curvature[0];
    }

    /// <summary>Stiffness of each pull as it acts [N/m].</summary>
    private double[] LeafStiffness { get; set; } = [];

    // Sine and cosine of each bar's tilt, found once for all the fingers behind it.
    private double[] _tiltSin = [], _tiltCos = [];

    private void TurnBars()
    {
        for (int b = 0; b < _bars.Length; b++)
        {
            (_tiltSin[b], _tiltCos[b]) = Math.SinCos(X[3 + b]);
        }
    }

    private double[] _springRate = [], _springPreload = []; // finger·3 + joint; a fused DIP has none
    private int[] _leafUnknowns = []; // finger·nt: carriage, then the bars above the leaf
}
