using System.CommandLine;
using System.Text;
using Graspwright.Cli.Verbs;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>The command line: parses, runs a verb, turns what goes wrong into exit codes.</summary>
internal static class CommandLine
{
    /// <summary>Runs the program.</summary>
    /// <param name="args">Arguments.</param>
    /// <returns>Exit code.</returns>
    public static int Run(string[] args)
    {
        UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false);
        StreamWriter answers = new(Console.OpenStandardOutput(), utf8, bufferSize: 1 << 16);
        Terminal terminal = new(answers, new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true });
        Interruption.Listen(terminal);
        try
        {
            int code = Run(args, terminal);
            answers.Flush();
            return code;
        }
        catch (IOException refusal)
        {
            terminal.Talk.WriteLine($"The answer cannot be written: {refusal.Message}");
            return ExitCode.Failed;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            terminal.Talk.WriteLine($"graspwright failed, and that is our fault: {fault.Message}");
            terminal.Talk.WriteLine($"({fault.GetType().Name}; please report it with the hand file.)");
            return ExitCode.Failed;
        }
    }

    private static int Run(string[] args, Terminal terminal)
    {
        RootCommand root = new("Plans a wrist-driven hand: hand file in, grip, findings and drawings out.");
        foreach (Verb verb in (Verb[])[new GripVerb(), new CheckVerb(), new NewVerb(), new PointsVerb(), new ShowVerb(), new SetVerb(), new SchemaVerb()])
        {
            root.Add(verb.Command(terminal));
        }

        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            string verb = parsed.CommandResult.Command == root ? "" : parsed.CommandResult.Command.Name;
            Verb.Refuse(terminal, verb, [.. Wrong(parsed, verb, root)], args.Contains("--json"));
            return ExitCode.BadInput;
        }

        return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null, Output = terminal.Answers, Error = terminal.Talk });
    }

    private static IEnumerable<InputError> Wrong(ParseResult parsed, string verb, RootCommand root)
    {
        string help = verb.Length > 0 ? $"See 'graspwright {verb} --help'." : "See 'graspwright --help'.";
        foreach (string word in parsed.UnmatchedTokens)
        {
            yield return new("command line", 0, 0, "", $"'{word}' is no option or argument here", Known(parsed.CommandResult.Command), help);
        }

        if (parsed.UnmatchedTokens.Count > 0)
        {
            yield break;
        }

        if (parsed.CommandResult.Command == root)
        {
            yield return new("command line", 0, 0, "", "no verb was given", Known(root), help);
            yield break;
        }

        foreach (System.CommandLine.Parsing.ParseError error in parsed.Errors)
        {
            yield return new("command line", 0, 0, "", error.Message.TrimEnd('.'), "", help);
        }
    }

    private static string Known(Command command) =>
        string.Join(", ", command.Subcommands.Select(c => c.Name).Concat(command.Arguments.Select(a => a.Name)).Concat(command.Options.Select(o => o.Name)));
}
