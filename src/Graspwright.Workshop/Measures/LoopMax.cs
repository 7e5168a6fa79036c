using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Greatest moment of closing less the moment of opening at the same wrist angle.</summary>
public sealed class LoopMax() : Measure("loop_max", "greatest moment lost between closing and opening", "N·m", Better.Less)
{
    /// <inheritdoc/>
    public override bool NeedsOpening => true;

    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Run.LoopMax;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string height = terms.Input("greatest_closing_less_opening", reading.Run.LoopMax, "N·m");
        return terms.Working(height, Physics);
    }
}
