using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Dose;
using Graspwright.Workshop.Results;

namespace Graspwright.Cli.Verbs;

/// <summary><c>dose HAND</c>: what a day of grips asks of the wrist, against the published all-day limits.</summary>
internal sealed class DoseVerb() : Verb("dose", "Sum a day of grips up: mean load, time under load and peak against the published all-day limits.")
{
    private readonly Option<string?> _grips = new("--grips") { Description = "Grips a day, instead of the hand file's.", HelpName = "NUMBER" };
    private readonly Option<string?> _hold = new("--hold") { Description = "How long a grip is held, with its unit, such as 4s.", HelpName = "TIME" };
    private readonly Option<string?> _worn = new("--worn") { Description = "How long the hand is at work in a day, with its unit, such as 8h.", HelpName = "TIME" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_grips);
        command.Add(_hold);
        command.Add(_worn);
        command.Add(CountJobs);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        Use day = hand.Structure.Use;
        day = day with
        {
            GripsPerDay = Value(parsed.GetValue(_grips), "--grips", Dimension.Number, day.GripsPerDay, positive: false),
            HoldSeconds = Value(parsed.GetValue(_hold), "--hold", Dimension.Time, day.HoldSeconds, positive: false),
            WornSeconds = Value(parsed.GetValue(_worn), "--worn", Dimension.Time, day.WornSeconds, positive: true),
        };
        (Answer? answer, IReadOnlyList<InputError> errors) = Dosing.Answer(new(hand) { File = path, Day = day });
        return answer is null ? throw new BadInputException([.. errors]) : Reply.Of(WithJobs(answer, parsed, hand, path));
    }

    private static double Value(string? text, string option, Dimension dimension, double otherwise, bool positive)
    {
        if (text is null)
        {
            return otherwise;
        }

        if (!Quantity.TryParse(text, dimension, out Quantity? quantity, out QuantityFault? fault))
        {
            throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}'", fault.Allowed, fault.Fix));
        }

        return quantity.Si < 0 || (positive && quantity.Si == 0)
            ? throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}'", positive ? "more than nothing" : "nothing or more", "Check the number."))
            : quantity.Si;
    }
}
