using System.CommandLine;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>A verb of the command line.</summary>
/// <param name="name">The verb.</param>
/// <param name="words">What it does, for the help.</param>
internal abstract class Verb(string name, string words)
{
    private readonly Option<bool> _json = new("--json") { Description = "Print one JSON object instead of text." };

    /// <summary>The verb.</summary>
    public string Name { get; } = name;

    /// <summary>Argument that names the hand file.</summary>
    protected Argument<string> Hand { get; } = new("HAND") { Description = "The hand file." };

    /// <summary>Option that counts the day's jobs beside the answer; a verb that has it adds it.</summary>
    protected Option<bool> CountJobs { get; } = new("--jobs") { Description = "Say too how many of the day's jobs work." };

    /// <summary>The answer, with the count of jobs where it was asked for.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="parsed">The parsed command line.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="path">Its file.</param>
    protected Answer WithJobs(Answer answer, ParseResult parsed, Graspwright.Hand.HandModel hand, string path) =>
        parsed.GetValue(CountJobs) ? JobCount.Add(answer, new(hand) { File = path }) : answer;

    /// <summary>The verb as the parser takes it.</summary>
    /// <param name="terminal">Where answers and talk go.</param>
    public Command Command(Terminal terminal)
    {
        Command command = new(Name, words);
        Describe(command);
        command.Add(_json);
        command.SetAction(parsed => Run(parsed, terminal));
        return command;
    }

    /// <summary>Adds arguments and options.</summary>
    /// <param name="command">The command.</param>
    protected abstract void Describe(Command command);

    /// <summary>Does the work.</summary>
    /// <param name="parsed">The parsed command line.</param>
    /// <param name="terminal">Where answers and talk go.</param>
    /// <returns>Text and JSON of the answer, with the exit code.</returns>
    /// <exception cref="BadInputException">The input cannot be used.</exception>
    protected abstract Reply Answer(ParseResult parsed, Terminal terminal);

    private int Run(ParseResult parsed, Terminal terminal)
    {
        bool json = parsed.GetValue(_json);
        try
        {
            Reply reply = Answer(parsed, terminal);
            terminal.Answers.Write(json ? reply.Json() : reply.Text());
            return reply.ExitCode;
        }
        catch (BadInputException bad)
        {
            Refuse(terminal, Name, bad.Errors, json);
            return ExitCode.BadInput;
        }
    }

    /// <summary>Prints errors: as JSON on standard output where asked for, else as text on standard error.</summary>
    /// <param name="terminal">Where answers and talk go.</param>
    /// <param name="verb">The verb.</param>
    /// <param name="errors">The errors.</param>
    /// <param name="json">Whether JSON was asked for.</param>
    public static void Refuse(Terminal terminal, string verb, IReadOnlyList<InputError> errors, bool json)
    {
        if (json)
        {
            terminal.Answers.Write(JsonAnswer.WriteErrors(verb, errors));
            return;
        }

        foreach (InputError error in errors)
        {
            terminal.Talk.WriteLine(error.Text);
        }
    }
}

/// <summary>What a verb answers.</summary>
/// <param name="Text">The answer as text.</param>
/// <param name="Json">The answer as JSON.</param>
/// <param name="ExitCode">Exit code.</param>
internal sealed record Reply(Func<string> Text, Func<string> Json, int ExitCode = ExitCode.Answered)
{
    /// <summary>A reply of an answer in the one shape.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="exitCode">Exit code.</param>
    public static Reply Of(Answer answer, int exitCode = Cli.ExitCode.Answered) =>
        new(() => TextAnswer.Write(answer), () => JsonAnswer.Write(answer), exitCode);
}
