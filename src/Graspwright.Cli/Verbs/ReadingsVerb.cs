using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Bench;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>readings HAND</c>: which readings to take on the bench.</summary>
internal sealed class ReadingsVerb() : Verb("readings", "Choose the bench readings that tell friction, give and stiffness apart.")
{
    private const int Fewest = 4, Most = 60;

    private readonly Option<int> _count = new("--count") { Description = $"How many readings, {Fewest} to {Most}.", HelpName = "NUMBER", DefaultValueFactory = _ => 16 };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the bench sheet as pages to fill in by pen.", HelpName = "FILE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the empty bench sheet as CSV.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        foreach (Option option in (Option[])[_count, _pdf, _csv, _paper])
        {
            command.Add(option);
        }
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        int count = parsed.GetValue(_count);
        if (count is < Fewest or > Most)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--count", $"{count}", $"{Fewest} to {Most}", "Sixteen take about an hour."));
        }

        (HandModel hand, _) = HandInput.Read(path);
        var (answer, plan, parameters, errors) = Planning.Answer(new(hand) { File = path, Count = count });
        if (answer is null)
        {
            throw new BadInputException([.. errors]);
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            SheetFiles.Write(pdf, BenchSheet.Make(hand, plan!, parameters, SheetFiles.Paper(parsed.GetValue(_paper)!)), "--pdf", terminal);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, Planning.Csv(plan!), "--csv");
        }

        return Reply.Of(answer);
    }
}
