using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>The fingers: set up, evaluated and read, four at a time.</content>
internal sealed partial class DriveEquations
{
    private FingerGroup[] _groups = [];

    /// <summary>Whether each finger's pull is attached.</summary>
    public bool[] Attached => _state.Attached;

    /// <summary>Whether each finger's pull carries load.</summary>
    public bool[] Taut => _state.Taut;

    /// <summary>Whether each segment touches: finger·3 + segment.</summary>
    public bool[] Touching => _state.Touching;

    /// <summary>Overlap of each segment [m].</summary>
    public double[] Overlap => _state.Overlap;

    /// <summary>Contact force of each segment [N].</summary>
    public double[] ContactForce => _state.ContactForce;

    /// <summary>Joint flexions q [rad], finger·3 + joint.</summary>
    public double[] Joint => _state.Joint;

    /// <summary>Elongation of each pull [m].</summary>
    public double[] PullElongations => _state.PullElongations;

    /// <summary>Tension at each leaf T₁ [N].</summary>
    public double[] LeafTension => _state.LeafTension;

    /// <summary>Travel of each leaf [m].</summary>
    public double[] LeafTravel => _state.LeafTravel;

    /// <summary>Tension behind each guide, at the finger T₂ [N].</summary>
    public double[] FingerTension => _state.FingerTension;

    /// <summary>Energy in contacts [J].</summary>
    public double ContactEnergy { get; private set; }

    /// <summary>Whether something is held.</summary>
    public bool HasObject { get; private set; }

    /// <summary>Loads on the joint pins at the last evaluation [N]: finger·3 + joint, 0 MCP, 1 PIP, 2 DIP.</summary>
    public ReadOnlySpan<double> JointLoads
    {
        get
        {
            for (int g = 0; g < _groups.Length && !_loadsAreNew; g++)
            {
                _groups[g].Loads(_jointLoads.AsSpan(3 * FingerGroup.Lanes * g));
            }

            _loadsAreNew = true;
            return _jointLoads;
        }
    }

    private double[] _jointLoads = [];
    private bool _loadsAreNew; // of the last evaluation

    /// <summary>Unit direction of the object's push on a segment.</summary>
    public Vector2D Normal(int finger, int segment) => Group(finger, out int lane).Normal(lane, segment);

    /// <summary>Point of a segment's centre line that is nearest the object [m].</summary>
    public Vector2D Closest(int finger, int segment) => Group(finger, out int lane).Closest(lane, segment);

    /// <summary>Fingertip [m].</summary>
    public Vector2D Tip(int finger) => Group(finger, out int lane).JointPlace(lane, 3);

    private FingerGroup Group(int finger, out int lane)
    {
        lane = finger % FingerGroup.Lanes;
        return _groups[finger / FingerGroup.Lanes];
    }

    private void AddFingers()
    {
        ReadOnlySpan<double> tiltSin = _angleSin.AsSpan(2, _bars.Length), tiltCos = _angleCos.AsSpan(2, _bars.Length);
        ContactEnergy = 0;
        _loadsAreNew = false;
        for (int g = 0; g < _groups.Length; g++)
        {
            _groups[g].Evaluate(_state, tiltSin, tiltCos, Jacobian.Blocks[g], Jacobian.A, Jacobian.Stride);
            (double all, double contacts) = _groups[g].Energy;
            Stored += all;
            ContactEnergy += contacts;
        }

        for (int b = 0; b < _bars.Length; b++)
        {
            (double first, double second) = (0, 0);
            foreach (FingerGroup group in _groups)
            {
                (double one, double other) = group.BarEnds(b);
                first += one;
                second += other;
            }

            _barEnds[b] = (first, second);
        }
    }

    private void SetUpFingers(HeldObject held)
    {
        for (int f = 0; f < _fingers.Length; f++)
        {
            Finger finger = _fingers[f];
            Attached[f] = true;
            for (int i = 0; i < 3; i++)
            {
                RequireLength(finger.Segments[i], $"{finger.Name} segment {i + 1}");
            }

            RefuseSlackRod(finger.Pull.Kind, finger.Pull.Slack, $"pull of the {finger.Name}");
        }

        HasObject = held is Cylinder or Face;
        _groups = new FingerGroup[Jacobian.Blocks.Length];
        _jointLoads = new double[3 * _fingers.Length];
        _barEnds = new (double, double)[_bars.Length];
        for (int g = 0; g < _groups.Length; g++)
        {
            int first = g * FingerGroup.Lanes, count = Math.Min(FingerGroup.Lanes, _fingers.Length - first);
            _groups[g] = new FingerGroup(_fingers.AsSpan(first, count), first, _drive.Friction, _railDirection, Offsets);
            _groups[g].Hold(held);
            _groups[g].Hang(_bars.Length, _arms, _ends);
        }
    }

    private void SetFingerBounds(int f)
    {
        Finger finger = _fingers[f];
        int o = Offsets[f];
        if (finger.Joints is AdaptiveJoints)
        {
            for (int j = 0; j < 3; j++)
            {
                High[o + j] = finger.RangeRadians[j];
                Frozen[o + j] = finger.RangeRadians[j] == 0;
            }

            return;
        }

        FingerGroup group = Group(f, out int lane);
        (High[o], int limiting) = group.CoupledRange(lane);
        group.Stop(lane, High[o], limiting);
    }
}
