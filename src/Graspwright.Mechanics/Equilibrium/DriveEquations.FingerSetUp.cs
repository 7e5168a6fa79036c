using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Numerics;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Fixed figures, stops and coupling limits of the fingers.</content>
internal sealed partial class DriveEquations
{
    private void SetUpFingers(HeldObject held)
    {
        int count = _fingers.Length;
        Attached = new bool[count];
        Array.Fill(Attached, true);
        Taut = new bool[count];
        Touching = new bool[count * PerFinger];
        Overlap = new double[count * PerFinger];
        ContactForce = new double[count * PerFinger];
        Joint = new double[count * PerFinger];
        PullElongations = new double[count];
        LeafTension = new double[count];
        LeafTravel = new double[count];
        LeafStiffness = new double[count];
        _springRate = new double[count * PerFinger];
        _springPreload = new double[count * PerFinger];
        FingerTension = new double[count];
        _tiltSin = new double[_bars.Length];
        _tiltCos = new double[_bars.Length];
        _slopes = new double[count * PerFinger];
        _leafSlopes = new double[count * TrunkCount];
        _chain = new double[count * 4];
        _pip = new JointCoupling[count];
        _dip = new JointCoupling[count];
        _isCoupled = new bool[count];
        _dipFused = new bool[count];
        _limitingJoint = new int[count];
        _geometry = new FingerGeometry[count];
        for (int f = 0; f < count; f++)
        {
            Finger finger = _fingers[f];
            _geometry[f] = new FingerGeometry(finger);
            _dipFused[f] = finger.RangeRadians.Third == 0;
            for (int i = 0; i < 3; i++)
            {
                bool fused = i == 2 && _dipFused[f];
                _springRate[f * 3 + i] = fused ? 0 : finger.SpringRate[i];
                _springPreload[f * 3 + i] = fused ? 0 : finger.SpringPreload[i];
                RequireLength(finger.Segments[i], $"{finger.Name} segment {i + 1}");
            }

            RefuseSlackRod(finger.Pull.Kind, finger.Pull.Slack, $"pull of the {finger.Name}");
            if (finger.Joints is CoupledJoints coupled)
            {
                _isCoupled[f] = true;
                _pip[f] = new(coupled.PipFromMcp, finger.Segments.First);
                _dip[f] = new(_dipFused[f] ? new RatioCoupling(0) : coupled.DipFromPip, finger.Segments.Second);
            }
        }

        switch (held)
        {
            case Cylinder cylinder:
                _hasObject = true;
                _objectPoint = cylinder.Centre;
                _objectRadius = cylinder.Radius;
                break;
            case Face face:
                _hasObject = true;
                _isFace = true;
                _objectPoint = face.Point;
                _faceNormal = Vector2D.AtAngle(face.NormalRadians);
                break;
        }
    }

    private void SetFingerBounds(int f)
    {
        Finger finger = _fingers[f];
        int o = Offsets[f];
        if (!_isCoupled[f])
        {
            for (int j = 0; j < 3; j++)
            {
                High[o + j] = finger.RangeRadians[j];
                Frozen[o + j] = finger.RangeRadians[j] == 0;
            }

            return;
        }

        const double step = Math.PI / 720;
        double top = finger.RangeRadians.First, reached = 0;
        _limitingJoint[f] = 0;
        while (reached < top)
        {
            double next = Math.Min(reached + step, top);
            int limit = LimitAt(f, next);
            if (limit == 0)
            {
                reached = next;
                continue;
            }

            double good = reached, bad = next;
            for (int i = 0; i < 60; i++)
            {
                double middle = 0.5 * (good + bad);
                (good, bad) = LimitAt(f, middle) == 0 ? (middle, bad) : (good, middle);
            }

            _limitingJoint[f] = limit is 1 or 2 ? limit : 0;
            reached = limit > 2 ? Math.Max(0, good - 1e-6) : good; // a four-bar at its last assembly has no slope
            break;
        }

        High[o] = reached;
    }

    /// <summary>0 = within every range; 1, 2 = PIP, DIP past its stop; 3 = cannot be assembled.</summary>
    private int LimitAt(int f, double q1)
    {
        const double slack = 1e-12;
        Finger finger = _fingers[f];
        if (!_pip[f].TryEvaluate(q1, out double q2, out _, out _) || !_dip[f].TryEvaluate(q2, out double q3, out _, out _))
        {
            return 3;
        }

        if (q2 > finger.RangeRadians.Second + slack || q2 < -slack)
        {
            return 1;
        }

        return !_dipFused[f] && (q3 > finger.RangeRadians.Third + slack || q3 < -slack) ? 2 : 0;
    }
}
