using System.Globalization;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Grip;

/// <summary>Tables of runs in bench units.</summary>
public static class RunTables
{
    /// <summary>Newtons in a kilogram-force.</summary>
    private const double KilogramForce = 9.80665;

    private static readonly string[] Joints = ["MCP", "PIP", "DIP"];
    private static readonly string[] Segments = ["proximal", "middle", "distal"];

    /// <summary>One row a case.</summary>
    /// <param name="cases">Cases.</param>
    public static Table Overview(IReadOnlyList<GripCase> cases)
    {
        ArgumentNullException.ThrowIfNull(cases);
        Column[] columns =
        [
            new("object", ""), new("locks", ""), new("effort", ""), new("touch", "deg"), new("all touch", "deg"), new("shift", "deg"),
            new("grip", "N"), new("grip", "kgf"), new("wrist", "N·m"), new("wrist left", "deg"), new("can be held", ""), new("ended by", ""),
        ];
        List<IReadOnlyList<Cell>> rows = [];
        foreach (GripCase c in cases)
        {
            Situation s = c.Situation;
            double? grip = s.Find("grip_force")?.Value;
            double? moment = grip is null ? null : c.Reading.End[TraceLayout.Tau];
            rows.Add([s.ObjectName, s.Locks, s.Effort, s.Find("first_touch")?.Value, s.Find("all_touch")?.Value, s.Find("shift_cost")?.Value,
                grip, grip / KilogramForce, moment, s.Find("wrist_left")?.Value, HeldFor(s.Find("hold_time")), EndedBy(c.Reading.Run.End)]);
        }

        return new("grip", columns, rows);
    }

    /// <summary>The defaults that stand in for measurements.</summary>
    /// <param name="hand">The hand.</param>
    public static Table Guesses(Hand.HandModel hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        List<IReadOnlyList<Cell>> rows = [];
        foreach (Hand.Guess guess in hand.Guesses)
        {
            rows.Add([guess.Path, guess.ValueText, "guessed, measure it", guess.SourceKey]);
        }

        return new("guesses", [new("path", ""), new("value", ""), new("standing", ""), new("source", "")], rows);
    }

