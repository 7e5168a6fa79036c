using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;
using Lane = System.Runtime.Intrinsics.Vector256<double>;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Joints, directions and what the segments press on, with first and second derivatives by the flexions.</content>
/// <remarks>
/// Segment i points along ψ_i = −Σ(o + q); raising q_a turns everything beyond joint a clockwise, so that a point p of
/// segment i ≥ a moves by p_a = −(p − P_a)⊥ and ∂²p/∂q_a∂q_b = −(p − P_max(a,b)). Overlap of a capsule with a cylinder is
/// R + h − D, D the distance from its centre to the segment. With n the unit vector from the centre to the nearest
/// point p: D_a = n·p_a = n × (p − P_a), whether or not p slides along the segment. Where p is an end of the segment
/// D_ab = (p_a·p_b − D_a D_b)/D − n·(p − P_max); where it lies inside, sliding takes off what the segment's own
/// direction e gives: D_ab = −c(t_a + t_b) − D − n·(p − P_max) with t_a = e·p_a and c = n × e. A flat face meets the
/// distal end p: overlap h − ν·(p − p₀), the same formulas with D_a = ν·p_a and D_ab = −ν·(p − P_max).
/// </remarks>
internal sealed partial class FingerGroup
{
    private bool _hasObject, _isFace;
    private VectorLanes _centre, _face; // centre of the cylinder or point of the face; normal of the face
    private Lane _radius;

    private readonly VectorLanes[] _joint = new VectorLanes[4];
    private readonly VectorLanes[] _along = new VectorLanes[3], _closest = new VectorLanes[3], _normal = new VectorLanes[3];
    private readonly Lane[] _q = new Lane[3], _overlap = new Lane[3], _force = new Lane[3], _gradient = new Lane[3];
    private readonly Lane[] _slope = new Lane[6], _hessian = new Lane[6];   // ∂overlap/∂q_a of segment i at i(i + 1)/2 + a; ∂²/∂q_a∂q_b of the finger's own energy
    private readonly VectorLanes[] _pushSlope = new VectorLanes[6];  // ∂(force·n)/∂q_a of segment i
    private Lane _stored, _contactStored;

    /// <summary>Joint axes MCP, PIP, DIP and fingertip of a lane [m].</summary>
    public Vector2D JointPlace(int lane, int joint) => _joint[joint][lane];

    /// <summary>Unit direction of a segment.</summary>
    public Vector2D Along(int lane, int segment) => _along[segment][lane];

    /// <summary>Point of a segment's centre line that is nearest the object [m].</summary>
    public Vector2D Closest(int lane, int segment) => _closest[segment][lane];

    /// <summary>Unit direction of the object's push on a segment.</summary>
    public Vector2D Normal(int lane, int segment) => _normal[segment][lane];

    /// <summary>Energy of springs, contacts and pulls [J], and of the contacts alone.</summary>
    public (double All, double Contacts) Energy => (Vector256.Sum(_stored & _present), Vector256.Sum(_contactStored & _present));

    /// <summary>Says what is held.</summary>
    public void Hold(HeldObject held)
    {
        _hasObject = held is Cylinder or Face;
        switch (held)
        {
            case Cylinder cylinder:
                _centre = VectorLanes.All(cylinder.Centre);
                _radius = Vector256.Create(cylinder.Radius);
                break;
            case Face face:
                _isFace = true;
                _centre = VectorLanes.All(face.Point);
                _face = VectorLanes.All(Vector2D.AtAngle(face.NormalRadians));
                break;
        }
    }

    /// <summary>Puts the fingers at flexions q [rad].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Place(Lane q1, Lane q2, Lane q3)
    {
        _q[0] = q1;
        _q[1] = q2;
        _q[2] = q3;
        Lane first = -(_open[0] + q1), second = first - (_open[1] + q2), third = second - (_open[2] + q3);
        SineAndCosine.Of(first, out Lane s1, out Lane c1);
        SineAndCosine.Of(second, out Lane s2, out Lane c2);
        SineAndCosine.Of(third, out Lane s3, out Lane c3);
        VectorLanes at = _mcp;
        _joint[0] = at;
        _along[0] = new(c1, s1);
        at += _length[0] * _along[0];
        _joint[1] = at;
        _along[1] = new(c2, s2);
        at += _length[1] * _along[1];
        _joint[2] = at;
        _along[2] = new(c3, s3);
        at += _length[2] * _along[2];
        _joint[3] = at;
    }

