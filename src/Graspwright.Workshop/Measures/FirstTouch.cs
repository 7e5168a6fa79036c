using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Wrist angle at which the first segment touches.</summary>
public sealed class FirstTouch() : Measure("first_touch", "wrist angle of the first touch", "deg", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Closing(EventKind.Touch) is { } touch ? touch.ThetaRadians * Angles.DegreesPerRadian : Reading.None("nothing touched");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => EventTerms.Angle(reading.Closing(EventKind.Touch)!, "theta_touch", Physics);
}
