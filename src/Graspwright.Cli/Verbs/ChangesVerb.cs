using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Changes;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli.Verbs;

/// <summary><c>changes HAND</c>: what does each item of the list of changes buy?</summary>
internal sealed class ChangesVerb() : Verb("changes", "Say what each item of the list of changes buys: alone, together, and which help only together or fight.")
{
    private readonly Option<string[]> _measures = new("--measure") { Description = "A measure to weigh by, such as \"jobs_done\" or \"grip_force@mug\"; give it again for more, the one that counts most first.", HelpName = "MEASURE" };
    private readonly Option<string[]> _only = new("--only") { Description = "An item of the list; give it again for more. Without it, all.", HelpName = "NAME" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write what each item gains alone, measure by measure.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the steps from the hand as it is to all changes.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_measures);
        command.Add(_only);
        command.Add(_csv);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, HandSource source) = HandInput.Read(path);
        ChangesResult result = Changing.Answer(new(HandInput.Editor(path, new(hand, [], source)))
        {
            File = path,
            Measures = parsed.GetValue(_measures) ?? [],
            Only = parsed.GetValue(_only) ?? [],
        });
        if (result is not { Answer: { } answer, Study: { } study })
        {
            throw new BadInputException(result.Errors);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables.First(t => t.Name == "gain alone")), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } svg)
        {
            WholeFile.Write(svg, SvgWriter.Write(StepView.Draw(hand.Name, study), "steps"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        return Reply.Of(answer);
    }
}
