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
        return OnePage(shorter => Batch(answer, paper, shorter));
    }

    /// <summary>The clock plan: moments, steps as bars, what would make it fit.</summary>
    /// <param name="result">Result of <c>clock</c>.</param>
    /// <param name="paper">Paper.</param>
    public static byte[] Clock(ClockResult result, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(result);
        return OnePage(shorter => Clock(result, paper, shorter));
    }

    /// <summary>The copies: what each takes, adds and loses, in order, with the fit record.</summary>
    /// <param name="answer">Answer of <c>copies</c>.</param>
    /// <param name="paper">Paper.</param>
    public static byte[] Copies(Answer answer, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return OnePage(shorter => Copies(answer, paper, shorter));
    }

    private const int Shortest = 4;

    // The first of ever shorter versions that goes on one page; cautions stay on every one.
    private static byte[] OnePage(Func<int, PageFlow> version)
    {
        for (int shorter = 0; shorter < Shortest; shorter++)
        {
            PageFlow flow = version(shorter);
            if (flow.Pages().Count == 1)
            {
                return flow.ToPdf();
            }
        }

        return version(Shortest).ToPdf();
    }

    private static PageFlow Batch(Answer answer, Paper paper, int shorter)
    {
        PageFlow flow = new(paper, "Batch card", answer.Hand);
        flow.Title("Batch card", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        Table(flow, answer, "batch", "Weigh");
        Mind(flow, answer, shorter);
        Table(flow, answer, "batches in order", "Batches in order", columns: shorter < 2 ? null : [0, 1, 3]);
        if (shorter >= 2)
        {
            flow.Small("Each piece overlaps the firm edge of the one before: clean, dry, no release on it.");
        }

        if (shorter < 2)
        {
            List(flow, answer, "rolling", "Roll");
        }

        Workshop.Results.Table away = answer.Tables.First(t => t.Name.StartsWith("keep away", StringComparison.Ordinal));
        flow.Heading("Keep away from uncured putty");
        if (shorter == 0)
        {
            flow.Bullets([.. away.Rows.Select(r => $"{r[0].Text}: {r[2].Text}")]);
        }
        else
        {
            flow.Paragraph($"{string.Join("; ", away.Rows.Select(r => r[0].Text))}. Test a patch first.");
        }

        flow.Caution(answer.Cautions);
        flow.Fields([new("A weighed", "g", 20), new("B weighed", "g", 20), new("room", "°C", 16), new("date", WidthMm: 22)]);
        return flow;
    }

    private static PageFlow Clock(ClockResult result, Paper paper, int shorter)
    {
        Answer answer = result.Answer;
        PageFlow flow = new(paper, "Clock plan", answer.Hand);
        flow.Title("Clock plan", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        flow.NotToScale(MouldPictures.Plan(result), "Steps and deadlines.", highestMm: shorter < Shortest ? 92 : 56);
        Table(flow, answer, "clock", "From the start of mixing", columns: [0, 1, 2, 3]);
        Mind(flow, answer, shorter);
        if (shorter < Shortest - 1)
        {
            flow.Heading("What is said, and when");
            flow.Table([new("when", 14, Right: true), new("what")], [.. result.Lines.Take(13 - 4 * shorter).Select(l => (IReadOnlyList<string>)[Stamp(l.At), l.Text])]);
        }

        flow.Caution(answer.Cautions);
        flow.Fields([new("mixing began", WidthMm: 20), new("firm at", "min", 16), new("off at", "min", 16), new("room", "°C", 16)]);
        return flow;
    }

    private static PageFlow Copies(Answer answer, Paper paper, int shorter)
    {
        PageFlow flow = new(paper, "Copies card", answer.Hand);
        flow.Title("Copies card", answer.Hand);
        flow.Paragraph(answer.Sentence, strong: true);
        Table(flow, answer, "materials and waiting", "Powder and water", columns: [0, 1, 2, 3, 6]);
        if (shorter < 2)
        {
            List(flow, answer, "in order", "In order", numbered: true);
        }

        flow.Caution(answer.Cautions);
        Table(flow, answer, "fit record, to fill in", "Fit record", pen: true, mostRows: shorter == 0 ? int.MaxValue : Math.Max(3, 9 - 2 * shorter));
        return flow;
    }

    private static void Mind(PageFlow flow, Answer answer, int shorter) =>
        flow.Bullets([.. answer.Findings.Where(f => f.Verdict is Verdict.Fails or Verdict.Tight || (f.Verdict is Verdict.NotKnown && shorter < Shortest)).Select(f => shorter == 0 ? $"{f.Verdict.Word()}: {f.Reason} {f.Change}" : $"{f.Verdict.Word()}: {f.Reason}")]);

    private static void List(PageFlow flow, Answer answer, string name, string heading, bool numbered = false)
    {
        if (answer.Tables.FirstOrDefault(t => t.Name == name) is { Rows.Count: > 0 } table)
        {
            flow.Heading(heading);
            IReadOnlyList<string> items = [.. table.Rows.Select(r => r[0].Text ?? "")];
            if (numbered)
            {
                flow.Steps(items);
            }
            else
            {
                flow.Bullets(items);
            }
        }
    }

    private static void Table(PageFlow flow, Answer answer, string name, string heading, bool pen = false, int[]? columns = null, int mostRows = int.MaxValue)
    {
        if (answer.Tables.FirstOrDefault(t => t.Name == name) is not { Rows.Count: > 0 } table)
        {
            return;
        }

        int[] shown = columns ?? [.. Enumerable.Range(0, table.Columns.Count)];
        flow.Heading(heading);
        flow.Table([.. shown.Select(c => Column(table, c))], [.. table.Rows.Take(mostRows).Select(r => (IReadOnlyList<string>)[.. shown.Select(c => Words(table, r, c))])], pen);
    }

    private static TableColumn Column(Table table, int c)
    {
        Column column = table.Columns[c];
        bool number = table.Rows.All(r => r[c].Text is null);
        return new(column.Unit.Length > 0 ? $"{column.Name}, {column.Unit}" : column.Name, Right: number);
    }

    // The numbers of a column have the same decimals: 15.0 beside 2.7.
    private static string Words(Table table, IReadOnlyList<Cell> row, int c)
    {
        bool whole = table.Rows.All(r => r[c].Number is not { } number || Math.Abs(number - Math.Round(number)) < 0.05);
        return row[c].Text ?? row[c].Number?.ToString(whole ? "0" : "0.0", CultureInfo.InvariantCulture) ?? "";
    }

    private static string Stamp(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{(int)seconds / 60}:{(int)seconds % 60:00}");
}
