using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>proof HAND</c>: vice tests before anybody wears the hand.</summary>
internal sealed class ProofVerb() : Verb("proof", "List the vice tests before wearing, with loads from this hand's own peaks.")
{
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the list as pages to be signed.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of tests.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_pdf);
        command.Add(_csv);
        command.Add(_paper);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        var (answer, tests, errors) = Proving.Make(hand, path);
        if (answer is null)
        {
            throw new BadInputException([.. errors]);
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            SheetFiles.Write(pdf, ProofSheet.Make(hand, tests, SheetFiles.Paper(parsed.GetValue(_paper)!)), "--pdf", terminal);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
        }

        return Reply.Of(answer);
    }
}
