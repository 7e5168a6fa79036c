using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Workshop.Cards;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>card HAND</c>: order of muscle signal and wrist for each grip, with its seconds.</summary>
internal sealed class CardVerb() : HandVerb("card", "Say for pinch, point, hook and cylinder in which order muscle and wrist act, how long it takes, and what happens out of order.")
{
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the card as pages.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_pdf, _paper];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        var (made, grips, errors) = GripCard.Make(call.Hand, call.Path);
        Answer answer = Sound(made, errors);
        call.Write(_pdf, file => SheetFiles.Write(file, GripCardSheet.Make(call.Hand, grips, SheetFiles.Paper(call.Parsed.GetValue(_paper)!)), _pdf.Name, call.Terminal));
        return Reply.Of(answer);
    }
}
