using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Carriage travel given back by the shift: −∫(∂s/∂d) dd at fixed crank.</summary>
public sealed class ShiftGiveBack() : Measure("shift_give_back", "carriage travel given back by the shift", "mm", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading switch
    {
        { Drive.Crank.Slot: null } => Reading.None("the crank's arm is fixed"),
        _ when reading.Closing(EventKind.ShiftStart) is null => Reading.None("the arm never shifted"),
        _ => reading.Run.ShiftGiveBack * 1000,
    };

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string back = terms.Input("integral_of_carriage_over_shift", -reading.Run.ShiftGiveBack, "m");
        return terms.Working($"-1000·{back}", Physics);
    }
}
