using Graspwright.Book.Pages;
using Graspwright.Drawing.Display;
using Graspwright.Workshop.Form;
using Graspwright.Workshop.Results;

namespace Graspwright.Book.Sheets;

/// <summary>The paper pattern at full size on pages that are joined, with what to know before cutting.</summary>
public static class PatternSheet
{
    private const double CaptionMm = 14;

    /// <summary>The pages.</summary>
    /// <param name="result">The pattern.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(PatternResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        Answer answer = result.Answer ?? throw new ArgumentException("There is no pattern to print.", nameof(result));
        PageFlow flow = new(paper, "Paper pattern", answer.Hand);
        Picture whole = PatternPictures.FullSize(result, ruler: false);
        IReadOnlyList<Picture>? pages = PatternPictures.Pages(result, flow.WidthMm, flow.HeightMm - CaptionMm);
        IReadOnlyList<Tile> tiles = pages is null ? Tiles.Of(whole, flow.WidthMm, flow.HeightMm - CaptionMm) : [.. pages.Select((p, i) => new Tile($"Pieces, page {i + 1} of {pages.Count}", p))];
        flow.Title("Paper pattern of the liner", $"{answer.Hand}: full size, 1 : 1, {(pages is null ? $"{tiles.Count} pages to join" : pages.Count == 1 ? "every piece whole on one page" : $"every piece whole, on {pages.Count} pages")}.");
        flow.Paragraph(answer.Sentence);
        flow.Caution(answer.Cautions);
        flow.CheckRulers();
        string[] joining = pages is null ? ["Cut each page along two of its dashed lines and lay it on its neighbours: crosses on crosses, letters tell which comes beside. Join with tape."] : [];
        flow.Steps(["Measure both rulers.", .. joining, "Cut along the thick line. Dashed lines in a piece are seams: they meet letter by letter.", "The arrow points to the fingertips; the outer side is up."]);
        flow.NotToScale(whole, "All pieces, small.", 80);
        foreach (Finding finding in answer.Findings.Where(f => f.Verdict is Verdict.Fails or Verdict.Tight))
        {
            flow.Small($"{finding.Verdict.Word()}: {finding.Reason}");
        }

        foreach (Tile tile in tiles)
        {
            flow.NewPage();
            flow.AtFullSize(tile.Picture, $"{tile.Name}.");
        }

        return flow;
    }
}
