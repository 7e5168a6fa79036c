using System.Globalization;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Postures;

/// <summary>From which start posture, and in which direction, should the wrist drive?</summary>
/// <remarks>
/// The drive is set afresh at each start posture so that it lies as the file says; what changes is how far the wrist
/// can go from there and what it can give. Driving the other way is taken as the same drive built in mirror, so that it
/// pulls alike; the wrist's own table for that direction is used.
/// </remarks>
public static class Posturing
{
    private const double Step = 5, LeastTravel = 10; // degrees
    private const double Functional = 40; // degrees, Ryu 1991

    /// <summary>What one start posture and direction give.</summary>
    /// <param name="Direction">Driving direction.</param>
    /// <param name="StartRadians">Start posture [rad].</param>
    /// <param name="TravelRadians">Travel that is left [rad].</param>
    /// <param name="JobsDone">Jobs that work.</param>
    /// <param name="Grips">Grip on each object at the all-day effort [N]; NaN where not every free finger touches.</param>
    /// <param name="Work">Work that the all-day effort can do over the travel [J].</param>
    public sealed record Tried(Hand.DrivingDirection Direction, double StartRadians, double TravelRadians, int JobsDone, IReadOnlyList<double> Grips, double Work)
    {
        /// <summary>Whether this is the hand as the file has it.</summary>
        public bool AsIs { get; init; }

        internal double Worth => JobsDone + 1e-3 * Grips.Count(double.IsFinite) + 1e-6 * Grips.Where(double.IsFinite).Sum();
    }

    /// <summary>Answers the question.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="file">Name of the hand file, for messages.</param>
    /// <returns>The answer, or bad input.</returns>
    public static (Answer? Answer, IReadOnlyList<InputError> Errors) Answer(Hand.HandModel hand, string file)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Hand.HandObject[] things = [.. hand.Objects.Where(o => o is not Hand.NothingHeld)];
        if (things.Length == 0)
        {
            return (null, [new(file, 0, 0, "objects", "the hand names no object to close on", "at least one object", "Add one, such as a cylinder with its diameter and its station on the palm line.")]);
        }

        Hand.WristRange range = hand.WristRange ?? new(double.DegreesToRadians(Functional), double.DegreesToRadians(Functional));
        List<(Hand.DrivingDirection Direction, double Start, double Travel)> asked = [];
        for (double degrees = -Math.Floor(double.RadiansToDegrees(range.ExtensionRadians) / Step) * Step; degrees <= double.RadiansToDegrees(range.FlexionRadians); degrees += Step)
        {
            double start = double.DegreesToRadians(degrees);
            asked.Add((Hand.DrivingDirection.Flexion, start, range.FlexionRadians - start));
            asked.Add((Hand.DrivingDirection.Extension, start, start + range.ExtensionRadians));
        }

        asked.RemoveAll(a => double.RadiansToDegrees(a.Travel) < LeastTravel);
        if (asked.Count == 0)
        {
            return (null, [new(file, 0, 0, "wrist_range", "a range that leaves no travel", $"at least {LeastTravel.ToString(CultureInfo.InvariantCulture)} deg from one end to the other", "Measure it again, loaded and with the cuff on.")]);
        }

