using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>show HAND PATH</c>: one value of a hand by its path.</summary>
internal sealed class ShowVerb() : Verb("show", "Show a value of the hand by its path, such as crank.fulcrum.x.")
{
    private readonly Argument<string> _path = new("PATH") { Description = "The path." };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_path);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string file = parsed.GetRequiredValue(Hand), path = parsed.GetRequiredValue(_path);
        (HandModel hand, HandSource source) = HandInput.Read(file);
        HandEditor editor = HandInput.Editor(file, new(hand, [], source));
        HandValue value = HandInput.Find(editor, file, path);
        if (!value.Text.StartsWith('[') && editor.Paths().Any(p => p.StartsWith(path + ".", StringComparison.Ordinal)))
        {
            return Section(editor, hand, path);
        }

        string standing = value.InFile ? "" : " (not in the file: a default)";
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = hand.Name,
            Sentence = $"{value.Path} = {value.Text}{standing}",
        });
    }

    private Reply Section(HandEditor editor, HandModel hand, string path)
    {
        List<HandValue> values = [.. editor.Paths().Where(p => p.StartsWith(path + ".", StringComparison.Ordinal)).Select(editor.Find).OfType<HandValue>()];
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = hand.Name,
            Sentence = $"{path} is a section of {values.Count} value{(values.Count == 1 ? "" : "s")}.",
            Tables = [new("values", [new("path", ""), new("value", ""), new("standing", "")], [.. values.Select(v => (IReadOnlyList<Cell>)[v.Path, v.Text, v.InFile ? "in the file" : "worked out or a default"])])],
        });
    }
}
