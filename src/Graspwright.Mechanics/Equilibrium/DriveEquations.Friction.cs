using Graspwright.Mechanics.Drive;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Places that rub: pins of the links, fulcrum, rail, slot, bars, guides, joints.</content>
internal sealed partial class DriveEquations
{
    private const int AnchorPin = 0, InputPin = 1, OutputPin = 2, FulcrumPin = 3, CarriagePin = 4, RailPlace = 5, SlotPlace = 6;
    private const double StickingTurn = 1e5;  // N·m/rad
    private const double StickingSlide = 1e9; // N/m

    private int[] _guide = [], _firstJoint = [], _placeFinger = [];
    private double _anchorSlope, _inputSlope; // ∂M/∂φ of the pull link's two pins

    /// <summary>Places that rub.</summary>
    public RubbingPlace[] Places => _state.Places;

    /// <summary>Whether anything rubs at all.</summary>
    public bool HasFriction { get; private set; }

    /// <summary>Vector load on the fulcrum pin [N].</summary>
    public Vector2D FulcrumLoad => TransferForce * _transferUnit - PullForce * _pullUnit;

    /// <summary>Force across the rail [N].</summary>
    public double RailNormal => TransferForce * _transferUnit.Cross(_railDirection);

    /// <summary>Wrist moment without the gimbal: τ = ∂Π/∂θ + Σ M ∂γ/∂θ [N·m].</summary>
    public double WristMoment => PullForce * _lTheta + Places[AnchorPin].Friction * (_aTheta - _forearmSense) + Places[InputPin].Friction * _aTheta;

    /// <summary>Directional derivative of <see cref="WristMoment"/>.</summary>
    /// <param name="phiRate">Rate of φ.</param>
    /// <param name="thetaRate">Rate of θ.</param>
    public double WristMomentRate(double phiRate, double thetaRate)
    {
        double k = PullStiffness, t = PullForce, a = Places[AnchorPin].Friction, b = Places[InputPin].Friction;
        double byPhi = k * _lPhi * _lTheta + t * _lPhiTheta
            + _anchorSlope * (_aTheta - _forearmSense) + _inputSlope * _aTheta + (a + b) * _aPhiTheta;
        double byTheta = k * _lTheta * _lTheta + t * _lThetaTheta
            + _anchorTheta * (_aTheta - _forearmSense) + _inputTheta * _aTheta + (a + b) * _aThetaTheta;
        return byPhi * phiRate + byTheta * thetaRate;
    }

    private double _anchorTheta, _inputTheta;

    /// <summary>Rate of the slide of a place along a direction of motion.</summary>
    public double SlideRate(int place, ReadOnlySpan<double> v, double thetaRate)
    {
        double pull = _aPhi * v[Phi] + _aTheta * thetaRate;
        double transfer = _b1[0] * v[0] + _b1[1] * v[1] + _b1[2] * v[2];
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
        List<RubbingPlace> places = [];
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
            _guide[f] = places.Count;
            Add(mu.Guide * finger.Pull.GuideWrapRadians > 0, StickingSlide);
            _firstJoint[f] = places.Count;
            bool all = mu.Pin * (finger.PinRadius.First + finger.PinRadius.Second + finger.PinRadius.Third)
                + finger.Drag.First + finger.Drag.Second + finger.Drag.Third > 0;
            for (int j = 0; j < Sizes[f]; j++)
            {
                Add(Sizes[f] == 1 ? all : mu.Pin * finger.PinRadius[j] + finger.Drag[j] > 0, StickingTurn);
            }
        }

        _state.Places = [.. places];
        _placeFinger = new int[places.Count];
        for (int f = 0; f < _fingers.Length; f++)
        {
            Array.Fill(_placeFinger, f, _guide[f], 1 + Sizes[f]);
            Group(f, out int lane).Rub(lane, _guide[f], _firstJoint[f], Places);
        }

        HasFriction = places.Exists(p => p.Active);

