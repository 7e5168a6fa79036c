using Graspwright.Hand;

namespace Graspwright.Workshop.Signals;

/// <summary>Sources that the figures about signals rest on.</summary>
public static class SignalSources
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Source> All { get; } =
    [
        new("signal-windows", "Windows of about half a second, judged one by one", "Graspwright developers", null, SourceStanding.Chosen, "Limits of usable time, lift-off and motion are chosen by us and tried on made signals."),
        new("stud-sums", "Tear strength × thickness on both sides of the shank; wire bent to ten diameters", "", null, SourceStanding.Chosen, "Rough sums; a pull test on a scrap of liner is better."),
        new("fixed-point", "Work of the filters counted step by step, cycles from memory", "", null, SourceStanding.FromMemory, "Cycles of a multiplication, an addition, a shift and a move by kind of controller; generous, not measured."),
    ];
}
