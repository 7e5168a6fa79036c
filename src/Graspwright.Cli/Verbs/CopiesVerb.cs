using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>copies HAND</c>: what does each copy from limb to shell take, add and lose?</summary>
internal sealed class CopiesVerb() : Verb("copies", "The chain of copies from limb to shell: powder, water, waiting, helpers, millimetres gained and lost.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the fit record, to fill in.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the copies card, one page.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_csv);
        command.Add(_pdf);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (Answer? answer, IReadOnlyList<InputError> errors) = CopiesAnswer.Of(hand, path);
        if (answer is null)
        {
            throw new BadInputException(errors);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(CopiesAnswer.FitRecord(hand)), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            WholeFile.Write(pdf, MouldCards.Copies(answer, Paper.A4), "--pdf");
            terminal.Talk.WriteLine($"Wrote {pdf}");
        }

        return Reply.Of(answer);
    }
}
