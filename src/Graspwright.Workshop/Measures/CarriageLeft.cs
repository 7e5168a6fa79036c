using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Carriage travel left to its stop at the end of closing.</summary>
public sealed class CarriageLeft() : Measure("carriage_left", "carriage travel left", "mm", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => (reading.Drive.Rail.Travel - reading.End[TraceLayout.Carriage]) * 1000;

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string travel = terms.Input("rail_travel", reading.Drive.Rail.Travel * 1000, "mm");
        string used = terms.Input("carriage_travel", reading.End[TraceLayout.Carriage] * 1000, "mm");
        return terms.Working($"{travel} - {used}", Physics);
    }
}
