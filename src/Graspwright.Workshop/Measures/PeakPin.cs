using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Greatest load on a pin or the rail over closing and opening.</summary>
public sealed class PeakPin() : Measure("peak_pin", "greatest load on a pin or the rail", "N", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => Peaks.Greatest(reading, links: false);

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => Peaks.Work(reading, links: false);
}
