using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Measures;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Grip;

/// <summary>One object held with one lock pattern at one effort, run.</summary>
/// <param name="Thing">The object.</param>
/// <param name="Pattern">The lock pattern; <see langword="null"/> = all free.</param>
/// <param name="Effort">The effort.</param>
/// <param name="Reading">The run with what it was run on.</param>
/// <param name="Situation">What the answer says of it.</param>
public sealed record GripCase(Hand.HandObject Thing, Hand.LockPattern? Pattern, Effort Effort, RunReading Reading, Situation Situation);

/// <summary>The answer with the runs behind it.</summary>
/// <param name="Answer">What is printed; <see langword="null"/> = nothing could be run, see the errors.</param>
/// <param name="Cases">The cases that ran, in the answer's order.</param>
/// <param name="Headline">The headline case; <see langword="null"/> = none ran.</param>
/// <param name="Errors">Bad input: the question, the hand, or objects that could not be run.</param>
public sealed record GripResult(Answer? Answer, IReadOnlyList<GripCase> Cases, GripCase? Headline, IReadOnlyList<InputError> Errors)
{
    /// <summary>One sentence about a case.</summary>
    /// <param name="said">The case.</param>
    public static string Say(GripCase said)
    {
        ArgumentNullException.ThrowIfNull(said);
        return Grip.Headline.About(said);
    }

    /// <summary>Whether the motion of any case could be followed to the end of closing.</summary>
    public bool AnyFollowed => Cases.Any(c => c.Reading.Run.End != RunEnd.NotFollowed);
}
