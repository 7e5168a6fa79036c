using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Sum of the contact forces of all segments at the end of closing, each finger weighted by cos σ.</summary>
public sealed class GripForce() : Measure("grip_force", "grip force", "N", Better.More)
{
    /// <inheritdoc/>
    protected override Reading Read(RunReading reading) => reading.End[TraceLayout.Grip];

    /// <inheritdoc/>
    protected override Working Work(RunReading reading)
    {
        TraceLayout layout = reading.Run.Layout;
        Terms terms = new();
        for (int f = 0; f < layout.FingerNames.Count; f++)
        {
            string name = layout.FingerNames[f];
            string splay = terms.Input($"{name}_splay", reading.Drive.Fingers[f].SplayRadians * Angles.DegreesPerRadian, "deg");
            string near = terms.Input($"{name}_proximal", reading.End[layout.Contact(f, 0)], "N");
            string mid = terms.Input($"{name}_middle", reading.End[layout.Contact(f, 1)], "N");
            string far = terms.Input($"{name}_distal", reading.End[layout.Contact(f, 2)], "N");
            terms.Add($"cos({splay}·π/180)·({near} + {mid} + {far})");
        }

        return terms.Working(terms.Sum, Physics);
    }
}
