using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>liner HAND</c>: how much to weigh out, roll and pay for the liner, in how many batches?</summary>
internal sealed class LinerVerb() : HandVerb("liner", "Weigh out the putty of the liner: parts, balls, sheet, batches, cost, what to keep away from it.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the outline of the sheet, laid flat.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the batch card, one page.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_csv, _pdf];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        (Answer? made, IReadOnlyList<InputError> errors) = LinerAnswer.Of(call.Hand, call.Path);
        Answer answer = Sound(made, errors);
        call.Csv(_csv, () => answer.Tables.FirstOrDefault(t => t.Name.StartsWith("outline", StringComparison.Ordinal)) ?? answer.Tables[0]);
        call.Write(_pdf, file => WholeFile.Write(file, MouldCards.Batch(answer, Paper.A4), _pdf.Name));
        return Reply.Of(answer);
    }
}
