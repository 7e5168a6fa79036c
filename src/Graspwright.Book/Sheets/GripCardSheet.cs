using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Cards;

namespace Graspwright.Book.Sheets;

/// <summary>The grip card on paper, to hang over the bench until the hands know it.</summary>
public static class GripCardSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="grips">The grips.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, IReadOnlyList<CardGrip> grips, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(grips);
        var flow = new PageFlow(paper, "Grip card", hand.Name);
        flow.Title("Grip card", string.Create(CultureInfo.InvariantCulture, $"{hand.Name}: muscle signal and wrist, in this order. Times at {double.RadiansToDegrees(hand.Wrist.SpeedRadiansPerSecond):0}° a second and the all-day effort."));
        foreach (CardGrip grip in grips)
        {
            string name = grip.Choice.Kind.Word();
            flow.Need(40);
            if (grip.Case is null)
            {
                flow.Subheading($"{Upper(name)}: not on this hand");
                flow.Paragraph($"{Upper(grip.Choice.Lacks)}.");
                continue;
            }

            flow.Heading(string.Create(CultureInfo.InvariantCulture, $"{Upper(name)} – {grip.WholeSeconds:0.0} s"));
            flow.Small($"On the {grip.Choice.Thing!.Name}{(grip.Choice.Pattern is { } locks ? $", locks: {locks.Name}" : ", no lock first")}.");
            flow.Steps(grip.Steps);
            flow.Need(18);
            flow.Paragraph("Out of order:", strong: true);
            flow.Bullets(grip.OutOfOrder);
        }

        flow.Caution([
            "Practise over a cushion, with things that may fall, before anything hot, heavy or sharp.",
            "Not for rotating machines, winches or anything that can catch the hand.",
            "Tingling, numbness or pain at night: stop and see a clinician.",
        ]);
        return flow;
    }

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
