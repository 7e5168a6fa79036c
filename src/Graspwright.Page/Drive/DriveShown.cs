using System.Globalization;
using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Objects;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Drive;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Views;

namespace Graspwright.Page.Drive;

/// <summary>One object with its closing run.</summary>
/// <param name="Thing">The object.</param>
/// <param name="Held">The same for the engine.</param>
/// <param name="Run">Its run; <see langword="null"/> = it lies in a finger at rest.</param>
public sealed record Closed(HandObject Thing, HeldObject Held, RunResult? Run);

/// <summary>The closing runs of a hand on everything it holds, at one effort and lock pattern.</summary>
public sealed class DriveRuns
{
    private DriveRuns(HandModel hand, DriveModel drive, IReadOnlyList<Closed> all)
    {
        Hand = hand;
        Drive = drive;
        All = all;
    }

    /// <summary>The hand.</summary>
    public HandModel Hand { get; }

    /// <summary>Its drive.</summary>
    public DriveModel Drive { get; }

    /// <summary>Every object.</summary>
    public IReadOnlyList<Closed> All { get; }

    /// <summary>Objects that ran.</summary>
    public IReadOnlyList<(HeldObject Held, RunResult Run)> Ran => [.. All.Where(c => c.Run is not null).Select(c => (c.Held, c.Run!))];

    /// <summary>Runs closing on every object; nothing is kept between calls.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="effort">Effort.</param>
    /// <param name="locks">Name of the lock pattern.</param>
    /// <returns>The runs, or why the hand cannot be put together.</returns>
    public static (DriveRuns? Runs, string Why) Make(HandModel hand, Effort effort, string locks)
    {
        ArgumentNullException.ThrowIfNull(hand);
        LockPattern? pattern = hand.Locks.FirstOrDefault(l => l.Name == locks);
        IReadOnlyList<HandObject> things = hand.Objects.Count > 0 ? hand.Objects : [new NothingHeld("nothing")];
        try
        {
            DriveModel drive = DriveMapping.ToDrive(hand);
            RunOptions options = new() { EffortFraction = effort.Share(hand.Wrist), Locks = HoldMapping.ToLocks(hand, pattern), Opening = false };
            Closed[] all = new Closed[things.Count];
            Parallel.For(0, all.Length, i => all[i] = One(hand, drive, things[i], options));
            return all.Any(c => c.Run is not null) ? (new(hand, drive, all), "") : (null, "Every object lies in a finger while the hand is open: move it, or the hand.");
        }
        catch (DriveException fault)
        {
            return (null, Fault(fault));
        }
        catch (AggregateException faults) when (faults.InnerException is DriveException fault)
        {
            return (null, Fault(fault));
        }
    }

    private static string Fault(DriveException fault)
    {
        Workshop.Results.InputError error = Faults.OfHand("", fault);
        return $"So it cannot be put together: {error.Key} {error.Found}. {error.Fix}";
    }

    private static Closed One(HandModel hand, DriveModel drive, HandObject thing, RunOptions options)
    {
        HeldObject held = HoldMapping.ToHeld(hand, thing);
        try
        {
            return new(thing, held, ClosingRun.Solve(drive, held, options));
        }
        catch (DriveException fault) when (fault.Fault == DriveFault.ObjectOverlaps)
        {
            return new(thing, held, null);
        }
    }

    /// <summary>The object of a name that ran; else the first that did.</summary>
    /// <param name="name">The name.</param>
    public Closed Chosen(string name) => All.FirstOrDefault(c => c.Thing.Name == name && c.Run is not null) ?? All.First(c => c.Run is not null);

    /// <summary>Row of closing nearest a wrist angle; NaN = where closing ends.</summary>
    /// <param name="run">The run.</param>
    /// <param name="degrees">The angle.</param>
    public static double[] RowAt(RunResult run, double degrees)
    {
        ArgumentNullException.ThrowIfNull(run);
        return double.IsNaN(degrees) ? run.AtEnd : SideView.Nearest(run, double.DegreesToRadians(degrees));
    }

    /// <summary>Curves of every object over the wrist angle.</summary>
    /// <param name="chosen">The object drawn with its full weight.</param>
    /// <param name="ghost">An earlier state, drawn pale; <see langword="null"/> = none.</param>
    /// <param name="widthMm">Width of the picture [mm].</param>
    /// <param name="atDegrees">Wrist angle that is looked at.</param>
    public Picture Curves(string chosen, DriveRuns? ghost, double widthMm, double atDegrees)
    {
        double travel = double.RadiansToDegrees(Drive.Wrist.TravelRadians);
        LineChart Chart(string title, int column, double scale, double height) => new()
        {
            XTitle = "wrist angle, °",
            YTitle = title,
            XExtent = (0, travel),
            WidthMm = widthMm,
            PlotHeightMm = height,
            Events = [new(atDegrees, string.Create(CultureInfo.InvariantCulture, $"{atDegrees:0.0}°"))],
            Series =
            [
                .. (ghost?.All ?? []).Where(c => c.Run is not null).Select(c => Curve("", c.Run!, column, scale) with { Ink = Ink.Pale, WidthMm = 0.2, Dash = Dash.Dotted }),
                .. All.Where(c => c.Run is not null).Select((c, i) => Curve(c.Thing.Name, c.Run!, column, scale) with { Dash = DashOf(c), WidthMm = c.Thing.Name == chosen ? 0.6 : 0.3 }),
            ],
        };
        return ChartPicture.Stack("", "Curves of every object while closing", [Chart("grip force, N", TraceLayout.Grip, 1, 42), Chart("wrist moment, N·m", TraceLayout.Tau, 1, 32), Chart("output arm, mm", TraceLayout.OutputArm, 1000, 22)]);
    }

    private Dash DashOf(Closed closed) => (All.ToList().IndexOf(closed) % 5) switch { 1 => Dash.Dashed, 2 => Dash.DashDot, 3 => Dash.Dotted, 4 => Dash.LongDash, _ => Dash.Solid };

    private static Series Curve(string label, RunResult run, int column, double scale) =>
        new(label, [.. run.Closing.Select(r => double.RadiansToDegrees(r[TraceLayout.Theta]))], [.. run.Closing.Select(r => scale * r[column])]);
}
