using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Effort;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;
using GripLoad = Graspwright.Mechanics.Effort.GripLoad;
using GripLoads = Graspwright.Workshop.Strength.GripLoads;

namespace Graspwright.Workshop.Dose;

/// <summary>What a day of grips asks of the wearer's wrist?</summary>
/// <param name="Hand">The hand.</param>
public sealed record DoseQuestion(HandModel Hand)
{
    /// <summary>The day of wear: the same that life is reckoned from.</summary>
    public Use Day { get; init; } = Hand.Structure.Use;


    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>What follows the equilibrium.</summary>
    public Solver Solver { get; init; } = ClosingRun.Solve;
}

/// <summary>Sums a day of grips up and holds it against the published all-day limits.</summary>
public static class Dosing
{
    /// <summary>Cautions of a day's load.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Tingling, numbness, or pain at night means stop and see a clinician, whatever the figures say.",
        "The limits come from whole arms at work. For wrists that drive a hand none are published: begin with a tenth of these grips and add slowly, over weeks.",
        "Swelling, colour that stays, or a sore place under the cuff: take the hand off, and measure the girth.",
    ];

    /// <summary>Answers the question.</summary>
    /// <param name="question">Hand and day.</param>
    /// <returns>The answer, or everything that is wrong.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Answer(DoseQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        GripResult grips = Gripping.Answer(new(question.Hand) { File = question.File, Locks = [GripQuestion.AllFree], Solver = question.Solver });
        GripCase[] followed = [.. grips.Cases.Where(c => c.Reading.Run.End != RunEnd.NotFollowed)];
        if (followed.Length == 0)
        {
            return (null, grips.Errors);
        }

        var days = new List<DoseDay>();
        foreach (Effort effort in Efforts.Both)
        {
            GripCase[] cases = [.. followed.Where(c => c.Effort == effort)];
            if (cases.Length > 0)
            {
                GripLoad load = new(cases.Max(c => Share(c.Reading)), question.Day.GripsPerDay, question.Day.HoldSeconds, cases.Average(c => CloseSeconds(question.Hand, c.Reading.Run)));
                days.Add(new(effort.Word(), [load], question.Day));
                days.Add(new($"{effort.Word()}, held by locks", [load with { HoldSeconds = 0 }], question.Day));
            }
        }

        if (Counted(question) is { } counted)
        {
            days.Add(counted);
        }

        return (Compose(question, days), grips.Errors);
    }

    /// <summary>Effort at the end of closing, as a share of the wrist's capacity there.</summary>
    /// <param name="reading">The run.</param>
    private static double Share(RunReading reading) => reading.Run.AtEnd[TraceLayout.EffortShare] * (reading.Options.EffortFraction ?? 1);

    private static double CloseSeconds(HandModel hand, RunResult run) => run.AtEnd[TraceLayout.JointTravel] / hand.Wrist.SpeedRadiansPerSecond;

    /// <summary>The day as the file counts it: its jobs, the grips beside them, and what is left of the grips spread as life spreads them.</summary>
    private static DoseDay? Counted(DoseQuestion question)
    {
        HandModel hand = question.Hand;
        if (hand.CountedGrips.Count == 0)
        {
            return null;
        }

        List<GripLoad> loads = [];
        JobsResult result = Jobbing.Answer(new(hand) { File = question.File, Solver = question.Solver });
        foreach (JobOutcome o in result.Outcomes.Where(o => o.Job.TimesADay > 0 && o.Reading is not null))
        {
            loads.Add(Load(hand, o.Reading!, o.Job.TimesADay!.Value, o.Job.LockAndRelax ? 0 : question.Day.HoldSeconds));
        }

        DriveModel drive = DriveMapping.ToDrive(hand);
        foreach (DayJob grips in hand.CountedGrips.Where(g => !hand.Jobs.Any(j => j.TimesADay > 0 && j.Name == g.Name)))
        {
            loads.AddRange(Closed(question, drive, grips.ObjectName, grips.Effort) is { } reading ? [Load(hand, reading, grips.PerDay, question.Day.HoldSeconds)] : []);
        }

        RunReading[] spread = hand.UncountedGrips <= 0 ? [] : [.. hand.Objects.Where(o => o is not NothingHeld).Select(o => Closed(question, drive, o.Name, GripEffort.Firm)).OfType<RunReading>()];
        foreach (RunReading reading in spread)
        {
            double each = hand.UncountedGrips / spread.Length, share = Share(reading);
            loads.AddRange(Portions(question.Day).Select(p => new GripLoad(share * GripLoads.Share(hand.Wrist, p.Effort) / hand.Wrist.AllDayShare, each * p.Share, question.Day.HoldSeconds, CloseSeconds(hand, reading.Run))));
        }

        return loads.Count == 0 ? null : new("the day as the file counts it", loads, question.Day);
    }

    private static (GripEffort Effort, double Share)[] Portions(Use day) => [(GripEffort.Gentle, day.GentleShare), (GripEffort.Firm, day.FirmShare), (GripEffort.Hard, day.HardShare)];

    private static GripLoad Load(HandModel hand, RunReading reading, double times, double hold) => new(Share(reading), times, hold, CloseSeconds(hand, reading.Run));

    /// <summary>A closing run at one of the efforts of life; <see langword="null"/> where the object is in the way or the path is lost.</summary>
    private static RunReading? Closed(DoseQuestion question, DriveModel drive, string thing, GripEffort effort)
    {
        HeldObject held = HoldMapping.ToHeld(question.Hand, question.Hand.Objects.First(o => o.Name == thing));
        RunOptions options = new() { EffortFraction = GripLoads.Share(question.Hand.Wrist, effort), Opening = false };
        try
        {
            RunResult run = question.Solver(drive, held, options);
            return run.End == RunEnd.NotFollowed ? null : new() { Run = run, Drive = drive, Held = held, Options = options };
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return null;
        }
    }

    private static Answer Compose(DoseQuestion question, List<DoseDay> days)
    {
        DoseDay first = days[0];
        return new()
        {
            Verb = "dose",
            Hand = question.Hand.Name,
            Sentence = Sentence(question, days),
            Situation = first.Name,
            Figures = first.Figures(),
            Findings = [.. first.Findings(), .. days.Skip(1).SelectMany(d => d.Findings()).Where(f => f.Verdict != Verdict.Good)],
            Tables = [Table(days), Limits()],
            Cautions = Cautions,
        };
    }

    private static string Sentence(DoseQuestion question, List<DoseDay> days)
    {
        DoseDay first = days[0];
        if (double.IsNaN(first.Load.MeanShare))
        {
            return Say($"{question.Day.GripsPerDay:0} grips of {question.Day.HoldSeconds:0.#} s take longer than the {question.Day.WornSeconds / 3600:0.#} h that the hand is at work.");
        }

        string room = Say($"{question.Day.GripsPerDay:0} grips a day of {question.Day.HoldSeconds:0.#} s at your all-day effort load the wrist by {100 * first.Load.MeanShare:0.0} % of its strength on average over {question.Day.WornSeconds / 3600:0.#} h, under load {100 * first.Load.DutyShare:0} % of the time; the published all-day limits of {100 * DayLoad.MeanLow:0} to {100 * DayLoad.MeanHigh:0} % are reached at {first.GripsAt(DayLoad.MeanLow):0} to {first.GripsAt(DayLoad.MeanHigh):0} grips.");
        string[] over = [.. days.Where(d => d.Worst() == Verdict.Fails).Select(d => d.Name)];
        return over.Length == 0 ? room : $"{room} Past a limit: {string.Join("; ", over)}.";
    }

    private static Table Table(List<DoseDay> days) => new("the day",
        [new("grips", ""), new("a day", ""), new("effort", "%"), new("mean load", "%"), new("under load", "%"), new("never below", "%"), new("acceptable peak", "%"), new("verdict", "")],
        [
            .. days.Select(d => (IReadOnlyList<Cell>)
            [
                d.Name, d.Grips.Sum(g => g.Times), 100 * d.Load.PeakShare, 100 * d.Load.MeanShare, 100 * d.Load.DutyShare, 100 * d.Load.StaticShare, 100 * d.Load.AcceptableShare, d.Worst().Word(),
            ]),
        ]);

    private static Table Limits() => new("published limits",
        [new("load", ""), new("from", "%"), new("to", "%"), new("source", "")],
        [
            ["mean over the day", 100 * DayLoad.MeanLow, 100 * DayLoad.MeanHigh, "jonsson-levels"],
            ["mean of intermittent grips", double.NaN, 100 * DayLoad.MeanOfGrips, "bystrom-1994"],
            ["never let up", 100 * DayLoad.StaticLow, 100 * DayLoad.StaticHigh, "jonsson-levels"],
            ["peak", 100 * DayLoad.PeakLow, 100 * DayLoad.PeakHigh, "jonsson-levels"],
        ]);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
