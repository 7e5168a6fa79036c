using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Places that rub: pins of the links, fulcrum, rail, slot, bars, guides, joints.</content>
internal sealed partial class DriveEquations
{
    private const int AnchorPin = 0, InputPin = 1, OutputPin = 2, FulcrumPin = 3, CarriagePin = 4, RailPlace = 5, SlotPlace = 6;
    private const double StickingTurn = 1e5;  // N·m/rad
    private const double StickingSlide = 1e9; // N/m

    private int[] _guide = [], _firstJoint = [], _placeFinger = [];
    private Lane _anchorChange, _inputChange; // ∂M/∂(φ, d, s, θ) of the pull link's two pins
    private readonly Lane[] _trunkBound = new Lane[7]; // ∂bound/∂(φ, d, s, θ) of the places up to the slot

    /// <summary>Places that rub.</summary>
    public RubbingPlace[] Places => _state.Places;

    /// <summary>Whether anything rubs at all.</summary>
    public bool HasFriction { get; private set; }

    /// <summary>Vector load on the fulcrum pin [N].</summary>
    public Vector2D FulcrumLoad => TransferForce * _transferUnit - PullForce * _pullUnit;

    /// <summary>Force across the rail [N].</summary>
    public double RailNormal => TransferForce * _transferUnit.Cross(_railDirection);

    /// <summary>Wrist moment without the gimbal: τ = ∂Π/∂θ + Σ M ∂γ/∂θ [N·m].</summary>
    public double WristMoment =>
        PullForce * _pullSlope[3] + Places[AnchorPin].Friction * (_pullTurn[3] - _forearmSense) + Places[InputPin].Friction * _pullTurn[3];

    /// <summary>Directional derivative of <see cref="WristMoment"/>.</summary>
    /// <param name="phiRate">Rate of φ.</param>
    /// <param name="thetaRate">Rate of θ.</param>
    public double WristMomentRate(double phiRate, double thetaRate)
    {
        double k = PullStiffness, t = PullForce, rubs = Places[AnchorPin].Friction + Places[InputPin].Friction;
        double lTheta = _pullSlope[3], aTheta = _pullTurn[3], ahead = aTheta - _forearmSense;
        double byPhi = k * _pullSlope[0] * lTheta + t * _pullBend[3]
            + _anchorChange[0] * ahead + _inputChange[0] * aTheta + rubs * _pullTurnBend[3];
        double byTheta = k * lTheta * lTheta + t * _lThetaTheta
            + _anchorChange[3] * ahead + _inputChange[3] * aTheta + rubs * _aThetaTheta;
        return byPhi * phiRate + byTheta * thetaRate;
    }

    /// <summary>Rate of the slide of a place along a direction of motion.</summary>
    public double SlideRate(int place, ReadOnlySpan<double> v, double thetaRate)
    {
        double pull = _pullTurn[0] * v[Phi] + _pullTurn[3] * thetaRate;
        double transfer = _transferTurn[0] * v[0] + _transferTurn[1] * v[1] + _transferTurn[2] * v[2];
        double crank = _crankSense * v[Phi];
        switch (place)
        {
            case AnchorPin: return pull - _forearmSense * thetaRate;
            case InputPin: return pull - crank;
            case OutputPin: return transfer - crank;
            case FulcrumPin: return v[Phi];
            case CarriagePin: return transfer;
            case RailPlace: return v[Carriage];
            case SlotPlace: return v[Shift];
        }

        if (place < 7 + _bars.Length)
        {
            return v[3 + place - 7];
        }

        int f = _placeFinger[place];
        return Group(f, out int lane).SlideRate(lane, place - _firstJoint[f], v);
    }

