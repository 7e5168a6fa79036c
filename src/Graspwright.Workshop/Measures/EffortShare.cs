using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Wrist moment at the end of closing ÷ the effort limit there.</summary>
public sealed class EffortShare() : Measure("effort_share", "share of the effort limit used", "%", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        double limit = EffortLimit.At(reading);
        return limit > 0 ? 100 * reading.End[TraceLayout.Tau] / limit : Reading.None("the wrist has no capacity there");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string tau = terms.Input("wrist_moment", reading.End[TraceLayout.Tau], "N·m");
        string share = terms.Input("effort_fraction", EffortLimit.Fraction(reading), "");
        string capacity = terms.Input("wrist_capacity", EffortLimit.Capacity(reading), "N·m");
        return terms.Working($"100·{tau}/({share}·{capacity})", Physics);
    }
}
