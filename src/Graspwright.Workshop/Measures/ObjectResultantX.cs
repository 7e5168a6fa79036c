using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Resultant of the fingers on the object, x: what thumb and palm must hold.</summary>
public sealed class ObjectResultantX() : Measure("object_resultant_x", "force of the fingers on the object, along the hand", "N", Better.Neither)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.End[TraceLayout.ResultantX];

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => ContactTerms.AlongAxis(reading, true);
}
