using Graspwright.Drawing.Charts;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;

namespace Graspwright.Workshop.Grip;

/// <summary>The small chart that a terminal shows: grip force against wrist angle while closing.</summary>
public static class GripChart
{
    private const int Rows = 9;

    /// <summary>The chart as text; empty where there is nothing to draw.</summary>
    /// <param name="shown">The case.</param>
    public static string Of(GripCase shown)
    {
        ArgumentNullException.ThrowIfNull(shown);
        RunResult run = shown.Reading.Run;
        double[] wrist = [.. run.Closing.Select(r => r[TraceLayout.Theta] * Angles.DegreesPerRadian)];
        double[] grip = [.. run.Closing.Select(r => r[TraceLayout.Grip])];
        if (grip.Max() <= 0)
        {
            return "";
        }

        return TerminalChart.Write(new()
        {
            XTitle = "wrist, °",
            YTitle = "grip, N",
            Series = [new("grip", wrist, grip)],
            Events = [.. Lines(shown.Reading)],
        }, rows: Rows);
    }

    private static IEnumerable<EventLine> Lines(RunReading reading)
    {
        foreach ((EventKind kind, string label) in ((EventKind, string)[])[(EventKind.Touch, "first touch"), (EventKind.AllTouch, "all touch"), (EventKind.ShiftStart, "shift starts"), (EventKind.ShiftEnd, "shift ends")])
        {
            if (reading.Closing(kind) is { } happened)
            {
                yield return new(happened.ThetaRadians * Angles.DegreesPerRadian, label);
            }
        }
    }
}
