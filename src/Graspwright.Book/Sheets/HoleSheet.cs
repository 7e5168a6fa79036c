using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Views;

namespace Graspwright.Book.Sheets;

/// <summary>The drive's holes at full size, with the table of their places and rulers to check the printer.</summary>
public static class HoleSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        var flow = new PageFlow(paper, "Hole drawing", hand.Name);
        flow.Title("Hole drawing of the drive", $"{hand.Name}: full size, 1 : 1. Centre-punch through the paper; drill by the table where it matters.");
        flow.Caution(["Measure both rulers before you cut. Clamp the blank, deburr every hole, eye protection on.", "Pin diameters are those of the hand file; add the clearance of your bush or bearing."]);
        flow.CheckRulers();
        foreach (HolePiece piece in HoleDrawing.Pieces(hand))
        {
            flow.Need(Math.Min(piece.Drawing.HeightMm + 26, flow.HeightMm));
            flow.Heading(char.ToUpperInvariant(piece.Name[0]) + piece.Name[1..]);
            flow.AtFullSize(piece.Drawing, $"Counted from the {piece.Datum}.");
            flow.Table(
                [new("hole", Right: true), new("what goes through it"), new("along, mm", Right: true), new("up, mm", Right: true), new("pin, mm", Right: true)],
                [.. piece.Holes.Select(h => (IReadOnlyList<string>)[h.Number.ToString(CultureInfo.InvariantCulture), h.Name, Millimetres(h.XMm), Millimetres(h.YMm), h.DiameterMm > 0 ? Millimetres(h.DiameterMm) : "not given"])]);
        }

        return flow;
    }

    private static string Millimetres(double mm) => mm.ToString("0.00", CultureInfo.InvariantCulture).Replace('-', '−');
}
