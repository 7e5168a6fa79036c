using System.Globalization;
using Graspwright.Drawing.Charts;
using Graspwright.Drawing.Display;
using Graspwright.Mechanics.Run;

namespace Graspwright.Workshop.Views;

/// <summary>Curves of a closing run against the wrist angle.</summary>
public static class Curves
{
    private const string XTitle = "wrist angle θ, °";

    /// <summary>Grip force, moment with its loop, effort share, output arm and contact forces on one sheet.</summary>
    /// <param name="run">The run.</param>
    /// <param name="sentence">What the sheet says; empty = from the run's events and end.</param>
    public static Picture Main(RunResult run, string sentence = "") => ChartPicture.Stack(Told(run, sentence), "Closing run", [
        GripForce(run) with { PlotHeightMm = 40 }, Moment(run) with { PlotHeightMm = 40 }, EffortShare(run) with { PlotHeightMm = 26 },
        OutputArm(run) with { PlotHeightMm = 26 }, ContactForces(run) with { PlotHeightMm = 42 }]);

    /// <summary>Joint angles, one chart for each finger.</summary>
    /// <param name="run">The run.</param>
    /// <param name="sentence">What the sheet says; empty = from the run's events and end.</param>
    public static Picture Joints(RunResult run, string sentence = "")
    {
        ArgumentNullException.ThrowIfNull(run);
        return ChartPicture.Stack(Told(run, sentence), "Joint angles", [.. Enumerable.Range(0, run.Layout.FingerNames.Count).Select(f => JointAngles(run, f) with { PlotHeightMm = 38 })]);
    }

    /// <summary>Closing and opening loop of the wrist moment.</summary>
    /// <param name="run">The run.</param>
    /// <param name="sentence">What the picture says; empty = the loop's size in words.</param>
    public static Picture Loop(RunResult run, string sentence = "")
    {
        ArgumentNullException.ThrowIfNull(run);
        string told = string.Create(CultureInfo.InvariantCulture, $"The moment on closing is at most {run.LoopMax:0.00} N·m above that on opening, at {double.RadiansToDegrees(run.LoopMaxTheta):0.0}°.");
        string words = sentence.Length > 0 ? sentence : run.Opening.Count > 0 ? told : "Opening was not asked for.";
        return ChartPicture.Draw(Moment(run) with { Sentence = words, PlotHeightMm = 80 });
    }

    /// <summary>Grip force in the terminal, 72 columns.</summary>
    /// <param name="run">The run.</param>
    /// <param name="characters">Characters to use.</param>
    public static string Terminal(RunResult run, TerminalCharacters characters = TerminalCharacters.Braille)
    {
        LineChart chart = GripForce(run);
        return TerminalChart.Write(chart with { Series = [chart.Series[0]] }, characters);
    }

    /// <summary>Grip force, closing and opening.</summary>
    /// <param name="run">The run.</param>
    public static LineChart GripForce(RunResult run) => Legs(run, "grip force, N", TraceLayout.Grip, 1);

    /// <summary>Wrist moment, closing and opening.</summary>
    /// <param name="run">The run.</param>
    public static LineChart Moment(RunResult run) => Legs(run, "wrist moment τ, N·m", TraceLayout.Tau, 1);

    /// <summary>Share of the effort limit, closing.</summary>
    /// <param name="run">The run.</param>
    public static LineChart EffortShare(RunResult run) => Closing(run, "effort share, %", [Column(run.Closing, "closing", TraceLayout.EffortShare, 100)]) with { YAtLeast = (0, 100) };

    /// <summary>Effective output arm and pin radius, closing.</summary>
    /// <param name="run">The run.</param>
    public static LineChart OutputArm(RunResult run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return Closing(run, "crank, mm", [Column(run.Closing, "output arm", TraceLayout.OutputArm, 1000), Column(run.Closing, "pin radius", TraceLayout.OutputPinRadius, 1000) with { Dash = Dash.Dashed, WidthMm = 0.25 }]);
    }

