using System.CommandLine;
using System.Text;
using Graspwright.Hand;

namespace Graspwright.Cli.Verbs;

/// <summary><c>new FILE</c>: a commented hand file to begin with.</summary>
internal sealed class NewVerb() : Verb("new", "Write a commented hand file to begin with; a file that is there is not overwritten.")
{
    private readonly Argument<string> _file = new("FILE") { Description = "The file to write, such as hand.toml." };

    /// <inheritdoc/>
    protected override void Describe(Command command) => command.Add(_file);

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(_file);
        WholeFile.Write(path, Encoding.UTF8.GetBytes(Starter.Text), "FILE", replace: false);
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = Path.GetFileName(path),
            Sentence = $"Wrote {path}. Measure your own hand over its invented values, then run 'graspwright check {path}'.",
        });
    }
}
