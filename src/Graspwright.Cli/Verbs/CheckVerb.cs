using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Check;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>check HAND</c>: does the file read, can the hand be put together, what is guessed?</summary>
internal sealed class CheckVerb() : Verb("check", "Read a hand file: errors with line and column, and every value that is guessed.")
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
        (HandModel hand, HandSource source) = HandInput.Read(path);
        InputError[] missing = [.. NamedFiles.Missing(source, Path.GetDirectoryName(Path.GetFullPath(path))!).Select(HandInput.Error)];
        (Answer? answer, IReadOnlyList<InputError> errors) = Checking.Answer(hand, path, missing);
        return answer is null ? throw new BadInputException(errors) : Reply.Of(WithJobs(answer, parsed, hand, path));
    }
}
