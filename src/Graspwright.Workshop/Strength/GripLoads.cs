using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Strength.Fatigue;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Strength;

/// <summary>One kind of grip of the day with the forces that the closing run gives for it.</summary>
/// <param name="Name">Object and effort.</param>
/// <param name="PerDay">Number on a day of wear.</param>
/// <param name="Peaks">Greatest forces by the names of the closing run [N].</param>
/// <param name="LowShare">Lowest force of the cycle ÷ the greatest; 0 where the hand opens.</param>
/// <param name="Rubbed">∫F|dq| of each hinge over closing and opening, by its name [N·rad].</param>
public sealed record GripLoad(string Name, double PerDay, IReadOnlyDictionary<string, double> Peaks, double LowShare, IReadOnlyDictionary<string, double> Rubbed);

/// <summary>The grips of a day, each run through the drive.</summary>
public sealed record GripLoads
{
    /// <summary>Name under which the gimbal's load is asked for; it is that of the pull link.</summary>
    public const string Gimbal = "gimbal";

    private static readonly string[] JointNames = ["mcp", "pip", "dip"];

    /// <summary>The grips.</summary>
    public required IReadOnlyList<GripLoad> Grips { get; init; }

    /// <summary>Greatest forces over all objects at the squeeze effort, by name [N].</summary>
    public required IReadOnlyDictionary<string, double> Greatest { get; init; }

    /// <summary>Links and pulls that push in some state of a squeeze, by name; the others only pull.</summary>
    public required IReadOnlySet<string> Pushing { get; init; }

    /// <summary>A reading of the first object at the all-day effort, for dead travel.</summary>
    public required RunReading? Reference { get; init; }

    /// <summary>Objects whose run could not be followed or could not start.</summary>
    public required IReadOnlyList<string> Lost { get; init; }

    /// <summary>Cycles counted in a recorded history; 0 without one.</summary>
    public double HistoryCycles { get; init; }

    /// <summary>Runs the grips of the day.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="history">Recorded moments of the wrist [N·m]; <see langword="null"/> = none.</param>
    /// <param name="drive">The hand's drive, where the caller has it.</param>
    /// <param name="solver">What follows the equilibrium; <see langword="null"/> = <see cref="ClosingRun.Solve"/>.</param>
    /// <param name="alone">Whether one after the other, for callers that look at several hands side by side.</param>
    public static GripLoads Of(HandModel hand, IReadOnlyList<double>? history = null, DriveModel? drive = null, Solver? solver = null, bool alone = false)
    {
        ArgumentNullException.ThrowIfNull(hand);
        Use use = hand.Structure.Use;
        HandObject[] things = [.. hand.Objects.Where(o => o is not NothingHeld)];
        GripEffort[] efforts = Enum.GetValues<GripEffort>();
        DriveModel closes = drive ?? DriveMapping.ToDrive(hand);
        Solver follow = solver ?? ClosingRun.Solve;
        RunReading?[] readings = new RunReading?[things.Length * efforts.Length];
        Parallel.For(0, readings.Length, JobRuns.Threads(alone), i => readings[i] = One(hand, closes, follow, things[i / efforts.Length], Share(hand.Wrist, efforts[i % efforts.Length])));
        List<GripLoad> grips = [];
        Dictionary<string, double> greatest = new(StringComparer.Ordinal);
        List<string> lost = [];
        int followed = Enumerable.Range(0, things.Length).Count(t => Enumerable.Range(0, efforts.Length).All(e => readings[t * efforts.Length + e] is not null));
        for (int t = 0; t < things.Length; t++)
        {
            RunReading?[] of = readings[(t * efforts.Length)..((t + 1) * efforts.Length)];
            if (of.Any(r => r is null))
            {
                lost.Add(things[t].Name);
                continue;
            }

            for (int e = 0; e < efforts.Length; e++)
            {
                Dictionary<string, double> peaks = Peaks(of[e]!);
                foreach ((string name, double force) in efforts[e] == GripEffort.Hard ? peaks : [])
                {
                    greatest[name] = Math.Max(force, greatest.GetValueOrDefault(name));
                }

                double count = history is not null ? 0
                    : hand.CountedGrips.Where(j => j.ObjectName == things[t].Name && j.Effort == efforts[e]).Sum(j => j.PerDay) + hand.UncountedGrips * Portion(use, efforts[e]) / followed;
                if (count > 0)
                {
                    grips.Add(new($"{things[t].Name}, {efforts[e].ToString().ToLowerInvariant()}", count, peaks, 0, Rubbed(of[e]!)));
                }
            }
        }

        double cycles = history is not null && use.History is { } said ? AddHistory(said, history, things, efforts.Length, readings, grips) : 0;
        return new()
        {
            Grips = grips,
            Greatest = greatest,
            Pushing = readings.Where((r, i) => i % efforts.Length == (int)GripEffort.Hard && r is not null).SelectMany(r => PushingIn(r!)).ToHashSet(StringComparer.Ordinal),
            Reference = readings.Where((r, i) => i % efforts.Length == (int)GripEffort.Firm && r is not null).FirstOrDefault(),
            Lost = lost,
            HistoryCycles = cycles,
        };
    }

