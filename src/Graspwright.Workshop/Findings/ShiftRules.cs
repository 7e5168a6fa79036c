using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>What the load-sensing arm's shift costs, or why it never comes.</summary>
public sealed class ShiftDear() : Rule("shift")
{
    /// <summary>Degrees that a shift should cost at most [deg]: common practice, no source.</summary>
    public const double AllowedDegrees = 2;

    /// <inheritdoc/>
    public override IEnumerable<Finding> Look(RunReading reading)
    {
        if (reading.Drive.Crank.Slot is not { } slot)
        {
            yield break;
        }

        RunEvent? start = reading.Closing(EventKind.ShiftStart), finish = reading.Closing(EventKind.ShiftEnd);
        double load = reading.End[TraceLayout.SlotLoad];
        if (start is null)
        {
            yield return new(Key, "slot", Verdict.Fails,
                $"The arm never shifts: the load along the slot ends at {Say(load)} N and the spring holds {Say(slot.Preload)} N, slot friction besides.",
                "Ease the slot's spring, turn the slot toward the pull, or make it slicker.")
            {
                Figure = load,
                Limit = slot.Preload,
                Unit = "N",
            };
            yield break;
        }

        double cost = Degrees((finish?.ThetaRadians ?? reading.End[TraceLayout.Theta]) - start.ThetaRadians);
        double shifted = reading.End[TraceLayout.Shift] * 1000;
        string ending = finish is null
            ? $"The shift starts at {Angles.Text(start.ThetaRadians)} and never finishes: {Say(shifted)} of {Say(slot.Length * 1000)} mm after {Say(cost)}°."
            : $"The shift costs {Say(cost)}° of wrist and gives back {Say(reading.Run.ShiftGiveBack * 1000)} mm of carriage travel.";
        Finding finding = Judge("slot", cost, AllowedDegrees, "deg", Below(cost, AllowedDegrees),
            $"{ending} Makers want a couple of degrees at most (common practice, no source).",
            finish is null
                ? "Ease the slot's spring and its rate, or shorten the slot."
                : "A softer rate, a pin that rolls in its slot, a slot filed to an arc about the carriage's pin (crank.slot.turn), or a smaller change of arm makes it cheaper; no rubbing slot can come below its friction's bound.");
        yield return finish is null ? finding with { Verdict = Verdict.Fails } : finding;
    }
}
