using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Friction of the guides and of the joint pins.</content>
internal sealed partial class FingerGroup
{
    private readonly int[] _guideAt = [-1, -1, -1, -1];                                         // place of a lane's guide, −1 = none rubs
    private readonly int[] _jointAt = [-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1]; // place of a lane's unknown j at 4j + lane
    private bool _anyGuide, _anyJoint;
    private Lane _fingerTension;         // T₂
    private readonly Lane[] _fingerTensionOwn = new Lane[3];     // ∂T₂/∂q over the finger's unknowns
    private Lane _fingerTensionPerLeaf;  // ∂T₂/∂T₁ through the trunk
    private readonly Lane[] _jointBoundOwn = new Lane[9];        // ∂bound of unknown j/∂q at 3j + q
    private readonly Lane[] _jointBoundPerLeaf = new Lane[3];    // ∂bound of unknown j/∂T₁ through the trunk

    /// <summary>Tension behind each guide, at the finger [N].</summary>
    public double FingerTension(int lane) => _fingerTension[lane];

    /// <summary>Says where the guide of a lane and its first joint stand among the places that rub.</summary>
    public void Rub(int lane, int guide, int firstJoint, ReadOnlySpan<RubbingPlace> places)
    {
        _guideAt[lane] = places[guide].Active ? guide : -1;
        _anyGuide |= places[guide].Active;
        for (int j = 0; j < (_coupled[lane] ? 1 : 3); j++)
        {
            bool active = places[firstJoint + j].Active;
            _jointAt[Lanes * j + lane] = active ? firstJoint + j : -1;
            _anyJoint |= active;
        }
    }

    /// <summary>Guides: finger tension T₂ = T₁ − M, its changes, and what rubbing puts into the fingers' rows.</summary>
    private void AddGuides(Span<RubbingPlace> places, bool byValue, bool boundDerivatives, ArrowMatrix.Fingers block)
    {
        _fingerTension = _tension;
        _fingerTensionPerLeaf = Lane.One;
        int width = Width;
        for (int q = 0; q < width; q++)
        {
            _fingerTensionOwn[q] = -_stiffness * _take[q];
        }

        if (!_anyGuide)
        {
            return;
        }

        Lane pull = Vector256.Max(_tension, Lane.Zero);
        Rubbing rubs = Map(places, _guideAt, _taken, _guideBack * pull, _guideForward * pull, byValue);
        Lane share = default;
        if (boundDerivatives)
        {
            Lane ahead = Vector256.GreaterThan(rubs.Mode, Lane.Zero) & _guideForward, back = Vector256.LessThan(rubs.Mode, Lane.Zero) & _guideBack;
            share = Vector256.GreaterThan(_tension, Lane.Zero) & (ahead | back);
        }

        Lane perLeaf = share * _stiffness, change = rubs.Stick - perLeaf;
        _fingerTension = _tension - rubs.Friction;
        _fingerTensionPerLeaf = Lane.One - share;
        block.D[0] += rubs.Friction * _takeCurve;
        for (int q = 0; q < width; q++)
        {
            Lane slope = _take[q], own = slope * change;
            _row[q] += rubs.Friction * slope;
            _fingerTensionOwn[q] -= own;
            for (int p = 0; p < width; p++)
            {
                block.D[3 * q + p] += own * _take[p];
            }

            Lane through = slope * perLeaf;
            for (int i = 0; i < _leaf.Length; i++)
            {
                block.C[3 * i + q] += through * _leaf[i];
            }
        }
    }

    /// <summary>Joint pins: the bound grows with the load on the pins.</summary>
    private void AddJoints(ReadOnlySpan<double> x, Span<RubbingPlace> places, bool byValue, bool boundDerivatives, ArrowMatrix.Fingers block)
    {
        if (!_anyJoint)
        {
            return;
        }

        FindLoads();
        int width = Width;
        for (int j = 0; j < width; j++)
        {
            Lane bound = j == 0 ? FirstBound() : OwnBound(j);
            Rubbing rubs = Map(places, _jointAt.AsSpan(Lanes * j, Lanes), Gather(x, j), -bound, bound, byValue);
            _row[j] += rubs.Friction;
            block.D[4 * j] += rubs.Stick;
            if (!boundDerivatives || rubs.Mode == Lane.Zero)
            {
                continue;
            }

            for (int q = 0; q < width; q++)
            {
                block.D[3 * j + q] += rubs.Mode * _jointBoundOwn[3 * j + q];
            }

            Lane through = rubs.Mode * _jointBoundPerLeaf[j] * _stiffness;
            for (int i = 0; i < _leaf.Length; i++)
            {
                block.C[3 * i + j] += through * _leaf[i];
            }
        }
    }

    /// <summary>Sum of leaf tensions of these fingers behind each end of a bar [N].</summary>
    public (double First, double Second) BarEnds(int bar) => (Vector256.Sum(_firstEnd[bar] * _tension), Vector256.Sum(_secondEnd[bar] * _tension));

