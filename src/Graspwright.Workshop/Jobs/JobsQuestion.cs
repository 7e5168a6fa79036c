using Graspwright.Mechanics.Run;
using Graspwright.Workshop.Grip;
using Graspwright.Workshop.Results;

namespace Graspwright.Workshop.Jobs;

/// <summary>Does the hand hold what the day asks?</summary>
/// <param name="Hand">The hand, with jobs.</param>
public sealed record JobsQuestion(Hand.HandModel Hand)
{
    /// <summary>Name of the hand file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Jobs asked for, by name; empty = every one.</summary>
    public IReadOnlyList<string> Jobs { get; init; } = [];

    /// <summary>What follows the equilibrium.</summary>
    public Solver Solver { get; init; } = ClosingRun.Solve;
}

/// <summary>The answer with what is behind it.</summary>
/// <param name="Answer">What is printed; <see langword="null"/> = see the errors.</param>
/// <param name="Outcomes">The jobs, in the order of the file.</param>
/// <param name="Errors">Bad input.</param>
public sealed record JobsResult(Answer? Answer, IReadOnlyList<JobOutcome> Outcomes, IReadOnlyList<InputError> Errors);
