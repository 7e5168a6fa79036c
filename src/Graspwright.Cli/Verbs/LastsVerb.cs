using System.CommandLine;
using System.Text;
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
        if (model.Structure.Use.History is not { } said)
        {
            return null;
        }

        string file = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(hand))!, said.File);
        try
        {
            (IReadOnlyList<double> moments, IReadOnlyList<InputError> errors) = MomentHistory.Read(File.ReadAllText(file, Encoding.UTF8), said.File);
            return errors.Count > 0 ? throw new BadInputException(errors) : moments;
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(new InputError(said.File, 0, 0, "use.history.file", $"the file cannot be read ({refusal.Message.TrimEnd('.')})", "a CSV file with a column named moment [N·m]", "Check its name and folder, or remove [use.history]."));
        }
    }
}