        void Add(bool active, double stiffness) => places.Add(new RubbingPlace { Active = active, Stiffness = stiffness });
    }

    private void AddLinkFriction()
    {
        if (!HasFriction)
        {
            return;
        }

        double mu = _drive.Friction.Pin;
        AddPullPins(mu);
        double t = TransferForce, sign = t < 0 ? -1 : 1, k = TransferStiffness;

        // Output pin: transfer-link angle − crank angle. Carriage pin: transfer-link angle.
        Span<double> slope = stackalloc double[3], bound = stackalloc double[3];
        double radius = mu * _drive.Crank.OutputPinRadius;
        for (int a = 0; a < 3; a++)
        {
            slope[a] = _b1[a] - (a == 0 ? _crankSense : 0);
            bound[a] = radius * sign * k * _m1[a];
        }

        AddTrunkPlace(OutputPin, _transferAngle - _crankSense * X[Phi], radius * Math.Abs(t), slope, bound, true);

        radius = mu * _drive.TransferLink.CarriagePinRadius;
        for (int a = 0; a < 3; a++)
        {
            slope[a] = _b1[a];
            bound[a] = radius * sign * k * _m1[a];
        }

        AddTrunkPlace(CarriagePin, _transferAngle, radius * Math.Abs(t), slope, bound, true);

        // Fulcrum: load is the sum of both link forces.
        Vector2D load = FulcrumLoad;
        double size = load.Length;
        radius = mu * _drive.Crank.FulcrumPinRadius;
        Vector2D unit = size > 0 ? (1 / size) * load : default;
        for (int a = 0; a < 3; a++)
        {
            Vector2D change = k * _m1[a] * _transferUnit + t * _b1[a] * _transferUnit.Perpendicular;
            if (a == 0)
            {
                change -= PullStiffness * _lPhi * _pullUnit + PullForce * _aPhi * _pullUnit.Perpendicular;
            }

            bound[a] = radius * unit.Dot(change);
        }

        Vector2D changeTheta = -(PullStiffness * _lTheta) * _pullUnit - (PullForce * _aTheta) * _pullUnit.Perpendicular;
        Unit(slope, Phi);
        AddTrunkPlace(FulcrumPin, X[Phi], radius * size + _drive.Crank.Drag, slope, bound, false, radius * unit.Dot(changeTheta));

        // Rail: N = T n×u; dN = k dL (n×u) − T (n·u) dα.
        double normal = RailNormal;
        double direction = (normal < 0 ? -1 : 1) * _drive.Friction.Rail;
        for (int a = 0; a < 3; a++)
        {
            bound[a] = direction * (k * _m1[a] * _transferUnit.Cross(_railDirection) - t * _transferUnit.Dot(_railDirection) * _b1[a]);
        }

        Unit(slope, Carriage);
        AddTrunkPlace(RailPlace, X[Carriage], _drive.Friction.Rail * Math.Abs(normal) + _drive.Rail.Drag, slope, bound, false);

        if (Places[SlotPlace].Active)
        {
            normal = t * _transferUnit.Cross(_slotNow);
            direction = (normal < 0 ? -1 : 1) * _drive.Friction.Slot;
            for (int a = 0; a < 3; a++)
            {
                double turn = (a == 0 ? _crankSense : 0) - _b1[a];
                bound[a] = direction * (k * _m1[a] * _transferUnit.Cross(_slotNow) + t * _transferUnit.Dot(_slotNow) * turn);
            }

            Unit(slope, Shift);
            AddTrunkPlace(SlotPlace, X[Shift], _drive.Friction.Slot * Math.Abs(normal), slope, bound, false);
        }
    }

    private static void Unit(Span<double> slope, int index)
    {
        slope.Clear();
        slope[index] = 1;
    }

    /// <summary>Both pins of the pull link turn with φ and with θ itself.</summary>
    private void AddPullPins(double mu)
    {
        double t = PullForce, sign = t < 0 ? -1 : 1, k = PullStiffness;
        (_anchorSlope, _anchorTheta) = Pin(AnchorPin, mu * _drive.PullLink.AnchorPinRadius, _pullAngle - _forearmSense * Theta, _aPhi, _aTheta - _forearmSense);
        (_inputSlope, _inputTheta) = Pin(InputPin, mu * _drive.PullLink.CrankPinRadius, _pullAngle - _crankSense * X[Phi], _aPhi - _crankSense, _aTheta);

        (double Phi, double Theta) Pin(int place, double radius, double slide, double byPhi, double byTheta)
        {
            ref RubbingPlace p = ref Places[place];
            if (!p.Active)
            {
                return (0, 0);
            }

            double bound = radius * Math.Abs(t);
            double stick = p.Map(slide, -bound, bound, ModesByValue);
            double grow = BoundDerivatives ? p.Mode * radius * sign * k : 0;
            double mPhi = stick * byPhi + grow * _lPhi, mTheta = stick * byTheta + grow * _lTheta;
            R[Phi] += p.Friction * byPhi;
            Jacobian.A[0] += byPhi * mPhi + p.Friction * _aPhiPhi;
            ThetaDerivative[Phi] += byPhi * mTheta + p.Friction * _aPhiTheta;
            return (mPhi, mTheta);
        }
    }

    private void AddTrunkPlace(int place, double slide, double bound, ReadOnlySpan<double> slope, ReadOnlySpan<double> boundSlope, bool turnsWithLink, double boundTheta = 0)
    {
        ref RubbingPlace p = ref Places[place];
        if (!p.Active)
        {
            return;
        }

        double stick = p.Map(slide, -bound, bound, ModesByValue);
        double grow = BoundDerivatives ? p.Mode : 0;
        boundSlope.CopyTo(_trunkBound.AsSpan(place * 4));
        _trunkBound[place * 4 + 3] = boundTheta;
        int nt = TrunkCount;
        for (int a = 0; a < 3; a++)
        {
            if (slope[a] == 0)
            {
                continue;
            }

            R[a] += p.Friction * slope[a];
            ThetaDerivative[a] += slope[a] * grow * boundTheta;
            for (int b = 0; b < 3; b++)
            {
                double change = slope[a] * (stick * slope[b] + grow * boundSlope[b]);
                if (turnsWithLink)
                {
                    change += p.Friction * _b2[a * 3 + b];
                }

                Jacobian.A[a * nt + b] += change;
            }
        }
    }

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
            int nt = TrunkCount, row = 3 + b;
            R[row] += p.Friction;
            Jacobian.A[row * nt + row] += stick;
            if (p.Mode == 0 || !BoundDerivatives)
            {
                continue;
            }

            (double perFirst, double perSecond) = BarBoundSlopes(b, first, second);
            for (int g = 0; g < _groups.Length; g++)
            {
                _groups[g].AddBarBound(b, p.Mode * perFirst, p.Mode * perSecond, Jacobian.Blocks[g], Jacobian.A.AsSpan(row * nt + Carriage, nt - Carriage));
            }
        }
    }

    /// <summary>Change of a bar's bound per newton behind its first and behind its second end [m].</summary>
    private (double PerFirst, double PerSecond) BarBoundSlopes(int b, double first, double second)
    {
        BalanceBar bar = _bars[b];
        double both = bar.PivotPinRadius * Math.Sign(first + second), mu = _drive.Friction.Pin;
        return (mu * (both + bar.FirstPinRadius * Math.Sign(first)), mu * (both + bar.SecondPinRadius * Math.Sign(second)));
    }

    /// <summary>Sum of leaf tensions behind each end of a bar [N].</summary>
    public (double First, double Second) BarEnds(int bar)
    {
        double first = 0, second = 0;
        foreach (FingerGroup group in _groups)
        {
            (double one, double other) = group.BarEnds(bar);
            first += one;
            second += other;
        }

        return (first, second);
    }
}
