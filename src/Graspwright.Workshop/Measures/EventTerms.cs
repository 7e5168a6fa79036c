using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Measures;

/// <summary>Working of a figure that is an event's wrist angle.</summary>
internal static class EventTerms
{
    /// <summary>The event's angle in degrees.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="name">Name of the angle.</param>
    /// <param name="source">Key in the register of sources.</param>
    public static Working Angle(RunEvent happened, string name, string source)
    {
        Terms terms = new();
        string theta = terms.Input(name, happened.ThetaRadians, "rad");
        return terms.Working($"{theta}·180/π", source);
    }
}
