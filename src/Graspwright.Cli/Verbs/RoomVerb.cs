using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Room;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli.Verbs;

/// <summary><c>room HAND</c>: do the moving parts pass each other and the shell, and where do the knuckles come?</summary>
internal sealed class RoomVerb() : Verb("room", "Sweep the moving parts over the travel: smallest gaps, first clash, height, knuckles.")
{
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of smallest gaps.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write a picture of the nearest place for each lock pattern.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_csv);
        command.Add(_svg);
        command.Add(CountJobs);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        RoomResult result = Rooming.Answer(hand, path);
        Answer answer = result.Answer ?? throw new BadInputException(result.Errors);
        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } folder)
        {
            PictureFolder.Make(folder);
            foreach (RoomSwept swept in result.Sweeps)
            {
                string stem = "room-" + PictureFolder.Stem(swept.Locks);
                WholeFile.Write(Path.Combine(folder, stem + ".svg"), SvgWriter.Write(RoomView.Draw(result.Room!, swept), stem), "--svg");
            }

            terminal.Talk.WriteLine($"Wrote {result.Sweeps.Count} pictures to {folder}");
        }

        return Reply.Of(WithJobs(answer, parsed, hand, path));
    }
}
