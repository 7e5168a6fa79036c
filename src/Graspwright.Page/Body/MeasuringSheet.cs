using System.Globalization;
using System.Text;
using Graspwright.Hand;
using Graspwright.Page.Hands;
using Graspwright.Page.Pages;
using Graspwright.Workshop.Measuring;
using Graspwright.Workshop.Results;

namespace Graspwright.Page.Body;

/// <summary>One line of the sheet as it is typed.</summary>
/// <param name="Cells">Its cells in the order of the file's columns.</param>
/// <param name="Line">The line of the protocol; its dimensions choose the units.</param>
public sealed record SheetRow(IReadOnlyList<string> Cells, ProtocolLine Line)
{
    /// <summary>What tells it apart from every other line.</summary>
    public string Words => string.Join(", ", new[] { Cells[1], Cells[2], Cells[3].Length > 0 ? Cells[3] + "°" : "", "try " + Cells[4] }.Where(w => w.Length > 0));
}

/// <summary>The measuring sheet that is typed on the page. What was typed is kept as a CSV file beside the hand file, right or wrong, so that nothing is lost.</summary>
/// <param name="open">The open hand.</param>
public sealed class MeasuringSheet(OpenHand open)
{
    private const int ValueCell = 5, FirstTyped = 5, LastTyped = 12;
    private static readonly string[] Names = SheetCsv.Header.Split(',');

    /// <summary>Names of the columns that are typed.</summary>
    public static IReadOnlyList<string> Typed { get; } = [.. Names[FirstTyped..(LastTyped + 1)]];

    /// <summary>Where it is kept.</summary>
    public string File => Path.ChangeExtension(open.FullPath, ".measured.csv");

    /// <summary>The lines, with what was typed before.</summary>
    /// <param name="hand">The hand.</param>
    public IReadOnlyList<SheetRow> Rows(HandModel hand)
    {
        Dictionary<string, IReadOnlyList<string>> kept = new(StringComparer.OrdinalIgnoreCase);
        if (System.IO.File.Exists(File))
        {
            foreach (CsvRow row in CsvRows.Read(System.IO.File.ReadAllText(File)).Skip(1).Where(r => r.Cells.Count == Names.Length))
            {
                kept[Key(row.Cells)] = row.Cells;
            }
        }

        IReadOnlyList<ProtocolLine> lines = Protocol.Lines(hand);
        IReadOnlyList<CsvRow> blank = [.. CsvRows.Read(SheetCsv.Blank(hand)).Skip(1)];
        return [.. blank.Select((b, i) => new SheetRow(kept.GetValueOrDefault(Key(b.Cells), b.Cells), lines[i]))];
    }

    /// <summary>What the kept sheet says.</summary>
    /// <param name="hand">The hand.</param>
    /// <returns><see langword="null"/> = nothing was typed yet.</returns>
    public Told? Told(HandModel hand)
    {
        if (!System.IO.File.Exists(File))
        {
            return null;
        }

        string name = Path.GetFileName(File);
        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read(System.IO.File.ReadAllText(File), name);
        if (errors.Count > 0)
        {
            return new("measure", null, errors);
        }

        MeasuredWearer wearer = new(hand, readings);
        IReadOnlyList<InputError> doubts = MeasuringAnswer.Doubts(wearer, name);
        if (doubts.Count > 0 || HandEditor.Open(open.State.Reading, open.Folder) is not { } editor)
        {
            return new("measure", null, doubts);
        }

        IReadOnlyList<Replacement> replacements = wearer.Replacements(editor);
        EditResult edited = MeasuredWearer.Apply(editor, replacements);
        return edited.Editor?.Reading.Hand is { } after
            ? new("measure", MeasuringAnswer.Read(wearer, replacements, applied: false, after), [], replacements)
            : new("measure", null, [.. edited.Errors.Select(HandAnswers.Error)]);
    }

    /// <summary>Keeps what was typed.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="sent">The form: one value of each typed column for each line.</param>
    public Outcome Keep(HandModel hand, Sent sent)
    {
        IReadOnlyList<SheetRow> rows = Rows(hand);
        IReadOnlyList<IReadOnlyList<string>> typed = [.. Typed.Select(sent.All)];
        if (typed.Any(t => t.Count != rows.Count))
        {
            return new([new(open.Path, 0, 0, "sheet", "another number of lines than the sheet has", string.Create(CultureInfo.InvariantCulture, $"{rows.Count} lines"), "load the page again: the hand's postures changed")]);
        }

        StringBuilder text = new(SheetCsv.Header + "\n");
        for (int i = 0; i < rows.Count; i++)
        {
            IEnumerable<string> cells = rows[i].Cells.Select((c, k) => k is >= FirstTyped and <= LastTyped ? Clean(typed[k - FirstTyped][i]) : c);
            text.Append(string.Join(',', cells)).Append('\n');
        }

        return Store(text.ToString());
    }

    /// <summary>Takes a filled sheet in.</summary>
    /// <param name="text">Its text.</param>
    public Outcome TakeIn(string text)
    {
        (_, IReadOnlyList<InputError> errors) = SheetCsv.Read(text, "the file");
        return errors.FirstOrDefault(e => e.Key == "header") is { } wrong ? new([new(wrong.File, wrong.Line, wrong.Column, wrong.Key, wrong.Found, wrong.Allowed, wrong.Fix)]) : Store(text);
    }

    /// <summary>Puts the measured values into the hand file.</summary>
    public Outcome Apply()
    {
        if (open.State.Reading.Hand is not { } hand || Told(hand) is not { Result: IReadOnlyList<Replacement> replacements })
        {
            return new([new(open.Path, 0, 0, "sheet", "a sheet with errors", "a sheet that can be read", "put right what stands beside its lines")]);
        }

        return open.Edit(editor => MeasuredWearer.Apply(editor, replacements), "the measured values");
    }

    private Outcome Store(string text)
    {
        string half = File + ".part";
        try
        {
            System.IO.File.WriteAllText(half, text, new UTF8Encoding(false));
            System.IO.File.Move(half, File, overwrite: true);
            open.OtherFileChanged();
            return Outcome.Done;
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            return new([new(File, 0, 0, "", $"the file cannot be written ({refusal.Message.TrimEnd('.')})", "a folder you may write to", "check its permissions")]);
        }
    }

    private static string Key(IReadOnlyList<string> cells) => string.Join('|', cells.Take(ValueCell));

    private static string Clean(string cell) => cell.Trim().ReplaceLineEndings(" ").Replace(',', ';').Replace("\"", "″", StringComparison.Ordinal);
}
