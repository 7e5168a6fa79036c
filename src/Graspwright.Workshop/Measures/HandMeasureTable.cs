using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Strength;

namespace Graspwright.Workshop.Measures;

/// <summary>Every measure of the whole hand, its jobs and its fingers; those of one closing run are in <see cref="MeasureTable"/>.</summary>
public static class HandMeasureTable
{
    /// <summary>Jobs that work.</summary>
    public static HandMeasure JobsDone { get; } = new("jobs_done", "jobs that work", "", Better.More,
        (r, _) => JobMeasures.DoneOf(r.Jobs), value: (r, _) => r.BriefJobs.Count(o => o.Works));

    /// <summary>Spare of a job ÷ the job.</summary>
    public static HandMeasure JobMargin { get; } = new("job_margin", "spare of the job ÷ the job", "", Better.More,
        (r, job) => JobMeasures.MarginOf(r.Job(job)), JobNames, (r, job) => JobMeasures.Read(r.BriefJob(job), o => o.Margin));

    /// <summary>What could be added to a job.</summary>
    public static HandMeasure JobSpare { get; } = new("job_spare", "what could be added, or is missing where negative", "", Better.More,
        (r, job) => JobMeasures.SpareOf(r.Job(job)), JobNames, (r, job) => JobMeasures.Read(r.BriefJob(job), o => o.Spare));

    /// <summary>What the wrist holds during a job.</summary>
    public static HandMeasure WristMoment { get; } = new("wrist_moment", "moment that the wrist must hold, in its driving direction", "N·m", Better.Less,
        (r, job) => JobMeasures.WristOf(r.Job(job)), JobNames, (r, job) => JobMeasures.Read(r.BriefJob(job), o => o.WristNeeds));

    /// <summary>Sideways push at a fingertip that something gives way to.</summary>
    public static HandMeasure SidePushToBreak { get; } = new("side_push_to_break", "sideways push at a fingertip that something gives way to", "N", Better.More,
        (r, _) => StrengthFigures.BreakingPush(r.Orders));

    /// <summary>Margin against the hardest monthly knock.</summary>
    public static HandMeasure KnockMargin { get; } = new("knock_margin", "margin of the weakest finger against the hardest knock that comes once a month", "", Better.More,
        (r, _) => StrengthFigures.KnockMargin(r.Hand, r.Orders));

    /// <summary>Strength of the weakest part ÷ its load in a squeeze.</summary>
    public static HandMeasure SqueezeFactor { get; } = new("squeeze_factor", "load that breaks the weakest part ÷ its load in a squeeze", "", Better.More,
        (r, _) => StrengthFigures.SqueezeFactor(DriveStrength.All(r.Hand, r.Loads)));

    /// <summary>Days of wear to the first broken hinge.</summary>
    public static HandMeasure FirstFailureDays { get; } = new("first_failure_days", "days of wear to the first broken hinge, the middle of the samples", "days", Better.More,
        (r, _) => StrengthFigures.FirstFailure(r.Life.FirstBreak, LifeModel.NoUse(r.Hand.Structure.Use, r.Loads)));

    /// <summary>Damage of a day at the place that goes first.</summary>
    public static HandMeasure DailyDamage { get; } = new("daily_damage", "share of its life that the part that goes first loses on a day, before ageing", "", Better.Less,
        (r, _) => StrengthFigures.DailyDamage(r.Life, LifeModel.NoUse(r.Hand.Structure.Use, r.Loads)));

    /// <summary>Mass of phalanges and pins.</summary>
    public static HandMeasure MovingMass { get; } = new("moving_mass", "mass of phalanges and their pins, pads and pulls not counted", "g", Better.Less,
        (r, _) => StrengthFigures.MovingMass(r.Hand));

    /// <summary>Number of parts.</summary>
    public static HandMeasure PartsCount { get; } = new("parts_count", "phalanges, hinge pins, bushings, parts and springs named in the file", "", Better.Less,
        (r, _) => StrengthFigures.PartsCount(r.Hand));

    /// <summary>Smallest gap over the whole travel of the empty hand, over every lock pattern.</summary>
    public static HandMeasure TravelClearance { get; } = new("clearance", "smallest gap over the travel", "mm", Better.More,
        (r, _) => RoomMeasures.Clearance(r.Sweeps));

    /// <summary>Smallest gap from a finger to the palm or a stump.</summary>
    public static HandMeasure PalmGap { get; } = new("palm_gap", "smallest gap from a finger to the palm or a stump, nothing held", "mm", Better.More,
        (r, _) => RoomMeasures.PalmGap(r.Sweeps));

    /// <summary>Height over the back of the shell.</summary>
    public static HandMeasure Height { get; } = new("height", "height over the back of the shell", "mm", Better.Less,
        (r, _) => RoomMeasures.Height(r.Hand, r.Sweeps));

    /// <summary>Room behind a knuckle.</summary>
    public static HandMeasure KnuckleRoom { get; } = new("knuckle_room", "room behind the knuckle", "mm", Better.More,
        (r, finger) => RoomMeasures.KnuckleRoom(r.Hand, finger), hand => hand.Room?.Stumps.Select(s => s.Finger) ?? []);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<HandMeasure> All { get; } =
    [
        JobsDone, JobMargin, JobSpare, WristMoment, SidePushToBreak, KnockMargin, SqueezeFactor, FirstFailureDays, DailyDamage, MovingMass, PartsCount,
        TravelClearance, PalmGap, Height, KnuckleRoom,
    ];

    private static IEnumerable<string> JobNames(Hand.HandModel hand) => hand.Jobs.Select(j => j.Name);
}
