using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>proof HAND</c>: vice tests before anybody wears the hand.</summary>
internal sealed class ProofVerb() : HandVerb("proof", "List the vice tests before wearing, with loads from this hand's own peaks.")
{
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the list as pages to be signed.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of tests.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_pdf, _csv, _paper];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        var (made, tests, errors) = Proving.Make(call.Hand, call.Path);
        Answer answer = Sound(made, errors);
        call.Write(_pdf, file => SheetFiles.Write(file, ProofSheet.Make(call.Hand, tests, SheetFiles.Paper(call.Parsed.GetValue(_paper)!)), _pdf.Name, call.Terminal));
        call.Csv(_csv, () => answer.Tables[0]);
        return Reply.Of(answer);
    }
}
