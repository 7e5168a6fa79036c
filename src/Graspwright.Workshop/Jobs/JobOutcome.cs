using Graspwright.Mechanics.Holding;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>What a hand makes of one job.</summary>
/// <param name="Job">The job.</param>
public sealed record JobOutcome(Hand.Job Job)
{
    /// <summary>The closing run; <see langword="null"/> = there was none.</summary>
    public RunReading? Reading { get; init; }

    /// <summary>State in which the object is held: the end of closing, or what is left of it behind a lock.</summary>
    public double[] State { get; init; } = [];

    /// <summary>The grip; <see langword="null"/> = nothing is gripped.</summary>
    public Grasp? Grasp { get; init; }

    /// <summary>Why nothing can be said; <see langword="null"/> = it can.</summary>
    public string? Unknown { get; init; }

    /// <summary>The load in its worst direction of acceleration.</summary>
    public OutsideLoad Load { get; init; }

    /// <summary>What the grip holds of it.</summary>
    public HoldResult? Held { get; init; }

    /// <summary>Greatest load factor with friction at the lower end of its spread.</summary>
    public double FactorLow { get; init; }

    /// <summary>Greatest load factor with friction at the upper end of its spread.</summary>
    public double FactorHigh { get; init; }

    /// <summary>Friction that the pads need [-]; infinite = none is enough.</summary>
    public double FrictionNeeded { get; init; }

    /// <summary>Friction that the pads have [-].</summary>
    public double FrictionThere { get; init; }

    /// <summary>Load factor in every attitude of the forearm, in the order of <see cref="ForearmAttitude"/>.</summary>
    public IReadOnlyList<double> InAttitudes { get; init; } = [];

    /// <summary>Flexing moment of the load on the wrist [N·m]; negative extends.</summary>
    public double FlexingMoment { get; init; }

    /// <summary>Sideways moment of the load on the wrist [N·m]; positive bends it away from the thumb.</summary>
    public double SidewaysMoment { get; init; }

    /// <summary>Hand and device, which the wrist carries beside the load.</summary>
    public IReadOnlyList<Carried> Carried { get; init; } = [];

    /// <summary>Unit direction of gravity seen from the hand that holds.</summary>
    public Numerics.Vector3D Down { get; init; }

    /// <summary>Anatomical angle of the wrist that holds, flexion positive [rad].</summary>
    public double WristRadians { get; init; }

    /// <summary>Moment of the drive on the wrist [N·m]; 0 where locks hold.</summary>
    public double DriveMoment { get; init; }

    /// <summary>Flexing moment of load, hand and device together [N·m]; negative extends.</summary>
    public double FlexingOfAll => FlexingMoment + Carried.Sum(c => c.Flexing(Down));

    /// <summary>Sideways moment of load, hand and device together [N·m]; positive bends it away from the thumb.</summary>
    public double SidewaysOfAll => SidewaysMoment + Carried.Sum(c => c.Sideways(Down));

    /// <summary>Moment that the wrist needs in its driving direction [N·m]; negative = in the other.</summary>
    public double WristNeeds { get; init; }

    /// <summary>Capacity of the wrist in the direction of <see cref="WristNeeds"/> there [N·m].</summary>
    public double WristCapacity { get; init; }

    /// <summary>How far the object tips between touch and the end of closing [rad].</summary>
    public double Tips { get; init; }

    /// <summary>What is left behind the lock; <see langword="null"/> = the wrist holds on.</summary>
    public RelaxedGrip? Relaxed { get; init; }

    /// <summary>Spare of the job ÷ the job: the load factor less 1; −1 where nothing is held; NaN where it is not known.</summary>
    public double Margin => Unknown is not null ? double.NaN : Math.Max(Held?.Factor ?? 0, 0) - 1;

    /// <summary>Margin with friction at the lower end of its spread.</summary>
    public double MarginLow => Unknown is not null ? double.NaN : Math.Max(FactorLow, 0) - 1;

    /// <summary>Margin with friction at the upper end of its spread.</summary>
    public double MarginHigh => Unknown is not null ? double.NaN : Math.Max(FactorHigh, 0) - 1;

    /// <summary>The verdict: margin of the load and of the wrist.</summary>
    public Verdict Verdict => Unknown is not null ? Verdict.NotKnown : Verdicts.Of(Margin, MarginLow, MarginHigh);

    /// <summary>Whether the job works: the load is held with the friction that is there.</summary>
    public bool Works => Margin >= 0;

    /// <summary>The job's own amount, in its unit: kilograms, newtons or newton metres.</summary>
    public double Amount => Job.Load > 0 ? Job.Load : Job.Pull > 0 ? Job.Pull : Job.Twist;

    /// <summary>Unit of <see cref="Amount"/>.</summary>
    public string Unit => Job.Load > 0 ? "kg" : Job.Pull > 0 ? "N" : "N·m";

    /// <summary>What could be added before it gives way, or is missing where negative, in that unit.</summary>
    public double Spare => Margin * Amount;
}
