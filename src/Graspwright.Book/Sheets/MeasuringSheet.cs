using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Measuring;

namespace Graspwright.Book.Sheets;

/// <summary>The measuring protocol as pages to fill in by pen; the same readings, in the same order, as its CSV.</summary>
public static class MeasuringSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        var flow = new PageFlow(paper, "Measuring sheet", hand.Name);
        flow.Title("Measuring sheet", $"{hand.Name}: what this wrist, thumb and skin can give. One helper, two days, a luggage scale, a phone.");
        flow.Fields([new("Wearer", WidthMm: 50), new("date", WidthMm: 26), new("measured by", WidthMm: 40)]);
        flow.Caution([.. MeasuringAnswer.Cautions, "The wearer pulls, the helper reads. Nobody stands in line with the strap: a strap that slips off flies."], "Before you pull");
        flow.Heading("1. Pull against the angle of the wrist");
        flow.Steps(
        [
            "Elbow bent square, forearm on the bench and held by the helper or a strap. Lay a phone as an angle gauge along the back of the hand: 0° is straight, toward the palm counts positive.",
            "Strap round the palm, square to it. Measure the lever from the wrist's axis (the dimple beside the round bone on the little-finger side) to the middle of the strap.",
            "Hang the scale between strap and a fixed peg, so that it pulls square to the hand at each angle. Rest two minutes between pulls.",
            "Build up over two seconds, hold three, and write what stands still on the scale. Write its own unit: N, kg or lb. Do not average: write every try.",
        ]);
        flow.Fields([new("Lever toward the palm", "mm", 18), new("lever toward the back", "mm", 18), new("unit of the scale", WidthMm: 14)]);
        IReadOnlyList<double> angles = Protocol.Angles(hand);
        string[] tries = [.. Enumerable.Range(1, Protocol.Tries).Select(t => $"try {t}")];
        flow.Table(
            [new("wrist, °", 18, Right: true), .. tries.Select(t => new TableColumn($"palm, {t}")), .. tries.Select(t => new TableColumn($"back, {t}"))],
            [.. angles.Select(a => (IReadOnlyList<string>)[Degrees(a), .. tries.Select(_ => ""), .. tries.Select(_ => "")])], pen: true);
        flow.Heading("2. How long a pull is held");
        flow.Paragraph($"At the start posture ({Degrees(double.RadiansToDegrees(hand.Wrist.StartRadians))}°), pull the share of the greatest pull and hold it until it falls by a tenth. Rest ten minutes before the next.");
        flow.Table([new("share", 24), new("pull on the scale"), new("held, s (try 1)"), new("held, s (try 2)")], [.. Protocol.HoldPercent.Select(s => (IReadOnlyList<string>)[$"{s} %", "", "", ""])], pen: true);
        flow.Need(60);
        flow.Heading("3. How far and how fast");
        flow.Table([new("what", 92), new("try 1", 0), new("try 2"), new("try 3")],
        [
            ["range toward the palm with a light pull on the strap, °", "", "", ""],
            ["range toward the back with a light pull on the strap, °", "", "", ""],
            [string.Create(CultureInfo.InvariantCulture, $"ten easy bends through {double.RadiansToDegrees(hand.Wrist.TravelRadians):0}° and back, s"), "", "", "–"],
        ], pen: true);
        flow.Heading("4. Girths and stumps");
        flow.Table([new("girth, mm", 92), new("morning"), new("evening")], [.. Protocol.Girths.Select(g => (IReadOnlyList<string>)[g, "", ""])], pen: true);
        flow.Paragraph("Ends of the stumps from the wrist's axis, seen from the side: distal counts toward the fingertips, dorsal toward the back of the hand (below the axis is negative).");
        flow.Table([new("end of the stump", 40), new("distal, mm"), new("dorsal, mm"), new("sore places, scars, numb skin", 70)],
            [.. hand.Fingers.Select(f => (IReadOnlyList<string>)[f.Name, "", "", ""])], pen: true);
        flow.Fields([new("Wrist crease to the knuckle of the middle finger", "mm", 20)]);
        flow.Heading("5. The thumb");
        flow.Paragraph("Places from the wrist's axis: distal, dorsal, and toward the thumb from the middle of the hand. “Looks at”: the far end of a straw held square on the pad. Pinch: thumb pad against a scale's plate, three tries.");
        flow.Table([new("posture", 30), new("pad distal, mm"), new("dorsal"), new("to thumb"), new("looks at distal"), new("dorsal"), new("to thumb")],
            [.. Protocol.ThumbPostures(hand).Select(p => (IReadOnlyList<string>)[p, "", "", "", "", "", ""])], pen: true);
        flow.Fields([new("Pinch, try 1", "", 20), new("try 2", "", 20), new("try 3", "", 20), new("unit", "", 12)]);
        flow.Heading("6. Give of the cuff");
        flow.Paragraph("Hand on, fingers blocked with a wooden block so that nothing turns but cuff and flesh. Foot of a dial gauge on the cuff, far from the wrist; measure its distance from the wrist's axis. Pull at the strap in five rising steps, then the same falling; read the dial each time.");
        flow.Fields([new("Lever of the strap", "mm", 20), new("dial's foot from the wrist's axis", "mm", 20)]);
        flow.Table([new("step", 18, Right: true), new("rising: pull"), new("rising: dial, mm"), new("falling: pull"), new("falling: dial, mm")],
            [.. Enumerable.Range(1, 5).Select(i => (IReadOnlyList<string>)[i.ToString(CultureInfo.InvariantCulture), "", "", "", ""])], pen: true);
        flow.WritingLines("What hurt, where, and when:", 2);
        flow.Signature("Measured by");
        return flow;
    }

    private static string Degrees(double value) => value.ToString("0.#", CultureInfo.InvariantCulture).Replace('-', '−');
}
