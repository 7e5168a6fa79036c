using Graspwright.Hand;
using Graspwright.Moulding.ComingOff;
using Graspwright.Workshop.Results;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>A cut with the line it follows.</summary>
/// <param name="Cut">The cut.</param>
/// <param name="Line">Where round the limb.</param>
/// <param name="Other">The cut from the other edge.</param>
internal sealed record PlannedCut(Cut Cut, CutLine Line, Cut Other)
{
    /// <summary>The shorter cut that keeps its distance; if neither does, the one that keeps more.</summary>
    public static PlannedCut Of((Cut FromNear, Cut FromFar) cuts, Girths limb, LimbForm form, double clearance)
    {
        IReadOnlyList<Patch> patches = MouldMapping.Patches(form);
        PlannedCut near = new(cuts.FromNear, Patches.Best(cuts.FromNear, limb, patches), cuts.FromFar);
        PlannedCut far = new(cuts.FromFar, Patches.Best(cuts.FromFar, limb, patches), cuts.FromNear);
        (PlannedCut first, PlannedCut second) = near.Cut.Length <= far.Cut.Length ? (near, far) : (far, near);
        return first.Line.Clearance >= clearance ? first : second.Line.Clearance >= clearance ? second : first.Line.Clearance >= second.Line.Clearance ? first : second;
    }

    /// <summary>Where it runs, in words.</summary>
    public string Where => $"{Number(double.RadiansToDegrees(Line.Angle), 0)}° round from the back of the hand toward the thumb";

    public Finding Finding(LimbForm form, double clearance)
    {
        string run = $"A cut of {Number(1000 * Cut.Length, 0)} mm from the edge at {Number(1000 * Cut.From, 0)} mm to {Number(1000 * Cut.To, 0)} mm frees it; from the other edge it would be {Number(1000 * Other.Length, 0)} mm.";
        if (double.IsInfinity(Line.Clearance))
        {
            return new("cut", "cut", Verdict.Good, $"{run} No contacts, seams or tender skin are given to keep away from.", "");
        }

        LimbPatch patch = form.Patches.First(p => p.Name == Line.Nearest);
        double margin = clearance > 0 ? (Line.Clearance - clearance) / clearance : 1;
        string near = $"{run} It runs {Where}, {Number(1000 * Line.Clearance, 0)} mm from the {patch.Kind.ToString().ToLowerInvariant()} '{patch.Name}'; {Number(1000 * clearance, 0)} mm is wanted.";
        return new("cut", "cut", Verdicts.Of(margin), near, "Move the contact or seam, shorten the liner at that edge, or cut from the other edge.") { Figure = 1000 * Line.Clearance, Limit = 1000 * clearance, Unit = "mm", Margin = margin };
    }
}
