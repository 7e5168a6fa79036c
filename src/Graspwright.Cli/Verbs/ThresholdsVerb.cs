using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Signals;

namespace Graspwright.Cli.Verbs;

/// <summary><c>thresholds HAND</c>: which levels and times to load.</summary>
internal sealed class ThresholdsVerb() : Verb("thresholds", "Find the levels and times to load, what they miss, and what may be claimed of false activations.")
{
    private readonly Option<string?> _svg = new("--svg") { Description = "Write a picture of each recording with the levels.", HelpName = "FOLDER" };
    private readonly Option<string?> _export = new("--export") { Description = "Write levels and filters for the controller, as JSON or as a C header by the file's ending.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_svg);
        command.Add(_export);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        ThresholdsResult result = ThresholdsAnswer.Answer(hand, path);
        SignalOutput.Tell(result.Answer is not null, result.Errors, path, terminal);
        if (parsed.GetValue(_export) is { } file)
        {
            string text = Path.GetExtension(file).ToLowerInvariant() switch
            {
                ".json" => SettingsFile.Json(result),
                ".h" => SettingsFile.Header(result),
                var other => throw new BadInputException(new InputError("command line", 0, 0, "--export", $"the ending '{other}'", ".json or .h", "Name the file settings.json or settings.h.")),
            };
            WholeFile.Write(file, text, "--export");
            terminal.Talk.WriteLine($"Wrote {file}");
        }

        SignalOutput.Pictures(parsed.GetValue(_svg), SignalPictures.Thresholds(result), terminal);
        return Reply.Of(result.Answer!);
    }
}
