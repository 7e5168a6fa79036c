using System.CommandLine;
using System.Globalization;
using Graspwright.Hand;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Jobs;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>grip HAND</c>: what does this hand grip, which limit stops it, and why?</summary>
internal sealed class GripVerb() : Verb("grip", "Close the hand on its objects: touch, grip, moment, the limit that acts, what to change.")
{
    private readonly Option<string[]> _objects = new("--object") { Description = "An object of the hand file; give it again for more. Without it, every one.", HelpName = "NAME" };
    private readonly Option<string[]> _locks = new("--locks") { Description = "A lock pattern of the hand file, or 'all free'; give it again for more.", HelpName = "NAME" };
    private readonly Option<string?> _effort = new("--effort") { Description = "squeeze or all-day; without it, both.", HelpName = "EFFORT" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write every recorded state of closing and opening.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Write side views and curves of each situation.", HelpName = "FOLDER" };
    private readonly Option<double[]> _at = new("--at") { Description = "Wrist angle of a side view in degrees; give it up to four times.", HelpName = "DEGREES" };
    private readonly Option<bool> _pairings = new("--pairings") { Description = "Compare the three ways to pair four fingers." };

    private readonly Option<double?> _wornDays = new("--worn-days") { Description = "Wear the finger hinges over so many days of the file's day of wear; worn play and dead travel follow from it.", HelpName = "DAYS" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_objects);
        command.Add(_locks);
        command.Add(_effort);
        command.Add(_csv);
        command.Add(_svg);
        command.Add(_at);
        command.Add(_pairings);
        command.Add(_wornDays);
        command.Add(CountJobs);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        GripQuestion question = new(hand)
        {
            File = path,
            Objects = parsed.GetValue(_objects) ?? [],
            Locks = parsed.GetValue(_locks) ?? [],
            Efforts = EffortsOf(parsed.GetValue(_effort)),
            WornDays = WornDays(parsed.GetValue(_wornDays)),
        };
        GripResult result = Gripping.Answer(question);
        if (parsed.GetValue(_pairings))
        {
            result = PairingAnswer.Add(question, result);
        }

        if (result.Answer is not { } answer || result.Headline is not { } headline)
        {
            throw new BadInputException(result.Errors);
        }

        if (parsed.GetValue(CountJobs))
        {
            answer = JobCount.Add(answer, new(hand) { File = path }, question.WornDays is null ? JobCount.Known(result) : null);
        }

        foreach (InputError error in result.Errors)
        {
            terminal.Talk.WriteLine(error.Text);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(StateTable.Of(result.Cases)), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } folder)
        {
            int count = GripPictures.Write(folder, hand, result, parsed.GetValue(_at) ?? []);
            terminal.Talk.WriteLine($"Wrote {count} pictures to {folder}");
        }

        int exit = result.AnyFollowed ? ExitCode.Answered : ExitCode.Failed;
        return new(() => TextAnswer.Write(answer, GripChart.Of(headline)), () => JsonAnswer.Write(answer), exit);
    }

    private static double? WornDays(double? days) => days is null or (>= 0 and < double.PositiveInfinity)
        ? days
        : throw new BadInputException(new InputError("command line", 0, 0, "--worn-days", string.Create(CultureInfo.InvariantCulture, $"{days}"), "0 or more", "Give days of wear, such as 90."));

    private static IReadOnlyList<Effort> EffortsOf(string? word)
    {
        IReadOnlyList<Effort> asked = word is null ? Efforts.Both : [.. Efforts.Both.Where(e => e.Word() == word)];
        return asked.Count > 0
            ? asked
            : throw new BadInputException(new InputError("command line", 0, 0, "--effort", $"'{word}'", string.Join(" or ", Efforts.Both.Select(e => e.Word())), "Leave it out to see both."));
    }
}
