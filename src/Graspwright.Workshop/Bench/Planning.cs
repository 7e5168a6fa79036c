using System.Globalization;
using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Bench;

/// <summary>Which readings to take on the bench, so that friction, give and stiffness can be told apart?</summary>
/// <param name="Hand">The hand.</param>
public sealed record PlanQuestion(HandModel Hand)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>How many readings.</summary>
    public int Count { get; init; } = 16;

    /// <summary>What follows the equilibrium.</summary>
    public Solver Solver { get; init; } = ClosingRun.Solve;
}

/// <summary>Runs the hand with each parameter a little larger and smaller, and chooses the readings that tell most.</summary>
public static class Planning
{
    private const double Step = 0.04; // of a parameter's logarithm, each way
    private const double EveryDegrees = 2;

    /// <summary>Answers the question.</summary>
    /// <param name="question">Hand and number of readings.</param>
    /// <returns>The answer with the plan and its parameters, or what is wrong.</returns>
    public static (Answer? Answer, ReadingPlan? Plan, IReadOnlyList<BenchParameter> Parameters, IReadOnlyList<InputError> Errors) Answer(PlanQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        HandModel hand = question.Hand;
        try
        {
            DriveModel drive = DriveMapping.ToDrive(hand);
            IReadOnlyList<BenchParameter> parameters = BenchParameter.Of(drive);
            (string Name, HeldObject Held)[] things = [("nothing", HeldObject.None), .. hand.Objects.Where(o => o is not NothingHeld).Select(o => (o.Name, HoldMapping.ToHeld(hand, o)))];
            List<BenchReading> candidates = [];
            List<Finding> inTheWay = [];
            foreach ((string name, HeldObject held) in things)
            {
                try
                {
                    candidates.AddRange(Candidates(question, drive, parameters, name, held));
                }
                catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
                {
                    inTheWay.Add(Faults.Overlap(hand.Objects.First(o => o.Name == name), fault));
                }
            }

            IReadOnlyList<int> chosen = DesignOfReadings.Choose(candidates, question.Count);
            BenchReading[] ordered = [.. chosen.Select(i => candidates[i]).OrderBy(r => Array.FindIndex(things, t => t.Name == r.Thing)).ThenBy(r => r.Opening).ThenBy(r => r.Opening ? -r.WristDegrees : r.WristDegrees).ThenBy(r => r.Quantity, StringComparer.Ordinal)];
            ReadingPlan plan = DesignOfReadings.Plan(ordered, parameters.Count);
            return (PlanWords.Compose(hand, plan, parameters, candidates.Count, inTheWay), plan, parameters, []);
        }
        catch (DriveException fault)
        {
            return (null, null, [], [Faults.OfHand(question.File, fault)]);
        }
    }

    private static List<BenchReading> Candidates(PlanQuestion question, DriveModel drive, IReadOnlyList<BenchParameter> parameters, string name, HeldObject held)
    {
        RunOptions options = new() { EffortFraction = question.Hand.Wrist.SqueezeShare };
        RunResult?[] runs = new RunResult?[1 + 2 * parameters.Count];
        runs[0] = question.Solver(drive, held, options); // alone first: an object in the way is told once, and nothing is run for it
        Parallel.For(1, runs.Length, i => runs[i] = question.Solver(parameters[(i - 1) / 2].Scaled!(Math.Exp((i & 1) == 1 ? Step : -Step)), held, options));
        if (runs.Any(r => r is null || r.End == RunEnd.NotFollowed))
        {
            return [];
        }

        double end = runs.Min(r => r!.AtEnd[TraceLayout.JointTravel]);
        var found = new List<BenchReading>();
        foreach (bool opening in (bool[])[false, true])
        {
            for (double degrees = EveryDegrees; double.DegreesToRadians(degrees) < 0.98 * end; degrees += EveryDegrees)
            {
                foreach ((string quantity, string unit, int column, double scale, double least, double share) in Gauges)
                {
                    if (Reading(runs!, parameters.Count, opening, double.DegreesToRadians(degrees), column, scale) is not { } read || (quantity == "grip" && (held is NoObject || read.Value < 1)) || (quantity == "shift" && drive.Crank.Slot is null))
                    {
                        continue;
                    }

                    double deviation = Math.Sqrt(least * least + Math.Pow(share * read.Value, 2));
                    found.Add(new(name, opening, degrees, quantity, unit, read.Value, deviation, [.. read.Slopes.Select(s => s / deviation)]));
                }
            }
        }

        return found;
    }

    // What each gauge of a workshop scatters: at least, and as a share of the reading. Common practice, no source.
    private static readonly (string Quantity, string Unit, int Column, double Scale, double Least, double Share)[] Gauges =
    [
        ("wrist moment", "N·m", TraceLayout.Tau, 1, 0.03, 0.02),
        ("grip", "N", TraceLayout.Grip, 1, 0.5, 0.02),
        ("carriage", "mm", TraceLayout.Carriage, 1000, 0.1, 0),
        ("shift", "mm", TraceLayout.Shift, 1000, 0.02, 0), // feeler gauge or dial at the output pin
    ];

    private static (double Value, double[] Slopes)? Reading(RunResult[] runs, int parameters, bool opening, double joint, int column, double scale)
    {
        double value = scale * At(runs[0], opening, joint, column);
        double[] slopes = new double[parameters];
        for (int p = 0; p < parameters; p++)
        {
            double up = scale * At(runs[1 + 2 * p], opening, joint, column), down = scale * At(runs[2 + 2 * p], opening, joint, column);
            slopes[p] = (up - down) / (2 * Step);

            // Near an event the two sides differ: such a reading would hang on where the event lies.
            double bend = Math.Abs(up + down - 2 * value);
            if (!double.IsFinite(slopes[p]) || bend > 0.5 * Math.Abs(up - down) + 0.02 * Math.Abs(value) + 1e-9)
            {
                return null;
            }
        }

        return (value, slopes);
    }

    /// <summary>A column at a travel of the joint, between the two recorded states around it; NaN outside.</summary>
    private static double At(RunResult run, bool opening, double joint, int column)
    {
        IReadOnlyList<double[]> rows = opening ? run.Opening : run.Closing;
        for (int i = 1; i < rows.Count; i++)
        {
            double a = rows[i - 1][TraceLayout.JointTravel], b = rows[i][TraceLayout.JointTravel];
            if (a != b && (joint - a) * (joint - b) <= 0)
            {
                return rows[i - 1][column] + (rows[i][column] - rows[i - 1][column]) * ((joint - a) / (b - a));
            }
        }

        return double.NaN;
    }

    /// <summary>The empty bench sheet as CSV, in the format that readings come back in.</summary>
    /// <param name="plan">The plan.</param>
    public static string Csv(ReadingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return "reading,stroke,object,locks,wrist_deg,quantity,finger,x_mm,y_mm,direction_deg,value,unit,sd\n" + string.Concat(plan.Readings.Select((r, i) => string.Create(CultureInfo.InvariantCulture,
            $"{i + 1},{(r.Opening ? "opening" : "closing")},{r.Thing},all free,{r.WristDegrees:0.#},{r.Quantity},,,,,,{r.Unit},{r.Deviation:G3}\n")));
    }
}
