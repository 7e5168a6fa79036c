using Graspwright.Hand;
using Graspwright.Strength;
using Graspwright.Strength.Ears;
using Graspwright.Strength.Order;

namespace Graspwright.Workshop.Strength;

/// <summary>A knuckle pin sized to go before everything else, and still to carry the grip.</summary>
/// <param name="Finger">The finger.</param>
/// <param name="Material">Material of the pin.</param>
/// <param name="Diameter">Diameter [m].</param>
/// <param name="Newtons">Push at the fingertip at which it breaks [N].</param>
/// <param name="Chance">Chance that it goes before the next weakest link.</param>
/// <param name="GripFactor">Load that breaks it ÷ the greatest load of the grip.</param>
public sealed record CheapPin(string Finger, string Material, double Diameter, double Newtons, double Chance, double GripFactor)
{
    /// <summary>Share of the next weakest link's force at which the pin should break.</summary>
    private const double Target = 0.7;

    private const double LeastDiameter = 0.0008, Step = 0.0001;

    private static readonly string[] Candidates = ["acetal", "nylon-66", "brass", "stainless-304"];

    /// <summary>Least factor over the greatest grip load with which a pin is offered.</summary>
    public const double LeastGripFactor = 1.5;

    /// <summary>Pins of common materials for a finger, the surest first; none where none would do.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="order">The finger's order of failure.</param>
    /// <param name="loads">The grips.</param>
    public static IReadOnlyList<CheapPin> For(HandModel hand, FailureOrder order, GripLoads loads)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(loads);
        Materials materials = new(hand);
        FailureLink next = order.FirstDear;
        FingerBuild build = order.Build;
        double load = loads.Greatest.GetValueOrDefault(build.Position(0));
        List<CheapPin> pins = [];
        foreach (string name in Candidates)
        {
            Solid solid = materials.Solid(name);
            double greatest = build.Chain.Hinges[0].EarHeight * 0.5;
            double Breaks(double d) => BreaksAt(build, solid, d, side: true);
            if (WeakLink.Size(Breaks, Target * next.Newtons, LeastDiameter, greatest) is not { } exact)
            {
                continue;
            }

            double diameter = Math.Floor(exact / Step + 1e-9) * Step, push = Breaks(diameter), factor = load > 0 ? BreaksAt(build, solid, diameter, side: false) / load : double.PositiveInfinity;
            if (diameter >= LeastDiameter && factor >= LeastGripFactor)
            {
                pins.Add(new(build.Finger.Name, name, diameter, push, WeakLink.ChanceFirst(push, materials.Of(name).StrengthSpread, next.Newtons, next.Spread), factor));
            }
        }

        return [.. pins.OrderByDescending(p => Math.Min(p.Chance, 0.999)).ThenByDescending(p => p.GripFactor)];
    }

    private static double BreaksAt(FingerBuild build, Solid solid, double diameter, bool side)
    {
        Hinge hinge = build.Chain.Hinges[0];
        Hinge tried = hinge with { PinDiameter = diameter, Hole = diameter + hinge.Hole - hinge.PinDiameter, PinSolid = solid };
        IReadOnlyList<StressCheck> checks = side ? tried.UnderSidePush(build.Chain.Along[0], build.Chain.Off[0]) : tried.UnderGrip();
        return checks.Where(c => c.Part == HingePart.Pin).Min(c => c.BreakingForce(solid));
    }
}
