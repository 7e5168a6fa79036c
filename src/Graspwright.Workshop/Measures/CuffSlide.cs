using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>How far the cuff slides on the forearm when the gimbal is off the wearer's own axis: the chord of the offset over the travel.</summary>
public sealed class CuffSlide() : Measure("cuff_slide", "slide of the cuff on the forearm", "mm", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        return reading.Drive.Joint.HasGimbal
            ? 2000 * reading.Drive.Joint.GimbalOffset.Length * Math.Sin(reading.End[TraceLayout.Theta] / 2)
            : Reading.None("the hand has no gimbal");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string offset = terms.Input("gimbal_offset", reading.Drive.Joint.GimbalOffset.Length * 1000, "mm");
        string theta = terms.Input("drive_travel", reading.End[TraceLayout.Theta] * Angles.DegreesPerRadian, "deg");
        return terms.Working($"2·{offset}·sin({theta}·π/360)", Physics);
    }
}
