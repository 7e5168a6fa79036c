using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>clock HAND</c>: when is it mixed, when does it firm and cure, does the work fit? With <c>--run</c>, the live clock.</summary>
internal sealed class ClockVerb() : Verb("clock", "The cure clock: mixed by, firming, hands off, off the mould, and whether the work fits. --run speaks the steps.")
{
    /// <inheritdoc/>
    protected override void Describe(Command command) => command.Add(Hand);

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (ClockResult? result, IReadOnlyList<InputError> errors) = ClockAnswer.Of(hand, path);
        return result is null ? throw new BadInputException(errors) : Reply.Of(result.Answer);
    }
}
