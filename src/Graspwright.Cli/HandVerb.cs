using System.CommandLine;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli;

/// <summary>A verb that takes a hand file, answers, and writes files where asked to.</summary>
/// <param name="name">The verb.</param>
/// <param name="words">What it does, for the help.</param>
internal abstract class HandVerb(string name, string words) : Verb(name, words)
{
    /// <summary>Options beside the hand file, in the order of the help.</summary>
    protected abstract IReadOnlyList<Option> Options { get; }

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        foreach (Option option in Options)
        {
            command.Add(option);
        }
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        return Answer(new(hand, path, parsed, terminal));
    }

    /// <summary>Does the work on a sound hand.</summary>
    /// <param name="call">The hand and what was asked for.</param>
    /// <exception cref="BadInputException">The input cannot be used.</exception>
    protected abstract Reply Answer(HandCall call);

    /// <summary>The answer, or its errors thrown.</summary>
    /// <param name="answer">The answer; <see langword="null"/> = see the errors.</param>
    /// <param name="errors">What is wrong.</param>
    /// <exception cref="BadInputException">There is no answer.</exception>
    protected static Answer Sound(Answer? answer, IReadOnlyList<InputError> errors) => answer ?? throw new BadInputException(errors);
}

/// <summary>A sound hand and what was asked about it.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="Path">Path of its file.</param>
/// <param name="Parsed">The parsed command line.</param>
/// <param name="Terminal">Where answers and talk go.</param>
internal sealed record HandCall(HandModel Hand, string Path, ParseResult Parsed, Terminal Terminal)
{
    /// <summary>Writes a table where its option names a file.</summary>
    public void Csv(Option<string?> option, Func<Table> table) => Write(option, file => WholeFile.Write(file, CsvTable.Write(table()), option.Name));

    /// <summary>Writes a picture where its option names a file.</summary>
    public void Svg(Option<string?> option, string name, Func<Picture> picture) => Write(option, file => WholeFile.Write(file, SvgWriter.Write(picture(), name), option.Name));

    /// <summary>Calls what writes a file where its option names one, and says so.</summary>
    public void Write(Option<string?> option, Action<string> write)
    {
        if (Parsed.GetValue(option) is { } file)
        {
            write(file);
            Terminal.Talk.WriteLine($"Wrote {file}");
        }
    }
}
