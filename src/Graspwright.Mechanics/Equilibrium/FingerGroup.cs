using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <summary>Up to four fingers side by side, one in each lane: geometry, contacts, springs, pulls, friction.</summary>
/// <remarks>
/// <para>
/// One pass finds residual and Jacobian of four fingers in the time of one. Lanes and their order are fixed, so the same
/// machine gives the same bits whatever runs beside. A lane without a finger has lengths and stiffnesses that keep its
/// figures finite; none of them enters a sum.
/// </para>
/// <para>
/// Every finger has the three flexions q. A coupled finger has one unknown q₁ and its chain dq₂/dq₁ = a, dq₃/dq₁ = b
/// brings derivatives over the three joints to that unknown; an adaptive one has three unknowns and a = b = 0. A coupled
/// lane beside adaptive ones keeps unit rows for the two unknowns that it lacks. Files: <c>.Contacts</c> joints and what
/// the segments press on; <c>.Pulls</c> springs, take-up, the pull; <c>.Friction</c> guides and joint pins;
/// <c>.Loads</c> loads on the joint pins; <c>.Rates</c> directional derivatives.
/// </para>
/// </remarks>
internal sealed partial class FingerGroup
{
    /// <summary>Fingers in a group.</summary>
    public const int Lanes = 4;

    private readonly Finger[] _fingers;
    private readonly JointCoupling[] _pip, _dip;
    private readonly bool[] _coupled, _dipFused;
    private readonly bool _anyAdaptive, _anyFourBar, _anyDrivePin;
    private readonly int _first;          // number of the first finger
    private readonly int[] _at = new int[3 * Lanes]; // where the unknown q of a lane stands: 4q + lane
    private readonly double[] _high = new double[Lanes];
    private readonly int[] _limitingJoint = new int[Lanes]; // 1, 2 = the range ends at the stop of PIP, DIP
    private readonly Lane _pipRatio, _dipRatio;
    private readonly Lane _present;       // all bits set where there is a finger
    private readonly Lane _rod;           // all bits set where the pull is a rod
    private readonly Lane _adaptive;      // all bits set where the finger is adaptive
    private readonly VectorLanes _mcp, _pinLine;
    private readonly Lane[] _length = new Lane[3], _half = new Lane[3], _open = new Lane[3], _springRate = new Lane[3], _springPreload = new Lane[3], _arm = new Lane[3], _drag = new Lane[3], _rub = new Lane[3];
    private readonly Lane _pad, _pullStiffness, _slack, _hasDrivePin, _drivePinRadius, _drivePinRest, _drivePinAtRest;
    private readonly Lane _guideForward, _guideBack; // 1 − e^(−μβ) and 1 − e^(μβ)
    private readonly VectorLanes _pullDirection;     // of the pull at the knuckle

    /// <summary>Takes the fixed figures of some fingers.</summary>
    /// <param name="fingers">One to four fingers.</param>
    /// <param name="first">Number of the first of them.</param>
    /// <param name="friction">Coefficients of friction.</param>
    /// <param name="rail">Direction of the rail, along which a finger without drive pin is pulled.</param>
    /// <param name="offsets">First unknown of every finger of the hand.</param>
    public FingerGroup(ReadOnlySpan<Finger> fingers, int first, FrictionCoefficients friction, Vector2D rail, ReadOnlySpan<int> offsets)
    {
        _fingers = fingers.ToArray();
        _first = first;
        _pip = new JointCoupling[_fingers.Length];
        _dip = new JointCoupling[_fingers.Length];
        _coupled = new bool[_fingers.Length];
        _dipFused = new bool[_fingers.Length];
        for (int l = 0; l < _fingers.Length; l++)
        {
            Finger finger = _fingers[l];
            _dipFused[l] = finger.RangeRadians.Third == 0;
            if (finger.Joints is CoupledJoints coupled)
            {
                _coupled[l] = true;
                _pip[l] = new(coupled.PipFromMcp, finger.Segments.First);
                _dip[l] = new(_dipFused[l] ? new RatioCoupling(0) : coupled.DipFromPip, finger.Segments.Second);
                _anyFourBar |= _pip[l].IsFourBar || _dip[l].IsFourBar;
            }

            _anyAdaptive |= !_coupled[l];
            _anyDrivePin |= finger.DrivePin is not null;
        }

        for (int i = 0; i < _at.Length; i++)
        {
            int lane = Math.Min(i % Lanes, Count - 1);
            _at[i] = offsets[first + lane] + (_coupled[lane] ? 0 : i / Lanes);
        }

        const double anyLength = 0.03; // m, of a lane without a finger
        _mcp = new(Pack(f => f.Mcp.X, -10), Pack(f => f.Mcp.Y, -10)); // a lane without a finger is far from any object
        Vector2D Line(Finger f) => f.DrivePin is { } pin ? Vector2D.AtAngle(pin.LineRadians) : rail;
        _pinLine = new(Pack(f => Line(f).X, 1), Pack(f => Line(f).Y, 0));
        _pullDirection = _pinLine;
        for (int j = 0; j < 3; j++)
        {
            int joint = j;
            bool Fused(Finger f) => joint == 2 && f.RangeRadians.Third == 0;
            bool Turns(Finger f) => joint == 0 || (f.Joints is AdaptiveJoints && !Fused(f));
            _length[j] = Pack(f => f.Segments[joint], anyLength);
            _half[j] = Pack(f => f.HalfThickness[joint], 0);
            _open[j] = Pack(f => f.OpenRadians[joint], 0);
            _springRate[j] = Pack(f => Fused(f) ? 0 : f.SpringRate[joint], 1);
            _springPreload[j] = Pack(f => Fused(f) ? 0 : f.SpringPreload[joint], 0);
            _arm[j] = Pack(f => Turns(f) ? f.Arms[joint] : 0, 0);
            _drag[j] = Pack(f => f.Drag[joint], 0);
            _rub[j] = Pack(f => friction.Pin * f.PinRadius[joint], 0);
        }

        double allBits = BitConverter.Int64BitsToDouble(-1);
        _pipRatio = Pack(f => f.Joints is CoupledJoints { PipFromMcp: RatioCoupling ratio } ? ratio.Ratio : 0, 0);
        _dipRatio = Pack(f => f.Joints is CoupledJoints { DipFromPip: RatioCoupling ratio } && f.RangeRadians.Third != 0 ? ratio.Ratio : 0, 0);
        _present = Pack(_ => allBits, 0);
        _rod = Pack(f => f.Pull.Kind == LinkKind.Rod ? allBits : 0, 0);
        _adaptive = Pack(f => f.Joints is AdaptiveJoints ? allBits : 0, 0);
        _hasDrivePin = Pack(f => f.DrivePin is null ? 0 : allBits, 0);
        _drivePinRadius = Pack(f => f.DrivePin?.Radius ?? 0, 0);
        _drivePinRest = Pack(f => f.DrivePin?.RestRadians ?? 0, 0);
        _drivePinAtRest = Pack(f => f.DrivePin is { } pin ? (pin.Radius * Vector2D.AtAngle(pin.RestRadians)).Dot(Line(f)) : 0, 0);
        _pad = Pack(f => f.PadStiffness, 0);
        _pullStiffness = Pack(f => f.Pull.Stiffness, 0);
        _slack = Pack(f => f.Pull.Slack, 0);
        // e^x − 1 as written loses digits only below 1e-8 of wrap, where the guide carries nothing worth counting.
        _guideForward = Pack(f => 1 - Math.Exp(-friction.Guide * f.Pull.GuideWrapRadians), 0);
        _guideBack = Pack(f => 1 - Math.Exp(friction.Guide * f.Pull.GuideWrapRadians), 0);
    }

