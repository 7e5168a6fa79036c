using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text;
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
        foreach (Verb verb in VerbTable.For(args))
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
        if (parsed.UnmatchedTokens.Count > 0)
        {
            // What follows a word that is not known is its value or is read wrongly for its sake: the first one tells it all.
            string word = parsed.UnmatchedTokens.FirstOrDefault(t => t.StartsWith('-')) ?? parsed.UnmatchedTokens[0];
            IReadOnlyList<string> known = Known(parsed.CommandResult.Command, word.StartsWith('-'));
            string kind = verb.Length == 0 && !word.StartsWith('-') ? "verb" : word.StartsWith('-') ? "option" : "argument";
            string found = kind == "argument" ? $"'{word}' is one word too many" : $"'{word}' is no {kind} here";
            string near = kind == "argument" || Hand.Nearest.To(word, known) is not { } nearest ? "" : $"Did you mean {nearest}? ";
            yield return new("command line", 0, 0, "", found, string.Join(", ", known), near + help);
            yield break;
        }

        if (parsed.CommandResult.Command == root)
        {
            yield return new("command line", 0, 0, "", "no verb was given", string.Join(", ", Known(root, options: false)), help);
            yield break;
        }

        foreach (ParseError error in parsed.Errors)
        {
            yield return error.SymbolResult switch
            {
                ArgumentResult { Parent: OptionResult, Tokens.Count: > 0 } value => Value(((OptionResult)value.Parent!).Option, value, help),
                OptionResult { Tokens.Count: > 0 } option => Value(option.Option, option, help),
                OptionResult option => new("command line", 0, 0, option.Option.Name, "nothing follows it", option.Option.HelpName ?? "a value", help),
                ArgumentResult argument => new("command line", 0, 0, argument.Argument.Name, "nothing was given", argument.Argument.Description is { Length: > 0 } words ? char.ToLowerInvariant(words[0]) + words[1..].TrimEnd('.') : "a value", help),
                _ => new("command line", 0, 0, "", error.Message.TrimEnd('.'), "", help),
            };
        }
    }

    private static InputError Value(Option option, SymbolResult given, string help) =>
        new("command line", 0, 0, option.Name, $"'{string.Join(' ', given.Tokens.Select(t => t.Value))}'",
            given.Tokens.Count > 1 && !option.ValueType.IsArray ? "one value" : Allowed(option), help);

    private static string Allowed(Option option)
    {
        Type one = option.ValueType.IsArray ? option.ValueType.GetElementType()! : Nullable.GetUnderlyingType(option.ValueType) ?? option.ValueType;
        return one == typeof(double) ? $"{(option.HelpName is { } unit ? unit.ToLowerInvariant() : "a value")} as a plain number with a decimal point, without the unit"
            : one == typeof(int) || one == typeof(long) ? "a whole number"
            : "one value";
    }

    private static IReadOnlyList<string> Known(Command command, bool options) =>
        options ? [.. command.Options.Select(o => o.Name), "--help"]
        : [.. command.Subcommands.Select(c => c.Name), .. command.Arguments.Select(a => a.Name), .. command.Subcommands.Count > 0 ? ["--help", "--version"] : command.Options.Select(o => o.Name)];
}
