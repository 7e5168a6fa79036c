using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Signals;

namespace Graspwright.Cli.Verbs;

/// <summary><c>contacts HAND</c>: is each channel connected, are they separate, and what does the stud do?</summary>
internal sealed class ContactsVerb() : Verb("contacts", "Judge the muscle signals: connected? separate? and the contact stud.")
{
    private readonly Option<string?> _svg = new("--svg") { Description = "Write a picture of each recording.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        ContactsResult result = ContactsAnswer.Answer(hand, path);
        SignalOutput.Tell(result.Answer is not null, result.Errors, path, terminal);
        SignalOutput.Pictures(parsed.GetValue(_svg), SignalPictures.Contacts(result), terminal);
        return Reply.Of(result.Answer!);
    }
}
