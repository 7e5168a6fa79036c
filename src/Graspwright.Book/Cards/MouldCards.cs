using System.Globalization;
using Graspwright.Book.Pages;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Book.Cards;

/// <summary>Cards for the bench, one page each: batch, clock plan, copies.</summary>
public static class MouldCards
{
    /// <summary>The batch: what to weigh, how to roll, what to keep away.</summary>
    /// <param name="answer">Answer of <c>liner</c>.</param>
    /// <param name="paper">Paper.</param>
    public static byte[] Batch(Answer answer, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(answer);
        PageFlow flow = new(paper, "Batch card", answer.Hand);
        flow.Title("Batch card", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        Table(flow, answer, "batch", "Weigh");
        Mind(flow, answer);
        Table(flow, answer, "batches in order", "Batches in order");
        List(flow, answer, "rolling", "Roll");
        if (answer.Tables.FirstOrDefault(t => t.Name.StartsWith("keep away", StringComparison.Ordinal)) is { } away)
        {
            flow.Heading("Keep away from uncured putty");
            flow.Bullets([.. away.Rows.Select(r => $"{r[0].Text}: {r[2].Text}")]);
        }

        flow.Caution(answer.Cautions);
        flow.Fields([new("A weighed", "g"), new("B weighed", "g"), new("room", "°C"), new("date")]);
        return flow.ToPdf();
    }

    /// <summary>The clock plan: moments, steps as bars, what would make it fit.</summary>
    /// <param name="result">Result of <c>clock</c>.</param>
    /// <param name="paper">Paper.</param>
    public static byte[] Clock(ClockResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        Answer answer = result.Answer;
        PageFlow flow = new(paper, "Clock plan", answer.Hand);
        flow.Title("Clock plan", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        flow.NotToScale(MouldPictures.Plan(result), "Steps and deadlines.", highestMm: 72);
        Table(flow, answer, "clock", "From the start of mixing");
        Mind(flow, answer);
        flow.Heading("What is said, and when");
        flow.Steps([.. result.Lines.Take(12).Select(l => $"{Stamp(l.At)}  {l.Text}")]);
        flow.Caution(answer.Cautions);
        flow.Fields([new("mixing began"), new("firm at", "min"), new("off at", "min"), new("room", "°C")]);
        return flow.ToPdf();
    }

    /// <summary>The copies: what each takes, adds and loses, in order, with the fit record.</summary>
    /// <param name="answer">Answer of <c>copies</c>.</param>
    /// <param name="paper">Paper.</param>
    public static byte[] Copies(Answer answer, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(answer);
        PageFlow flow = new(paper, "Copies card", answer.Hand);
        flow.Title("Copies card", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        Table(flow, answer, "materials and waiting", "Powder and water", columns: [0, 1, 2, 3, 6]);
        List(flow, answer, "in order", "In order");
        flow.Caution(answer.Cautions);
        Table(flow, answer, "fit record, to fill in", "Fit record", pen: true);
        return flow.ToPdf();
    }

    private static void Mind(PageFlow flow, Answer answer) =>
        flow.Bullets([.. answer.Findings.Where(f => f.Verdict is not Verdict.Good).Select(f => $"{f.Verdict.Word()}: {f.Reason} {f.Change}")]);

    private static void List(PageFlow flow, Answer answer, string name, string heading)
    {
        if (answer.Tables.FirstOrDefault(t => t.Name == name) is { Rows.Count: > 0 } table)
        {
            flow.Heading(heading);
            flow.Bullets([.. table.Rows.Select(r => r[0].Text ?? "")]);
        }
    }

    private static void Table(PageFlow flow, Answer answer, string name, string heading, bool pen = false, int[]? columns = null)
    {
        if (answer.Tables.FirstOrDefault(t => t.Name == name) is not { Rows.Count: > 0 } table)
        {
            return;
        }

        int[] shown = columns ?? [.. Enumerable.Range(0, table.Columns.Count)];
        flow.Heading(heading);
        flow.Table([.. shown.Select(c => Column(table, c))], [.. table.Rows.Select(r => (IReadOnlyList<string>)[.. shown.Select(c => Words(r[c]))])], pen);
    }

    private static TableColumn Column(Table table, int c)
    {
        Column column = table.Columns[c];
        bool number = table.Rows.All(r => r[c].Text is null);
        return new(column.Unit.Length > 0 ? $"{column.Name}, {column.Unit}" : column.Name, Right: number);
    }

    private static string Words(Cell cell) => cell.Text ?? cell.Number?.ToString("0.#", CultureInfo.InvariantCulture) ?? "";

    private static string Stamp(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{(int)seconds / 60}:{(int)seconds % 60:00}");
}
