using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>off HAND</c>: does the liner come off over the hand, alone, and where is it cut if not?</summary>
internal sealed class OffVerb() : Verb("off", "Take the liner off: stretch, undercuts, pull with one hand, and the shortest cut where it needs one.")
{
    /// <inheritdoc/>
    protected override void Describe(Command command) => command.Add(Hand);

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (OffResult? result, IReadOnlyList<InputError> errors) = OffAnswer.Of(hand, path);
        return result is null ? throw new BadInputException(errors) : Reply.Of(result.Answer);
    }
}
