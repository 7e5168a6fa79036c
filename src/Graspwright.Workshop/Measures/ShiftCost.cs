using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Degrees spent in the shift; to the end of closing where the shift never finished.</summary>
public sealed class ShiftCost() : Measure("shift_cost", "wrist degrees spent in the shift", "deg", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        if (reading.Drive.Crank.Slot is null)
        {
            return Reading.None("the crank's arm is fixed");
        }

        return reading.Closing(EventKind.ShiftStart) is { } start
            ? (Finish(reading) - start.ThetaRadians) * Angles.DegreesPerRadian
            : Reading.None("the arm never shifted");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        bool finished = reading.Closing(EventKind.ShiftEnd) is not null;
        string end = terms.Input(finished ? "shift_end" : "closing_end", Finish(reading) * Angles.DegreesPerRadian, "deg");
        string start = terms.Input("shift_start", reading.Closing(EventKind.ShiftStart)!.ThetaRadians * Angles.DegreesPerRadian, "deg");
        return terms.Working($"{end} - {start}", Physics);
    }

    private static double Finish(RunReading reading) => reading.Closing(EventKind.ShiftEnd)?.ThetaRadians ?? reading.End[TraceLayout.Theta];
}
