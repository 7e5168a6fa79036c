using Graspwright.Hand;
using Graspwright.Moulding.Batch;
using Graspwright.Moulding.Cure;
using static Graspwright.Workshop.Mould.MouldWords;

namespace Graspwright.Workshop.Mould;

/// <summary>A line of the live clock.</summary>
/// <param name="At">When, from the start of mixing [s]; below 0 before it.</param>
/// <param name="Text">What is said.</param>
/// <param name="Heading">A word or two in big letters.</param>
public sealed record SpokenLine(double At, string Text, string Heading);

/// <summary>What the live clock says, and when.</summary>
internal static class SpokenLines
{
    private const double Warn = 30, Together = 4, Remind = 300;

    public static IReadOnlyList<SpokenLine> Of(WorkPlan plan, Liner liner)
    {
        CureResult cure = plan.Cure;
        double mixed = cure[CureMoment.MixedBy].Seconds, firm = cure[CureMoment.Firming].Seconds, off = cure[CureMoment.HandsOff].Seconds, mould = cure[CureMoment.OffMould].Seconds, leave = cure[CureMoment.LeaveUntil].Seconds;
        List<SpokenLine> lines =
        [
            new(0, "Mix now. Fold and press until it is one colour.", "MIX"),
            new(plan.MixEnd / 2, "Half of the mixing is over.", "MIX"),
        ];
        foreach (WorkStep step in plan.Steps.Skip(1))
        {
            lines.Add(new(step.Start, Words(step, liner), step.Name.ToUpperInvariant()));
        }

        if (mixed - 15 > plan.MixEnd / 2 && mixed < plan.MixEnd)
        {
            lines.Add(new(mixed - 15, "In fifteen seconds it must be one colour.", "MIX"));
        }

        lines.Add(new(firm - Warn, "It firms in half a minute. Finish seams and hollows.", "FIRMING SOON"));
        lines.Add(new(firm, "It is firming. Only smooth it now, do not move it.", "FIRMING"));
        lines.Add(new(off - Warn, "Hands off in half a minute.", "HANDS OFF SOON"));
        lines.Add(new(off, "Hands off. Do not touch it any more.", "HANDS OFF"));
        for (double t = off + Remind; t < mould - 60; t += Remind)
        {
            lines.Add(new(t, $"Leave it. {Math.Max(1, Math.Round((mould - t) / 60)):0} minutes until it may leave the mould.", "WAIT"));
        }

        lines.Add(new(mould, "It may leave the mould if the scrap on the bench is firm. Better leave it.", "SCRAP FIRM?"));
        if (leave > mould + 60)
        {
            lines.Add(new(leave, "It is cured through. The clock ends here.", "DONE"));
        }

        return Gather(lines);
    }

    private static string Words(WorkStep step, Liner liner) => step.Name switch
    {
        "roll" => $"Roll it out to {Short(1000 * liner.Thickness)} millimetres, from the middle outward.",
        "drape" => "Drape it over the form, from the middle outward. No air below.",
        "seams" => "Close the seams.",
        "hollows" => "Press it into the hollows.",
        _ => "Smooth it.",
    };

    /// <summary>Lines in order; those a few seconds apart are said in one breath, and steps of no length are left out.</summary>
    private static List<SpokenLine> Gather(List<SpokenLine> lines)
    {
        List<SpokenLine> gathered = [];
        foreach (SpokenLine line in lines.Where(l => l.At >= 0).OrderBy(l => l.At))
        {
            if (gathered.Count > 0 && line.At - gathered[^1].At < Together)
            {
                gathered[^1] = gathered[^1] with { Text = $"{gathered[^1].Text} {line.Text}", Heading = line.Heading };
            }
            else
            {
                gathered.Add(line);
            }
        }

        return gathered;
    }
}
