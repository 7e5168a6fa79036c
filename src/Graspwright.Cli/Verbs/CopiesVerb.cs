using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>copies HAND</c>: what does each copy from limb to shell take, add and lose?</summary>
internal sealed class CopiesVerb() : HandVerb("copies", "The chain of copies from limb to shell: powder, water, waiting, helpers, millimetres gained and lost.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the fit record, to fill in.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the copies card, one page.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_csv, _pdf];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        (Answer? made, IReadOnlyList<InputError> errors) = CopiesAnswer.Of(call.Hand, call.Path);
        Answer answer = Sound(made, errors);
        call.Csv(_csv, () => CopiesAnswer.FitRecord(call.Hand));
        call.Write(_pdf, file => WholeFile.Write(file, MouldCards.Copies(answer, Paper.A4), _pdf.Name));
        return Reply.Of(answer);
    }
}
