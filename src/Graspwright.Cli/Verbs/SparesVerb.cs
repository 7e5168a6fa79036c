using System.CommandLine;
using Graspwright.Book.Sheets;
using Graspwright.Hand;
using Graspwright.Workshop.Log;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Spares;

namespace Graspwright.Cli.Verbs;

/// <summary><c>spares HAND</c>: what to keep in the drawer, and when to look over the hand.</summary>
internal sealed class SparesVerb() : Verb("spares", "Say how many parts to keep and when to look over the hand, from its log of parts.")
{
    private readonly Option<string?> _log = new("--log") { Description = "Another log than that of the hand file.", HelpName = "FILE" };
    private readonly Option<string?> _today = new("--today") { Description = "The day from which it is reckoned; without it, the last day of the log.", HelpName = "DAY" };
    private readonly Option<string?> _period = new("--period") { Description = "From one filling of the drawer to the next, with its unit.", HelpName = "TIME" };
    private readonly Option<string?> _supply = new("--supply") { Description = "From an order to parts in the drawer, with its unit.", HelpName = "TIME" };
    private readonly Option<string?> _chance = new("--chance") { Description = "Greatest chance of a stand-still for want of a part.", HelpName = "SHARE" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the drawer list.", HelpName = "FILE" };
    private readonly Option<string?> _pdf = new("--pdf") { Description = "Write the drawer list as a page, to be kept in the drawer.", HelpName = "FILE" };
    private readonly Option<string> _paper = SheetFiles.PaperOption();

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_log);
        command.Add(_today);
        command.Add(_period);
        command.Add(_supply);
        command.Add(_chance);
        command.Add(_csv);
        command.Add(_pdf);
        command.Add(_paper);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        (HandModel hand, LogReading log) = LogInput.Read(parsed.GetRequiredValue(Hand), parsed.GetValue(_log));
        DateOnly? today = parsed.GetValue(_today) is { } text ? LogInput.Day("--today", text) : null;
        if (today < log.LastDay)
        {
            throw new BadInputException(new InputError("command line", 0, 0, "--today", $"'{parsed.GetValue(_today)}', before the last day of the log", $"{log.LastDay:yyyy-MM-dd} or later", "Check the day, or the years in the log."));
        }

        hand = hand with
        {
            Drawer = hand.Drawer with
            {
                PeriodSeconds = Value("--period", parsed.GetValue(_period), "drawer.period") ?? hand.Drawer.PeriodSeconds,
                SupplySeconds = Value("--supply", parsed.GetValue(_supply), "drawer.supply") ?? hand.Drawer.SupplySeconds,
                Chance = Value("--chance", parsed.GetValue(_chance), "drawer.chance") ?? hand.Drawer.Chance,
            },
        };
        SparesResult result = SparesAnswer.Of(hand, log, today);
        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(SparesTables.Drawer(result.Lines)), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_pdf) is { } pdf)
        {
            SheetFiles.Write(pdf, DrawerSheet.Make(hand, result, SheetFiles.Paper(parsed.GetValue(_paper)!)), "--pdf", terminal);
        }

        return Reply.Of(result.Answer);
    }

    /// <summary>A value of an option, held to the key that it stands in for.</summary>
    private static double? Value(string option, string? text, string path)
    {
        if (text is null)
        {
            return null;
        }

        HandKey key = HandPath.TryDescribe(path, out HandKey? found, out _) ? found : throw new ArgumentException($"There is no {path}.", nameof(path));
        return Quantity.TryParse(text, key.Dimension, out Quantity? quantity, out _) && key.Bounds.Hold(quantity.Si)
            ? quantity.Si
            : throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}'", $"a value such as {key.Example.Trim('"')}; {key.Bounds.Words}", "Give it with its unit, in quotation marks."));
    }
}