    /// <summary>Says where the range of a finger's first unknown ends, and which joint's stop ends it.</summary>
    public void Stop(int lane, double high, int limitingJoint)
    {
        _high[lane] = high;
        _limitingJoint[lane] = limitingJoint;
    }

    /// <summary>Evaluates the fingers: what they put into residual and Jacobian, and what is read off them.</summary>
    /// <param name="state">Unknowns, modes and places that rub; takes the fingers' rows.</param>
    /// <param name="tiltSin">Sine of each bar's tilt.</param>
    /// <param name="tiltCos">Its cosine.</param>
    /// <param name="block">Takes the fingers' part of the Jacobian.</param>
    /// <param name="a">The trunk's part of the Jacobian, row by row.</param>
    /// <param name="stride">From one row of it to the next.</param>
    public void Evaluate(FingerState state, ReadOnlySpan<double> tiltSin, ReadOnlySpan<double> tiltCos, ArrowMatrix.Fingers block, Span<double> a, int stride)
    {
        bool byValue = state.ModesByValue;
        Bend(state.X);
        Press(state.Touching.AsSpan(_first * 3), byValue, _anyJoint);
        TakeUp();
        AddPulls(tiltSin, tiltCos, state, block, a, stride);
        if (_anyGuide || _anyJoint)
        {
            AddGuides(state.Places, byValue, state.BoundDerivatives, block);
            AddJoints(state.X, state.Places, byValue, state.BoundDerivatives, block);
        }
        else
        {
            _fingerTension = _tension;
        }

        Read(state);
    }

    /// <summary>Writes down what is read off the fingers.</summary>
    private void Read(FingerState state)
    {
        int width = Width;
        for (int l = 0; l < Count; l++)
        {
            int f = _first + l;
            for (int i = 0; i < 3; i++)
            {
                state.Overlap[3 * f + i] = _overlap[i][l];
                state.ContactForce[3 * f + i] = _force[i][l];
                state.Joint[3 * f + i] = _q[i][l];
            }

            state.PullElongations[f] = _elongation[l];
            state.LeafTension[f] = _tension[l];
            state.LeafTravel[f] = _travel[l];
            state.FingerTension[f] = _fingerTension[l];
            state.R[_at[l]] = _row[0][l];
            for (int q = 1; q < width && !_coupled[l]; q++)
            {
                state.R[_at[l] + q] = _row[q][l];
            }
        }
    }

    /// <summary>Number of fingers.</summary>
    public int Count => _fingers.Length;

    /// <summary>Unknowns of the widest finger: 1 when all are coupled, else 3.</summary>
    public int Width => _anyAdaptive ? 3 : 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Pack(Func<Finger, double> value, double empty)
    {
        Fill(value, empty);
        return Vector256.Create<double>(_packed);
    }

    private void Fill(Func<Finger, double> value, double empty)
    {
        for (int l = 0; l < Lanes; l++)
        {
            _packed[l] = l < _fingers.Length ? value(_fingers[l]) : empty;
        }
    }

    private readonly double[] _packed = new double[Lanes];
}
