using Graspwright.Book.Pages;
using Graspwright.Hand;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Book.Sheets;

/// <summary>The day's jobs on paper: what works, what fails and by how much, with room for what really happened.</summary>
public static class JobSheet
{
    /// <summary>The pages.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="jobs">The jobs' answer and outcomes.</param>
    /// <param name="paper">Paper.</param>
    public static PageFlow Make(HandModel hand, JobsResult jobs, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(hand);
        ArgumentNullException.ThrowIfNull(jobs);
        var flow = new PageFlow(paper, "Job list", hand.Name);
        flow.Title("Job list", $"{hand.Name}: what the day asks of it.");
        flow.Paragraph(jobs.Answer!.Sentence, strong: true);
        Table told = jobs.Answer.Tables.First(t => t.Name == "jobs");
        int asked = Column("asked"), spare = Column("spare");
        flow.Table(
            [new("job", 34), new("held as"), new("load"), new("forearm"), new("verdict"), new("spare"), new("really held?", 40)],
            [
                .. jobs.Outcomes.Zip(told.Rows, (o, row) => (IReadOnlyList<string>)
                [
                    o.Job.Name, $"{o.Job.ObjectName}, {Held(o.Job)}{(o.Job.Wet ? ", wet" : "")}", AnswerTables.Word(row[asked]), o.Job.Forearm, o.Verdict.Word(), AnswerTables.Word(row[spare]), "",
                ]),
            ], pen: true);
        Finding[] tried = [.. jobs.Answer.Findings.Where(f => f.Verdict is Verdict.Fails or Verdict.Tight or Verdict.NotKnown)];
        if (tried.Length > 0)
        {
            flow.Heading("What to try");
            flow.Bullets([.. tried.Select(f => f.Reason.StartsWith(f.Subject, StringComparison.OrdinalIgnoreCase) ? $"{f.Reason} {f.Change}" : $"{f.Subject}: {f.Reason} {f.Change}")]);
        }

        flow.WritingLines("Jobs that are missing here:", 4);
        flow.Caution(JobCautions.All);
        return flow;

        int Column(string name) => told.Columns.Select((c, i) => (c.Name, i)).First(c => c.Name == name).i;
    }

    private static string Held(Job job) => job.As switch { HeldAs.HookBar => "hook bar", HeldAs.Handle => "handle", HeldAs.Plate => "plate", _ => "cylinder" };
}