    private void SetUpFriction()
    {
        FrictionCoefficients mu = _drive.Friction;
        int count = 0;
        _state.Places = new RubbingPlace[7 + _bars.Length + _fingers.Length + Sizes.Sum()];
        Add(mu.Pin * _drive.PullLink.AnchorPinRadius > 0, StickingTurn);
        Add(mu.Pin * _drive.PullLink.CrankPinRadius > 0, StickingTurn);
        Add(mu.Pin * _drive.Crank.OutputPinRadius > 0, StickingTurn);
        Add(mu.Pin * _drive.Crank.FulcrumPinRadius + _drive.Crank.Drag > 0, StickingTurn);
        Add(mu.Pin * _drive.TransferLink.CarriagePinRadius > 0, StickingTurn);
        Add(mu.Rail + _drive.Rail.Drag > 0, StickingSlide);
        Add(mu.Slot > 0 && _drive.Crank.Slot is not null, StickingSlide);
        foreach (BalanceBar bar in _bars)
        {
            Add(mu.Pin * (bar.PivotPinRadius + bar.FirstPinRadius + bar.SecondPinRadius) > 0 && bar.TiltStopRadians > 0, StickingTurn);
        }

        _guide = new int[_fingers.Length];
        _firstJoint = new int[_fingers.Length];
        for (int f = 0; f < _fingers.Length; f++)
        {
            Finger finger = _fingers[f];
            _guide[f] = count;
            Add(mu.Guide * finger.Pull.GuideWrapRadians > 0, StickingSlide);
            _firstJoint[f] = count;
            bool all = mu.Pin * (finger.PinRadius.First + finger.PinRadius.Second + finger.PinRadius.Third)
                + finger.Drag.First + finger.Drag.Second + finger.Drag.Third > 0;
            for (int j = 0; j < Sizes[f]; j++)
            {
                Add(Sizes[f] == 1 ? all : mu.Pin * finger.PinRadius[j] + finger.Drag[j] > 0, StickingTurn);
            }
        }

        _placeFinger = new int[count];
        for (int f = 0; f < _fingers.Length; f++)
        {
            Array.Fill(_placeFinger, f, _guide[f], 1 + Sizes[f]);
            Group(f, out int lane).Rub(lane, _guide[f], _firstJoint[f], Places);
        }

        void Add(bool active, double stiffness)
        {
            HasFriction |= active;
            Places[count++] = new RubbingPlace { Active = active, Stiffness = stiffness };
        }
    }

    private void AddLinkFriction()
    {
        if (!HasFriction)
        {
            return;
        }

        double mu = _drive.Friction.Pin, t = TransferForce, k = TransferStiffness, sense = _crankSense;
        double pull = PullForce, grows = mu * (pull < 0 ? -PullStiffness : PullStiffness), wrist = _forearmSense;
        Lane crank = Vector256.CreateScalar(sense), forearm = Vector256.Create(0, 0, 0, wrist);
        Vector2D n = _transferUnit;

        // Pins of the pull link: link against forearm, link against crank.
        double anchor = _drive.PullLink.AnchorPinRadius, input = _drive.PullLink.CrankPinRadius;
        Rub(AnchorPin, _pullAngle - wrist * Theta, mu * anchor * Math.Abs(pull), anchor * grows * _pullSlope);
        _anchorChange = AddTurning(AnchorPin, _pullTurn - forearm, _pullTurnBend, default, default);
        Rub(InputPin, _pullAngle - sense * X[Phi], mu * input * Math.Abs(pull), input * grows * _pullSlope);
        _inputChange = AddTurning(InputPin, _pullTurn - crank, _pullTurnBend, default, default);

        // Pins of the transfer link: link against crank, link against carriage.
        Lane perRadius = mu * (t < 0 ? -k : k) * _transferSlope;
        double output = _drive.Crank.OutputPinRadius, carriage = _drive.TransferLink.CarriagePinRadius;
        Rub(OutputPin, _transferAngle - sense * X[Phi], mu * output * Math.Abs(t), output * perRadius);
        AddTurning(OutputPin, _transferTurn - crank, _turnByPhi, _turnByShift, _turnByCarriage);
        Rub(CarriagePin, _transferAngle, mu * carriage * Math.Abs(t), carriage * perRadius);
        AddTurning(CarriagePin, _transferTurn, _turnByPhi, _turnByShift, _turnByCarriage);

        // Fulcrum: load is the sum of both link forces.
        Vector2D load = FulcrumLoad, p = _pullUnit;
        double size = load.Length, radius = mu * _drive.Crank.FulcrumPinRadius;
        Vector2D unit = size > 0 ? (radius / size) * load : default;
        Lane stretch = k * _transferSlope, pulled = PullStiffness * _pullSlope, swing = t * _transferTurn, swung = pull * _pullTurn;
        Lane x = n.X * stretch - n.Y * swing - p.X * pulled + p.Y * swung, y = n.Y * stretch + n.X * swing - p.Y * pulled - p.X * swung;
        Rub(FulcrumPin, X[Phi], radius * size + _drive.Crank.Drag, unit.X * x + unit.Y * y);
        AddAlong(FulcrumPin, ref _rowPhi, Vector256.CreateScalar(1.0));

        // Rail: N = T n×u; dN = k dL (n×u) − T (n·u) dα.
        double normal = RailNormal, across = n.Cross(_railDirection), direction = (normal < 0 ? -1 : 1) * _drive.Friction.Rail;
        Rub(RailPlace, X[Carriage], _drive.Friction.Rail * Math.Abs(normal) + _drive.Rail.Drag, direction * (across * stretch - n.Dot(_railDirection) * swing));
        AddAlong(RailPlace, ref _rowCarriage, Vector256.Create(0, 0, 1.0, 0));

        if (Places[SlotPlace].Active)
        {
            // The slot's direction turns with the crank, and along an arc with the pin: by (ε, κ).
            Lane turns = Vector256.Create(sense, _curvature, 0, 0);
            across = n.Cross(_slotNow);
            normal = t * across;
            direction = (normal < 0 ? -1 : 1) * _drive.Friction.Slot;
            Rub(SlotPlace, X[Shift], _drive.Friction.Slot * Math.Abs(normal), direction * (across * stretch + t * n.Dot(_slotNow) * (turns - _transferTurn)));
            AddAlong(SlotPlace, ref _rowShift, Vector256.Create(0, 1.0, 0, 0));
        }
    }

