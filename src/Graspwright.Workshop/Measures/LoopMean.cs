using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Mean height of the loop of closing and opening: ∮τ dθ ÷ θ at the end of closing.</summary>
public sealed class LoopMean() : Measure("loop_mean", "mean moment lost between closing and opening", "N·m", Better.Less)
{
    /// <inheritdoc/>
    public override bool NeedsOpening => true;

    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => (reading.Run.WorkIn - reading.Run.WorkBack) / reading.End[TraceLayout.Theta];

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string work = terms.Input("work_in", reading.Run.WorkIn, "J");
        string back = terms.Input("work_back", reading.Run.WorkBack, "J");
        string end = terms.Input("theta_end", reading.End[TraceLayout.Theta], "rad");
        return terms.Working($"({work} - {back})/{end}", Physics);
    }
}
