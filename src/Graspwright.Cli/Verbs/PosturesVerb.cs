using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Postures;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>postures HAND</c>: from which start posture, and in which direction, should the wrist drive?</summary>
internal sealed class PosturesVerb() : Verb("postures", "Sweep the start posture and the driving direction, and say what each gives.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of postures.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_csv);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (Answer? answer, IReadOnlyList<InputError> errors) = Posturing.Answer(hand, path);
        if (answer is null)
        {
            throw new BadInputException(errors);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        return Reply.Of(answer);
    }
}
