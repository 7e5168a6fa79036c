using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Largest joint angle left in a free finger when the wrist is back at its start.</summary>
public sealed class ReopeningLeft() : Measure("reopening_left", "largest joint angle left after opening", "deg", Better.Less)
{
    /// <inheritdoc/>
    public override bool NeedsOpening => true;

    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        double[] last = reading.Run.Opening[^1];
        double left = 0;
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int j = 0; j < 3 && last[layout.Locked(f)] == 0; j++)
            {
                left = Math.Max(left, last[layout.Joint(f, j)]);
            }
        }

        return left * Angles.DegreesPerRadian;
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        double[] last = reading.Run.Opening[^1];
        Terms terms = new();
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            for (int j = 0; j < 3 && last[layout.Locked(f)] == 0; j++)
            {
                string joint = j switch { 0 => "mcp", 1 => "pip", _ => "dip" };
                terms.Add(terms.Input($"{layout.FingerNames[f]}_{joint}", last[layout.Joint(f, j)] * Angles.DegreesPerRadian, "deg"));
            }
        }

        return terms.Working(terms.Greatest, Physics);
    }
}
