using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Strength.Lives;
using Graspwright.Workshop.Lives;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>lives HAND</c>: what broke, when, and what that says of the next one.</summary>
internal sealed class LivesVerb() : Verb("lives", "Read the log of parts: how long they live, by law and without one, groups compared, computed lives corrected.")
{
    private readonly Option<string?> _part = new("--part") { Description = "The part asked about; without it, the one that broke most.", HelpName = "PART" };
    private readonly Option<string?> _by = new("--by") { Description = "Compare by finger, position, material or revision; without it, by finger, material and revision.", HelpName = "WHAT" };
    private readonly Option<string?> _log = new("--log") { Description = "Another log than that of the hand file.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the share still whole, step by step.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write the share still whole and the probability paper.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_part);
        command.Add(_by);
        command.Add(_log);
        command.Add(_csv);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        (HandModel hand, LogReading log) = LogInput.Read(parsed.GetRequiredValue(Hand), parsed.GetValue(_log));
        string[] parts = [.. log.Entries.Select(e => e.Part).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        LivesResult result = LivesAnswer.Of(new(hand, log, OneOf("--part", parsed.GetValue(_part), parts), OneOf("--by", parsed.GetValue(_by), LivesAnswer.Groupings)));
        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(LifeTables.Whole(result.Study)), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } folder)
        {
            Draw(folder, result.Study, terminal);
        }

        return Reply.Of(result.Answer);
    }

    private static void Draw(string folder, PartStudy study, Terminal terminal)
    {
        if (!study.Records.Any(r => r.Low > 0 || r.Broke))
        {
            terminal.Talk.WriteLine("No picture: no part of the log was seen on a later day than the one it was fitted on.");
            return;
        }

        WholeFile.Folder(folder, "--svg");
        string name = study.Name.Replace(' ', '-'), whole = Path.Combine(folder, $"{name}-whole.svg"), paper = Path.Combine(folder, $"{name}-paper.svg");
        WholeFile.Write(whole, SvgWriter.Write(LifePictures.Whole(study)), "--svg");
        terminal.Talk.WriteLine($"Wrote {whole}");
        if (study.Best.Standing == FitStanding.Found)
        {
            WholeFile.Write(paper, SvgWriter.Write(LifePictures.Paper(study)), "--svg");
            terminal.Talk.WriteLine($"Wrote {paper}");
        }
    }

    private static string? OneOf(string option, string? word, IReadOnlyList<string> known) =>
        word is null || known.Contains(word, StringComparer.Ordinal) ? word : throw new BadInputException(new InputError("command line", 0, 0, option, $"'{word}'", string.Join(", ", known),
            Nearest.To(word, known) is { } near ? $"Did you mean {near}?" : "Leave it out to see all."));
}
