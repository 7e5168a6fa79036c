using System.Globalization;
using Graspwright.Mechanics.Holding;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>Answers whether the hand holds what the day asks.</summary>
public static class Jobbing
{
    private static readonly string[] AttitudeWords = ["palm down", "thumb up", "palm up", "overhead", "hanging"];

    /// <summary>Answers the question.</summary>
    /// <param name="question">Hand and jobs.</param>
    public static JobsResult Answer(JobsQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        List<InputError> errors = [];
        List<Hand.Job> jobs = Chosen(question, errors);
        if (errors.Count > 0)
        {
            return new(null, [], errors);
        }

        try
        {
            IReadOnlyList<JobOutcome> outcomes = JobRuns.Outcomes(question.Hand, jobs, question.Solver);
            return new(Compose(question.Hand, outcomes), outcomes, []);
        }
        catch (DriveException fault)
        {
            return new(null, [], [Faults.OfHand(question.File, fault)]);
        }
    }

    private static List<Hand.Job> Chosen(JobsQuestion question, List<InputError> errors)
    {
        IReadOnlyList<Hand.Job> all = question.Hand.Jobs;
        if (all.Count == 0)
        {
            errors.Add(new(question.File, 0, 0, "jobs", "the hand names no job", "at least one section [jobs.NAME]", "Add one, such as [jobs.\"full mug\"] with its object, its load and how the forearm is held."));
        }

        List<Hand.Job> chosen = [];
        foreach (string name in question.Jobs)
        {
            Hand.Job? job = all.FirstOrDefault(j => j.Name == name);
            if (job is null)
            {
                errors.Add(Faults.Unknown(question.File, "--job", name, all.Select(j => j.Name)));
            }
            else if (!chosen.Contains(job))
            {
                chosen.Add(job);
            }
        }

        return question.Jobs.Count == 0 ? [.. all] : chosen;
    }

    private static Answer Compose(Hand.HandModel hand, IReadOnlyList<JobOutcome> outcomes) => new()
    {
        Verb = "jobs",
        Hand = hand.Name,
        Sentence = JobWords.Sentence(outcomes),
        Figures = [.. JobMeasures.Figures(outcomes), .. GripShares.Figures(GripShares.Of(hand))],
        Findings = [.. outcomes.SelectMany(o => JobFindings.Of(hand, o)), .. GripShares.Findings(GripShares.Of(hand))],
        Tables = [JobTable(outcomes), AttitudeTable(outcomes), WristTable(outcomes), GripShares.Table(hand, GripShares.Of(hand)), ContactTable(outcomes), RunTables.Guesses(hand)],
        Cautions = JobCautions.All,
    };

    private static Table JobTable(IReadOnlyList<JobOutcome> outcomes)
    {
        Column[] columns =
        [
            new("job", ""), new("verdict", ""), new("asked", ""), new("spare", ""), new("gives way", ""), new("grip", "N"), new("friction needed", "1"), new("there", "1"),
            new("load on wrist", "N·m"), new("sideways", "N·m"), new("tips", "deg"), new("a day", ""),
        ];
        return new("jobs", columns, [.. outcomes.Select(o => (IReadOnlyList<Cell>)
        [
            o.Job.Name, o.Verdict.Word(), JobWords.Amount(o.Amount, o.Unit), Spare(o), JobWords.How(o),
            o.State.Length > 0 ? o.State[TraceLayout.Grip] : double.NaN, o.Unknown is null ? o.FrictionNeeded : double.NaN, o.FrictionThere,
            o.FlexingMoment, o.SidewaysMoment, double.RadiansToDegrees(o.Tips), o.Job.TimesADay,
        ])]);
    }

    private static string? Spare(JobOutcome o) => double.IsNaN(o.Spare) ? null : o.Held is { Mode: GiveWay.None } ? "over 100 times" : JobWords.Amount(o.Spare, o.Unit);

