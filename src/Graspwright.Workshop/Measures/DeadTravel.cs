using Graspwright.Mechanics.Drive;
using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Wrist degrees lost to the play of the pins when the motion reverses at the end of closing.</summary>
/// <remarks>
/// By virtual work a pin that crosses its diametral play c under its load N costs the wrist δθ = c·N/τ. Summed over
/// all pins as if each crossed its whole play at every reversal: an upper figure, as loads that keep their sense keep
/// their pin on one side.
/// </remarks>
/// <param name="worn">Whether the pins are worn, or else new.</param>
public sealed class DeadTravel(bool worn) : Measure(
    worn ? "dead_travel_worn" : "dead_travel",
    worn ? "wrist degrees lost to play at a reversal, worn pins" : "wrist degrees lost to play at a reversal, new pins",
    "deg",
    Better.Less)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        double tau = reading.End[TraceLayout.Tau];
        if (tau <= 0)
        {
            return Reading.None("the wrist carries no moment");
        }

        if (Drive(reading) is not { } drive)
        {
            return Reading.None("the play of worn pins is not given");
        }

        double sum = 0;
        foreach (PinPlay.Pin pin in PinPlay.All(reading, drive))
        {
            sum += pin.Play * pin.Load;
        }

        return sum / tau * Angles.DegreesPerRadian;
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        Terms terms = new();
        foreach (PinPlay.Pin pin in PinPlay.All(reading, Drive(reading)!))
        {
            string play = terms.Input($"{pin.Name}_play", pin.Play * 1000, "mm");
            string load = terms.Input($"{pin.Name}_load", pin.Load, "N");
            terms.Add($"{play}·{load}");
        }

        string tau = terms.Input("wrist_moment", reading.End[TraceLayout.Tau], "N·m");
        return terms.Working($"({terms.Sum})/(1000·{tau})·180/π", Physics);
    }

    private DriveModel? Drive(RunReading reading) => worn ? reading.Worn : reading.Drive;
}
