using Graspwright.Mechanics.Drive;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>Friction of the guides and of the joint pins.</content>
internal sealed partial class DriveEquations
{
    /// <summary>Guide of the pull and pins of the joints.</summary>
    private void AddFingerFriction(int f, Finger finger)
    {
        int nt = TrunkCount, m = Sizes[f], o = Offsets[f];
        double t1 = LeafTension[f], k1 = LeafStiffness[f];
        ref RubbingPlace guide = ref _places[_guide[f]];

        // Finger tension T₂ = T₁ − M_guide; its change: by own q, and by the trunk through T₁.
        Span<double> t2Own = stackalloc double[3];
        double perTravel = 1; // dT₂/dT₁ through the trunk
        for (int q = 0; q < m; q++)
        {
            t2Own[q] = -k1 * _slopes[f * 3 + q];
        }

        FingerTension[f] = t1;
        if (guide.Active)
        {
            double pull = Math.Max(t1, 0), forward = _guideForward[f], back = _guideBack[f];
            double stick = guide.Map(TakenUp(f), back * pull, forward * pull, ModesByValue);
            double share = !BoundDerivatives || t1 <= 0 ? 0 : guide.Mode > 0 ? forward : guide.Mode < 0 ? back : 0;
            for (int q = 0; q < m; q++)
            {
                double slope = _slopes[f * 3 + q];
                R[o + q] += guide.Friction * slope;
                for (int p = 0; p < m; p++)
                {
                    Jacobian.D[(f * 3 + q) * 3 + p] += slope * (stick - share * k1) * _slopes[f * 3 + p];
                }

                for (int a = Carriage; a < nt; a++)
                {
                    Jacobian.C[(f * 3 + q) * nt + a] += slope * share * k1 * _leafSlopes[f * nt + a];
                }

                t2Own[q] -= (stick - share * k1) * slope;
            }

            Jacobian.D[f * 9] += guide.Friction * _curvature[0];
            perTravel = 1 - share;
            FingerTension[f] = t1 - guide.Friction;
        }

        for (int j = 0; j < m; j++)
        {
            ref RubbingPlace p = ref _places[_firstJoint[f] + j];
            if (!p.Active)
            {
                continue;
            }

            double perTension = JointBound(f, finger, j, t2Own, out double bound, _grad);
            double stick = p.Map(X[o + j], -bound, bound, ModesByValue);
            R[o + j] += p.Friction;
            Jacobian.D[(f * 3 + j) * 3 + j] += stick;
            int kept = (f * 3 + j) * 4;
            _grad.CopyTo(_jointBound, kept);
            _jointBound[kept + 3] = perTension * perTravel;
            if (p.Mode == 0 || !BoundDerivatives)
            {
                continue;
            }

            for (int q = 0; q < m; q++)
            {
                Jacobian.D[(f * 3 + j) * 3 + q] += p.Mode * _grad[q];
            }

            for (int a = Carriage; a < nt; a++)
            {
                Jacobian.C[(f * 3 + j) * nt + a] += p.Mode * perTension * perTravel * k1 * _leafSlopes[f * nt + a];
            }
        }
    }

    private double TakenUp(int f) => LeafTravel[f] - _fingers[f].Pull.Slack - PullElongations[f];

    // Math.Exp(x) − 1 loses digits only below 1e-8 of wrap, where the guide carries nothing worth counting.
    private static double ExpMinusOne(double x) => Math.Exp(x) - 1;
}