    private static Table AttitudeTable(IReadOnlyList<JobOutcome> outcomes)
    {
        Column[] columns = [new("job, its load in every attitude", ""), .. AttitudeWords.Select(w => new Column(w, ""))];
        return new("attitudes", columns, [.. outcomes.Where(o => o.InAttitudes.Count > 0).Select(o => (IReadOnlyList<Cell>)
            [o.Job.Name, .. o.InAttitudes.Select((f, a) => (Cell)$"{(AttitudeWords[a] == o.Job.Forearm ? "→ " : "")}{Times(f)}")])]);
    }

    /// <summary>Moments on the wrist; then those of hand, device and load in every attitude: flexing, and sideways thumb up.</summary>
    private static Table WristTable(IReadOnlyList<JobOutcome> outcomes)
    {
        Column[] columns =
        [
            new("on the wrist, N·m", ""), new("drive", ""), new("hand", ""), new("device", ""), new("load", ""), new("holds", ""), new("of its strength", "%"),
            .. AttitudeWords.Select(w => new Column(w == "thumb up" ? "thumb up, sideways" : w, "")),
        ];
        return new("on the wrist", columns, [.. outcomes.Where(o => o.Unknown is null).Select(o => (IReadOnlyList<Cell>)
        [
            o.Job.Name, Moment(o.DriveMoment), .. o.Carried.Select(c => (Cell)Moment(c.Flexing(o.Down))), Moment(o.FlexingMoment), Moment(o.WristNeeds), 100 * Math.Abs(o.WristNeeds) / o.WristCapacity,
            .. Enum.GetValues<ForearmAttitude>().Select(a => (Cell)Moment(InAttitude(o, a))),
        ])]);
    }

    private static string Moment(double newtonMetres) => (Math.Abs(newtonMetres) < 0.005 ? 0 : newtonMetres).ToString("0.00", CultureInfo.InvariantCulture);

    private static double InAttitude(JobOutcome o, ForearmAttitude attitude)
    {
        Numerics.Vector3D down = Attitude.Down(attitude, o.WristRadians);
        OutsideLoad load = o.Grasp is null ? default : JobMapping.Load(o.Job, o.Grasp, down);
        return attitude == ForearmAttitude.ThumbUp ? Attitude.SidewaysMoment(load) + o.Carried.Sum(c => c.Sideways(down)) : Attitude.FlexingMoment(load) + o.Carried.Sum(c => c.Flexing(down));
    }

    private static string Times(double factor) => factor < 0 ? "none"
        : factor >= HoldResult.MostFactor * (1 - 1e-6) ? "over 100 times" : $"{factor.ToString(factor < 9.95 ? "0.00" : "0.0", CultureInfo.InvariantCulture)} times";

    /// <summary>Forces on the object at the limit, for the picture's and the reader's own sums.</summary>
    private static Table ContactTable(IReadOnlyList<JobOutcome> outcomes)
    {
        Column[] columns =
        [
            new("job", ""), new("contact", ""), new("x", "mm"), new("y", "mm"), new("toward thumb", "mm"),
            new("force x", "N"), new("force y", "N"), new("force toward thumb", "N"), new("friction used", "%"),
        ];
        List<IReadOnlyList<Cell>> rows = [];
        foreach (JobOutcome o in outcomes.Where(o => o.Grasp is not null && o.Held is { Forces.Count: > 0 }))
        {
            for (int c = 0; c < o.Grasp!.Contacts.Count; c++)
            {
                HoldContact contact = o.Grasp.Contacts[c];
                Numerics.Vector3D f = o.Held!.Forces[c];
                double normal = f.Dot(contact.Normal), across = (f - normal * contact.Normal).Length;
                rows.Add([o.Job.Name, contact.Name, 1000 * contact.Place.X, 1000 * contact.Place.Y, 1000 * contact.Place.Z, f.X, f.Y, f.Z, normal > 1e-6 && contact.Friction > 0 ? 100 * across / (contact.Friction * normal) : double.NaN]);
            }
        }

        return new("contacts at the limit", columns, rows);
    }
}
