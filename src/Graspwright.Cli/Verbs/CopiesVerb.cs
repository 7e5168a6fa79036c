using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>copies HAND</c>: what does each copy from limb to shell take, add and lose?</summary>
internal sealed class CopiesVerb() : Verb("copies", "The chain of copies from limb to shell: powder, water, waiting, helpers, millimetres gained and lost.")
{
    /// <inheritdoc/>
    protected override void Describe(Command command) => command.Add(Hand);

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (Answer? answer, IReadOnlyList<InputError> errors) = CopiesAnswer.Of(hand, path);
        return answer is null ? throw new BadInputException(errors) : Reply.Of(answer);
    }
}
