using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Thumb;

namespace Graspwright.Cli.Verbs;

/// <summary><c>thumb HAND</c>: which fingertips does the wearer's own thumb meet, and how hard do they press on it?</summary>
internal sealed class ThumbVerb() : Verb("thumb", "Which fingertips the wearer's own thumb meets: gaps, angles, pressure on its pad.")
{
    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(CountJobs);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (Answer? answer, IReadOnlyList<InputError> errors) = Thumbing.Answer(hand, path);
        return answer is null ? throw new BadInputException(errors) : Reply.Of(WithJobs(answer, parsed, hand, path));
    }
}
