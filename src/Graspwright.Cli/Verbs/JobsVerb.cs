using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Views;

namespace Graspwright.Cli.Verbs;

/// <summary><c>jobs HAND</c>: does the hand hold what the day asks, and by how much?</summary>
internal sealed class JobsVerb() : Verb("jobs", "Hold the day's jobs: which work, which fail and by how much, what slips first.")
{
    private readonly Option<string[]> _jobs = new("--job") { Description = "A job of the hand file; give it again for more. Without it, every one.", HelpName = "NAME" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the table of jobs.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write a picture of the forces on the object for each job.", HelpName = "FOLDER" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_jobs);
        command.Add(_csv);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        JobsResult result = Jobbing.Answer(new(hand) { File = path, Jobs = parsed.GetValue(_jobs) ?? [] });
        Answer answer = result.Answer ?? throw new BadInputException(result.Errors);
        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } folder)
        {
            PictureFolder.Make(folder);
            int count = 0;
            foreach (JobOutcome outcome in result.Outcomes.Where(o => o.Grasp is not null))
            {
                string stem = "job-" + PictureFolder.Stem(outcome.Job.Name);
                WholeFile.Write(Path.Combine(folder, stem + ".svg"), SvgWriter.Write(JobView.Draw(outcome), stem), "--svg");
                count++;
            }

            terminal.Talk.WriteLine($"Wrote {count} pictures to {folder}");
        }

        // Without the contacts at the limit, which fill a screen; JSON has them.
        return new(() => TextAnswer.Write(answer with { Tables = [.. answer.Tables.Where(t => t.Name != "contacts at the limit")] }), () => JsonAnswer.Write(answer));
    }
}
