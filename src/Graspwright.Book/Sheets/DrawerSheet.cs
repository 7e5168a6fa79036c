using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Spares;

namespace Graspwright.Book.Sheets;

/// <summary>The drawer list on one page: what to keep, what lies there, and the days to look over the hand.</summary>
public static class DrawerSheet
{
    /// <summary>The page.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="spares">What to keep.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, SparesResult spares, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(spares);
        PageFlow flow = new(paper, "Drawer list", hand.Name);
        flow.Title("Drawer list", $"{hand.Name}, reckoned on {LogReader.Day(spares.Today)}");
        flow.Paragraph(spares.Answer.Sentence);
        flow.Heading("Keep");
        flow.Table(
            [new("article"), new("fitted", Right: true), new("keep", Right: true), new("to be safe", Right: true), new("in the drawer", 24), new("ordered", 24)],
            [.. spares.Lines.Select(l => (IReadOnlyList<string>)[l.Study.Article.Name, Number(l.Study.Fitted.Count), Number(l.Keep?.Keep), Number(l.Safe?.Keep), "", ""])], pen: true);
        if (spares.Looks.Count > 0)
        {
            flow.Heading("Look over");
            flow.Table(
                [new("article"), new("on"), new("then on"), new("and on"), new("seen whole (day, initials)", 52)],
                [.. spares.Looks.Select(l => (IReadOnlyList<string>)[l.Study.Article.Name, Day(l, 0), Day(l, 1), Day(l, 2), ""])], pen: true);
            flow.Small("Each day holds if all was whole at the look before. Write the day into the log as last_seen_whole, and look after every hard knock.");
        }

        flow.Caution(spares.Answer.Cautions);
        return flow;
    }

    private static string Day(Look look, int i) => i < look.Days.Count ? LogReader.Day(look.Days[i]) : "–";

    private static string Number(int? count) => count?.ToString(CultureInfo.InvariantCulture) ?? "–";
}
