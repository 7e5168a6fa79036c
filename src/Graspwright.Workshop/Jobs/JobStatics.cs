using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Run;
using Graspwright.Numerics;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Jobs;

/// <summary>Holds one job's load in the grip that a closing run ends with.</summary>
public static class JobStatics
{
    private static readonly ForearmAttitude[] Attitudes = Enum.GetValues<ForearmAttitude>();
    private static readonly Vector3D[] Ways = [new(1, 0, 0), new(-1, 0, 0), new(0, 1, 0), new(0, -1, 0), new(0, 0, 1), new(0, 0, -1)];

    /// <summary>The statics of a job.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="job">The job.</param>
    /// <param name="reading">The closing run on the job's object.</param>
    public static JobOutcome Of(Hand.HandModel hand, Hand.Job job, RunReading reading)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(reading);
        JobOutcome outcome = new(job) { Reading = reading, State = reading.End };
        if (reading.Run.Failure is { Opening: false } failure)
        {
            return outcome with { Unknown = $"the closing could not be followed past {Angles.Text(failure.ThetaRadians)}" };
        }

        BesideFingers beside = JobMapping.Beside(hand, job);
        double thickness = hand.Objects.First(o => o.Name == job.ObjectName) is Hand.PlateObject plate ? plate.Thickness : 0;
        RelaxedGrip? relaxed = job.LockAndRelax ? RelaxedLock.Relax(reading.Drive, reading.Held, reading.Run.Layout, reading.End, Lock(hand)) : null;
        double[] state = relaxed?.State ?? reading.End;
        Grasp? squeezed = GripOfRun.Squeezed(reading.Drive, reading.Held, reading.Run.Layout, state, beside, thickness, reading.End);
        outcome = outcome with { State = state, Relaxed = relaxed, FrictionThere = beside.PadFriction, Tips = TipsOf(hand, job, reading) };
        Grasp? grasp = squeezed is null ? null : Final(hand, job, reading, squeezed);
        return Wrist(hand, grasp is null ? Nothing(job, outcome, squeezed, reading) : Hold(hand, outcome with { Grasp = grasp }, grasp));
    }

    private static PullLock Lock(Hand.HandModel hand)
    {
        Hand.ClosingLock given = hand.ClosingLock ?? throw new ArgumentException("A job that locks needs a closing lock.", nameof(hand));
        return new(given.Pitch, given.Backlash, given.Stiffness, given.MayCarry);
    }

    /// <summary>The grip as the job uses it; <see langword="null"/> where palm and thumb cannot balance what is left behind the locks.</summary>
    private static Grasp? Final(Hand.HandModel hand, Hand.Job job, RunReading reading, Grasp squeezed)
    {
        IReadOnlyList<FingerDrive> limits = job.LockAndRelax ? LockLimits(hand, reading, squeezed) : squeezed.Drives;
        if (job.As == Hand.HeldAs.HookBar)
        {
            return squeezed with { Contacts = [.. squeezed.Contacts.Select(c => c with { Preload = 0 })], Locked = true, LockLimits = limits };
        }

        return job.LockAndRelax ? GripOfRun.Locked(squeezed, limits) : squeezed;
    }

    private static IReadOnlyList<FingerDrive> LockLimits(Hand.HandModel hand, RunReading reading, Grasp squeezed) => hand.ClosingLock?.MayCarry is not { } most
        ? []
        : [.. squeezed.Drives.Where(d => d.Motion == 0).Select(d => d with { Drive = most * RelaxedLock.Arm(reading.Drive, reading.Drive.Fingers[d.Finger], reading.End[reading.Run.Layout.Joint(d.Finger, 0)]) })];

    private static JobOutcome Nothing(Hand.Job job, JobOutcome outcome, Grasp? squeezed, RunReading reading)
    {
        GiveWay mode = squeezed is null ? GiveWay.Drop : GiveWay.PushedOut;
        double wrist = reading.Drive.Wrist.StartRadians;
        OutsideLoad load = new(job.Load * Mechanics.Holding.Attitude.Gravity * Mechanics.Holding.Attitude.Down(JobMapping.Attitude(job.Forearm), wrist), default, default);
        return outcome with { Held = new() { Factor = HoldResult.NotBalanced, Mode = mode }, Load = load, FactorLow = -1, FactorHigh = -1, FrictionNeeded = double.PositiveInfinity };
    }

    private static JobOutcome Hold(Hand.HandModel hand, JobOutcome outcome, Grasp grasp)
    {
        Hand.Job job = outcome.Job;
        double spread = JobMapping.Pads(hand).Spread, wrist = Anatomical(outcome.Reading!, outcome.Reading!.End, relaxed: job.LockAndRelax);
        LoadLimit limit = new(grasp);
        Vector3D down = Mechanics.Holding.Attitude.Down(JobMapping.Attitude(job.Forearm), wrist);
        OutsideLoad load = Worst(job, grasp, limit, down);
        HoldResult held = limit.Hold(load, down);
        double[] attitudes = new double[Attitudes.Length];
        for (int a = 0; a < attitudes.Length; a++)
        {
            Vector3D there = Mechanics.Holding.Attitude.Down(Attitudes[a], wrist);
            attitudes[a] = limit.Factor(JobMapping.Load(job, grasp, there).With(JobMapping.Shaken(job, grasp, there), grasp.Centre));
        }

        OutsideLoad weight = JobMapping.Load(job, grasp, down);
        held = job.As == Hand.HeldAs.HookBar && held.Mode is GiveWay.Drop ? held with { Mode = GiveWay.PullOut } : held;
        return outcome with
        {
            Load = load,
            Held = held,
            FactorLow = limit.Factor(load, 1 - spread),
            FactorHigh = limit.Factor(load, 1 + spread),
            FrictionNeeded = limit.FrictionNeeded(load) * outcome.FrictionThere,
            InAttitudes = attitudes,
            FlexingMoment = Still(Mechanics.Holding.Attitude.FlexingMoment(weight)),
            SidewaysMoment = Still(Mechanics.Holding.Attitude.SidewaysMoment(weight)),
        };
    }

    /// <summary>What rounding leaves of a moment is none.</summary>
    private static double Still(double moment) => Math.Abs(moment) < 1e-9 ? 0 : moment;

    /// <summary>The load with the acceleration that leaves least to spare.</summary>
    private static OutsideLoad Worst(Hand.Job job, Grasp grasp, LoadLimit limit, Vector3D down)
    {
        OutsideLoad still = JobMapping.Load(job, grasp, down);
        if (job.Acceleration == 0 || job.Load == 0)
        {
            return still;
        }

        OutsideLoad worst = still.With(JobMapping.Shaken(job, grasp, down), grasp.Centre);
        double least = limit.Factor(worst);
        foreach (Vector3D way in Ways)
        {
            OutsideLoad shaken = still.With(JobMapping.Shaken(job, grasp, way), grasp.Centre);
            double factor = limit.Factor(shaken);
            if (factor < least - 1e-9)
            {
                (worst, least) = (shaken, factor);
            }
        }

        return worst;
    }

    /// <summary>Anatomical angle of the wrist, flexion positive [rad]; relaxed, the wrist is taken back to the start.</summary>
    private static double Anatomical(RunReading reading, double[] state, bool relaxed)
    {
        Wrist wrist = reading.Drive.Wrist;
        double travel = relaxed ? 0 : state[TraceLayout.JointTravel];
        return wrist.StartRadians + (wrist.Direction == DrivingDirection.Flexion ? travel : -travel);
    }

    private static double TipsOf(Hand.HandModel hand, Hand.Job job, RunReading reading)
    {
        double from = reading.Closing(EventKind.Touch) is { } touch ? Anatomical(reading, reading.StateAt(touch.ThetaRadians), relaxed: false) : hand.Wrist.StartRadians;
        return Mechanics.Holding.Attitude.Tips(JobMapping.Attitude(job.Forearm), from, Anatomical(reading, reading.End, relaxed: false));
    }

    /// <summary>What the wrist has to bear: the drive's moment, and those of the load, of what is left of the hand, and of the device.</summary>
    private static JobOutcome Wrist(Hand.HandModel hand, JobOutcome outcome)
    {
        RunReading reading = outcome.Reading!;
        bool flexion = hand.Wrist.Direction == Hand.DrivingDirection.Flexion, relaxed = outcome.Job.LockAndRelax;
        double angle = Anatomical(reading, reading.End, relaxed), drive = relaxed ? 0 : reading.End[TraceLayout.Tau];
        outcome = outcome with
        {
            Carried = WristWeight.Own(hand),
            WristRadians = angle,
            Down = Mechanics.Holding.Attitude.Down(JobMapping.Attitude(outcome.Job.Forearm), angle),
            DriveMoment = drive,
        };
        double needs = drive - (flexion ? outcome.FlexingOfAll : -outcome.FlexingOfAll);
        Hand.MomentTable table = flexion == needs >= 0 ? hand.Wrist.FlexionCapacity : hand.Wrist.ExtensionCapacity;
        return outcome with { WristNeeds = needs, WristCapacity = new MomentTable(table.AnglesRadians, table.MomentsNewtonMetres).At(angle) };
    }
}
