using System.CommandLine;
using Graspwright.Book.Cards;
using Graspwright.Book.Pages;
using Graspwright.Cli.Live;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Mould;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>clock HAND</c>: when is it mixed, when does it firm and cure, does the work fit? With <c>--run</c>, the live clock.</summary>
internal sealed class ClockVerb() : Verb("clock", "The cure clock: mixed by, firming, hands off, off the mould, and whether the work fits. --run speaks the steps.")
{
    private const double LongestLead = 600;

    private readonly Option<string?> _svg = new("--svg") { Description = "Write cure against time by depth, and the plan as bars.", HelpName = "FOLDER" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write temperature and cure at every moment.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the clock plan, one page.", HelpName = "FILE" };
    private readonly Option<bool> _run = new("--run") { Description = "Run the clock at the bench: it says each step when it is due and goes on after a crash." };
    private readonly Option<bool> _again = new("--again") { Description = "With --run: start anew, whatever clock is under way." };
    private readonly Option<double?> _lead = new("--lead") { Description = "With --run: seconds until mixing begins; 10 without it.", HelpName = "SECONDS" };
    private readonly Option<string?> _say = new("--say") { Description = "With --run: a program that speaks each line, given as its argument.", HelpName = "PROGRAM" };
    private readonly Option<string?> _state = new("--state") { Description = "With --run: where the clock is kept; beside the hand file without it.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        foreach (Option option in (Option[])[_svg, _csv, _pdf, _run, _again, _lead, _say, _state])
        {
            command.Add(option);
        }
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        (ClockResult? result, IReadOnlyList<InputError> errors) = ClockAnswer.Of(hand, path);
        if (result is null)
        {
            throw new BadInputException(errors);
        }

        if (parsed.GetValue(_run))
        {
            Run(parsed, terminal, path, result);
            return new(() => "", () => JsonAnswer.Write(result.Answer));
        }

        OnlyWithRun(parsed);
        Files(parsed, terminal, result);
        return Reply.Of(result.Answer);
    }

    private void Run(ParseResult parsed, Terminal terminal, string path, ClockResult result)
    {
        double lead = parsed.GetValue(_lead) ?? 10;
        if (!(lead >= 0 && lead <= LongestLead))
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--lead", FormattableString.Invariant($"{lead} s"), FormattableString.Invariant($"0 to {LongestLead} s"), "Give the seconds you need to take both parts in hand."));
        }

        string state = parsed.GetValue(_state) ?? ClockRunText.Beside(path);
        Interruption.Farewell = $"Stopped. 'clock {path} --run' goes on where it was; the time since mixing began runs on.";
        Action<string>? speak = null;
        if (parsed.GetValue(_say) is { } program)
        {
            speak = line => Speech.SpeakThrough(program, line);
        }

        new LiveClock(TimeProvider.System, terminal, new(state), speak, redraws: !Console.IsOutputRedirected).Run(result.Lines, lead, parsed.GetValue(_again));
    }

    private void OnlyWithRun(ParseResult parsed)
    {
        Option[] live = [_lead, _say, _state, _again];
        if (live.FirstOrDefault(o => parsed.GetResult(o) is { Implicit: false }) is { } option)
        {
            throw new BadInputException(new InputError("command line", 0, 0, option.Name, "no clock runs", $"{option.Name} with --run", "Add --run."));
        }
    }

    private void Files(ParseResult parsed, Terminal terminal, ClockResult result)
    {
        if (parsed.GetValue(_svg) is { } folder)
        {
            WholeFile.Folder(folder, "--svg");
            WholeFile.Write(Path.Combine(folder, "cure.svg"), SvgWriter.Write(MouldPictures.Cure(result), "cure"), "--svg");
            WholeFile.Write(Path.Combine(folder, "plan.svg"), SvgWriter.Write(MouldPictures.Plan(result), "plan"), "--svg");
            terminal.Talk.WriteLine($"Wrote 2 pictures to {folder}");
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            Table states = new("states", [new("time", "s"), new("inner", "°C"), new("mean", "°C"), new("outer", "°C"), new("inner_label_time", "s"), new("middle_label_time", "s"), new("outer_label_time", "s")],
                [.. result.Plan.States.Select(s => (IReadOnlyList<Cell>)[s.Seconds, s.Inner - 273.15, s.Middle - 273.15, s.Outer - 273.15, s.InnerAge, s.MiddleAge, s.OuterAge])]);
            WholeFile.Write(csv, CsvTable.Write(states), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            WholeFile.Write(pdf, MouldCards.Clock(result, Paper.A4), "--pdf");
            terminal.Talk.WriteLine($"Wrote {pdf}");
        }
    }
}