    /// <summary>Maps a place of the trunk to its friction and keeps how its bound changes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Rub(int place, double slide, double bound, Lane boundSlope)
    {
        ref RubbingPlace p = ref Places[place];
        _trunkBound[place] = boundSlope;
        _stick = p.Active ? p.Map(slide, -bound, bound, ModesByValue) : 0;
    }

    /// <summary>Adds a place whose slide turns with a link: slope and bend of the slide by (φ, d, s, θ).</summary>
    /// <returns>∂M/∂(φ, d, s, θ).</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane AddTurning(int place, Lane slope, Lane byPhi, Lane byShift, Lane byCarriage)
    {
        ref RubbingPlace p = ref Places[place];
        if (!p.Active)
        {
            return default;
        }

        Lane change = Change(p.Mode, _trunkBound[place], slope);
        double m = p.Friction;
        _trunkRow += m * slope;
        _rowPhi += slope[0] * change + m * byPhi;
        if (place >= OutputPin)
        {
            _rowShift += slope[1] * change + m * byShift;
            _rowCarriage += slope[2] * change + m * byCarriage;
        }

        return change;
    }

    /// <summary>Adds a place that slides with one unknown.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void AddAlong(int place, ref Lane row, Lane unit)
    {
        ref RubbingPlace p = ref Places[place];
        if (p.Active)
        {
            _trunkRow += p.Friction * unit;
            row += Change(p.Mode, _trunkBound[place], unit);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Change(int mode, Lane boundSlope, Lane slope) =>
        mode == 0 ? _stick * slope : BoundDerivatives ? mode * boundSlope : default;

    private double _stick; // ∂M/∂slide of the place mapped last

    /// <summary>Bars: pivot carries F₁ + F₂, the ends F₁ and F₂; all three turn by the tilt.</summary>
    private void AddBarFriction()
    {
        for (int b = 0; b < _bars.Length && HasFriction; b++)
        {
            ref RubbingPlace p = ref Places[7 + b];
            if (!p.Active)
            {
                continue;
            }

            (double first, double second) = BarEnds(b);
            BalanceBar bar = _bars[b];
            double bound = _drive.Friction.Pin * (bar.PivotPinRadius * Math.Abs(first + second) + bar.FirstPinRadius * Math.Abs(first) + bar.SecondPinRadius * Math.Abs(second));
            double stick = p.Map(X[3 + b], -bound, bound, ModesByValue);
            int stride = Jacobian.Stride, row = 3 + b;
            R[row] += p.Friction;
            Jacobian.A[row * stride + row] += stick;
            if (p.Mode == 0 || !BoundDerivatives)
            {
                continue;
            }

            (double perFirst, double perSecond) = BarBoundSlopes(b, first, second);
            for (int g = 0; g < _groups.Length; g++)
            {
                _groups[g].AddBarBound(b, p.Mode * perFirst, p.Mode * perSecond, Jacobian.Blocks[g], Jacobian.A.AsSpan(row * stride + Carriage, TrunkCount - Carriage));
            }
        }
    }

    /// <summary>Change of a bar's bound per newton behind its first and behind its second end [m].</summary>
    private (double PerFirst, double PerSecond) BarBoundSlopes(int b, double first, double second)
    {
        BalanceBar bar = _bars[b];
        double both = bar.PivotPinRadius * Sense(first + second), mu = _drive.Friction.Pin;
        return (mu * (both + bar.FirstPinRadius * Sense(first)), mu * (both + bar.SecondPinRadius * Sense(second)));

        static int Sense(double force) => force < 0 ? -1 : 1; // a pull that carries nothing yet will pull
    }

    /// <summary>Sum of leaf tensions behind each end of a bar at the last evaluation [N].</summary>
    public (double First, double Second) BarEnds(int bar) => _barEnds[bar];

    private (double First, double Second)[] _barEnds = [];
}
