using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>1 − rubbed away ÷ work put in.</summary>
public sealed class FrictionEfficiency() : Measure("friction_efficiency", "share of the work that friction leaves", "%", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.Run.WorkIn > 0 ? 100 * (1 - reading.Run.DissipatedClosing / reading.Run.WorkIn) : Reading.None("no work was put in");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string rubbed = terms.Input("rubbed_away", reading.Run.DissipatedClosing, "J");
        string work = terms.Input("work_in", reading.Run.WorkIn, "J");
        return terms.Working($"100·(1 - {rubbed}/{work})", Physics);
    }
}
