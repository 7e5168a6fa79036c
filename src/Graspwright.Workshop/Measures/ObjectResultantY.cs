using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Resultant of the fingers on the object, y: what thumb and palm must hold.</summary>
public sealed class ObjectResultantY() : Measure("object_resultant_y", "force of the fingers on the object, toward the back of the hand; negative pushes it out of the palm", "N", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.End[TraceLayout.ResultantY];

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => ContactTerms.AlongAxis(reading, false);
}
