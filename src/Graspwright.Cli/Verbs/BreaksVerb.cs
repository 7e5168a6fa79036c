using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Cli.Verbs;

/// <summary><c>breaks HAND</c>: what breaks first when it is knocked from the side or overloaded?</summary>
internal sealed class BreaksVerb() : HandVerb("breaks", "Say what breaks first: finger, pin, base, shell or skin; hinges, parts and springs under load; pins that go first.")
{
    private readonly Option<string?> _drop = new("--drop") { Description = "A mass dropped on to the weakest fingertip, such as \"250 g\"; needs --height.", HelpName = "MASS" };
    private readonly Option<string?> _height = new("--height") { Description = "Height of that fall, such as \"1 m\".", HelpName = "LENGTH" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the order of failure of every finger.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the order of failure on the side view.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_drop, _height, _csv, _svg, CountJobs];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        BreakResult result = Breaking.Answer(new(call.Hand) { File = call.Path, Drop = Drop(call.Parsed) });
        Answer answer = Sound(result.Answer, result.Errors);
        call.Csv(_csv, () => answer.Tables[0]);
        call.Svg(_svg, "order", () => Workshop.Views.OrderView.Draw(call.Hand, result.Orders));
        return Reply.Of(WithJobs(answer, call.Parsed, call.Hand, call.Path));
    }

    private (double Mass, double Height)? Drop(ParseResult parsed)
    {
        (string? mass, string? height) = (parsed.GetValue(_drop), parsed.GetValue(_height));
        if (mass is null && height is null)
        {
            return null;
        }

        if (mass is null || height is null)
        {
            string missing = mass is null ? "--drop" : "--height";
            throw new BadInputException(new InputError("command line", 0, 0, missing, "nothing", "a mass and a height", "Give both, such as --drop \"250 g\" --height \"1 m\"."));
        }

        return (Quantity(mass, Dimension.Mass, "--drop"), Quantity(height, Dimension.Length, "--height"));
    }

    private static double Quantity(string text, Dimension dimension, string option) =>
        !Graspwright.Hand.Quantity.TryParse(text, dimension, out Quantity? quantity, out QuantityFault? fault)
            ? throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}'", fault.Allowed, fault.Fix))
            : quantity.Si > 0
                ? quantity.Si
                : throw new BadInputException(new InputError("command line", 0, 0, option, $"'{text}'", "above 0", "Measure it again."));
}
