using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Travel of the output pin left in its slot at the end of closing: 0 where the arm has shifted to its end.</summary>
public sealed class SlotLeft() : Measure("slot_left", "travel left in the slot of the shift", "mm", Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) =>
        reading.Drive.Crank.Slot is { } slot ? (slot.Length - reading.End[TraceLayout.Shift]) * 1000 : Reading.None("the crank's arm is fixed");

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        string length = terms.Input("slot_length", reading.Drive.Crank.Slot!.Length * 1000, "mm");
        string used = terms.Input("shift", reading.End[TraceLayout.Shift] * 1000, "mm");
        return terms.Working($"{length} - {used}", Physics);
    }
}
