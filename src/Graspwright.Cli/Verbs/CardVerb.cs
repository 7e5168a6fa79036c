using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Cards;

namespace Graspwright.Cli.Verbs;

/// <summary><c>card HAND</c>: order of muscle signal and wrist for each grip, with its seconds.</summary>
internal sealed class CardVerb() : Verb("card", "Say for pinch, point, hook and cylinder in which order muscle and wrist act, how long it takes, and what happens out of order.")
{
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the card as pages.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_pdf);
        command.Add(_paper);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        var (answer, grips, errors) = GripCard.Make(hand, path);
        if (answer is null)
        {
            throw new BadInputException([.. errors]);
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            SheetFiles.Write(pdf, GripCardSheet.Make(hand, grips, SheetFiles.Paper(parsed.GetValue(_paper)!)), "--pdf", terminal);
        }

        return Reply.Of(answer);
    }
}