    /// <summary>Springs, then contacts: energy, gradient and Hessian over the three flexions.</summary>
    /// <param name="touching">Whether each segment touches: lane·3 + segment.</param>
    /// <param name="byValue">Whether contacts follow the sign of the overlap instead.</param>
    /// <param name="wantLoads">Whether the derivatives of the pushes are needed.</param>
    private void Press(ReadOnlySpan<bool> touching, bool byValue, bool wantLoads)
    {
        Lane half = Vector256.Create(0.5);
        _stored = default;
        _contactStored = default;
        Array.Clear(_hessian);
        for (int j = 0; j < 3; j++)
        {
            _gradient[j] = _springPreload[j] + _springRate[j] * _q[j];
            _hessian[j * (j + 3) / 2] = _springRate[j];
            _stored += _q[j] * (_springPreload[j] + half * _springRate[j] * _q[j]);
        }

        if (!_hasObject)
        {
            return;
        }

        Press(0, touching, byValue, wantLoads);
        Press(1, touching, byValue, wantLoads);
        Press(2, touching, byValue, wantLoads);
        _stored += _contactStored;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Press(int i, ReadOnlySpan<bool> touching, bool byValue, bool wantLoads)
    {
        VectorLanes e = _along[i], p, n;
        Lane inside = default, distance = default, inverse = default, overlap;
        if (_isFace)
        {
            p = _joint[i + 1];
            n = _face;
            overlap = _half[i] - n.Dot(p - _centre);
        }
        else
        {
            VectorLanes start = _joint[i];
            Lane station = (_centre - start).Dot(e), end = _length[i];
            inside = Vector256.GreaterThan(station, Lane.Zero) & Vector256.LessThan(station, end);
            p = start + Vector256.Min(Vector256.Max(station, Lane.Zero), end) * e;
            VectorLanes away = p - _centre;
            distance = away.Length;
            inverse = Vector256<double>.One / distance;
            n = inverse * away;
            overlap = _radius + _half[i] - distance;
        }

        _closest[i] = p;
        _normal[i] = n;
        _overlap[i] = overlap;
        VectorLanes w0 = p - _joint[0], w1 = i < 1 ? default : p - _joint[1], w2 = i < 2 ? default : p - _joint[2];
        Lane d0 = n.Cross(w0), d1 = i < 1 ? default : n.Cross(w1), d2 = i < 2 ? default : n.Cross(w2);
        int row = i * (i + 1) / 2;
        _slope[row] = -d0;
        if (i > 0)
        {
            _slope[row + 1] = -d1;
        }

        if (i > 1)
        {
            _slope[row + 2] = -d2;
        }

        Lane on = byValue ? Vector256.GreaterThan(overlap, Lane.Zero) : Chosen(touching, i);
        if (on == Lane.Zero)
        {
            _force[i] = default;
            for (int a = 0; a <= i && wantLoads; a++)
            {
                _pushSlope[row + a] = default;
            }

            return;
        }

        Lane k = on & _pad, force = k * overlap;
        _force[i] = force;
        _contactStored += Vector256.Create(0.5) * force * overlap;
        _gradient[0] -= force * d0;
        Nearest near = new(inside, distance, inverse, n.Cross(e));
        Lane t0 = e.Cross(w0), t1 = i < 1 ? default : e.Cross(w1), t2 = i < 2 ? default : e.Cross(w2);
        _hessian[0] += k * d0 * d0 - force * Bend(near, w0, w0, d0, d0, t0, t0, n.Dot(w0));
        if (i > 0)
        {
            _gradient[1] -= force * d1;
            Lane beyond = n.Dot(w1);
            _hessian[1] += k * d0 * d1 - force * Bend(near, w0, w1, d0, d1, t0, t1, beyond);
            _hessian[2] += k * d1 * d1 - force * Bend(near, w1, w1, d1, d1, t1, t1, beyond);
        }

        if (i > 1)
        {
            _gradient[2] -= force * d2;
            Lane beyond = n.Dot(w2);
            _hessian[3] += k * d0 * d2 - force * Bend(near, w0, w2, d0, d2, t0, t2, beyond);
            _hessian[4] += k * d1 * d2 - force * Bend(near, w1, w2, d1, d2, t1, t2, beyond);
            _hessian[5] += k * d2 * d2 - force * Bend(near, w2, w2, d2, d2, t2, t2, beyond);
        }

        if (!wantLoads)
        {
            return;
        }

        _pushSlope[row] = PushSlope(near, e, n, w0, d0, force, k);
        if (i > 0)
        {
            _pushSlope[row + 1] = PushSlope(near, e, n, w1, d1, force, k);
        }

        if (i > 1)
        {
            _pushSlope[row + 2] = PushSlope(near, e, n, w2, d2, force, k);
        }
    }

    /// <summary>D_ab: where the point slides inside the segment, and where it is an end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lane Bend(in Nearest at, VectorLanes wa, VectorLanes wb, Lane da, Lane db, Lane ta, Lane tb, Lane beyond)
    {
        Lane atEnd = (wa.Dot(wb) - da * db) * at.Inverse;
        Lane slides = -at.Turn * (ta + tb) - at.Distance;
        return Vector256.ConditionalSelect(at.Inside, slides, atEnd) - beyond;
    }

    /// <summary>∂(force·n)/∂q: n turns with the segment where the point slides inside it, with its own end else; a face stays.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static VectorLanes PushSlope(in Nearest at, VectorLanes e, VectorLanes n, VectorLanes w, Lane d, Lane force, Lane k)
    {
        Lane x = Vector256.ConditionalSelect(at.Inside, -at.Turn * e.X, at.Inverse * (w.Y - d * n.X));
        Lane y = Vector256.ConditionalSelect(at.Inside, -at.Turn * e.Y, at.Inverse * (-w.X - d * n.Y));
        return new(force * x - k * d * n.X, force * y - k * d * n.Y);
    }

    /// <summary>Where a segment is nearest to the object.</summary>
    private readonly struct Nearest(Lane inside, Lane distance, Lane inverse, Lane turn)
    {
        public readonly Lane Inside = inside, Distance = distance, Inverse = inverse, Turn = turn; // Turn: c = n × e
    }

    /// <summary>All bits set in the lanes whose segment touches.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lane Chosen(ReadOnlySpan<bool> touching, int segment)
    {
        long first = touching[segment] ? -1 : 0;
        long second = _fingers.Length > 1 && touching[3 + segment] ? -1 : 0;
        long third = _fingers.Length > 2 && touching[6 + segment] ? -1 : 0;
        long fourth = _fingers.Length > 3 && touching[9 + segment] ? -1 : 0;
        return Vector256.Create(first, second, third, fourth).AsDouble();
    }
}