    /// <summary>Rates of those sums along the direction that the pulls' rates were last asked for.</summary>
    public (double First, double Second) BarEndRates(int bar) =>
        (Vector256.Sum(_firstEnd[bar] * _tensionRate), Vector256.Sum(_secondEnd[bar] * _tensionRate));

    /// <summary>Adds the change of a sliding bar's friction with the tensions behind its ends to the bar's row.</summary>
    public void AddBarBound(int bar, double perFirst, double perSecond, ArrowMatrix.Fingers block, Span<double> row)
    {
        Lane weight = _stiffness * (perFirst * _firstEnd[bar] + perSecond * _secondEnd[bar]);
        for (int i = 0; i < row.Length; i++)
        {
            row[i] += Vector256.Sum(weight * _leaf[i]);
        }

        for (int q = 0; q < Width; q++)
        {
            block.B[3 * (1 + bar) + q] -= weight * _take[q];
        }
    }

    /// <summary>Bound of the first unknown: the MCP of an adaptive finger, all three joints of a coupled one, each by its share of the turn.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane FirstBound()
    {
        Lane bound = _drag[0] + _rub[0] * Size(0, out VectorLanes unit), along = unit.Dot(_pullDirection);
        Lane own = _rub[0] * (unit.Dot(LoadByFirst(0)) + along * _fingerTensionOwn[0]), perTension = _rub[0] * along;
        if (_anyAdaptive)
        {
            _jointBoundOwn[1] = _adaptive & (_rub[0] * (unit.Dot(LoadSlope(0, 1)) + along * _fingerTensionOwn[1]));
            _jointBoundOwn[2] = _adaptive & (_rub[0] * (unit.Dot(LoadSlope(0, 2)) + along * _fingerTensionOwn[2]));
        }

        for (int j = 1; j < 3; j++)
        {
            Lane turn = j == 1 ? _chainA : _chainB, turnSlope = j == 1 ? _chainA2 : _chainB2;
            Lane share = Vector256.Abs(turn), shareSlope = Vector256.ConditionalSelect(Vector256.LessThan(turn, Lane.Zero), -turnSlope, turnSlope);
            Lane alone = _drag[j] + _rub[j] * Size(j, out unit);
            bound += share * alone;
            own += shareSlope * alone + share * _rub[j] * unit.Dot(LoadByFirst(j));
        }

        _jointBoundOwn[0] = own;
        _jointBoundPerLeaf[0] = perTension * _fingerTensionPerLeaf;
        return bound;
    }

    /// <summary>Bound of the PIP or DIP of an adaptive finger.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane OwnBound(int j)
    {
        Lane bound = _drag[j] + _rub[j] * Size(j, out VectorLanes unit), along = unit.Dot(PullAt(j));
        for (int q = 0; q < 3; q++)
        {
            _jointBoundOwn[3 * j + q] = _rub[j] * (unit.Dot(LoadSlope(j, q)) + along * _fingerTensionOwn[q]);
        }

        _jointBoundPerLeaf[j] = _rub[j] * along * _fingerTensionPerLeaf;
        return bound;
    }

    /// <summary>Size of a pin's load and its direction, 0 where nothing loads it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Size(int joint, out VectorLanes unit)
    {
        VectorLanes load = _load[joint];
        Lane size = load.Length, inverse = Vector256.GreaterThan(size, Lane.Zero) & (Lane.One / size);
        unit = inverse * load;
        return size;
    }

    /// <summary>Maps one place of each lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Rubbing Map(Span<RubbingPlace> places, ReadOnlySpan<int> at, Lane slide, Lane low, Lane high, bool byValue)
    {
        (double k0, double m0, double mode0) = One(places, at[0], slide[0], low[0], high[0], byValue);
        (double k1, double m1, double mode1) = One(places, at[1], slide[1], low[1], high[1], byValue);
        (double k2, double m2, double mode2) = One(places, at[2], slide[2], low[2], high[2], byValue);
        (double k3, double m3, double mode3) = One(places, at[3], slide[3], low[3], high[3], byValue);
        return new() { Friction = Vector256.Create(m0, m1, m2, m3), Stick = Vector256.Create(k0, k1, k2, k3), Mode = Vector256.Create(mode0, mode1, mode2, mode3) };

        static (double Stick, double Friction, double Mode) One(Span<RubbingPlace> places, int at, double slide, double low, double high, bool byValue)
        {
            if (at < 0)
            {
                return default;
            }

            ref RubbingPlace p = ref places[at];
            return (p.Map(slide, low, high, byValue), p.Friction, p.Mode);
        }
    }

    /// <summary>Friction, ∂friction/∂slide where it sticks, and mode of one place in each lane.</summary>
    private struct Rubbing
    {
        public Lane Friction, Stick, Mode;
    }
}
