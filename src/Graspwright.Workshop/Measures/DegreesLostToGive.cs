using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Travel of the wearer's joint that goes into cuff, flesh and shell at the end of closing.</summary>
public sealed class DegreesLostToGive() : Measure("degrees_lost_to_give", "wrist degrees lost to the give of cuff and shell", "deg", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => (reading.End[TraceLayout.JointTravel] - reading.End[TraceLayout.Theta]) * Angles.DegreesPerRadian;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string used = terms.Input("joint_travel", reading.End[TraceLayout.JointTravel] * Angles.DegreesPerRadian, "deg");
        string drive = terms.Input("drive_travel", reading.End[TraceLayout.Theta] * Angles.DegreesPerRadian, "deg");
        return terms.Working($"{used} - {drive}", Physics);
    }
}
