using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Bench;

namespace Graspwright.Book.Sheets;

/// <summary>Readings to take on the bench, to be filled in by pen.</summary>
public static class BenchSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="plan">The readings.</param>
    /// <param name="parameters">What they shall tell.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, ReadingPlan plan, IReadOnlyList<BenchParameter> parameters, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(parameters);
        var flow = new PageFlow(paper, "Bench sheet", hand.Name);
        flow.Title("Bench sheet", $"{hand.Name}: {plan.Readings.Count} readings, chosen so that friction, give and stiffness can be told apart.");
        flow.Fields([new("Read by", WidthMm: 44), new("date", WidthMm: 26), new("room", "°C", 14), new("revision of the hand", WidthMm: 24)]);
        flow.Caution(["On a vice with a dummy wrist, never on an arm.", "Closing fingers pinch. Put gauges in and take them out with the wrist at rest.", "What is under tension flies when it breaks: eye protection, nobody in line."]);
        flow.Heading("How");
        flow.Steps(
        [
            "Clamp the dummy wrist. Stick a protractor on its axis, 0° at the start posture with the cords just taut.",
            "Closing and opening differ by friction, and that difference is what is wanted. Reach every angle from one side only: a closing reading by closing on, never by going back a little, and an opening reading by opening.",
            "Wrist moment: hung weight or scale on the lever, read when it stands still. Grip: gauge between the halves of the object. Carriage: calliper from its rest.",
            "Go through one object from the top to the bottom in one run. Write what you read before you look at what is expected.",
        ]);
        flow.Heading("Readings");
        flow.Table(
            [new("", 9, Right: true), new("on"), new("stroke"), new("wrist, °", Right: true), new("read"), new("value", 30), new("unit"), new("again", 24), new("tells most of")],
            [
                .. plan.Readings.Select((r, i) => (IReadOnlyList<string>)
                [
                    (i + 1).ToString(CultureInfo.InvariantCulture), r.Thing, r.Opening ? "opening" : "closing", r.WristDegrees.ToString("0.#", CultureInfo.InvariantCulture), r.Quantity, "", r.Unit, "", parameters[plan.ToldBy[i]].Name,
                ]),
            ], pen: true);
        flow.Heading("Why these");
        flow.Paragraph("The hand was run on paper with each unknown a little larger and a little smaller. Of all readings that could be taken, these leave the smallest room for all unknowns together (the determinant of their information is largest). A reading near an event, where it would hang on where the event lies, was not a candidate.");
        flow.Table([new("unknown"), new("will be known to, %", Right: true), new("beforehand, %", Right: true)],
            [.. parameters.Select((p, i) => (IReadOnlyList<string>)[p.Words, AnswerTables.Number(Math.Round(100 * plan.Spread[i], 1)), AnswerTables.Number(Math.Round(100 * DesignOfReadings.PriorSpread))])]);
        flow.Small("One standard deviation of the logarithm, about a share of the value. Where it is hardly smaller than beforehand, these gauges cannot tell that unknown on this hand.");
        flow.NewPage();
        flow.Heading("What the model expects");
        flow.Paragraph("Fold this page away until the readings are written.");
        flow.Table([new("", Right: true), new("expected", Right: true), new("unit"), new("scatter of one reading", Right: true)],
            [.. plan.Readings.Select((r, i) => (IReadOnlyList<string>)[(i + 1).ToString(CultureInfo.InvariantCulture), AnswerTables.Number(r.Expected), r.Unit, AnswerTables.Number(r.Deviation)])]);
        return flow;
    }
}
