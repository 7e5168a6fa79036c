using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Travel of the wearer's own joint left at the end of closing.</summary>
public sealed class WristLeft() : Measure("wrist_left", "wrist travel left", "deg", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => (reading.Drive.Wrist.TravelRadians - reading.End[TraceLayout.JointTravel]) * Angles.DegreesPerRadian;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string travel = terms.Input("wrist_travel", reading.Drive.Wrist.TravelRadians * Angles.DegreesPerRadian, "deg");
        string used = terms.Input("joint_travel", reading.End[TraceLayout.JointTravel] * Angles.DegreesPerRadian, "deg");
        return terms.Working($"{travel} - {used}", Physics);
    }
}