    /// <summary>The tables of one run: legs, events, peaks, end of closing, books of the work.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    public static IReadOnlyList<Table> Of(RunReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        RunResult run = reading.Run;
        Column[] columns = StateColumns(run.Layout);
        return
        [
            new("closing", columns, [.. run.Closing.Where(IsStep).Select(r => StateRow(run.Layout, r))]),
            new("opening", columns, [.. run.Opening.Where(IsStep).Select(r => StateRow(run.Layout, r))]),
            Events(run),
            Jumps(run),
            PeaksOf(run),
            Books(run),
        ];
    }

    /// <summary>Columns of a recorded state.</summary>
    /// <param name="layout">Layout.</param>
    public static Column[] StateColumns(TraceLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        List<Column> columns =
        [
            new("wrist", "deg"), new("wearer's joint", "deg"), new("moment", "N·m"), new("effort", "%"), new("crank", "deg"), new("shift", "mm"),
            new("carriage", "mm"), new("output arm", "mm"), new("pull link", "N"), new("transfer link", "N"), new("grip", "N"),
            new("resultant x", "N"), new("resultant y", "N"),
        ];
        foreach (string bar in layout.BarNames)
        {
            columns.Add(new($"bar {bar} tilt", "deg"));
        }

        foreach (string finger in layout.FingerNames)
        {
            columns.AddRange(Joints.Select(j => new Column($"{finger} {j}", "deg")));
            columns.AddRange(Segments.Select(s => new Column($"{finger} {s}", "N")));
            columns.Add(new($"{finger} pull", "N"));
        }

        return [.. columns];
    }

    /// <summary>A recorded state in bench units, one cell a column of <see cref="StateColumns"/>.</summary>
    /// <param name="layout">Layout.</param>
    /// <param name="row">Recorded state.</param>
    public static IReadOnlyList<Cell> StateRow(TraceLayout layout, double[] row)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(row);
        const double degrees = Angles.DegreesPerRadian;
        List<Cell> cells =
        [
            row[TraceLayout.Theta] * degrees, row[TraceLayout.JointTravel] * degrees, row[TraceLayout.Tau], row[TraceLayout.EffortShare] * 100,
            row[TraceLayout.Phi] * degrees, row[TraceLayout.Shift] * 1000, row[TraceLayout.Carriage] * 1000, row[TraceLayout.OutputArm] * 1000,
            row[TraceLayout.PullLink], row[TraceLayout.TransferLink], row[TraceLayout.Grip], row[TraceLayout.ResultantX], row[TraceLayout.ResultantY],
        ];
        for (int b = 0; b < layout.BarNames.Count; b++)
        {
            cells.Add(row[TraceLayout.Tilt(b)] * degrees);
        }

        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int j = 0; j < 3; j++)
            {
                cells.Add(row[layout.Joint(f, j)] * degrees);
            }

            for (int s = 0; s < 3; s++)
            {
                cells.Add(row[layout.Contact(f, s)]);
            }

            cells.Add(row[layout.FingerPull(f)]);
        }

        return cells;
    }

    /// <summary>The word for why a run ended.</summary>
    /// <param name="end">Why it ended.</param>
    public static string EndedBy(RunEnd end) => end switch
    {
        RunEnd.Effort => "effort",
        RunEnd.Travel => "travel",
        _ => "not followed",
    };

    /// <summary>How long an effort can be held, as a band in words; <see langword="null"/> where it is not known.</summary>
    /// <param name="hold">The figure.</param>
    public static string? HeldFor(Figure? hold)
    {
        if (hold is not { Low: { } low, High: { } high })
        {
            return null;
        }

        return high < 120
            ? string.Create(CultureInfo.InvariantCulture, $"{low:0}–{high:0} s")
            : string.Create(CultureInfo.InvariantCulture, $"{low / 60:0.#}–{high / 60:0.#} min");
    }

    private static bool IsStep(double[] row) => row[TraceLayout.OutputStep] != 0;

    private static Table Events(RunResult run)
    {
        List<IReadOnlyList<Cell>> rows = [];
        foreach (RunEvent e in run.Events)
        {
            rows.Add([e.ThetaRadians * Angles.DegreesPerRadian, e.Opening ? "opening" : "closing", Words(e.Kind), e.Subject, e.Part, Force(e)]);
        }

        return new("events", [new("wrist", "deg"), new("leg", ""), new("event", ""), new("subject", ""), new("part", ""), new("force", "N")], rows);
    }

    private static double? Force(RunEvent e) => e.Kind is EventKind.ContactLost or EventKind.ShiftStart or EventKind.ShiftEnd ? e.Value : null;

    private static Table Jumps(RunResult run)
    {
        List<IReadOnlyList<Cell>> rows = [];
        foreach (RunJump jump in run.Jumps)
        {
            rows.Add([jump.ThetaRadians * Angles.DegreesPerRadian, jump.Opening ? "opening" : "closing", jump.EnergyLost, jump.ByLock ? "lock" : "lost balance"]);
        }

        return new("jumps", [new("wrist", "deg"), new("leg", ""), new("energy lost", "J"), new("cause", "")], rows);
    }

    private static Table PeaksOf(RunResult run)
    {
        List<IReadOnlyList<Cell>> rows = [];
        foreach (ForcePeak peak in run.Peaks)
        {
            rows.Add([peak.Subject, peak.Newtons, peak.ThetaRadians * Angles.DegreesPerRadian, peak.Opening ? "opening" : "closing"]);
        }

        return new("peaks", [new("part", ""), new("force", "N"), new("wrist", "deg"), new("leg", "")], rows);
    }

    private static Table Books(RunResult run) => new("work", [new("item", ""), new("energy", "J")],
    [
        ["put in while closing", run.WorkIn],
        ["stored at the end", run.AtEnd[TraceLayout.Stored]],
        ["of it in the contacts", run.AtEnd[TraceLayout.ContactEnergy]],
        ["rubbed away while closing", run.DissipatedClosing],
        ["lost in jumps", run.LostInJumps],
        ["left over in the books", run.BalanceResidual],
        ["given back while opening", run.WorkBack],
        ["rubbed away while opening", run.DissipatedOpening],
    ]);

    private static string Words(EventKind kind) => kind switch
    {
        EventKind.Touch => "touch",
        EventKind.AllTouch => "all touch",
        EventKind.ContactLost => "contact lost",
        EventKind.ShiftStart => "shift starts",
        EventKind.ShiftEnd => "shift ends",
        EventKind.StopReached => "stop reached",
        EventKind.StopLeft => "stop left",
        EventKind.Slack => "slack",
        EventKind.Taut => "taut",
        EventKind.Lock => "lock acts",
        EventKind.EffortLimit => "effort limit",
        EventKind.TravelEnd => "travel used up",
        _ => "dead centre",
    };
}
