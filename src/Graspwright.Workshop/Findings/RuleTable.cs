using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Findings;

/// <summary>Every rule, in the order in which answers list their findings.</summary>
public static class RuleTable
{
    /// <summary>All rules.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        new PathLost(), new NoTouch(), new TravelUsedUp(), new EffortUsedUp(), new PushedOut(), new RollsOff(), new Reopens(),
        new DeadCentre(), new StopEarly(), new BarOnStop(), new CordSlack(), new ShiftDear(), new LostToGive(), new LostToPlay(),
        new CarriageJam(), new LockOverload(), new WristReaction(),
    ];

    /// <summary>What all rules find in a run.</summary>
    /// <param name="reading">Run and what it was run on.</param>
    public static IReadOnlyList<Finding> Look(RunReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        bool lost = reading.Run.End == RunEnd.NotFollowed;
        List<Finding> findings = [];
        foreach (Rule rule in All)
        {
            if (!lost || rule.ReadsLostRuns)
            {
                findings.AddRange(rule.Look(reading));
            }
        }

        return findings;
    }
}