    /// <summary>Sum of the contact forces of each finger, closing.</summary>
    /// <param name="run">The run.</param>
    public static LineChart ContactForces(RunResult run)
    {
        ArgumentNullException.ThrowIfNull(run);
        TraceLayout layout = run.Layout;
        return Closing(run, "contact force by finger, N", [.. layout.FingerNames.Select((name, f) => new Series(name, Wrist(run.Closing),
            [.. run.Closing.Select(r => r[layout.Contact(f, 0)] + r[layout.Contact(f, 1)] + r[layout.Contact(f, 2)])], FingerMarks.DashOf(f), WidthMm: 0.35))]);
    }

    /// <summary>Flexion of the joints of one finger, closing.</summary>
    /// <param name="run">The run.</param>
    /// <param name="finger">Index of the finger.</param>
    public static LineChart JointAngles(RunResult run, int finger)
    {
        ArgumentNullException.ThrowIfNull(run);
        (string Name, Dash Dash)[] joints = [("MCP", Dash.Solid), ("PIP", Dash.Dashed), ("DIP", Dash.Dotted)];
        return Closing(run, run.Layout.FingerNames[finger] + ", flexion of the joints, °", [.. joints.Select((j, i) =>
            Column(run.Closing, j.Name, run.Layout.Joint(finger, i), 180 / Math.PI) with { Dash = j.Dash })]);
    }

    /// <summary>Events worth a mark on every curve: first touch, all touch, shift start and end, effort limit.</summary>
    /// <param name="run">The run.</param>
    public static IReadOnlyList<EventLine> Events(RunResult run)
    {
        ArgumentNullException.ThrowIfNull(run);
        (EventKind Kind, string Words)[] kinds =
        [
            (EventKind.Touch, "first touch"), (EventKind.AllTouch, "all touch"), (EventKind.ShiftStart, "shift starts"),
            (EventKind.ShiftEnd, "shift ends"), (EventKind.EffortLimit, "effort limit"),
        ];
        return [.. kinds.Select(k => (k.Words, Event: run.Events.FirstOrDefault(e => e.Kind == k.Kind && !e.Opening))).Where(k => k.Event is not null)
            .Select(k => new EventLine(double.RadiansToDegrees(k.Event!.ThetaRadians), k.Words + " " + SideView.Degrees(k.Event.ThetaRadians)))];
    }

    private static string Told(RunResult run, string sentence)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (sentence.Length > 0)
        {
            return sentence;
        }

        double[] end = run.AtEnd;
        string why = run.End switch { RunEnd.Effort => "the effort limit", RunEnd.Travel => "the end of the wrist's travel", _ => "a place where the path could not be followed" };
        return string.Create(CultureInfo.InvariantCulture, $"Closing ends at {double.RadiansToDegrees(end[TraceLayout.Theta]):0.0}° at {why}, with a grip of {end[TraceLayout.Grip]:0.0} N for {end[TraceLayout.Tau]:0.00} N·m at the wrist.");
    }

    private static LineChart Legs(RunResult run, string title, int column, double scale)
    {
        ArgumentNullException.ThrowIfNull(run);
        Series closing = Column(run.Closing, "closing", column, scale);
        return Closing(run, title, run.Opening.Count == 0 ? [closing] : [closing, Column(run.Opening, "opening", column, scale) with { Dash = Dash.Dashed, WidthMm = 0.3 }]);
    }

    private static LineChart Closing(RunResult run, string title, IReadOnlyList<Series> series) => new() { XTitle = XTitle, YTitle = title, Series = series, Events = Events(run) };

    private static Series Column(IReadOnlyList<double[]> rows, string label, int column, double scale) => new(label, Wrist(rows), [.. rows.Select(r => scale * r[column])]);

    private static double[] Wrist(IReadOnlyList<double[]> rows) => [.. rows.Select(r => double.RadiansToDegrees(r[TraceLayout.Theta]))];
}
