using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Distance from the fulcrum to the transfer link's line at the end of closing.</summary>
public sealed class OutputArm() : Measure("output_arm", "working output arm of the crank", "mm", Better.Neither)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.End[TraceLayout.OutputArm] * 1000;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string arm = terms.Input("fulcrum_to_link_line", reading.End[TraceLayout.OutputArm], "m");
        return terms.Working($"1000·{arm}", Physics);
    }
}
