using System.CommandLine;
using Graspwright.Drawing.Display;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Signals;

namespace Graspwright.Cli.Verbs;

/// <summary><c>sites HAND</c>: where do the contacts go, and how far may each slip?</summary>
internal sealed class SitesVerb() : Verb("sites", "Choose the places of the contacts from a map, and say how far each may slip.")
{
    private readonly Option<int?> _count = new("--count") { Description = "How many pairs; without it, as many as there are channels.", HelpName = "NUMBER" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write the paper pattern with places and windows.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_count);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        int? count = parsed.GetValue(_count);
        if (count is < 1 or > 12)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--count", $"{count}", "1 to 12", "Leave it out to use the number of channels."));
        }

        SitesResult result = SitesAnswer.Answer(hand, path, count);
        SignalOutput.Tell(result.Answer is not null, result.Errors, path, terminal);
        IEnumerable<(string, Picture)> pictures = [("sites", SitesPicture.Draw(result))];
        SignalOutput.Pictures(parsed.GetValue(_svg), pictures, terminal);
        return Reply.Of(result.Answer!);
    }
}
