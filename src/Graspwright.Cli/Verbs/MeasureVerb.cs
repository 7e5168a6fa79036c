using System.CommandLine;
using System.Text;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Measuring;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>measure HAND</c>: the measuring sheet, out as pages and CSV, back as what the wearer gives.</summary>
internal sealed class MeasureVerb() : Verb("measure", "Write the sheet for measuring the wearer, or read it back: strength, endurance, give, and what the hand file should say.")
{
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the sheet as pages to fill in by pen.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the empty sheet as CSV, or with --read the table of pulls.", HelpName = "FILE" };
    private readonly Option<string?> _read = new("--read") { Description = "Read a filled CSV sheet back.", HelpName = "FILE" };
    private readonly Option<bool> _apply = new("--apply") { Description = "With --read: put the measured values into the hand file; its comments are kept." };
    private readonly Option<bool> _asWritten = new("--as-written") { Description = "With --read: believe units that look mistaken." };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        foreach (Option option in (Option[])[_pdf, _csv, _read, _apply, _asWritten, _paper])
        {
            command.Add(option);
        }
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (string? pdf, string? csv, string? read) = (parsed.GetValue(_pdf), parsed.GetValue(_csv), parsed.GetValue(_read));
        (HandModel hand, HandSource source) = HandInput.Read(path);
        if (read is not null)
        {
            return Read(parsed, path, new(hand, [], source), read, pdf, csv);
        }

        if (pdf is null && csv is null)
        {
            throw Wrong("neither --pdf, --csv nor --read", "at least one of them", "Write the sheet first: measure HAND --pdf sheet.pdf --csv sheet.csv.");
        }

        if (parsed.GetValue(_apply) || parsed.GetValue(_asWritten))
        {
            throw Wrong("--apply or --as-written without --read", "--read FILE beside it", "Name the filled sheet.");
        }

        if (pdf is not null)
        {
            SheetFiles.Write(pdf, MeasuringSheet.Make(hand, SheetFiles.Paper(parsed.GetValue(_paper)!)), "--pdf", terminal);
        }

        if (csv is not null)
        {
            WholeFile.Write(csv, SheetCsv.Blank(hand), "--csv");
        }

        return Reply.Of(MeasuringAnswer.Written(hand, [.. ((string?[])[pdf, csv]).OfType<string>()]));
    }

    private Reply Read(ParseResult parsed, string path, HandReading reading, string file, string? pdf, string? csv)
    {
        if (pdf is not null)
        {
            throw Wrong("--pdf beside --read", "one of them", "Write the empty sheet in a call of its own.");
        }

        (IReadOnlyList<Reading> readings, IReadOnlyList<InputError> errors) = SheetCsv.Read(Text(file), file);
        if (errors.Count > 0)
        {
            throw new BadInputException([.. errors]);
        }

        MeasuredWearer wearer = new(reading.Hand!, readings);
        IReadOnlyList<InputError> doubts = parsed.GetValue(_asWritten) ? [] : MeasuringAnswer.Doubts(wearer, file);
        if (doubts.Count > 0)
        {
            throw new BadInputException([.. doubts]);
        }

        HandEditor editor = HandInput.Editor(path, reading);
        IReadOnlyList<Replacement> replacements = wearer.Replacements(editor);
        EditResult edited = MeasuredWearer.Apply(editor, replacements);
        if (edited.Editor is null)
        {
            throw new BadInputException([.. edited.Errors.Select(HandInput.Error)]);
        }

        bool apply = parsed.GetValue(_apply) && replacements.Count > 0;
        if (apply)
        {
            WholeFile.Write(path, edited.Editor.Source.Text.ToBytes(), "HAND");
        }

        Answer answer = MeasuringAnswer.Read(wearer, replacements, apply, edited.Editor.Reading.Hand!);
        if (csv is not null)
        {
            WholeFile.Write(csv, string.Concat(answer.Tables.Where(t => t.Name.StartsWith("pulls", StringComparison.Ordinal)).Select(CsvTable.Write)), "--csv");
        }

        return Reply.Of(answer);
    }

    private static string Text(string file)
    {
        try
        {
            return File.ReadAllText(file, Encoding.UTF8);
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(file, 0, 0, "--read", $"the file cannot be read ({refusal.Message.TrimEnd('.')})", "a filled measuring sheet", "Check its name and folder."));
        }
    }

    private static BadInputException Wrong(string found, string allowed, string fix) => new(new InputError("command line", 0, 0, "", found, allowed, fix));
}
