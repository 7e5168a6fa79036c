using System.CommandLine;
using Graspwright.Book.Pages;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Bench;
using Graspwright.Workshop.Cards;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>sheets HAND --write FOLDER</c>: every sheet of a hand as PDF at full size.</summary>
internal sealed class SheetsVerb() : Verb("sheets", "Write every sheet of the hand as PDF at full size: measuring, jobs, grip card, bench, holes, proof.")
{
    private readonly Option<string> _folder = new("--write") { Description = "Folder for the sheets; made if it is not there.", HelpName = "FOLDER", Required = true };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_folder);
        command.Add(_paper);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand), folder = parsed.GetValue(_folder)!;
        Paper paper = SheetFiles.Paper(parsed.GetValue(_paper)!);
        (HandModel hand, _) = HandInput.Read(path);
        (string Name, PageFlow? Pages, string Why)[] sheets = [.. Sheets(hand, path, paper)];
        PictureFolder.Make(folder, "--write");
        foreach ((string name, PageFlow? pages, _) in sheets)
        {
            if (pages is not null)
            {
                SheetFiles.Write(Path.Combine(folder, name + ".pdf"), pages, "--write", terminal);
            }
        }

        string lacking = string.Join(" ", sheets.Where(s => s.Pages is null).Select(s => $"No {s.Name}: {s.Why.TrimEnd('.')}."));
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = hand.Name,
            Sentence = $"{sheets.Count(s => s.Pages is not null)} sheets on {paper.Name} are in {folder}. Print them at 100 % and measure the ruler at the foot of a page. {lacking}".TrimEnd(),
            Tables =
            [
                new("sheets", [new("file", ""), new("pages", "")],
                    [.. sheets.Where(s => s.Pages is not null).Select(s => (IReadOnlyList<Cell>)[s.Name + ".pdf", (double)s.Pages!.Pages().Count])]),
            ],
        });
    }

    private static IEnumerable<(string Name, PageFlow? Pages, string Why)> Sheets(HandModel hand, string path, Paper paper)
    {
        yield return ("measuring", MeasuringSheet.Make(hand, paper), "");
        JobsResult jobs = Jobbing.Answer(new(hand) { File = path });
        yield return ("jobs", jobs.Answer is null ? null : JobSheet.Make(hand, jobs, paper), Why(jobs.Errors));
        var card = GripCard.Make(hand, path);
        yield return ("grip-card", card.Answer is null ? null : GripCardSheet.Make(hand, card.Grips, paper), Why(card.Errors));
        var plan = Planning.Answer(new(hand) { File = path });
        yield return ("bench", plan.Plan is null ? null : BenchSheet.Make(hand, plan.Plan, plan.Parameters, paper), Why(plan.Errors));
        yield return ("holes", HoleSheet.Make(hand, paper), "");
        var proof = Proving.Make(hand, path);
        yield return ("proof", proof.Answer is null ? null : ProofSheet.Make(hand, proof.Tests, paper), Why(proof.Errors));
    }

    private static string Why(IReadOnlyList<InputError> errors) => errors.Count == 0 ? "nothing could be run" : errors[0].Text;
}
