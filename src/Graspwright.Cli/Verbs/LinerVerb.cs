using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>liner HAND</c>: how much to weigh out, roll and pay for the liner, in how many batches?</summary>
internal sealed class LinerVerb() : Verb("liner", "Weigh out the putty of the liner: parts, balls, sheet, batches, cost, what to keep away from it.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the outline of the sheet, laid flat.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the batch card, one page.", HelpName = "FILE" };

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
        (Answer? answer, IReadOnlyList<InputError> errors) = LinerAnswer.Of(hand, path);
        if (answer is null)
        {
            throw new BadInputException(errors);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            Table table = answer.Tables.FirstOrDefault(t => t.Name.StartsWith("outline", StringComparison.Ordinal)) ?? answer.Tables[0];
            WholeFile.Write(csv, CsvTable.Write(table), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            WholeFile.Write(pdf, MouldCards.Batch(answer, Paper.A4), "--pdf");
            terminal.Talk.WriteLine($"Wrote {pdf}");
        }

        return Reply.Of(answer);
    }
}
