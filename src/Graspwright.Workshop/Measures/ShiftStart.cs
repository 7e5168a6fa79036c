using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Wrist angle at which the load-sensing arm starts to shift.</summary>
public sealed class ShiftStart() : Measure("shift_start", "wrist angle at which the arm starts to shift", "deg", Better.Neither)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        if (reading.Drive.Crank.Slot is null)
        {
            return Reading.None("the crank's arm is fixed");
        }

        return reading.Closing(EventKind.ShiftStart) is { } start ? start.ThetaRadians * Angles.DegreesPerRadian : Reading.None("the arm never shifted");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => EventTerms.Angle(reading.Closing(EventKind.ShiftStart)!, "theta_shift_start", Physics);
}
