using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Greatest force in a link or pull over closing and opening.</summary>
public sealed class PeakLink() : Measure("peak_link", "greatest force in a link or pull", "N", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => Peaks.Greatest(reading, links: true);

    /// <inheritdoc/>
    protected override Working Work(RunReading reading) => Peaks.Work(reading, links: true);
}
