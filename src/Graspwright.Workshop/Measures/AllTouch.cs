using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Wrist angle at which every unlocked finger touches at once.</summary>
public sealed class AllTouch() : Measure("all_touch", "wrist angle at which every free finger touches", "deg", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Closing(EventKind.AllTouch) is { } touch ? touch.ThetaRadians * Angles.DegreesPerRadian : Reading.None("not every free finger touched at once");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => EventTerms.Angle(reading.Closing(EventKind.AllTouch)!, "theta_all_touch", Physics);
}
