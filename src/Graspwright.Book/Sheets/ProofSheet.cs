using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Proof;

namespace Graspwright.Book.Sheets;

/// <summary>The list of vice tests, to be filled in and signed before anybody wears the hand.</summary>
public static class ProofSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="tests">The tests.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, IReadOnlyList<ViceTest> tests, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(tests);
        var flow = new PageFlow(paper, "Proof before wearing", hand.Name);
        flow.Title("Proof before wearing", string.Create(CultureInfo.InvariantCulture, $"{hand.Name}: in the vice, {Proving.Cycles} cycles each, from {Proving.LowFactor} to {Proving.HighFactor} times this hand's own peaks."));
        flow.Caution(Proving.Cautions, "Before you load it");
        flow.Fields([new("Hand, revision", WidthMm: 44), new("pads, cords fitted on", WidthMm: 30), new("date", WidthMm: 24)]);
        flow.Paragraph("Raise the load in ten cycles from the first to the last. After each test look at hinges, bars, cords, pins and pads with a lens. A crack, a bend that stays, a bore that has gone oval, a slip past its limit: it has failed, whatever the load was.");
        for (int i = 0; i < tests.Count; i++)
        {
            ViceTest test = tests[i];
            flow.Need(52);
            flow.Subheading(string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {test.Name}: {Load(test.Low, test.Unit)} to {Load(test.High, test.Unit)}"));
            flow.Paragraph(test.How);
            flow.Small(string.Create(CultureInfo.InvariantCulture, $"Peak {Load(test.Peak, test.Unit)}: {test.From}.{(double.IsNaN(test.HighKilograms) ? "" : $" The last load weighs {test.HighKilograms:0.0} kg.")}"));
            flow.Table(
                [new("cycle", 20), .. Enumerable.Range(1, Proving.Cycles).Select(c => new TableColumn(c.ToString(CultureInfo.InvariantCulture)))],
                [[$"load, {test.Unit}", .. Enumerable.Repeat("", Proving.Cycles)], [double.IsNaN(test.SlipMm) ? "set, mm" : "slip, mm", .. Enumerable.Repeat("", Proving.Cycles)]], pen: true);
            flow.Fields([
                new(double.IsNaN(test.SlipMm) ? "Nothing bent or cracked (initials)" : string.Create(CultureInfo.InvariantCulture, $"Slip in all at most {test.SlipMm:0.#} mm (initials)"), WidthMm: 24),
                new("seen", WidthMm: 60),
            ]);
        }

        flow.Need(60);
        flow.Heading("Signed");
        flow.TickList(["Every test passed, in this order, on this hand as it will be worn.", "It opens again from every grip, and every lock is freed by hand under full load.", "When it is caught, it breaks away from the arm – or the wearer has been told in writing that it does not."]);
        flow.Signature("Tested by");
        flow.Signature("Responsible");
        flow.Signature("Wearer");
        return flow;
    }

    private static string Load(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(value, value < 20 ? 1 : 0)} {unit}");
}
