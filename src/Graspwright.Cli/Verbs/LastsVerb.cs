using System.CommandLine;
using Graspwright.Drawing.Svg;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Cli.Verbs;

/// <summary><c>lasts HAND</c>: how long do the hinges last, and what decides it?</summary>
internal sealed class LastsVerb() : Verb("lasts", "Say how long the hinges last in days of wear, in which materials, and what buys most life.")
{
    private readonly Option<string[]> _materials = new("--material") { Description = "A material to set beside the hand's own, for fingers and base; give it again for more. Without it, 6061-T6.", HelpName = "NAME" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the life of every hinge.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the lives as bands.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override void Describe(Command command)
    {
        command.Add(Hand);
        command.Add(_materials);
        command.Add(_csv);
        command.Add(_svg);
    }

    /// <inheritdoc/>
    protected override Reply Answer(ParseResult parsed, Terminal terminal)
    {
        string path = parsed.GetRequiredValue(Hand);
        (HandModel hand, _) = HandInput.Read(path);
        LifeQuestion question = new(hand) { File = path, History = History(path, hand) };
        string[] beside = parsed.GetValue(_materials) ?? [];
        LifeResult result = Lasting.Answer(beside.Length > 0 ? question with { Beside = [.. beside.Distinct(StringComparer.Ordinal)] } : question);
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
            WholeFile.Write(svg, SvgWriter.Write(Workshop.Views.LifeBands.Draw(hand, result.Bands), "life"), "--svg");
            terminal.Talk.WriteLine($"Wrote {svg}");
        }

        return Reply.Of(answer);
    }

    private static IReadOnlyList<double>? History(string hand, HandModel model)
    {
        (IReadOnlyList<double>? moments, IReadOnlyList<InputError> errors) = MomentHistory.Of(model, hand);
        return errors.Count > 0 ? throw new BadInputException(errors) : moments;
    }
}
