using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Bench;
using Graspwright.Workshop.Cards;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Proof;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Spares;

namespace Graspwright.Cli.Verbs;

/// <summary><c>sheets HAND --write FOLDER</c>: every sheet of a hand as PDF at full size.</summary>
internal sealed class SheetsVerb() : Verb("sheets", "Write every sheet of the hand as PDF at full size: measuring, jobs, grip card, bench, holes, proof, drawer, and the cards of batch, clock and copies.")
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
        Sheet[] sheets = [.. Sheets(hand, path, paper), Drawer(path, paper), .. Cards(hand, path, paper)];
        PictureFolder.Make(folder, "--write");
        foreach (Sheet sheet in sheets)
        {
            string file = Path.Combine(folder, sheet.Name + ".pdf");
            if (sheet.Pages is { } pages)
            {
                SheetFiles.Write(file, pages, "--write", terminal);
            }
            else if (sheet.Card is { } card)
            {
                WholeFile.Write(file, card, "--write");
            }
        }

        string lacking = string.Join(" ", sheets.Where(s => !s.Made).Select(s => $"No {s.Name}: {s.Why.TrimEnd('.')}."));
        return Reply.Of(new()
        {
            Verb = Name,
            Hand = hand.Name,
            Sentence = $"{sheets.Count(s => s.Made)} sheets on {paper.Name} are in {folder}. Print them at 100 % and measure the ruler at the foot of a page. {lacking}".TrimEnd(),
            Tables =
            [
                new("sheets", [new("file", ""), new("pages", "")],
                    [.. sheets.Where(s => s.Made).Select(s => (IReadOnlyList<Cell>)[s.Name + ".pdf", s.Pages?.Pages().Count ?? 1.0])]),
            ],
        });
    }

    /// <summary>A sheet as pages, or as a card of one page; neither = why there is none.</summary>
    private sealed record Sheet(string Name, PageFlow? Pages, string Why, byte[]? Card = null)
    {
        public bool Made => Pages is not null || Card is not null;
    }

    private static IEnumerable<Sheet> Sheets(HandModel hand, string path, Paper paper)
    {
        yield return new("measuring", MeasuringSheet.Make(hand, paper), "");
        JobsResult jobs = Jobbing.Answer(new(hand) { File = path });
        yield return new("jobs", jobs.Answer is null ? null : JobSheet.Make(hand, jobs, paper), Why(jobs.Errors));
        var card = GripCard.Make(hand, path);
        yield return new("grip-card", card.Answer is null ? null : GripCardSheet.Make(hand, card.Grips, paper), Why(card.Errors));
        var plan = Planning.Answer(new(hand) { File = path });
        yield return new("bench", plan.Plan is null ? null : BenchSheet.Make(hand, plan.Plan, plan.Parameters, paper), Why(plan.Errors));
        yield return new("holes", HoleSheet.Make(hand, paper), "");
        var proof = Proving.Make(hand, path);
        yield return new("proof", proof.Answer is null ? null : ProofSheet.Make(hand, proof.Tests, paper), Why(proof.Errors));
    }

    /// <summary>What to keep in the drawer, from the log that the hand file names.</summary>
    private static Sheet Drawer(string path, Paper paper)
    {
        try
        {
            (HandModel hand, Workshop.Log.LogReading log) = LogInput.Read(path, null);
            return new("drawer", DrawerSheet.Make(hand, SparesAnswer.Of(hand, log), paper), "");
        }
        catch (BadInputException none)
        {
            return new("drawer", null, Why(none.Errors));
        }
    }

    private static IEnumerable<Sheet> Cards(HandModel hand, string path, Paper paper)
    {
        (Answer? liner, IReadOnlyList<InputError> ofLiner) = LinerAnswer.Of(hand, path);
        yield return new("batch", null, Why(ofLiner), liner is null ? null : MouldCards.Batch(liner, paper));
        (ClockResult? clock, IReadOnlyList<InputError> ofClock) = ClockAnswer.Of(hand, path);
        yield return new("clock", null, Why(ofClock), clock is null ? null : MouldCards.Clock(clock, paper));
        (Answer? copies, IReadOnlyList<InputError> ofCopies) = CopiesAnswer.Of(hand, path);
        yield return new("copies", null, Why(ofCopies), copies is null ? null : MouldCards.Copies(copies, paper));
    }

    private static string Why(IReadOnlyList<InputError> errors) => errors.Count == 0 ? "nothing could be run" : errors[0].Text;
}
