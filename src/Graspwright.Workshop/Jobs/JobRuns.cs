using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Jobs;

/// <summary>Closes the hand on what the jobs ask for: each object, lock pattern and effort once, closing only.</summary>
public static class JobRuns
{
    /// <summary>Outcome of every job.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="jobs">The jobs.</param>
    /// <param name="solver">What follows the equilibrium.</param>
    /// <param name="drive">The hand's drive, where the caller has it.</param>
    /// <param name="known">Runs that were made already.</param>
    /// <param name="brief">Whether what only words need is left out; see <see cref="JobStatics.Of"/>.</param>
    /// <param name="alone">Whether one after the other, for callers that look at several hands side by side.</param>
    /// <exception cref="DriveException">The hand cannot be put together.</exception>
    public static IReadOnlyList<JobOutcome> Outcomes(Hand.HandModel hand, IReadOnlyList<Hand.Job> jobs, Solver solver, DriveModel? drive = null, IReadOnlyDictionary<RunKey, RunReading>? known = null, bool brief = false, bool alone = false)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        Dictionary<RunKey, Ran> runs = Runs(hand, jobs, solver, drive, known, alone);
        JobOutcome[] outcomes = new JobOutcome[jobs.Count];
        Parallel.For(0, jobs.Count, Threads(alone), i => outcomes[i] = Outcome(hand, jobs[i], runs[RunKey.Of(jobs[i])], brief));
        return outcomes;
    }

    /// <summary>The closing runs that jobs need, by object, locks and effort.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="jobs">The jobs.</param>
    /// <param name="solver">What follows the equilibrium.</param>
    /// <param name="drive">The hand's drive, where the caller has it.</param>
    /// <param name="known">Runs that were made already.</param>
    /// <param name="alone">Whether one after the other, for callers that look at several hands side by side.</param>
    public static Dictionary<RunKey, Ran> Runs(Hand.HandModel hand, IReadOnlyList<Hand.Job> jobs, Solver solver, DriveModel? drive = null, IReadOnlyDictionary<RunKey, RunReading>? known = null, bool alone = false)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(solver);
        DriveModel closes = drive ?? DriveMapping.ToDrive(hand);
        RunKey[] keys = [.. jobs.Select(RunKey.Of).Distinct()];
        Ran[] ran = new Ran[keys.Length];
        Parallel.For(0, keys.Length, Threads(alone), i => ran[i] = known is not null && known.TryGetValue(keys[i], out RunReading? reading) ? new(reading, null) : Run(hand, closes, keys[i], solver));
        if (ran.Select(r => r.Fault).FirstOrDefault(f => f is not null && f.Fault != DriveFault.ObjectOverlaps) is { } fault)
        {
            throw fault;
        }

        return keys.Zip(ran).ToDictionary(p => p.First, p => p.Second);
    }

    /// <summary>Outcome of a job from its run.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="job">The job.</param>
    /// <param name="ran">Its run.</param>
    /// <param name="brief">Whether what only words need is left out; see <see cref="JobStatics.Of"/>.</param>
    public static JobOutcome Outcome(Hand.HandModel hand, Hand.Job job, Ran ran, bool brief = false)
    {
        ArgumentNullException.ThrowIfNull(ran);
        return ran.Reading is { } reading
            ? JobStatics.Of(hand, job, reading, brief)
            : new(job) { Unknown = Overlap(ran.Fault!) };
    }

    /// <summary>Why an object that lies in a finger of the open hand was not run.</summary>
    /// <param name="fault">What the engine found.</param>
    internal static string Overlap(DriveException fault) =>
        $"with the hand open the object already lies {(1000 * fault.Amount).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)} mm inside {fault.Subject}";

    /// <summary>One thread, or as many as there are.</summary>
    internal static ParallelOptions Threads(bool alone) => new() { MaxDegreeOfParallelism = alone ? 1 : -1 };

    private static Ran Run(Hand.HandModel hand, DriveModel drive, RunKey key, Solver solver)
    {
        Hand.HandObject thing = hand.Objects.First(o => o.Name == key.ObjectName);
        if (key.Centre is { } centre && thing is Hand.CylinderObject cylinder)
        {
            thing = cylinder with { Place = new Hand.AtCentre(centre) };
        }

        Hand.LockPattern? pattern = key.Locks is null ? null : hand.Locks.First(l => l.Name == key.Locks);
        HeldObject held = HoldMapping.ToHeld(hand, thing);
        RunOptions options = new()
        {
            EffortFraction = (key.Squeeze ? Effort.Squeeze : Effort.AllDay).Share(hand.Wrist),
            Locks = HoldMapping.ToLocks(hand, pattern),
            Opening = false,
        };
        try
        {
            return new(new() { Run = solver(drive, held, options), Drive = drive, Held = held, Options = options, AngularSpeed = hand.Wrist.SpeedRadiansPerSecond }, null);
        }
        catch (DriveException fault)
        {
            return new(null, fault);
        }
    }
}

/// <summary>What tells one closing run from another.</summary>
/// <param name="ObjectName">Name of the object.</param>
/// <param name="Locks">Name of the lock pattern; <see langword="null"/> = all free.</param>
/// <param name="Squeeze">Short squeeze, or else all-day effort.</param>
/// <param name="Centre">Where the middle of a cylinder lies [m]; <see langword="null"/> = where the object says.</param>
public readonly record struct RunKey(string ObjectName, string? Locks, bool Squeeze, Hand.Point? Centre)
{
    /// <summary>Key of a job's run.</summary>
    /// <param name="job">The job.</param>
    public static RunKey Of(Hand.Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new(job.ObjectName, job.Locks, job.Squeeze, job.Centre);
    }
}

/// <summary>A run, or what was wrong.</summary>
/// <param name="Reading">The run.</param>
/// <param name="Fault">What was wrong.</param>
public sealed record Ran(RunReading? Reading, DriveException? Fault);
