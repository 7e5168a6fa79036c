using Graspwright.Mechanics.Drive;

namespace Graspwright.Mechanics.Equilibrium;

/// <content>How far a coupled finger bends: to the first of its three stops, or as far as its four-bars can be assembled.</content>
internal sealed partial class FingerGroup
{
    /// <summary>Upper end of the first unknown of a coupled finger [rad], and the joint whose stop ends it: 1 PIP, 2 DIP, 0 else.</summary>
    public (double High, int LimitingJoint) CoupledRange(int lane)
    {
        const double step = Math.PI / 720;
        double top = _fingers[lane].RangeRadians.First, reached = 0;
        if (!_pip[lane].IsFourBar && !_dip[lane].IsFourBar)
        {
            // Ratios pass a stop once and for good: no need to look for the first time.
            return LimitAt(lane, top) == 0 ? (top, 0) : Last(lane, 0, top);
        }

        while (reached < top)
        {
            double next = Math.Min(reached + step, top);
            int limit = LimitAt(lane, next);
            if (limit == 0)
            {
                reached = next;
                continue;
            }

            (double good, limit) = Last(lane, reached, next);

            // A four-bar at its last assembly has no slope.
            return limit > 2 ? (Math.Max(0, good - 1e-6), 0) : (good, limit);
        }

        return (reached, 0);
    }

    /// <summary>The last flexion within every range between one that is and one that is not, and what ends it.</summary>
    private (double Good, int Limit) Last(int lane, double good, double bad)
    {
        int limit = LimitAt(lane, bad);
        while (0.5 * (good + bad) is var middle && middle > good && middle < bad)
        {
            int there = LimitAt(lane, middle);
            (good, bad, limit) = there == 0 ? (middle, bad, limit) : (good, middle, there);
        }

        return (good, limit);
    }

    /// <summary>0 = within every range; 1, 2 = PIP, DIP past its stop; 3 = cannot be assembled.</summary>
    private int LimitAt(int lane, double q1)
    {
        const double slack = 1e-12;
        Triple range = _fingers[lane].RangeRadians;
        if (!_pip[lane].TryEvaluate(q1, out double q2, out _, out _) || !_dip[lane].TryEvaluate(q2, out double q3, out _, out _))
        {
            return 3;
        }

        if (q2 > range.Second + slack || q2 < -slack)
        {
            return 1;
        }

        return !_dipFused[lane] && (q3 > range.Third + slack || q3 < -slack) ? 2 : 0;
    }
}
