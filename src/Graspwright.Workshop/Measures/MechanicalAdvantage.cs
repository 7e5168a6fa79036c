using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Grip force for each newton metre of the wrist at the end of closing.</summary>
public sealed class MechanicalAdvantage() : Measure("mechanical_advantage", "grip for each newton metre of the wrist", "N/(N·m)", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        double tau = reading.End[TraceLayout.Tau];
        return tau > 0 ? reading.End[TraceLayout.Grip] / tau : Reading.None("the wrist carries no moment");
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string grip = terms.Input("grip_force", reading.End[TraceLayout.Grip], "N");
        string tau = terms.Input("wrist_moment", reading.End[TraceLayout.Tau], "N·m");
        return terms.Working($"{grip}/{tau}", Physics);
    }
}