    /// <summary>Share of the wrist's capacity of an effort.</summary>
    /// <param name="wrist">The wrist.</param>
    /// <param name="effort">The effort.</param>
    public static double Share(Hand.Wrist wrist, GripEffort effort)
    {
        ArgumentNullException.ThrowIfNull(wrist);
        return effort switch { GripEffort.Gentle => wrist.AllDayShare / 2, GripEffort.Firm => wrist.AllDayShare, _ => wrist.SqueezeShare };
    }

    private static double Portion(Use use, GripEffort effort) => effort switch { GripEffort.Gentle => use.GentleShare, GripEffort.Firm => use.FirmShare, _ => use.HardShare };

    private static RunReading? One(HandModel hand, DriveModel drive, Solver solver, HandObject thing, double share)
    {
        HeldObject held = HoldMapping.ToHeld(hand, thing);
        RunOptions options = new() { EffortFraction = share };
        try
        {
            RunResult run = solver(drive, held, options);
            return run.End == RunEnd.NotFollowed ? null : new() { Run = run, Drive = drive, Held = held, Options = options };
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return null;
        }
    }

    private static Dictionary<string, double> Peaks(RunReading reading)
    {
        Dictionary<string, double> peaks = new(StringComparer.Ordinal);
        foreach (ForcePeak peak in reading.Run.Peaks)
        {
            peaks[peak.Subject] = Math.Abs(peak.Newtons);
        }

        if (reading.Drive.Joint.HasGimbal && peaks.TryGetValue("pull link", out double pull))
        {
            peaks[Gimbal] = pull;
        }

        return peaks;
    }

    private static Dictionary<string, double> Rubbed(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        Dictionary<string, double> rubbed = new(StringComparer.Ordinal);
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int j = 0; j < 3; j++)
            {
                rubbed[$"{layout.FingerNames[f]} {JointNames[j]}"] = Along(reading.Run.Closing, layout.Joint(f, j), layout.Pin(f, j)) + Along(reading.Run.Opening, layout.Joint(f, j), layout.Pin(f, j));
            }
        }

        return rubbed;
    }

    private static IEnumerable<string> PushingIn(RunReading reading)
    {
        const double Nothing = 0.05; // newtons that rounding and a slackening cord may leave
        TraceLayout layout = reading.Run.Layout;
        (string Name, int Column)[] links =
        [
            ("pull link", TraceLayout.PullLink), ("transfer link", TraceLayout.TransferLink),
            .. layout.FingerNames.Select((name, f) => ($"pull {name}", layout.FingerPull(f))),
        ];
        return links.Where(l => reading.Run.Closing.Concat(reading.Run.Opening).Any(row => row[l.Column] < -Nothing)).Select(l => l.Name);
    }

    private static double Along(IReadOnlyList<double[]> rows, int angle, int force)
    {
        double sum = 0;
        for (int i = 1; i < rows.Count; i++)
        {
            sum += (rows[i][force] + rows[i - 1][force]) / 2 * Math.Abs(rows[i][angle] - rows[i - 1][angle]);
        }

        return sum;
    }

    /// <summary>Adds the counted cycles of a history; forces follow the wrist's moment in proportion.</summary>
    private static double AddHistory(UseHistory said, IReadOnlyList<double> history, HandObject[] things, int efforts, RunReading?[] readings, List<GripLoad> grips)
    {
        int thing = Array.FindIndex(things, o => o.Name == said.ObjectName);
        if (thing < 0 || readings[thing * efforts + (int)GripEffort.Hard] is not { } reading || reading.End[TraceLayout.Tau] <= 0)
        {
            return 0;
        }

        Dictionary<string, double> peaks = Peaks(reading), rubbed = Rubbed(reading);
        double tau = reading.End[TraceLayout.Tau], cycles = 0;
        foreach (IGrouping<(double Range, double Mean), CountedCycle> same in Rainflow.Count(history).GroupBy(c => (c.Range, c.Mean)))
        {
            double high = same.Key.Mean + same.Key.Range / 2, low = same.Key.Mean - same.Key.Range / 2, count = same.Sum(c => c.Count);
            cycles += count;
            if (high > 0)
            {
                Dictionary<string, double> scaled = peaks.ToDictionary(p => p.Key, p => p.Value * high / tau, StringComparer.Ordinal);
                grips.Add(new(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"history, {high:0.00} N·m"), count / said.Days, scaled, Math.Clamp(low / high, 0, 1), rubbed.ToDictionary(p => p.Key, p => p.Value * (high - Math.Max(low, 0)) / tau, StringComparer.Ordinal)));
            }
        }

        return cycles;
    }
}
