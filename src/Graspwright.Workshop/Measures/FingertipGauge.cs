using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>What a fingertip gauge shows under the finger that pushes most: the greatest distal contact.</summary>
public sealed class FingertipGauge() : Measure("fingertip_gauge", "reading of a gauge under the strongest fingertip", "N", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        double greatest = 0;
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            greatest = Math.Max(greatest, reading.End[layout.Contact(f, 2)]);
        }

        return greatest;
    }

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        Terms terms = new();
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            terms.Add(terms.Input($"{layout.FingerNames[f]}_distal", reading.End[layout.Contact(f, 2)], "N"));
        }

        return terms.Working(terms.Greatest, Physics);
    }
}
