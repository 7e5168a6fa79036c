namespace Graspwright.Mechanics.Tests.Linkage;

/// <summary>
/// Contact forces of a finger whose one pull drives several joints, in closed form and apart from the solver: frictionless
/// contacts, one on each segment, balance the joint moments. From the work of small turnings, J^T f = moments (after
/// L. Birglen and C. Gosselin, "Kinetostatic Analysis of Underactuated Fingers", IEEE Trans. Robotics and Automation 20(2),
/// 2004; the formula from memory and derived again by virtual work).
/// </summary>
/// <remarks>
/// A force on segment i, at distance k_i from its joint and square to it, has about joint j ≤ i the lever
/// k_i + Σ l_m cos(θ_{m+1} + … + θ_i), m from j to i − 1. A negative force means that the segment would be pushed off.
/// </remarks>
internal static class UnderactuatedFinger
{
    /// <summary>Forces on two segments.</summary>
    /// <param name="moments">Moments about the two joints [N·m].</param>
    /// <param name="places">Distance of each contact from its segment's joint [m].</param>
    /// <param name="length">Length of the first segment [m].</param>
    /// <param name="second">Flexion of the second joint [rad].</param>
    public static (double First, double Second) Two((double First, double Second) moments, (double First, double Second) places, double length, double second)
    {
        double tip = moments.Second / places.Second;
        return ((moments.First - moments.Second - tip * length * Math.Cos(second)) / places.First, tip);
    }

    /// <summary>Forces on three segments.</summary>
    /// <param name="moments">Moments about the three joints [N·m].</param>
    /// <param name="places">Distance of each contact from its segment's joint [m].</param>
    /// <param name="lengths">Lengths of the first and the second segment [m].</param>
    /// <param name="second">Flexion of the second joint [rad].</param>
    /// <param name="third">Flexion of the third joint [rad].</param>
    public static (double First, double Second, double Third) Three(
        (double First, double Second, double Third) moments,
        (double First, double Second, double Third) places,
        (double First, double Second) lengths,
        double second,
        double third)
    {
        double tip = moments.Third / places.Third;
        double middle = (moments.Second - moments.Third - tip * lengths.Second * Math.Cos(third)) / places.Second;
        double root = moments.First - moments.Second - middle * lengths.First * Math.Cos(second) - tip * lengths.First * Math.Cos(second + third);
        return (root / places.First, middle, tip);
    }
}
