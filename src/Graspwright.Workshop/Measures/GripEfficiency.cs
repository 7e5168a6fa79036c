using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Energy in the contacts ÷ work put in.</summary>
public sealed class GripEfficiency() : Measure("grip_efficiency", "share of the work that ends in the grip", "%", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Run.WorkIn > 0 ? 100 * reading.End[TraceLayout.ContactEnergy] / reading.Run.WorkIn : Reading.None("no work was put in");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string contact = terms.Input("contact_energy", reading.End[TraceLayout.ContactEnergy], "J");
        string work = terms.Input("work_in", reading.Run.WorkIn, "J");
        return terms.Working($"100·{contact}/{work}", Physics);
    }
}
