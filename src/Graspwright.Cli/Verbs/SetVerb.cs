using System.CommandLine;
using Graspwright.Hand;

namespace Graspwright.Cli.Verbs;

/// <summary><c>set HAND PATH VALUE</c>: changes one value; comments, order and spacing of the file are kept.</summary>
internal sealed class SetVerb() : Verb("set", "Change a value of the hand by its path; every other byte of the file is kept.")
{
    private readonly Argument<string> _path = new("PATH") { Description = "The path, such as crank.fulcrum.x." };
    private readonly Argument<string> _value = new("VALUE") { Description = "The value with its unit, such as \"21.5 mm\"." };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_path);
        command.Add(_value);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string file = parsed.GetRequiredValue(Hand), path = parsed.GetRequiredValue(_path);
        (HandModel hand, HandSource source) = HandInput.Read(file);
        HandEditor editor = HandInput.Editor(file, new(hand, [], source));
        HandValue before = HandInput.Find(editor, file, path);
        EditResult result = editor.Set(path, parsed.GetRequiredValue(_value));
        if (result.Editor is not { } edited)
        {
            throw new BadInputException([.. result.Errors.Select(HandInput.Error)]);
        }

        WholeFile.Write(file, edited.Source.Text.ToBytes(), "HAND");
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = hand.Name,
            Sentence = $"{path}: {before.Text} is now {HandInput.Find(edited, file, path).Text}",
        });
    }
}
