using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Cli.Verbs;

/// <summary><c>breaks HAND</c>: what breaks first when it is knocked from the side or overloaded?</summary>
internal sealed class BreaksVerb() : Verb("breaks", "Say what breaks first: finger, pin, base, shell or skin; hinges, parts and springs under load; pins that go first.")
{
    private readonly Option<string?> _drop = new("--drop") { Description = "A mass dropped on to the weakest fingertip, such as \"250 g\"; needs --height.", HelpName = "MASS" };
    private readonly Option<string?> _height = new("--height") { Description = "Height of that fall, such as \"1 m\".", HelpName = "LENGTH" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the order of failure of every finger.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the order of failure on the side view.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_drop);
        command.Add(_height);
        command.Add(_csv);
        command.Add(_svg);
        command.Add(CountJobs);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        BreakResult result = Breaking.Answer(new(hand) { File = path, Drop = Drop(parsed) });
        if (result.Answer is not { } answer)
        {
            throw new BadInputException(result.Errors);
        }

        if (parsed.GetValue(_csv) is { } csv)
        {
            WholeFile.Write(csv, CsvTable.Write(answer.Tables[0]), "--csv");
            terminal.Talk.WriteLine($"Wrote {csv}");
        }

        if (parsed.GetValue(_svg) is { } svg)
        {
            WholeFile.Write(svg, SvgWriter.Write(Workshop.Views.OrderView.Draw(hand, result.Orders), "order"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        return Reply.Of(WithJobs(answer, parsed, hand, path));
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
