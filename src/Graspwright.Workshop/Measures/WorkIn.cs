using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Work of the wrist over the closing, ∫τ dθ: stored, rubbed away and lost in jumps.</summary>
public sealed class WorkIn() : Measure("work_in", "work put in by the wrist", "J", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Run.WorkIn;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        RunResult run = reading.Run;
        string stored = terms.Input("stored", reading.End[TraceLayout.Stored] - run.Closing[0][TraceLayout.Stored], "J");
        string rubbed = terms.Input("rubbed_away", run.DissipatedClosing, "J");
        string lost = terms.Input("lost_in_jumps", run.LostInJumps, "J");
        double rest = run.WorkIn - (reading.End[TraceLayout.Stored] - run.Closing[0][TraceLayout.Stored]) - run.DissipatedClosing - run.LostInJumps;
        string residual = terms.Input("left_over", rest, "J");
        return terms.Working($"{stored} + {rubbed} + {lost} + {residual}", Physics);
    }
}
