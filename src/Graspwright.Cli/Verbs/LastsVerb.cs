using System.CommandLine;
using Graspwright.Hand;
using Graspwright.Workshop.Results;
using Graspwright.Workshop.Strength;

namespace Graspwright.Cli.Verbs;

/// <summary><c>lasts HAND</c>: how long do the hinges last, and what decides it?</summary>
internal sealed class LastsVerb() : HandVerb("lasts", "Say how long the hinges last in days of wear, in which materials, and what buys most life.")
{
    private readonly Option<string[]> _materials = new("--material") { Description = "A material to set beside the hand's own, for fingers and base; give it again for more. Without it, 6061-T6 and a PETG print, where the hand is not of that.", HelpName = "NAME" };
    private readonly Option<string?> _csv = new("--csv") { Description = "Write the life of every hinge.", HelpName = "FILE" };
    private readonly Option<string?> _svg = new("--svg") { Description = "Draw the lives as bands.", HelpName = "FILE" };

    /// <inheritdoc/>
    protected override IReadOnlyList<Option> Options => [_materials, _csv, _svg, CountJobs];

    /// <inheritdoc/>
    protected override Reply Answer(HandCall call)
    {
        LifeQuestion question = new(call.Hand) { File = call.Path, History = History(call.Path, call.Hand) };
        string[] beside = call.Parsed.GetValue(_materials) ?? [];
        LifeResult result = Lasting.Answer(question with { Beside = [.. beside.Distinct(StringComparer.Ordinal)] });
        Answer answer = Sound(result.Answer, result.Errors);
        call.Csv(_csv, () => answer.Tables[0]);
        call.Svg(_svg, "life", () => Workshop.Views.LifeBands.Draw(call.Hand, result.Bands));
        return Reply.Of(WithJobs(answer, call.Parsed, call.Hand, call.Path));
    }

    private static IReadOnlyList<double>? History(string hand, HandModel model)
    {
        (IReadOnlyList<double>? moments, IReadOnlyList<InputError> errors) = MomentHistory.Of(model, hand);
        return errors.Count > 0 ? throw new BadInputException(errors) : moments;
    }
}