        try
        {
            Tried[] tried = new Tried[asked.Count + 1];
            Parallel.For(0, asked.Count, i => tried[i] = Try(hand, things, asked[i].Direction, asked[i].Start, asked[i].Travel));
            tried[^1] = Try(hand, things, hand.Wrist.Direction, hand.Wrist.StartRadians, hand.Wrist.TravelRadians) with { AsIs = true };
            return (Compose(hand, things, tried), []);
        }
        catch (AggregateException several) when (several.InnerExceptions.FirstOrDefault() is DriveException fault)
        {
            return (null, [Faults.OfHand(file, fault)]);
        }
        catch (DriveException fault)
        {
            return (null, [Faults.OfHand(file, fault)]);
        }
    }

    private static Tried Try(Hand.HandModel hand, Hand.HandObject[] things, Hand.DrivingDirection direction, double start, double travel)
    {
        Hand.HandModel turned = hand with { Wrist = hand.Wrist with { Direction = direction, StartRadians = start, TravelRadians = travel } };
        bool mirrored = direction != hand.Wrist.Direction;
        Solver solver = mirrored ? Mirrored : ClosingRun.Solve;
        DriveModel drive = DriveMapping.ToDrive(turned);
        double[] grips = [.. things.Select(t => Grip(turned, drive, t, solver))];
        int done = hand.Jobs.Count == 0 ? 0 : JobRuns.Outcomes(turned, hand.Jobs, solver).Count(o => o.Works);
        return new(direction, start, travel, done, grips, Work(turned));
    }

    private static double Grip(Hand.HandModel hand, DriveModel drive, Hand.HandObject thing, Solver solver)
    {
        try
        {
            RunResult run = solver(drive, HoldMapping.ToHeld(hand, thing), new() { EffortFraction = hand.Wrist.AllDayShare, Opening = false });
            return run.Failure is null && run.First(EventKind.AllTouch) is not null ? run.AtEnd[TraceLayout.Grip] : double.NaN;
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return double.NaN;
        }
    }

    /// <summary>Runs the drive built in mirror: it pulls as before, while the wrist works from −start with its table turned round.</summary>
    private static RunResult Mirrored(DriveModel drive, HeldObject held, RunOptions options)
    {
        Mechanics.Drive.MomentTable table = drive.Wrist.Capacity;
        bool extension = drive.Wrist.Direction == DrivingDirection.Extension;
        Mechanics.Drive.Wrist wrist = drive.Wrist with
        {
            Direction = extension ? DrivingDirection.Flexion : DrivingDirection.Extension,
            StartRadians = -drive.Wrist.StartRadians,
            Capacity = new([.. table.AnglesRadians.Reverse().Select(a => -a)], [.. table.MomentsNewtonMetres.Reverse()]),
        };
        return ClosingRun.Solve(drive with { Wrist = wrist }, held, options);
    }

    /// <summary>∫ share · capacity over the travel, by its own corners [J].</summary>
    private static double Work(Hand.HandModel hand)
    {
        Hand.MomentTable given = hand.Wrist.DrivingCapacity;
        Mechanics.Drive.MomentTable table = new(given.AnglesRadians, given.MomentsNewtonMetres);
        double from = hand.Wrist.StartRadians, to = hand.Wrist.Direction == Hand.DrivingDirection.Flexion ? from + hand.Wrist.TravelRadians : from - hand.Wrist.TravelRadians;
        (double low, double high) = (Math.Min(from, to), Math.Max(from, to));
        double[] corners = [low, .. given.AnglesRadians.Where(a => a > low && a < high), high];
        double sum = 0;
        for (int i = 1; i < corners.Length; i++)
        {
            sum += 0.5 * (table.At(corners[i - 1]) + table.At(corners[i])) * (corners[i] - corners[i - 1]);
        }

        return hand.Wrist.AllDayShare * sum;
    }

    private static Answer Compose(Hand.HandModel hand, Hand.HandObject[] things, Tried[] tried)
    {
        Column[] columns = [new("drive", ""), new("start", "deg"), new("travel", "deg"), new("jobs done", ""), new("all-day work", "J"), .. things.Select(t => new Column($"grip {t.Name}", "N")), new("", "")];
        List<IReadOnlyList<Cell>> rows = [.. tried.OrderByDescending(t => t.AsIs).ThenBy(t => t.Direction).ThenBy(t => t.StartRadians).Select(t => (IReadOnlyList<Cell>)
        [
            Word(t.Direction), double.RadiansToDegrees(t.StartRadians), double.RadiansToDegrees(t.TravelRadians), hand.Jobs.Count > 0 ? t.JobsDone : double.NaN, t.Work,
            .. t.Grips.Select(g => (Cell)g), t.AsIs ? "as the file has it" : "",
        ])];
        Tried now = tried[^1], best = tried.MaxBy(t => t.Worth)!;
        return new()
        {
            Verb = "postures",
            Hand = hand.Name,
            Sentence = Sentence(hand, now, best, Best(Hand.DrivingDirection.Flexion), Best(Hand.DrivingDirection.Extension)),
            Findings = [Judge(hand, now, best)],
            Tables = [new("postures", columns, rows), RunTables.Guesses(hand)],
            Cautions =
            [
                hand.WristRange is null ? "The range of the wrist is not given: 40° each way is taken, what most daily tasks of people with whole hands need (Ryu 1991). Measure yours as [wrist_range]." : "Ranges shrink through the day and with swelling: leave some degrees at the end.",
                "A drive for the other direction is taken as this one in mirror; it must still be designed, and its links find room elsewhere.",
                "Pain, tingling or numbness at an end of the range: do not drive there, and see a clinician.",
            ],
        };

        Tried? Best(Hand.DrivingDirection direction) => tried.Where(t => t.Direction == direction && !t.AsIs).MaxBy(t => t.Worth);
    }

    private static Finding Judge(Hand.HandModel hand, Tried now, Tried best)
    {
        int most = Math.Max(best.JobsDone, 1);
        double margin = hand.Jobs.Count == 0 ? 0.1 : (now.JobsDone - best.JobsDone) / (double)most;
        return new("start_posture", "wrist", margin < 0 ? Verdict.Tight : Verdict.Good,
            now.JobsDone >= best.JobsDone
                ? $"No other start posture or direction within the wrist's range does more jobs than the {Text(now)} of the file."
                : $"A start at {Text(best)} does {Whole(best.JobsDone)} jobs against {Whole(now.JobsDone)} from {Text(now)}.",
            "Set the cuff and the link's length for the better start, then measure travel and capacity there again.")
        { Figure = now.JobsDone, Limit = best.JobsDone, Margin = margin };
    }

    private static string Sentence(Hand.HandModel hand, Tried now, Tried best, Tried? flexion, Tried? extension)
    {
        string count = hand.Jobs.Count == 0 ? "" : $" does {Whole(now.JobsDone)} of {Whole(hand.Jobs.Count)} jobs";
        string bests = string.Join("; ", new[] { flexion, extension }.OfType<Tried>().Select(t =>
            $"driven by {Word(t.Direction)} the best start is {Degrees(t.StartRadians)}{(hand.Jobs.Count == 0 ? "" : $" with {Whole(t.JobsDone)} jobs")}, {Degrees(t.TravelRadians)} of travel and {t.Work.ToString("0.0", CultureInfo.InvariantCulture)} J"));
        return $"The hand as it is, {Text(now)},{(count.Length > 0 ? count : " is the first row")}. {char.ToUpperInvariant(bests[0])}{bests[1..]}.{(best.AsIs ? " The file's own choice is the best tried." : "")}";
    }

    private static string Text(Tried t) => $"{Degrees(t.StartRadians)} driven by {Word(t.Direction)}";

    private static string Word(Hand.DrivingDirection direction) => direction == Hand.DrivingDirection.Flexion ? "flexion" : "extension";

    private static string Degrees(double radians) => $"{double.RadiansToDegrees(radians).ToString("0", CultureInfo.InvariantCulture)}°";

    private static string Whole(int n) => n.ToString(CultureInfo.InvariantCulture);
}
