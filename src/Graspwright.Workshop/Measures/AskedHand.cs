using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Measures;

/// <summary>A closing run by what it closes on, how the fingers are locked and how hard the wrist works.</summary>
/// <param name="ObjectName">Name of the object.</param>
/// <param name="Locks">Name of the lock pattern; <see cref="GripQuestion.AllFree"/> = none.</param>
/// <param name="Effort">Effort.</param>
public readonly record struct SituationKey(string ObjectName, string Locks, Effort Effort)
{
    /// <inheritdoc/>
    public override string ToString() => $"{ObjectName}/{Locks}{(Effort == Effort.AllDay ? "" : $"/{Effort.Word()}")}";
}

/// <summary>One hand of which measures are asked: each run, job, sweep and life is worked out when a measure first needs it, and once.</summary>
/// <remarks>For one thread at a time; a search holds one for each design it looks at.</remarks>
/// <param name="hand">The hand.</param>
/// <param name="drive">Its drive, where the caller has it already.</param>
/// <param name="solver">What follows the equilibrium; <see langword="null"/> = <see cref="ClosingRun.Solve"/>.</param>
/// <param name="alone">Whether its runs go one after the other, as the caller looks at several hands side by side.</param>
public sealed class AskedHand(Hand.HandModel hand, DriveModel? drive = null, Solver? solver = null, bool alone = false)
{
    /// <summary>Samples behind a life; the same number and seed that <c>lasts</c> uses unless told otherwise.</summary>
    private const int LifeSamples = 1000;

    private readonly Solver _solver = solver ?? ClosingRun.Solve;
    private readonly Dictionary<SituationKey, Ran> _runs = [];
    private readonly Dictionary<SituationKey, bool> _expected = []; // and whether it has to open again
    private DriveModel? _drive = drive, _worn;
    private IReadOnlyList<JobOutcome>? _jobs, _brief;
    private IReadOnlyList<FailureOrder>? _orders;
    private IReadOnlyList<RoomSwept>? _sweeps;
    private GripLoads? _loads;
    private HandBand? _life;

    /// <summary>The hand.</summary>
    public Hand.HandModel Hand { get; } = hand ?? throw new ArgumentNullException(nameof(hand));

    /// <summary>Its drive.</summary>
    public DriveModel Drive => _drive ??= DriveMapping.ToDrive(Hand);

    /// <summary>Outcome of every job.</summary>
    public IReadOnlyList<JobOutcome> Jobs => _jobs ??= JobRuns.Outcomes(Hand, Hand.Jobs, _solver, Drive, KnownRuns(), alone: alone);

    /// <summary>Outcome of every job without what only its words need: attitudes beside its own, the spread of friction, the friction it needs.</summary>
    public IReadOnlyList<JobOutcome> BriefJobs => _jobs ?? (_brief ??= JobRuns.Outcomes(Hand, Hand.Jobs, _solver, Drive, KnownRuns(), brief: true, alone: alone));

    /// <summary>Order of failure of each finger.</summary>
    public IReadOnlyList<FailureOrder> Orders => _orders ??= FailureOrder.All(Hand);

    /// <summary>The grips of a day.</summary>
    public GripLoads Loads => _loads ??= GripLoads.Of(Hand, null, Drive, _solver, alone);

    /// <summary>Lives of its hinges.</summary>
    public HandBand Life => _life ??= Lasting.Sample(Hand, Loads, LifeSamples, seed: 1);

    /// <summary>Sweeps of the empty hand, one for each lock pattern; empty without a room.</summary>
    public IReadOnlyList<RoomSwept> Sweeps => _sweeps ??= Rooming.Sweeps(Hand, Drive, _solver);

    /// <summary>The first object that lies in a finger of the open hand, of those that were run; <see langword="null"/> = none does.</summary>
    public DriveException? Overlap => _runs.Values.Select(r => r.Fault).FirstOrDefault(f => f is not null);

    /// <summary>Says beforehand that a run will be asked for, so that it is not run twice.</summary>
    /// <param name="situation">The situation.</param>
    /// <param name="opening">Whether it has to open again.</param>
    public void Expect(SituationKey situation, bool opening) => _expected[situation] = opening || _expected.GetValueOrDefault(situation);

    /// <summary>Outcome of a job.</summary>
    /// <param name="name">Its name.</param>
    public JobOutcome Job(string name) => Jobs.First(o => o.Job.Name == name);

    /// <summary>Outcome of a job without what only its words need.</summary>
    /// <param name="name">Its name.</param>
    public JobOutcome BriefJob(string name) => BriefJobs.First(o => o.Job.Name == name);

    /// <summary>The run of a situation, or what was wrong with the object.</summary>
    /// <param name="situation">The situation; its names must be in the hand file.</param>
    /// <param name="opening">Whether it has to open again.</param>
    /// <exception cref="DriveException">The hand cannot be put together.</exception>
    public Ran Run(SituationKey situation, bool opening)
    {
        opening |= _expected.GetValueOrDefault(situation);
        if (!_runs.TryGetValue(situation, out Ran? ran) || (opening && ran.Reading is { Options.Opening: false }))
        {
            _runs[situation] = ran = Close(situation, opening);
        }

        return ran;
    }

    /// <summary>Of the runs that jobs need, those that are asked for anyway.</summary>
    private Dictionary<RunKey, RunReading> KnownRuns()
    {
        Dictionary<RunKey, RunReading> known = [];
        foreach (RunKey key in Hand.Jobs.Select(RunKey.Of).Where(k => k.Centre is null))
        {
            SituationKey situation = new(key.ObjectName, key.Locks ?? GripQuestion.AllFree, key.Squeeze ? Effort.Squeeze : Effort.AllDay);
            if (_expected.ContainsKey(situation) && Run(situation, opening: false).Reading is { } reading)
            {
                known[key] = reading;
            }
        }

        return known;
    }

    private Ran Close(SituationKey situation, bool opening)
    {
        Hand.HandObject thing = Hand.Objects.First(o => o.Name == situation.ObjectName);
        Hand.LockPattern? pattern = situation.Locks == GripQuestion.AllFree ? null : Hand.Locks.First(l => l.Name == situation.Locks);
        HeldObject held = HoldMapping.ToHeld(Hand, thing);
        RunOptions options = new() { EffortFraction = situation.Effort.Share(Hand.Wrist), Locks = HoldMapping.ToLocks(Hand, pattern), Opening = opening };
        try
        {
            RunResult run = _solver(Drive, held, options);
            return new(
                new()
                {
                    Run = run,
                    Drive = Drive,
                    Worn = _worn ??= DriveMapping.GivesWear(Hand) ? DriveMapping.ToDrive(Hand, worn: true) : null,
                    Held = held,
                    Options = options,
                    AngularSpeed = Hand.Wrist.SpeedRadiansPerSecond,
                    LockLimits = HoldMapping.LockLimits(Hand, pattern),
                    Room = RoomMapping.ToRoom(Hand, Drive),
                }, null);
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return new(null, fault);
        }
    }
}
