using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>off HAND</c>: does the liner come off over the hand, alone, and where is it cut if not?</summary>
internal sealed class OffVerb() : Verb("off", "Take the liner off: stretch, undercuts, pull with one hand, and the shortest cut where it needs one.")
{
    private readonly Option<string?> _svg = new("--svg") { Description = "Write girth and stretch along the limb.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the stretch at every place.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_svg);
        command.Add(_csv);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (OffResult? result, IReadOnlyList<InputError> errors) = OffAnswer.Of(hand, path);
        if (result is null)
        {
            throw new BadInputException(errors);
        }

        if (parsed.GetValue(_svg) is { } svg)
        {
            WholeFile.Write(svg, SvgWriter.Write(MouldPictures.Off(result), "off"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            Table states = new("stretch", [new("place", "mm"), new("girth", "mm"), new("largest_to_pass", "mm"), new("stretch", "%")],
                [.. result.Stretch.Select(s => (IReadOnlyList<Cell>)[1000 * s.Place, 1000 * s.Girth, 1000 * s.Largest, 100 * s.Stretch])]);
            WholeFile.Write(csv, CsvTable.Write(states), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        return Reply.Of(result.Answer);
    }
}
